import { describe, expect, it } from 'vitest';
import type { Plan } from '$lib/engine/courses';
import type { PlanGround } from './plan-request.ts';
import { WIDE_STORE, palletsForDraw } from './draw-pallets.ts';

function ground(slatesOfPile: number[][], left: number[]): PlanGround {
  return {
    stock: {
      pallets: slatesOfPile.map((own, index) => ({
        palletId: `p${index + 1}`,
        label: `P${index + 1}`,
        slatesOfPile: own
      }))
    },
    left: left.map((slates) => ({ slates }))
  } as unknown as PlanGround;
}

const plan = {
  piles: [
    { pile: 1, slateAndAHalves: 4 },
    { pile: 2, slateAndAHalves: 0 }
  ]
} as unknown as Plan;

describe('palletsForDraw', () => {
  it('gives the pallets as they are before anything is laid', () => {
    const pallets = palletsForDraw(
      ground(
        [
          [30, 0],
          [60, 5],
          [10, 7]
        ],
        [100, 12]
      ),
      plan
    );
    expect(pallets.slice(0, 3).map(({ slates }) => slates)).toEqual([
      [30, 0],
      [60, 5],
      [10, 7]
    ]);
  });

  it('wears the pallets of a pile down evenly to what is left, in whole slates', () => {
    const pallets = palletsForDraw(ground([[30], [60], [10]], [50]), plan);
    expect(pallets.slice(0, 3).map(({ slates }) => slates)).toEqual([[15], [30], [5]]);
  });

  it('keeps slate-and-a-halves in a store of their own, as many as the plan takes', () => {
    expect(palletsForDraw(ground([[1, 1]], [1, 1]), plan).at(-1)).toEqual({
      palletId: WIDE_STORE,
      slates: [0, 0],
      slateAndAHalves: [4, 0]
    });
  });

  it('claims nothing of a pile that no pallet is known to feed', () => {
    const pallets = palletsForDraw(ground([[0, 3]], [20, 3]), plan);
    expect(pallets[0].slates).toEqual([0, 3]);
  });
});
