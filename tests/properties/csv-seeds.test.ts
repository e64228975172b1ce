import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readReadingsCsv } from '$lib/storage';
import { PALLETS } from '../../src/lib/example/delivery.ts';
import { readingsFile } from '../../seeds/readings-file.ts';

const file = readFileSync('seeds/readings.csv', 'utf8');

describe('seeds/readings.csv', () => {
  it('is what its generator makes', () => {
    expect(file).toBe(readingsFile());
  });

  it('holds 2,000 readings from 4 to 9 mm on six pallets', () => {
    const result = readReadingsCsv(file);
    if (!result.ok) throw new Error(JSON.stringify(result.problems));
    expect(result.rows).toHaveLength(2000);
    expect(new Set(result.rows.map(({ pallet }) => pallet)).size).toBe(6);
    const readings = result.rows.map(({ thicknessHundredths = 0 }) => thicknessHundredths);
    expect(Math.min(...readings)).toBeGreaterThanOrEqual(400);
    expect(Math.max(...readings)).toBeLessThanOrEqual(900);
  });

  it('has pallets that differ, one of them odd: a third to a half of the variance between', () => {
    const result = readReadingsCsv(file);
    if (!result.ok) throw new Error(JSON.stringify(result.problems));
    const all = result.rows.map(({ thicknessHundredths = 0 }) => thicknessHundredths / 100);
    const mean = (list: readonly number[]) => list.reduce((sum, x) => sum + x, 0) / list.length;
    const squares = (list: readonly number[]) =>
      list.reduce((sum, x) => sum + (x - mean(list)) ** 2, 0);
    const pallets = PALLETS.map(({ label }) =>
      result.rows
        .filter(({ pallet }) => pallet === label)
        .map(({ thicknessHundredths = 0 }) => thicknessHundredths / 100)
    );
    const within = pallets.reduce((sum, pallet) => sum + squares(pallet), 0);
    const between = 1 - within / squares(all);
    expect(between).toBeGreaterThan(0.33);
    expect(between).toBeLessThan(0.5);
    const means = pallets.map(mean);
    expect(means.indexOf(Math.max(...means))).toBe(5);
    expect(means[5] - Math.max(...means.slice(0, 5))).toBeGreaterThan(0.6);
  });
});
