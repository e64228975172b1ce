import type { Page } from '@playwright/test';
import { type SeedAct, seedJob } from './seed-job.ts';

const LIST = '01900000-0000-7000-8000-0000000000cc';

/** Two pallets of 600 slates, a list of 80 places, and so many of them measured as walked. */
export function delivery(measured: number, { thick = 3, spare = {} } = {}): SeedAct[] {
  const places = ['A', 'B'].flatMap((label) =>
    Array.from({ length: 40 }, (_, index) => ({
      palletId: `pallet-${label}`,
      layer: 1 + Math.floor(index / 10),
      place: 1 + (index % 10)
    }))
  );
  return [
    { type: 'jobOpened', body: { name: 'Seeded' } },
    {
      type: 'deliveryDeclared',
      body: {
        supplier: 'Heron',
        lengthMm: 500,
        widthMm: 250,
        nominalThicknessMm: 5,
        tolerancePercent: 35,
        slatesOrdered: 1200,
        stackOf100Mm: 540
      }
    },
    { type: 'jobSettingsSet', body: { sortingRatePerHour: 30, sortingPacePerHour: 300 } },
    ...['A', 'B'].map((label) => ({
      type: 'palletAdded',
      body: { palletId: `pallet-${label}`, label, slates: 600, layers: 10, perLayer: 60 }
    })),
    {
      type: 'sampleDrawn',
      body: {
        seed: 1,
        plan: 'own',
        planSize: 80,
        acceptAtMost: 7,
        good: { share: 0.04, acceptance: 0.95 },
        poor: { share: 0.15, acceptance: 0.1 },
        positions: places
      }
    },
    ...places.slice(0, measured).map(({ palletId, layer, place }, index) => ({
      type: 'slateGauged',
      body: {
        palletId,
        points: [index < thick ? 900 : 450 + index],
        gradesId: null,
        pile: null,
        sample: { drawId: LIST, layer, place, ...(index === 0 && spare) }
      }
    }))
  ];
}

/** Seeds the job; the list gets the id that its slates name. */
export async function seedDelivery(page: Page, acts: SeedAct[]): Promise<string> {
  const drawAt = acts.findIndex(({ type }) => type === 'sampleDrawn');
  const jobId = await seedJob(page, acts, 4, (index) => (index === drawAt ? LIST : undefined));
  return `/job/${jobId}`;
}
