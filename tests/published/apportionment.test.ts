import { describe, expect, it } from 'vitest';
import { largestRemainder } from '$lib/engine/grading';

/**
 * Seats by largest remainder (Hamilton). "Quoted": the row stands in an encyclopedia's article on
 * the method. "Computed": worked out in whole numbers, ties to the lowest index; the same weights
 * are used in published comparisons of divisor methods, which are not built here.
 */
describe('largest remainder, published and computed seats', () => {
  it.each([
    // quoted: Wikipedia, "Largest remainder method"
    [[47000, 16000, 15800, 12000, 6100, 3100], 10, [5, 2, 1, 1, 1, 0]],
    [[1500, 1500, 900, 500, 500, 200], 25, [7, 7, 4, 3, 3, 1]],
    // quoted, the Alabama paradox: one seat more, and the fourth and fifth part each lose one
    [[1500, 1500, 900, 500, 500, 200], 26, [8, 8, 5, 2, 2, 1]],
    // computed
    [[503, 304, 193], 35, [17, 11, 7]],
    [[100000, 80000, 30000, 20000], 8, [3, 3, 1, 1]],
    [[720257, 323524, 257466, 213138, 144392, 88315], 31, [13, 6, 5, 4, 2, 1]],
    [[53000, 24000, 23000], 7, [4, 2, 1]]
  ])('%j, %i seats: %j', (weights, seats, parts) => {
    expect(largestRemainder(weights, seats)).toEqual(parts);
  });
});
