import { describe, expect, it } from 'vitest';
import { betterDelivery, chanceOfDifference } from '$lib/engine/delivery';

describe('two deliveries beside each other', () => {
  it('has the chances of the lady tasting tea (Fisher, The Design of Experiments, 1935)', () => {
    const chanceOf = (right: number): number =>
      chanceOfDifference({ outside: right, sampled: 4 }, { outside: 4 - right, sampled: 4 });
    // Of 70 ways: 1, 16, 36, 16, 1 with 0 to 4 cups right.
    expect([0, 1, 2, 3, 4].map(chanceOf)).toEqual(
      [2, 34, 70, 34, 2].map((ways) => expect.closeTo(ways / 70, 12) as number)
    );
  });

  const delivery = (outside: number, sampled: number, sdMm = 0.6) => ({ outside, sampled, sdMm });

  it('shows the better one where chance does not explain it', () => {
    const [good, poor] = [delivery(2, 80), delivery(20, 80, 0.9)];
    expect(betterDelivery([poor, good])).toMatchObject({
      best: good,
      against: poor,
      isShown: true,
      isMoreEven: true
    });
    expect(betterDelivery([delivery(2, 80), delivery(4, 80)])).toMatchObject({ isShown: false });
  });

  it('holds the best against the worst where the next is not shown to be worse', () => {
    const worst = delivery(30, 80);
    const told = betterDelivery([delivery(3, 80), worst, delivery(2, 80)]);
    expect(told).toMatchObject({ best: { outside: 2 }, against: worst, isShown: true });
  });

  it('says nothing of fewer than two, and takes the more even of equal ones', () => {
    expect(betterDelivery([])).toBeUndefined();
    expect(betterDelivery([delivery(2, 80)])).toBeUndefined();
    const even = delivery(0, 80, 0.4);
    expect(betterDelivery([delivery(0, 80, 0.9), even])).toMatchObject({
      best: even,
      isShown: false,
      chance: 1
    });
  });
});
