import { describe, expect, it } from 'vitest';
import { createRandom, randomNormal } from '$lib/engine';
import { ASSUMED_TAPER_SD_MM, gradeFigures, kickSoftness } from '$lib/engine/grading';
import { binsFromPairs } from '$lib/engine/thickness';
import { EMPTY_VIEW, type NewEvent } from '$lib/journal';
import { predictEvenness } from '$lib/features/delivery/delivery-evenness';
import { TestJournal } from '../../../tests/support/test-journal.ts';
import { ASSUMED_SOFTNESS, ENOUGH_TAPERS, kickSoftnessOf, taperOf } from './kick-softness.ts';

const bothSides = (left: number, right: number): NewEvent => ({
  type: 'slateGauged',
  body: { palletId: 'a', points: [left, right], gradesId: null, pile: null, rocks: false }
});

describe('the taper of a job', () => {
  it('is ours until enough slates were measured left and right', () => {
    expect(taperOf(EMPTY_VIEW)).toEqual({
      sdMm: ASSUMED_TAPER_SD_MM,
      slates: 0,
      isMeasured: false
    });
    const journal = new TestJournal();
    for (let slate = 1; slate < ENOUGH_TAPERS; slate++) journal.add(bothSides(600, 650));
    expect(taperOf(journal.view)).toMatchObject({ sdMm: ASSUMED_TAPER_SD_MM, isMeasured: false });
    journal.add(bothSides(600, 650));
    const { sdMm, slates, isMeasured } = taperOf(journal.view);
    // every slate tapers by 0.5 mm; two readings of an unstudied gauge (0.05 mm) come off
    expect(sdMm).toBeCloseTo(Math.sqrt(0.25 - 0.005), 12);
    expect({ slates, isMeasured }).toEqual({ slates: ENOUGH_TAPERS, isMeasured: true });
  });

  it('is nothing where the sides differ by no more than the gauge strays', () => {
    const journal = new TestJournal();
    for (let slate = 0; slate < ENOUGH_TAPERS; slate++) journal.add(bothSides(600, 601));
    expect(taperOf(journal.view).sdMm).toBe(0);
    expect(kickSoftnessOf(journal.view).varianceMm2).toBeCloseTo(2 * 0.05 ** 2, 12);
  });

  it('is what the slates have, as drawn here with a gauge that strays', () => {
    const random = createRandom(15);
    const gaugeSdMm = 0.1;
    const journal = new TestJournal().add({ type: 'jobSettingsSet', body: { gaugeSdMm } });
    for (let slate = 0; slate < 1500; slate++) {
      const mid = 620 + 80 * randomNormal(random);
      const taper = 40 * randomNormal(random);
      const read = (mm: number) => Math.round(mm + 100 * gaugeSdMm * randomNormal(random));
      const sides = [read(mid - taper / 2), read(mid + taper / 2)];
      if (Math.min(...sides) > 150) journal.add(bothSides(sides[0], sides[1]));
    }
    expect(taperOf(journal.view).sdMm).toBeGreaterThan(0.38);
    expect(taperOf(journal.view).sdMm).toBeLessThan(0.42);
  });
});

describe('the scatter of a job', () => {
  it('is the assumed one where nothing is known, and takes size and gauge where they are', () => {
    expect(kickSoftnessOf(EMPTY_VIEW)).toEqual(ASSUMED_SOFTNESS);
    const journal = new TestJournal().add(
      { type: 'jobSettingsSet', body: { gaugeSdMm: 0.1 } },
      {
        type: 'slateSpecSet',
        body: {
          ...{ lengthMm: 400, widthMm: 200, nailing: 'centre', headlapMm: 80 },
          ...{ jointMinMm: 3, jointMaxMm: 5, eaveOverhangMm: 50, vergeOverhangMm: 50 }
        }
      }
    );
    // gauge (400 - 80) / 2 = 160; (160 + 80) / 400
    expect(kickSoftnessOf(journal.view)).toEqual(kickSoftness(0.3, 0.1, 0.6));
  });

  it('is the same in Grades and in Findings', () => {
    const journal = new TestJournal().add({ type: 'jobSettingsSet', body: { gaugeSdMm: 0.1 } });
    for (let slate = 0; slate < ENOUGH_TAPERS; slate++) journal.add(bothSides(560, 620));
    const { view } = journal;
    const bins = binsFromPairs([420, 480, 530, 560, 610, 640, 700, 790].map((at) => [at, 1]));
    const softness = kickSoftnessOf(view);
    const ground = { bins, stockSlates: 500, courses: [], kickAllowanceMm: 1.5, softness };
    const figures = gradeFigures(ground)([]);
    const { unsortedKickersPer100 } = predictEvenness(view, bins, 500)!;
    expect(unsortedKickersPer100).toBe(figures.unsorted.expectedKickersPer100Joints);
    const plain = gradeFigures({ ...ground, softness: undefined })([]);
    expect(plain.unsorted.expectedKickersPer100Joints).not.toBe(unsortedKickersPer100);
  });
});
