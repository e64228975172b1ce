import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS, type UndereaveDraw, planRequestOf } from '$lib/job';
import { planByRule } from '$lib/engine/courses';
import type { NewEvent } from '$lib/journal';
import { smallRoof } from '../../../../tests/support/small-roof.ts';
import { TestJournal as Journal } from '../../../../tests/support/test-journal.ts';
import { asideOf, loadListOf } from './load-list.ts';

const SET_UP: NewEvent[] = [
  ...smallRoof({ rafterLengthMm: 1600, eaveWidthMm: 2500 }),
  { type: 'palletAdded', body: { palletId: 'p1', label: 'A', slates: 150 } },
  ...Array.from({ length: 150 }, (_, n): NewEvent => ({
    type: 'slateGauged',
    body: { palletId: 'p1', points: [420 + ((n * 37) % 320)], gradesId: null, pile: null }
  })),
  { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [6, 5] } }
];

function loaded(...acts: NewEvent[]) {
  const ground = planRequestOf(new Journal().add(...SET_UP, ...acts).view);
  if (!ground.ok) throw new Error(ground.missing);
  const plan = planByRule(ground.request);
  if (plan.status !== 'optimal') throw new Error('there are slates enough');
  const list = loadListOf({
    ...{ plan, undereave: ground.undereave, spec: ground.roof.spec, settings: DEFAULT_SETTINGS },
    thicknessMm: [6.7, 5.5, 4.6]
  });
  if (!list?.ok) throw new Error('the limits hold a slate');
  return { undereave: ground.undereave, plan, lifts: list.lifts };
}
const rowOf = (
  undereave: readonly UndereaveDraw[],
  pile: number,
  from: 'slates' | 'slateAndAHalves'
) =>
  undereave
    .flatMap(({ parts }) => parts)
    .filter((part) => part.pile === pile)
    .reduce((sum, part) => sum + part[from], 0);

describe('the loading out', () => {
  it('takes up all that comes off each pile, the undereave row with the first lift', () => {
    const { undereave, plan, lifts } = loaded();
    expect(rowOf(undereave, 1, 'slates')).toBeGreaterThan(5);
    const stacks = lifts.flatMap((lift) => lift.stacks);
    const goUp = (pile: number, size: string) =>
      stacks
        .filter((stack) => stack.pile === pile && stack.size === size)
        .reduce((sum, { count }) => sum + count, 0);
    for (const { pile, slates, slateAndAHalves } of plan.piles) {
      expect(goUp(pile, 'slate')).toBe(slates + rowOf(undereave, pile, 'slates'));
      expect(goUp(pile, 'slate-and-a-half')).toBe(
        slateAndAHalves + rowOf(undereave, pile, 'slateAndAHalves')
      );
    }
    const [first] = lifts[0].stacks;
    expect(first).toMatchObject({ pile: 1, fromCourse: 0, toCourse: 0 });
    expect(stacks.filter(({ fromCourse }) => fromCourse === 0)).toHaveLength(2);
  });

  it('takes none up that come ready cut; those set aside are told apart', () => {
    const ordered: NewEvent = { type: 'jobSettingsSet', body: { undereaveOrdered: true } };
    expect(loaded(ordered).lifts[0].stacks[0].fromCourse).toBe(1);
    const aside: NewEvent = {
      type: 'slateSetAside',
      body: { palletId: 'p1', reason: 'colour', use: 'undereave' }
    };
    const { undereave } = loaded(aside, aside);
    expect(asideOf(undereave)).toBe(2);
  });
});
