import { readings, twoSlopes } from './courses-job.ts';
import { IN_FORCE, type SeedAct } from './seed-job.ts';

/** A job of which half is measured: of two pallets of four a few slates, grades and a roof, no plan. */
export function halfMeasured(): SeedAct[] {
  const [opened, ...rest] = twoSlopes(220);
  const more = { palletId: 'pallet-D', label: 'D', slates: 220 };
  const gauged = readings(10).filter(({ body }) => body.palletId !== 'pallet-C');
  return [
    opened,
    { type: 'palletAdded', body: more },
    ...rest.filter(({ type }) => type !== 'slateGauged'),
    ...gauged
  ];
}

/** A job whose roof is laid, every course of it from one pile. */
export function laidJob(): SeedAct[] {
  const courses = ['south', 'north'].flatMap((slopeId) =>
    Array.from({ length: 12 }, (_, n) => ({
      slopeId,
      course: n + 1,
      piles: [{ pile: 1 + Math.floor(n / 4), pieces: 19 }]
    }))
  );
  return [
    ...twoSlopes(260),
    {
      type: 'planAdopted',
      body: {
        ...{ gradesId: IN_FORCE, kickAllowanceMm: 1.5, expectedKickers: 4, joints: 432 },
        courses
      }
    },
    ...courses.map((body) => ({ type: 'courseLaid', body }))
  ];
}
