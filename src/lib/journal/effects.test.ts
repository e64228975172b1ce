import { expect, it } from 'vitest';
import { meanHundredths } from './effects.ts';

it.each([
  [[640], 640],
  [[640, 641], 641],
  [[640, 640, 641], 640],
  [[150, 4000], 2075],
  [[601, 602, 603, 605], 603]
])('the mean of %j is %i hundredths, halves up', (points, mean) => {
  expect(meanHundredths(points)).toBe(mean);
});
