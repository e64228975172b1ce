import { describe, expect, it } from 'vitest';
import type { PlanGround } from './plan-request.ts';
import { pilesLeft } from './piles-left.ts';

/** Piles of which so many slates are left, and so many are still to be sorted. */
function groundOf(
  piles: readonly { left: number; toCome: number; lost?: number }[],
  laid: readonly [pile: number, slates: number][] = []
): PlanGround {
  return {
    left: piles.map(({ left }) => ({ slates: left })),
    stock: { piles: piles.map(({ toCome }, index) => ({ pile: index + 1, toCome })) },
    laid: laid.map(([pile, slates]) => ({ parts: [{ pile, slates, slateAndAHalves: 1 }] })),
    partLaid: [],
    undereaveLaid: [],
    lostOfPile: piles.map(({ lost }) => lost ?? 0)
  } as unknown as PlanGround;
}

describe('pilesLeft', () => {
  it('tells what stands there, what is to come, and what was laid and lost of each pile', () => {
    const laid: [number, number][] = [
      [1, 15],
      [1, 10],
      [2, 8]
    ];
    const ground = groundOf(
      [
        { left: 70, toCome: 40, lost: 5 },
        { left: 12, toCome: 0 }
      ],
      laid
    );
    expect(pilesLeft(ground)).toEqual([
      { pile: 1, left: 70, toCome: 40, standing: 30, laid: 25, lost: 5 },
      { pile: 2, left: 12, toCome: 0, standing: 12, laid: 8, lost: 0 }
    ]);
  });

  it('lets no pile stand below nothing where more was laid than was logged as sorted', () => {
    expect(pilesLeft(groundOf([{ left: 30, toCome: 40 }]))[0]).toMatchObject({
      left: 30,
      toCome: 30,
      standing: 0
    });
  });

  it('gives back a pile that is used up', () => {
    expect(pilesLeft(groundOf([{ left: 0, toCome: 0 }]))[0]).toMatchObject({
      left: 0,
      standing: 0
    });
  });
});
