import { expect, it } from 'vitest';
import { inPieces } from './pieces.ts';

it('all entries are worked on in their order, and others get their turn in between', async () => {
  const order: (number | 'tap')[] = [];
  setTimeout(() => order.push('tap'), 0);
  const items = Array.from({ length: 1000 }, (_, at) => at);
  await inPieces(items, (item, at) => {
    expect(item).toBe(at);
    order.push(item);
  });
  expect(order.filter((one) => one !== 'tap')).toEqual(items);
  expect(order.indexOf('tap')).toBeGreaterThan(0);
  expect(order.indexOf('tap')).toBeLessThan(1000);
});

it('what goes wrong in a piece is told', async () => {
  const wrong = inPieces([1], () => {
    throw new Error('broken');
  });
  await expect(wrong).rejects.toThrow('broken');
});
