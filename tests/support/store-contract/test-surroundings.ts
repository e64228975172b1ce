import { createRandom } from '$lib/engine';
import type { StoreSurroundings } from '../../../src/lib/storage/store.ts';

/** A clock that goes on by a second with each look, and seeded chance: for tests. */
export function testSurroundings(seed: number): StoreSurroundings {
  const random = createRandom(seed);
  let time = 1_770_000_000_000 + seed;
  return {
    now: () => (time += 1000),
    randomHex: () =>
      Array.from({ length: 16 }, () => Math.floor(random() * 16).toString(16)).join('')
  };
}
