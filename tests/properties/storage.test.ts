import 'fake-indexeddb/auto';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { type NewEvent, type StoredEvent, canonicalJson, canonicalView } from '$lib/journal';
import {
  type CsvStyle,
  DexieStore,
  type JournalStore,
  SPREADSHEET_STYLE,
  type StoreSurroundings,
  exportReadingsCsv,
  journalSha256,
  readJobFile,
  readReadingsCsv,
  writeJobFile
} from '$lib/storage';
import { MemoryDatabase, MemoryStore } from '../support/memory-store.ts';
import { BODY, JOB_ID, act } from '../support/journal-arbitraries.ts';

const SEED = 20_260_705;

/** One step of work: an act or an undo in a tab of a device, or a file given to the other device. */
type Step =
  | { readonly kind: 'act'; readonly device: 0 | 1; readonly tab: 0 | 1; readonly act: NewEvent }
  | { readonly kind: 'undo'; readonly device: 0 | 1; readonly tab: 0 | 1; readonly of: number }
  | { readonly kind: 'give'; readonly from: 0 | 1 };

const device = fc.constantFrom<0 | 1>(0, 1);
const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.record({ kind: fc.constant('act' as const), device, tab: device, act })
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('undo' as const),
      device,
      tab: device,
      of: fc.nat(99)
    })
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('give' as const), from: device }) }
);
const work = fc.array(step, { minLength: 1, maxLength: 30, size: 'max' });

let drawn = 0;
const opened: DexieStore[] = [];

function surroundings(): StoreSurroundings {
  let time = 1_770_000_000_000;
  return {
    // Set back now and again, as phones' clocks are.
    now: () => (time += drawn % 7 === 0 ? -5_000 : 900),
    randomHex: () => (drawn++).toString(16).padStart(16, '0')
  };
}

/** Two devices with two tabs each. */
const WORLDS: Record<string, () => JournalStore[][]> = {
  'in memory': () =>
    [0, 1].map(() => {
      const database = new MemoryDatabase();
      return [0, 1].map(() => new MemoryStore(surroundings(), database));
    }),
  'in IndexedDB': () =>
    [0, 1].map(() => {
      const name = `device ${drawn++}`;
      return [0, 1].map(() => {
        const store = new DexieStore(surroundings(), name);
        opened.push(store);
        return store;
      });
    })
};

afterAll(() => {
  for (const store of opened) store.database.close();
});

async function all(store: JournalStore): Promise<StoredEvent[]> {
  const events: StoredEvent[] = [];
  for await (const batch of store.events(JOB_ID)) events.push(...batch);
  return events;
}

async function bytesOf(store: JournalStore): Promise<string> {
  const job = await store.open(JOB_ID);
  return job ? canonicalView(job.view) + canonicalJson(job.summary) : 'no job';
}

async function give(from: JournalStore, to: JournalStore): Promise<void> {
  const file = await writeJobFile(from, JOB_ID);
  if (!file) return;
  const result = await readJobFile(to, file.blob);
  if (!result.ok) throw new Error(JSON.stringify(result));
}

async function doStep(devices: JournalStore[][], next: Step): Promise<void> {
  if (next.kind === 'give') return give(devices[next.from][0], devices[1 - next.from][1]);
  const store = devices[next.device][next.tab];
  if (next.kind === 'act') {
    await store.append(JOB_ID, [next.act], 'Wren');
    return;
  }
  const events = await all(store);
  if (events.length === 0) return;
  const voids = events[next.of % events.length].id;
  await store.append(JOB_ID, [{ type: 'entryVoided', body: { voids } }], 'Finch');
}

describe.each(Object.keys(WORLDS))('work on two devices with two tabs each, %s', (where) => {
  it('J3, J7, J14, J16: whatever is done, tabs agree, rebuilds are equal, devices come together', async () => {
    let [steps, gifts, undos] = [0, 0, 0];
    await fc.assert(
      fc.asyncProperty(work, async (plan) => {
        const devices = WORLDS[where]();
        for (const next of plan) {
          await doStep(devices, next);
          steps++;
          if (next.kind === 'give') gifts++;
          if (next.kind === 'undo') undos++;
        }
        for (const [one, two] of devices) {
          const before = await bytesOf(one);
          expect(await bytesOf(two)).toBe(before);
          await two.rebuild(JOB_ID);
          expect(await bytesOf(one)).toBe(before);
        }
        const [[here], [there]] = devices;
        await give(here, there);
        await give(there, here);
        const views = [await here.open(JOB_ID), await there.open(JOB_ID)];
        expect(views[0] && canonicalView(views[0].view)).toBe(
          views[1] && canonicalView(views[1].view)
        );
        expect(await journalSha256(here, JOB_ID)).toEqual(await journalSha256(there, JOB_ID));
        expectGapless(await all(here));
      }),
      { seed: SEED, numRuns: 40 }
    );
    expect(steps).toBeGreaterThan(300);
    expect(gifts).toBeGreaterThan(30);
    expect(undos).toBeGreaterThan(80);
  });
});

describe('the export of readings', () => {
  const slate = fc.oneof(
    BODY.slateGauged.map((body): NewEvent => ({ type: 'slateGauged', body })),
    BODY.slateTapped.map((body): NewEvent => ({ type: 'slateTapped', body })),
    BODY.slateSetAside.map((body): NewEvent => ({ type: 'slateSetAside', body })),
    BODY.palletAdded.map((body): NewEvent => ({ type: 'palletAdded', body }))
  );
  const slates = fc.array(fc.oneof({ weight: 3, arbitrary: slate }, fc.nat(99)), {
    minLength: 1,
    maxLength: 30,
    size: 'max'
  });
  const style = fc.constantFrom<CsvStyle>('standard', SPREADSHEET_STYLE);

  it('has a line for each slate in force, and reads back as the same thicknesses', async () => {
    let lines = 0;
    await fc.assert(
      fc.asyncProperty(slates, style, async (plan, chosen) => {
        const [[store]] = WORLDS['in memory']();
        for (const next of plan) {
          const acted =
            typeof next === 'number'
              ? ({ kind: 'undo', device: 0, tab: 0, of: next } as const)
              : ({ kind: 'act', device: 0, tab: 0, act: next } as const);
          await doStep([[store]], acted);
        }
        const file = await exportReadingsCsv(store, JOB_ID, chosen);
        const text = (await file?.text()) ?? '';
        const { count, gauged } = await slatesIn(store);
        lines += count;
        const read = readReadingsCsv(text);
        if (!read.ok) {
          expect(count).toBe(0);
          expect(['no-rows', 'empty']).toContain(read.problems[0].code);
          return;
        }
        expect(read.rows).toHaveLength(count);
        const written = read.rows
          .filter(({ setAside }) => !setAside)
          .flatMap(({ thicknessHundredths }) => thicknessHundredths ?? []);
        expect(written.sort((one, other) => one - other)).toEqual(gauged);
      }),
      { seed: SEED, numRuns: 100 }
    );
    expect(lines).toBeGreaterThan(500);
  });
});

/** Slates as the view counts them, and the thicknesses of those not set aside, thinnest first. */
async function slatesIn(store: JournalStore): Promise<{ count: number; gauged: number[] }> {
  const job = await store.open(JOB_ID);
  const gauged: number[] = [];
  let others = 0;
  for (const [key, part] of job?.view ?? []) {
    if (!key.startsWith('pallet:') || !('piles' in part)) continue;
    const piles = Object.values(part.piles);
    for (const counts of [part.sampled, ...piles.map((pile) => pile.gauged)])
      for (const hundredths of Object.keys(counts))
        for (let slate = 0; slate < counts[hundredths]; slate++) gauged.push(Number(hundredths));
    for (const counts of [part.setAside, ...piles.map(({ tapped }) => tapped)])
      for (const number of Object.values(counts)) others += number;
  }
  return { count: gauged.length + others, gauged: gauged.sort((one, other) => one - other) };
}

function expectGapless(events: readonly StoredEvent[]): void {
  const numbers = new Map<string, number[]>();
  for (const { deviceId, deviceSeq } of events)
    numbers.set(deviceId, [...(numbers.get(deviceId) ?? []), deviceSeq]);
  for (const list of numbers.values())
    expect(list.sort((a, b) => a - b)).toEqual(list.map((_, at) => at + 1));
}
