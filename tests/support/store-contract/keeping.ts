import { type JobView, canonicalJson, partOf } from '$lib/journal';
import {
  type ContractCase,
  JOB,
  opened,
  gauged,
  undo,
  aDayOfWork,
  all,
  pictureOf,
  bytesOf,
  give,
  summaryIn,
  equal,
  same,
  rejects
} from './kit.ts';
import { readJobFile } from '../../../src/lib/storage/job-file.ts';
import { writeJobFile } from '../../../src/lib/storage/job-file-write.ts';

/** What a store promises of keeping. */
export const KEEPING: readonly ContractCase[] = [
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
    title: 'J24: data cleared under an open store stop it, and its backup is taken in afterwards',
    async run(newDevice) {
      const device = newDevice();
      const store = device.open();
      await aDayOfWork(store);
      const file = await writeJobFile(store, JOB);
      if (!file) throw new Error('no file');
      await device.clear();
      await rejects(() => store.append(JOB, [gauged(640)]), 'an act on a job that is gone');
      const fresh = device.open();
      equal(await fresh.open(JOB), undefined, 'the job');
      await fresh.deviceId();
      await rejects(() => store.append(JOB, [gauged(640)]), 'an act of the page before');
      await rejects(() => store.append(JOB, [opened]), 'an opening by the page before');
      equal((await readJobFile(fresh, file.blob)).ok, true, 'the backup');
      const before = await pictureOf(fresh);
      await rejects(() => store.append(JOB, [gauged(640)]), 'an act upon the restored job');
      await rejects(() => store.merge([]), 'a merge by the page before');
      await rejects(() => store.markExported(JOB, {}, '2026-01-01'), 'its note of a backup');
      same(await pictureOf(fresh), before, 'the job');
      const { events } = await fresh.append(JOB, [gauged(640)]);
      equal(events[0].deviceSeq, 1, 'the number of the first act of the new device');
      equal((await readJobFile(fresh, file.blob)).ok, true, 'the backup once more');
    }
  },
  {
    title: 'J24: a job that went missing alone is not written on without its opening',
    async run(newDevice) {
      const device = newDevice();
      const store = device.open();
      await store.append(JOB, [opened, gauged(640)]);
      await device.clear();
      const other = device.open();
      await other.append(JOB.replace(/a$/, 'b'), [opened]);
      await rejects(() => store.append(JOB, [gauged(650)]), 'an act without the opening');
      equal((await other.jobs()).length, 1, 'the jobs');
    }
  },
  {
    title: 'J20: what is not in a backup is counted, and an older backup takes nothing back',
    async run(newDevice) {
      const store = newDevice().open();
      await aDayOfWork(store);
      const { events } = summaryIn(await store.jobs());
      equal(summaryIn(await store.jobs()).unexported, events, 'before any backup');
      const deviceId = await store.deviceId();
      await store.markExported(JOB, { [deviceId]: events }, '2026-03-02T17:00:00.000Z');
      await store.append(JOB, [gauged(640)]);
      await store.markExported(JOB, { [deviceId]: 2 }, '2026-03-02T18:00:00.000Z');
      equal(summaryIn(await store.jobs()).unexported, 1, 'after one more act');
      equal(summaryIn(await store.jobs()).exportedAt, '2026-03-02T17:00:00.000Z', 'the backup');
      await store.rebuild(JOB);
      equal(summaryIn(await store.jobs()).unexported, 1, 'after a rebuild');
    }
  },
  {
    title: 'J20: what a job file brought is backed up, what it did not hold is not',
    async run(newDevice) {
      const [store, far] = [newDevice().open(), newDevice().open()];
      const left = async () => summaryIn(await store.jobs()).unexported;
      await far.append(JOB, [opened, gauged(600), gauged(610)]);
      const early = await writeJobFile(far, JOB);
      await give(far, store);
      equal(await left(), 0, 'what was just restored');
      equal(summaryIn(await store.jobs()).exportedAt === null, false, 'that there is a backup');
      await store.append(JOB, [gauged(700), gauged(710)]);
      equal(await left(), 2, 'own acts on top');
      await far.append(JOB, [gauged(620), gauged(630), gauged(640), gauged(650)]);
      await give(far, store);
      equal(await left(), 2, 'after a larger file that has none of the own acts');
      const before = await pictureOf(store);
      await give(far, store);
      if (early) await readJobFile(store, early.blob);
      same(await pictureOf(store), before, 'after the same file and an older one');
      await store.rebuild(JOB);
      same(await pictureOf(store), before, 'the rebuilt job');
      await give(store, far);
      await far.append(JOB, [gauged(660)]);
      await give(far, store);
      equal(await left(), 0, 'once a file from elsewhere holds the own acts');
    }
  },
  {
    title: 'J20: what the app made itself, and a photo that the file lacks, are not backed up',
    async run(newDevice) {
      const [store, made, bare] = [0, 1, 2].map(() => newDevice().open());
      const left = async (of: typeof store) => summaryIn(await of.jobs()).unexported;
      await store.append(JOB, [opened]);
      const bytes = new Uint8Array([255, 216, 0, 1]).buffer;
      await store.addPhoto(JOB, { palletId: null, caption: '', type: 'image/jpeg', bytes });
      const events = await all(store);
      await made.merge(events);
      equal(await left(made), 2, 'of events that come from no file');
      await bare.merge(events, [], 'job-file');
      equal(await left(bare), 2, 'of a file without its photo');
      await give(store, bare);
      equal(await left(bare), 0, 'of the whole file');
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
      const probes = await Promise.all([store.probe(), device.open().probe(), store.probe()]);
      equal(probes.filter(({ ok }) => ok).length, 3, 'three probes at once');
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
