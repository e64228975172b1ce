import { describe, expect, it } from 'vitest';
import { noncentralTAbove, noncentralTCdf, noncentralTQuantile } from './noncentral-t.ts';

// Computed with mpmath: 40 digits, quadrature over the chi density with its gamma function.
describe.each([
  [9.285766, 48, 11.5139754, 0.05000196662929021],
  [1, 1, 0, 0.75],
  [2, 1, 3, 0.17956249655224157],
  [-2, 1, 3, 0.00014999832675826772],
  [5, 3, 1, 0.9635189611168264],
  [30, 99, 16.4, 0.9999999994732255],
  [20, 99, 25, 0.002097815827060784],
  [0.5, 2, -4, 0.9999931378400732],
  [100, 2, 30, 0.9138562518347082],
  [3, 1000, 1, 0.97696608847677],
  [60, 1000, 64, 0.008410249241555909],
  [8, 4, 5, 0.8005649924158588],
  [-20, 2, -30, 0.8936797742109135],
  [0, 5, 2, 0.02275013194817921]
])('t %f, %f degrees of freedom, noncentrality %f', (t, freedom, noncentrality, expected) => {
  it(`is ${expected} below and the rest above, within 2e-15`, () => {
    expect(Math.abs(noncentralTCdf(t, freedom, noncentrality) - expected)).toBeLessThan(2e-15);
    expect(Math.abs(noncentralTAbove(t, freedom, noncentrality) - (1 - expected))).toBeLessThan(
      2e-15
    );
  });
});

// Noncentrality 0 is Student's t; quantiles computed with mpmath, 20 digits.
it.each([
  [0.975, 1, 12.706204736174694],
  [0.975, 4, 2.7764451051977934],
  [0.9995, 5, 6.868826625881275],
  [0.001, 7, -4.785289628638334]
])('quantile %f of Student’s t with %i degrees of freedom', (probability, freedom, expected) => {
  expect(noncentralTQuantile(probability, freedom, 0) / expected).toBeCloseTo(1, 11);
});
