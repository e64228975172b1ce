import { describe, expect, it, vi } from 'vitest';
import { foldAll, EMPTY_VIEW, readEvent } from '$lib/journal';
import { fixedExample } from '../../../tests/support/fixed-example.ts';
import { readRoof, roofAsText } from './roof-as-text.ts';
import { roofLayoutOf } from './roof-of.ts';

describe('a roof handed over as text', () => {
  it('is read as it was, a slope at a time', async () => {
    const roof = roofLayoutOf(foldAll(fixedExample().map(readEvent), EMPTY_VIEW));
    if (!roof.ok) throw new Error(roof.reason);
    const pause = vi.fn(() => Promise.resolve());
    expect(await readRoof(structuredClone(roofAsText(roof)), pause)).toEqual(roof);
    expect(pause).toHaveBeenCalledTimes(roof.slopes.length);
  });

  it('that cannot be laid out keeps its reason', async () => {
    const none = roofLayoutOf(EMPTY_VIEW);
    const read = await readRoof(roofAsText(none), () => Promise.resolve());
    expect(read).toEqual({ ok: false, reason: 'no-slate' });
  });
});
