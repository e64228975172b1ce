import { describe, expect, it } from 'vitest';
import { ViewDraft } from './draft.ts';
import { EMPTY_VIEW } from './fold.ts';
import { isEmptyPart, partOf } from './view.ts';

describe('ViewDraft', () => {
  it('leaves the base as it was and shares what was not touched', () => {
    const first = new ViewDraft(EMPTY_VIEW);
    first.part('pallet:p1').sampled['600'] = 1;
    first.part('pallet:p2').sampled['700'] = 1;
    const base = first.finish();
    const draft = new ViewDraft(base);
    draft.part('pallet:p1').sampled['600'] = 2;
    const next = draft.finish();
    expect(partOf(base, 'pallet:p1').sampled['600']).toBe(1);
    expect(partOf(next, 'pallet:p1').sampled['600']).toBe(2);
    expect(next.get('pallet:p2')).toBe(base.get('pallet:p2'));
    expect([...draft.touched.keys()]).toEqual(['pallet:p1']);
  });

  it('looking is not touching', () => {
    const draft = new ViewDraft(EMPTY_VIEW);
    expect(draft.peek('job').opened).toEqual([]);
    expect(draft.touched.size).toBe(0);
  });

  it('J7: drops a part of which nothing is left', () => {
    const first = new ViewDraft(EMPTY_VIEW);
    first.part('sorter:Wren').checks['|1|600|'] = 1;
    const draft = new ViewDraft(first.finish());
    delete draft.part('sorter:Wren').checks['|1|600|'];
    expect(isEmptyPart(draft.part('sorter:Wren'))).toBe(true);
    expect(draft.finish().size).toBe(0);
    expect([...draft.touched.keys()]).toEqual(['sorter:Wren']);
  });
});
