/** What the scale bench does inside a page: the app's own storage and engine, timed step by step. */
import { createRandom, randomNormal } from '../../src/lib/engine/index.ts';
import { planCourses } from '../../src/lib/engine/courses/index.ts';
import { naturalBreaks } from '../../src/lib/engine/grading/index.ts';
import {
  type StoredEvent,
  createIdSource,
  gradesOf,
  planRequestOf,
  stockOf
} from '../../src/lib/journal/index.ts';
import { mergeBins } from '../../src/lib/engine/thickness/index.ts';
import { binsOf, partOf } from '../../src/lib/journal/index.ts';
import { DexieStore, readJobFile, writeJobFile } from '../../src/lib/storage/index.ts';
import { exampleEvents } from '../../seeds/worked-example.ts';

const JOB = '018f0000-0000-7000-8000-00000000000a';
const random = createRandom(5);
const randomHex = (): string =>
  Array.from({ length: 16 }, () => Math.floor(random() * 16).toString(16)).join('');
const store = new DexieStore({ now: () => Date.now(), randomHex });
let file: Blob | undefined;

/** The worked example, then gauged and tapped slates up to the wanted number of events. */
function* manyEvents(wanted: number, deviceId: string): Generator<StoredEvent> {
  const start = exampleEvents({ jobId: JOB, deviceId, endsAt: Date.now(), randomHex });
  yield* start;
  const last = start[start.length - 1];
  const gradesId = start.findLast(({ type }) => type === 'gradesSet')?.id ?? null;
  const pallets = start.flatMap(({ type, body }) =>
    type === 'palletAdded' ? [String(body.palletId)] : []
  );
  const lastId = start.reduce((id, event) => (event.id > id ? event.id : id), '');
  const nextId = createIdSource(() => Date.now(), randomHex, lastId);
  for (let index = start.length; index < wanted; index++) {
    const palletId = pallets[Math.floor(random() * pallets.length)];
    const hundredths = Math.round(Math.min(950, Math.max(350, 620 + 95 * randomNormal(random))));
    const pile = hundredths > 660 ? 1 : hundredths > 580 ? 2 : 3;
    const isTapped = index % 3 === 0;
    yield {
      ...last,
      id: nextId(),
      deviceSeq: index + 1,
      type: isTapped ? 'slateTapped' : 'slateGauged',
      v: 1,
      body: isTapped
        ? { palletId, pile, gradesId }
        : { palletId, points: [hundredths], gradesId, pile }
    };
  }
}

const STEPS = {
  fill: async (wanted: number) => store.merge(manyEvents(wanted, await store.deviceId())),
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
  import: async () => {
    if (!file) throw new Error('nothing was exported');
    const other = new DexieStore({ now: () => Date.now(), randomHex }, 'evencourse-import');
    const result = await readJobFile(other, file);
    if (!result.ok) throw new Error(`refused: ${result.reason}`);
    other.database.close();
    return result.added;
  }
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
