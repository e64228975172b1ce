import { describe, expect, it } from 'vitest';
import { arePalletsAlike } from './pallets-alike.ts';

describe('pallets are alike', () => {
  it.each([
    ['little of the variance between them, and means close together', 0.02, [6.9, 6.8, 7.0], true],
    [
      'a mean 0.8 mm off, which one reading far out hides in the share',
      0.02,
      [6.93, 6.88, 6.11],
      false
    ],
    ['means apart by 0.50 mm', 0.05, [6.5, 6], true],
    ['means apart by 0.51 mm', 0.05, [6.51, 6], false],
    ['much of the variance between them', 0.1, [6.5, 6.4], false],
    ['nothing measured', 0, [], true]
  ])('%s', (_, share, means, alike) => expect(arePalletsAlike(share, means)).toBe(alike));
});
