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

  it('counts a point held still once two readings agree', () => {
    const hand = new SlateInHand();
    expect(hand.take(6, 1, true)).toMatchObject({ kind: 'asked', prompt: { kind: 'again' } });
    expect(hand.take(7, 1, true)).toMatchObject({ kind: 'asked', prompt: { kind: 'moved' } });
    expect(hand.take(7.1, 1, true)).toMatchObject({ kind: 'slate', slate: { thicknessMm: 7.05 } });
  });

  it('forgets its points when it begins anew', () => {
    const hand = new SlateInHand();
    hand.take(6, 2, false);
    hand.restart();
    expect(hand.take(7, 2, false)).toMatchObject({ prompt: { done: 1 } });
  });
});
