import { SLATE, slope } from './courses-job.ts';
import type { SeedAct } from './seed-job.ts';

/** Lengths of the job below, longest first, and how they are named on screen. */
export const LENGTHS = [
  { sizeId: 'first', lengthMm: 500, name: '500 mm' },
  { sizeId: 'mid', lengthMm: 400, name: '400 mm' },
  { sizeId: 'short', lengthMm: 330, name: '330 mm' }
] as const;

/** A slope 5,000 mm wide of a rafter as long as asked. */
export function slopeOf(name: string, rafterLengthMm: number): SeedAct {
  const { type, body } = slope(name);
  return { type, body: { ...body, rafterLengthMm } };
}

/** A pallet of a size, gauged by a sample, with two grades. */
export function stockOfSize(
  sizeId: string,
  label: string,
  slates: number,
  fromHundredths: number
): SeedAct[] {
  const palletId = `pallet-${label}`;
  return [
    { type: 'palletAdded', body: { palletId, label, slates, sizeId } },
    ...Array.from({ length: Math.min(24, slates) }, (_slate, n) => ({
      type: 'slateGauged',
      body: { palletId, points: [fromHundredths + ((n * 37) % 180)], gradesId: null, pile: null }
    })),
    {
      type: 'gradesSet',
      body: { method: 'byHand', thresholdsMm: [fromHundredths / 100 + 0.9], sizeId }
    }
  ];
}

/** 500 × 250 mm at the eaves, then 400 mm and 330 mm in random widths. */
export const RANDOM_SIZES: SeedAct = {
  type: 'slateSizesSet',
  body: {
    sizes: [
      { sizeId: 'first', lengthMm: 500, widthMm: 250 },
      { sizeId: 'mid', lengthMm: 400, widthFromMm: 170, widthToMm: 270 },
      { sizeId: 'short', lengthMm: 330, widthFromMm: 150, widthToMm: 250 }
    ]
  }
};

/** Two slopes of three lengths, gauged and graded, with more than enough of each. */
export const THREE_LENGTHS: readonly SeedAct[] = [
  { type: 'jobOpened', body: { name: 'Seeded' } },
  SLATE,
  slopeOf('South', 5200),
  slopeOf('North', 5200),
  RANDOM_SIZES,
  ...stockOfSize('first', 'Long', 700, 600),
  ...stockOfSize('mid', 'Middle', 1000, 500),
  ...stockOfSize('short', 'Short', 1200, 420)
];
