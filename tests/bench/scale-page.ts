/** What the scale bench does inside a page: the app's own storage and engine, timed step by step. */
import { createRandom, randomNormal } from '../../src/lib/engine/index.ts';
import { planCourses } from '../../src/lib/engine/courses/index.ts';
import { naturalBreaks } from '../../src/lib/engine/grading/index.ts';
import { type NewEvent, palletIds } from '../../src/lib/journal/index.ts';
import { gradesOf, planRequestOf, stockOf } from '../../src/lib/job/index.ts';
import { mergeBins } from '../../src/lib/engine/thickness/index.ts';
import { binsOf } from '../../src/lib/job/index.ts';
import { partOf } from '../../src/lib/journal/index.ts';
import { DexieStore, readJobFile, writeJobFile } from '../../src/lib/storage/index.ts';
import { exampleEvents } from '../../src/lib/example/worked-example.ts';

const JOB = '018f0000-0000-7000-8000-00000000000a';
const random = createRandom(5);
const randomHex = (): string =>
  Array.from({ length: 16 }, () => Math.floor(random() * 16).toString(16)).join('');
const store = new DexieStore({ now: () => Date.now(), randomHex });
let file: Blob | undefined;

/** Acts stored at once while a job is filled. */
const ACTS = 1000;

/** Gauged and tapped slates on the pallets of the worked example. */
function slates(count: number, palletIds: readonly string[], gradesId: string | null): NewEvent[] {
  return Array.from({ length: count }, (_, index): NewEvent => {
    const palletId = palletIds[Math.floor(random() * palletIds.length)];
    const hundredths = Math.round(Math.min(950, Math.max(350, 620 + 95 * randomNormal(random))));
    const pile = hundredths > 660 ? 1 : hundredths > 580 ? 2 : 3;
    return index % 3 === 0
      ? { type: 'slateTapped', body: { palletId, pile, gradesId } }
      : { type: 'slateGauged', body: { palletId, points: [hundredths], gradesId, pile } };
  });
}

/** A second device, to which the job is carried over. */
async function onOtherDevice<T>(work: (other: DexieStore) => Promise<T>): Promise<T> {
  const other = new DexieStore({ now: () => Date.now(), randomHex }, 'evencourse-import');
  try {
    return await work(other);
  } finally {
    other.database.close();
  }
}

async function take(): Promise<{ added: number; already: number }> {
  const taken = file;
  if (!taken) throw new Error('nothing was exported');
  return onOtherDevice(async (other) => {
    const result = await readJobFile(other, taken);
    if (!result.ok) throw new Error(`refused: ${result.reason}`);
    return { added: result.added, already: result.already };
  });
}

const STEPS = {
  // The worked example, then slates up to the wanted number of events, as this device's own acts.
  fill: async (wanted: number) => {
    const deviceId = await store.deviceId();
    await store.merge(exampleEvents({ jobId: JOB, deviceId, endsAt: Date.now(), randomHex }));
    const start = await store.open(JOB);
    if (!start) throw new Error('no job');
    const pallets = palletIds(start.view);
    const gradesId = gradesOf(start.view)?.gradesId ?? null;
    for (let left = wanted - start.summary.events; left > 0; left -= ACTS)
      await store.append(JOB, slates(Math.min(ACTS, left), pallets, gradesId));
    return (await store.open(JOB))?.summary.events;
  },
  open: async () => {
    const opened = await store.open(JOB);
    await store.newest(JOB, 40);
    return opened?.summary.events;
  },
  'sort one more': async () => {
    const opened = await store.open(JOB);
    const [palletId] = [...(opened?.view.keys() ?? [])]
      .filter((key) => key.startsWith('pallet:'))
      .map((key) => key.slice('pallet:'.length));
    const gradesId = (opened && gradesOf(opened.view)?.gradesId) ?? null;
    const body = { palletId, points: [640], gradesId, pile: 2 };
    return (await store.append(JOB, [{ type: 'slateGauged', body }])).summary.events;
  },
  grades: async () => {
    const opened = await store.open(JOB);
    if (!opened) throw new Error('no job');
    const bins = [...opened.view.keys()].flatMap((key) =>
      key.startsWith('pallet:')
        ? Object.values(partOf(opened.view, key as `pallet:${string}`).piles).map(({ gauged }) =>
            binsOf(gauged)
          )
        : []
    );
    return naturalBreaks(mergeBins(bins), 3).ok;
  },
  plan: async () => {
    const opened = await store.open(JOB);
    if (!opened) throw new Error('no job');
    stockOf(opened.view);
    const ground = planRequestOf(opened.view);
    if (!ground.ok) throw new Error(`no plan: ${ground.missing}`);
    return planCourses(ground.request).status;
  },
  rebuild: async () => (await store.rebuild(JOB))?.summary.events,
  export: async () => {
    file = (await writeJobFile(store, JOB))?.blob;
    return file?.size;
  },
  import: take,
  'import again': take,
  'rebuild the import': () =>
    onOtherDevice(async (other) => (await other.rebuild(JOB))?.summary.events)
};

export type ScaleStep = keyof typeof STEPS;

declare global {
  interface Window {
    scaleStep: (step: ScaleStep, events: number) => Promise<{ tookMs: number; answer: string }>;
  }
}

window.scaleStep = async (step, events) => {
  const began = performance.now();
  const answer = await STEPS[step](events);
  return { tookMs: performance.now() - began, answer: JSON.stringify(answer) };
};
