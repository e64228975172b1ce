import { describe, expect, it } from 'vitest';
import { SlateInHand } from './slate-in-hand.ts';

describe('SlateInHand', () => {
  it('of one point is complete with it', () => {
    expect(new SlateInHand().take(6.4, 1, false)).toMatchObject({
      kind: 'slate',
      slate: { thicknessMm: 6.4, taperMm: 0 }
    });
  });

  it('asks for the points still missing, and takes the last one back', () => {
    const hand = new SlateInHand();
    expect(hand.take(6, 3, false)).toEqual({
      kind: 'asked',
      prompt: { kind: 'point', done: 1, wanted: 3 }
    });
    hand.take(9, 3, false);
    hand.takeBack();
    hand.take(7, 3, false);
    expect(hand.take(8, 3, false)).toMatchObject({
      kind: 'slate',
      slate: { thicknessMm: 7, taperMm: 2 }
    });
  });

  it('ends with the first of its points alone, and begins anew', () => {
    const hand = new SlateInHand();
    expect(hand.endWithOne()).toBeUndefined();
    hand.take(6.2, 2, false);
    expect(hand.endWithOne()).toMatchObject({ thicknessMm: 6.2, taperMm: 0, pointsMm: [6.2] });
    expect(hand.begun).toBeUndefined();
  });

  it('counts a point held still once two readings agree', () => {
    const hand = new SlateInHand();
    expect(hand.take(6, 1, true)).toMatchObject({ kind: 'asked', prompt: { kind: 'again' } });
    expect(hand.take(7, 1, true)).toMatchObject({ kind: 'asked', prompt: { kind: 'moved' } });
    expect(hand.take(7.1, 1, true)).toMatchObject({ kind: 'slate', slate: { thicknessMm: 7.05 } });
  });

  it('goes on with the points that were kept, and with a reading that waits', () => {
    const before = new SlateInHand();
    expect(before.begun).toBeUndefined();
    before.take(6, 3, false);
    before.take(7, 3, false);
    const after = new SlateInHand();
    expect(after.resume(before.begun!, 3)).toEqual({ kind: 'point', done: 2, wanted: 3 });
    expect(after.take(8, 3, false)).toMatchObject({ slate: { pointsMm: [6, 7, 8] } });
    expect(after.begun).toBeUndefined();
    const held = new SlateInHand();
    held.take(6.1, 1, true);
    const again = new SlateInHand();
    expect(again.resume(held.begun!, 1)).toEqual({ kind: 'again', firstMm: 6.1 });
    expect(again.take(6.2, 1, true)).toMatchObject({ slate: { thicknessMm: 6.15 } });
  });

  it('takes up nothing where fewer points are wanted now', () => {
    const hand = new SlateInHand();
    expect(hand.resume({ pointsMm: [6, 7], waitingMm: null }, 2)).toBeUndefined();
    expect(hand.begun).toBeUndefined();
  });

  it('forgets its points when it begins anew', () => {
    const hand = new SlateInHand();
    hand.take(6, 2, false);
    hand.restart();
    expect(hand.take(7, 2, false)).toMatchObject({ prompt: { done: 1 } });
  });
});
