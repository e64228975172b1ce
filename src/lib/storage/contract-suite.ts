import {
  type JobView,
  type NewEvent,
  type StoredEvent,
  canonicalJson,
  canonicalView,
  current,
  partOf
} from '$lib/journal';
import { readJobFile } from './job-file.ts';
import { journalSha256, writeJobFile } from './job-file-write.ts';
import type { JournalStore, StoreSurroundings } from './store.ts';

/** One device: stores opened on it share their data, as tabs of one browser do. */
export interface ContractDevice {
  open(surroundings?: Partial<StoreSurroundings>): JournalStore;
}

/** One promise of the contract. Knows no test runner, so it runs in Node and on a page alike. */
export interface ContractCase {
  readonly title: string;
  /** Resolves when the promise is kept, throws when it is not. */
  run(newDevice: () => ContractDevice): Promise<void>;
}

const JOB = '018f0000-0000-7000-8000-00000000000a';
const opened: NewEvent = { type: 'jobOpened', body: { name: 'Barn' } };
const gauged = (hundredths: number, palletId = 'p1'): NewEvent => ({
  type: 'slateGauged',
  body: { palletId, points: [hundredths], gradesId: null, pile: null }
});
const undo = (voids: string): NewEvent => ({ type: 'entryVoided', body: { voids } });

/** What every store promises; the numbers are those of the journal's SPEC. */
export const CONTRACT: readonly ContractCase[] = [
  {
    title: 'J1: what was acknowledged is there for another tab, to the byte',
    async run(newDevice) {
      const device = newDevice();
      const { view, events } = await device.open().append(JOB, [opened, gauged(640)], 'Wren');
      const other = device.open();
      same(bytesOf((await other.open(JOB))?.view), bytesOf(view), 'the view');
      same(canonicalJson(await all(other)), canonicalJson(events), 'the events');
      equal(events[1].sorter, 'Wren', 'the sorter');
    }
  },
  {
    title: 'J2: an act that cannot be read back is refused and leaves no trace',
    async run(newDevice) {
      const store = newDevice().open();
      await store.append(JOB, [opened]);
      const before = await pictureOf(store);
      await rejects(() => store.append(JOB, [gauged(640), gauged(9999)]), 'a 99.99 mm reading');
      await rejects(() => store.append(JOB, [gauged(Number.NaN)]), 'NaN');
      await rejects(() => store.append(JOB, []), 'no act');
      await rejects(() => store.append(JOB, [gauged(640)], '__proto__'), 'a hostile nickname');
      same(await pictureOf(store), before, 'the job');
      const { events } = await store.append(JOB, [gauged(640)]);
      equal(events[0].deviceSeq, 2, 'the number after a refusal');
    }
  },
  {
    title: 'J3: two tabs at once number their events without a gap, each number once',
    async run(newDevice) {
      const device = newDevice();
      const tabs = [device.open(), device.open()];
      await Promise.all(
        Array.from({ length: 40 }, (_, act) => tabs[act % 2].append(JOB, [gauged(500 + act)]))
      );
      const numbers = (await all(tabs[0])).map(({ deviceSeq }) => deviceSeq).sort((a, b) => a - b);
      same(
        canonicalJson(numbers),
        canonicalJson(Array.from({ length: 40 }, (_, at) => at + 1)),
        'the numbers'
      );
      equal(await tabs[0].deviceId(), await tabs[1].deviceId(), 'the device');
    }
  },
  {
    title: 'J3: numbers begin at 1 in each job',
    async run(newDevice) {
      const store = newDevice().open();
      await store.append(JOB, [opened, gauged(500)]);
      const other = JOB.replace(/a$/, 'b');
      equal((await store.append(other, [opened])).events[0].deviceSeq, 1, 'the second job');
      equal((await store.append(JOB, [gauged(510)])).events[0].deviceSeq, 3, 'the first job');
      equal((await store.jobs()).length, 2, 'the jobs');
    }
  },
  {
    title: 'J5: ids rise though the clock is set back, in whichever tab',
    async run(newDevice) {
      const device = newDevice();
      const late = device.open({ now: () => 1_900_000_000_000 });
      const early = device.open({ now: () => 1_700_000_000_000 });
      const made: string[] = [];
      for (const store of [early, late, early, early, late, device.open({ now: () => 1 })])
        made.push((await store.append(JOB, [gauged(600), gauged(610)])).events[1].id);
      same(made.join(), [...made].sort().join(), 'the order of ids');
      equal((await late.newest(JOB, 1))[0].id, made.at(-1), 'the newest');
    }
  },
  {
    title: 'J7: rebuilding gives the same bytes',
    async run(newDevice) {
      const store = newDevice().open();
      await aDayOfWork(store);
      const before = await pictureOf(store);
      await store.rebuild(JOB);
      same(await pictureOf(store), before, 'the job');
      equal(await store.rebuild(JOB.replace(/a$/, 'b')), undefined, 'no such job');
    }
  },
  {
    title: 'J8: an undo takes out, an undo of the undo brings back',
    async run(newDevice) {
      const store = newDevice().open();
      await store.append(JOB, [opened]);
      const countOf = (view: JobView) => partOf(view, 'pallet:p1').piles['|0']?.gauged['640'];
      const { events } = await store.append(JOB, [gauged(640)]);
      const out = await store.append(JOB, [undo(events[0].id)]);
      equal(countOf(out.view), undefined, 'after the undo');
      const back = await store.append(JOB, [undo(out.events[0].id)]);
      equal(countOf(back.view), 1, 'after the undo of the undo');
      const again = await store.append(JOB, [undo(back.events[0].id)]);
      equal(countOf(again.view), undefined, 'after the third');
      const before = await pictureOf(store);
      await store.rebuild(JOB);
      same(await pictureOf(store), before, 'the rebuilt job');
    }
  },
  {
    title: 'J10: events of a later release are kept, skipped, reported and given out unchanged',
    async run(newDevice) {
      const [store, other] = [newDevice().open(), newDevice().open()];
      await aDayOfWork(store);
      const [{ deviceId, id }] = await store.newest(JOB, 1);
      const count = (await all(store)).length;
      const future: StoredEvent = {
        id: id.replace(/^......../, 'd0000000'),
        jobId: JOB,
        deviceId,
        deviceSeq: count + 1,
        at: '2031-01-01T00:00:00.000Z',
        sorter: '',
        type: 'slateWashed',
        v: 7,
        body: { palletId: 'p1', how: { soap: ['green', null] } }
      };
      const merged = await store.merge([future]);
      equal(merged.ok && merged.unknown, 1, 'the report');
      await give(store, other);
      const kept = (await all(other)).find(({ type }) => type === 'slateWashed');
      same(canonicalJson(kept), canonicalJson(future), 'the event on the other device');
    }
  },
  {
    title: 'J14: a job file gives another device the same view; twice changes nothing',
    async run(newDevice) {
      const [store, other] = [newDevice().open(), newDevice().open()];
      await aDayOfWork(store);
      const first = await give(store, other);
      equal(first.ok && first.added, (await all(store)).length, 'the events added');
      same(bytesOf((await other.open(JOB))?.view), bytesOf((await store.open(JOB))?.view), 'views');
      const before = await pictureOf(other);
      const second = await give(store, other);
      equal(second.ok && second.added, 0, 'the second time');
      same(await pictureOf(other), before, 'the job');
      const hashes = [await journalSha256(store, JOB), await journalSha256(other, JOB)];
      equal(hashes[0].sha256, hashes[1].sha256, 'the journal hash');
    }
  },
  {
    title: 'J14: two devices that work on and exchange files come to the same view',
    async run(newDevice) {
      const [here, there] = [newDevice().open(), newDevice().open()];
      await here.append(JOB, [opened]);
      await give(here, there);
      const { events } = await here.append(JOB, [gauged(600)]);
      await there.append(JOB, [gauged(700), gauged(710, 'p2')]);
      await give(here, there);
      await there.append(JOB, [undo(events[0].id)]);
      await here.append(JOB, [gauged(610)]);
      await give(there, here);
      await give(here, there);
      same(bytesOf((await here.open(JOB))?.view), bytesOf((await there.open(JOB))?.view), 'views');
      const before = await pictureOf(here);
      await here.rebuild(JOB);
      same(await pictureOf(here), before, 'the rebuilt job');
    }
  },
  {
    title: 'J15: a merge with a gap, a conflict, two jobs or a circle is refused whole',
    async run(newDevice) {
      const store = newDevice().open();
      await aDayOfWork(store);
      const events = await all(store);
      const last = events[events.length - 1];
      const next = (changes: Partial<StoredEvent>): StoredEvent => ({
        ...last,
        id: last.id.replace(/^......../, 'd0000000'),
        deviceSeq: events.length + 1,
        ...changes
      });
      const twin = '-7000-8000-000000000001';
      const circle = [`d0000000-0001${twin}`, `d0000000-0002${twin}`];
      const before = await pictureOf(store);
      const cases: [string, StoredEvent[]][] = [
        ['gap', [next({ deviceSeq: events.length + 2 })]],
        ['conflict', [next({ deviceSeq: 1 })]],
        ['conflict', [{ ...last, at: '2020-01-01T00:00:00.000Z' }]],
        ['mixed-jobs', [last, next({ jobId: JOB.replace(/a$/, 'b') })]],
        ['broken-line', [next({ type: 'slateGauged', body: { palletId: 'p1' } })]],
        [
          'undo-circle',
          circle.map((id, at) =>
            next({
              id,
              deviceSeq: events.length + 1 + at,
              type: 'entryVoided',
              body: { voids: circle[1 - at] }
            })
          )
        ],
        ['not-a-job-file', []]
      ];
      for (const [reason, wrong] of cases) {
        const result = await store.merge(wrong);
        equal(result.ok ? 'added' : result.reason, reason, `a merge with a ${reason}`);
        same(await pictureOf(store), before, `the job after a ${reason}`);
      }
    }
  },
  {
    title: 'J16: a tab sees what another did, is told of it, and writes on',
    async run(newDevice) {
      const device = newDevice();
      const [one, two] = [device.open(), device.open()];
      await one.append(JOB, [opened]);
      await one.open(JOB);
      await two.open(JOB);
      let calls = 0;
      const stop = two.watch(JOB, () => calls++);
      await until(async () => {
        await one.append(JOB, [gauged(640)]);
        return calls > 0;
      }, 'to be told');
      const { view } = await two.append(JOB, [gauged(640)]);
      stop();
      const told = calls;
      const events = (await all(two)).length;
      equal(partOf(view, 'pallet:p1').piles['|0'].gauged['640'], events - 1, 'the slates');
      await one.append(JOB, [gauged(640)]);
      await pause(50);
      equal(calls, told, 'calls after stopping');
    }
  },
  {
    title: 'J16: a tab is told of what another did between opening and watching',
    async run(newDevice) {
      const device = newDevice();
      const [one, two] = [device.open(), device.open()];
      await one.append(JOB, [opened]);
      const before = await two.open(JOB);
      await one.append(JOB, [gauged(640)]);
      let calls = 0;
      const stop = two.watch(JOB, () => calls++, before?.summary.events);
      await until(async () => calls > 0, 'to be told');
      stop();
    }
  },
  {
    title: 'J16: a merge while another tab appends loses neither',
    async run(newDevice) {
      const [device, far] = [newDevice(), newDevice().open()];
      const tabs = [device.open(), device.open()];
      await tabs[0].append(JOB, [opened]);
      await give(tabs[0], far);
      await far.append(
        JOB,
        Array.from({ length: 300 }, (_, at) => gauged(500 + at))
      );
      const file = await writeJobFile(far, JOB);
      await Promise.all([
        file && readJobFile(tabs[0], file.blob),
        ...Array.from({ length: 20 }, (_, at) => tabs[1].append(JOB, [gauged(900 + at)]))
      ]);
      equal((await all(tabs[1])).length, 321, 'the events');
      const before = await pictureOf(tabs[1]);
      await tabs[0].rebuild(JOB);
      same(await pictureOf(tabs[1]), before, 'the rebuilt job');
    }
  },
  {
    title: 'J20: what is not in a backup is counted, and an older backup takes nothing back',
    async run(newDevice) {
      const store = newDevice().open();
      await aDayOfWork(store);
      const { events } = summaryIn(await store.jobs());
      equal(summaryIn(await store.jobs()).unexported, events, 'before any backup');
      await store.markExported(JOB, events, '2026-03-02T17:00:00.000Z');
      await store.append(JOB, [gauged(640)]);
      await store.markExported(JOB, 2, '2026-03-02T18:00:00.000Z');
      equal(summaryIn(await store.jobs()).unexported, 1, 'after one more act');
      equal(summaryIn(await store.jobs()).exportedAt, '2026-03-02T17:00:00.000Z', 'the backup');
      await store.rebuild(JOB);
      equal(summaryIn(await store.jobs()).unexported, 1, 'after a rebuild');
    }
  },
  {
    title: 'J22: a photo is kept with its act, travels with the file, and is held to its hash',
    async run(newDevice) {
      const [store, other] = [newDevice().open(), newDevice().open()];
      await store.append(JOB, [opened]);
      const bytes = new Uint8Array([255, 216, 0, 1, 2, 3]).buffer;
      const photo = { palletId: null, caption: 'corner', type: 'image/jpeg', bytes } as const;
      const { view } = await store.addPhoto(JOB, photo);
      const body = current(partOf(view, 'job').photos);
      equal(body?.bytes, 6, 'the size');
      await give(store, other);
      for (const one of [store, other]) {
        const kept = await one.photo(body?.photoId ?? '');
        same(
          String(kept && new Uint8Array(kept.bytes)),
          String(new Uint8Array(bytes)),
          'the photo'
        );
        equal(kept?.type, 'image/jpeg', 'its type');
      }
      const large = new ArrayBuffer(9 * 1024 * 1024);
      await rejects(() => store.addPhoto(JOB, { ...photo, bytes: large }), 'a huge photo');
      equal(await store.photo('none'), undefined, 'no such photo');
    }
  },
  {
    title: 'J23: preferences, the probe and the counts of the health page',
    async run(newDevice) {
      const device = newDevice();
      const store = device.open();
      equal(await store.readDevice('nickname'), undefined, 'before it is set');
      await store.writeDevice('nickname', 'Wren');
      await store.writeDevice('deviceId', 'not the id');
      equal(await device.open().readDevice('nickname'), 'Wren', 'in another tab');
      equal((await store.deviceId()).length, 36, 'the device id');
      equal((await store.probe()).ok, true, 'the probe');
      await aDayOfWork(store);
      const health = await store.health({ usage: 10, quota: 100 });
      const events = (await all(store)).length;
      const { jobs, staleViews, unexported, usageBytes, quotaBytes } = health;
      same(
        canonicalJson([health.events, jobs, staleViews, unexported, usageBytes, quotaBytes]),
        canonicalJson([events, 1, 0, events, 10, 100]),
        'the counts'
      );
    }
  },
  {
    title: 'J1: the newest come first, and there is nothing of a job that is not there',
    async run(newDevice) {
      const store = newDevice().open();
      await aDayOfWork(store);
      const events = await all(store);
      same(
        canonicalJson(await store.newest(JOB, 3)),
        canonicalJson(events.slice(-3).reverse()),
        'the newest'
      );
      const nobody = JOB.replace(/a$/, 'b');
      equal(await store.open(nobody), undefined, 'no job');
      equal((await store.newest(nobody, 5)).length, 0, 'no events');
      equal(await writeJobFile(store, nobody), undefined, 'no file');
    }
  }
];

/** Acts of many kinds, some undone. */
async function aDayOfWork(store: JournalStore): Promise<void> {
  await store.append(JOB, [opened]);
  await store.append(JOB, [
    { type: 'palletAdded', body: { palletId: 'p1', label: 'A', slates: 700 } },
    { type: 'palletAdded', body: { palletId: 'p2', label: 'B', slates: 700 } }
  ]);
  for (let slate = 0; slate < 12; slate++) {
    const { events } = await store.append(JOB, [gauged(500 + slate * 7, 'p1')], 'Wren');
    if (slate % 4 === 0) await store.append(JOB, [undo(events[0].id)], 'Wren');
  }
  const grades = await store.append(JOB, [
    { type: 'gradesSet', body: { method: 'byHand', thresholdsMm: [5.4, 5.2] } }
  ]);
  const gradesId = grades.events[0].id;
  await store.append(
    JOB,
    [
      { type: 'slateTapped', body: { palletId: 'p2', pile: 1, gradesId } },
      {
        type: 'slateChecked',
        body: { palletId: 'p2', of: 'tap', pile: 1, gradesId, points: [560] }
      }
    ],
    'Finch'
  );
  const { events } = await store.append(JOB, [
    { type: 'palletAdded', body: { palletId: 'p3', label: 'mistake', slates: 1 } }
  ]);
  await store.append(JOB, [undo(events[0].id)]);
}

async function give(from: JournalStore, to: JournalStore) {
  const file = await writeJobFile(from, JOB);
  if (!file) throw new Error('no job to give');
  return readJobFile(to, file.blob);
}

async function all(store: JournalStore): Promise<StoredEvent[]> {
  const events: StoredEvent[] = [];
  for await (const batch of store.events(JOB)) events.push(...batch);
  return events;
}

/** All of a job that anyone can see, as text. */
async function pictureOf(store: JournalStore): Promise<string> {
  const job = await store.open(JOB);
  return `${bytesOf(job?.view)}${canonicalJson([job?.summary ?? null, await all(store)])}`;
}

function bytesOf(view: JobView | undefined): string {
  return view ? canonicalView(view) : 'no view';
}

function summaryIn<T extends { jobId: string }>(jobs: readonly T[]): T {
  const summary = jobs.find(({ jobId }) => jobId === JOB);
  if (!summary) throw new Error('the job is not in the list');
  return summary;
}

function equal(found: unknown, wanted: unknown, what: string): void {
  if (found !== wanted) throw new Error(`${what}: found ${String(found)}, not ${String(wanted)}`);
}

/** Like {@link equal} for long texts, of which it shows where they part. */
function same(found: string, wanted: string, what: string): void {
  if (found === wanted) return;
  let at = 0;
  while (found[at] === wanted[at]) at++;
  const near = (text: string) => text.slice(Math.max(0, at - 40), at + 60);
  throw new Error(`${what}: found …${near(found)}…, not …${near(wanted)}…`);
}

async function rejects(work: () => Promise<unknown>, what: string): Promise<void> {
  let isRefused = false;
  await work().catch(() => {
    isRefused = true;
  });
  if (!isRefused) throw new Error(`${what} was taken`);
}

function pause(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}

/** Tries until it comes true, for at most five seconds. */
async function until(isTrue: () => Promise<boolean>, what: string): Promise<void> {
  for (let tries = 0; tries < 100; tries++) {
    if (await isTrue()) return;
    await pause(50);
  }
  throw new Error(`waited in vain ${what}`);
}
