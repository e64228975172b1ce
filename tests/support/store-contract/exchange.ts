import { type StoredEvent, canonicalJson, current, partOf } from '$lib/journal';
import {
  type ContractCase,
  JOB,
  opened,
  gauged,
  undo,
  aDayOfWork,
  give,
  all,
  pictureOf,
  jobIn,
  bytesOf,
  equal,
  same,
  rejects,
  pause,
  until
} from './kit.ts';
import { readJobFile } from '../../../src/lib/storage/job-file.ts';
import { journalSha256, writeJobFile } from '../../../src/lib/storage/job-file-write.ts';

/** What a store promises of tabs, files and other devices. */
export const EXCHANGE: readonly ContractCase[] = [
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
      same(
        canonicalJson(await other.numbers(JOB)),
        canonicalJson({ [await store.deviceId()]: (await all(store)).length }),
        'the numbers'
      );
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
    title: 'J7, J14: what came in by the hundred and what was done here are one run, in order',
    async run(newDevice) {
      let time = 1_770_000_000_000;
      const clock = { now: () => (time += 7) };
      const [store, far, third] = [0, 1, 2].map(() => newDevice().open(clock));
      const many = (count: number) => Array.from({ length: count }, (_, at) => gauged(500 + at));
      const [, early] = (await far.append(JOB, [opened, ...many(1200)])).events;
      await give(far, store);
      // From here on the acts of the two devices lie between each other.
      for (let turn = 0; turn < 4; turn++) {
        await store.append(JOB, many(300));
        await far.append(JOB, many(1100));
      }
      await give(far, store);
      await give(far, third);
      await store.append(JOB, [undo(early.id)]);
      const events = await all(store);
      equal(events.length, 1201 + 4 * 1400 + 1, 'the events');
      const ids = events.map(({ id }) => id);
      same(ids.join(), [...new Set(ids)].sort().join(), 'the order of ids');
      for (const limit of [1, 40, 1300])
        same(
          canonicalJson(await store.newest(JOB, limit)),
          canonicalJson(events.slice(-limit).reverse()),
          `the newest ${limit}`
        );
      equal((await store.health()).events, events.length, 'the events counted');
      const before = await pictureOf(store);
      await store.rebuild(JOB);
      same(await pictureOf(store), before, 'the rebuilt job');
      await give(store, third);
      same(await jobIn(third), await jobIn(store), 'the job where bundles lie between bundles');
      const again = await give(store, far);
      equal(again.ok && again.added, 1201, 'what the other device had not');
      same(bytesOf((await far.open(JOB))?.view), bytesOf((await store.open(JOB))?.view), 'views');
      equal((await give(far, store)).ok, true, 'the way back');
      same(await jobIn(store), await jobIn(third), 'the job after the way back');
    }
  },
  {
    title: 'J15: a file that changes while it is taken in is refused whole',
    async run(newDevice) {
      const [store, far] = [newDevice().open(), newDevice().open()];
      await aDayOfWork(store);
      await give(store, far);
      await far.append(JOB, [gauged(700), gauged(710)]);
      const text = (await (await writeJobFile(far, JOB))?.blob.text()) ?? '';
      const before = await pictureOf(store);
      for (const [what, changed] of [
        ['another reading', text.replace('[710]', '[711]')],
        ['a line that is no JSON', text.replace('[710]', '[710')]
      ]) {
        let reads = 0;
        const file = {
          size: text.length,
          slice: (from: number, to: number) =>
            new Blob([reads++ === 0 ? text : changed]).slice(from, to)
        };
        const result = await readJobFile(store, file as Blob);
        equal(result.ok ? 'added' : result.reason, 'wrong-hash', what);
        same(await pictureOf(store), before, `the job after ${what}`);
      }
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
  }
];
