import { type StoredEvent, partOf } from '$lib/journal';
import {
  type ContractCase,
  type ContractDevice,
  JOB,
  all,
  aDayOfWork,
  bytesOf,
  equal,
  gauged,
  give,
  jobIn,
  same
} from './kit.ts';
import { checkJobFile, readJobFile } from '../../../src/lib/storage/job-file.ts';
import { rescueJobFile } from '../../../src/lib/storage/job-file-rescue.ts';
import { writeJobFile } from '../../../src/lib/storage/job-file-write.ts';

/** What a store promises where rows of it are lost or damaged. */
export const DAMAGE: readonly ContractCase[] = [
  {
    title:
      'J27: around lost and damaged rows all that can be read is in the file, with what is not',
    async run(newDevice) {
      const { device, store, events } = await aDamagedJob(newDevice);
      const deviceId = await store.deviceId();
      const file = await writeJobFile(store, JOB);
      equal(file?.events, events.length - 4, 'the entries in the file');
      same(
        JSON.stringify(file?.missing),
        JSON.stringify([
          { device: deviceId, from: 4, to: 5, reason: 'gone' },
          { device: deviceId, from: 6, to: 6, reason: 'damaged' },
          { device: deviceId, from: events.length, to: events.length, reason: 'gone' }
        ]),
        'what is missing'
      );
      const checked = await checkJobFile(file?.blob ?? '');
      equal(checked.ok, true, 'the file passes its own check');
      const rebuilt = await device.open().rebuild(JOB);
      same(
        JSON.stringify(rebuilt?.missing),
        JSON.stringify(file?.missing),
        'Rebuild says the same'
      );
    }
  },
  {
    title: 'J27: such a file is refused by every job it could be merged with, and nothing changes',
    async run(newDevice) {
      const { store, whole } = await aDamagedJob(newDevice);
      const file = await writeJobFile(store, JOB);
      const other = newDevice().open();
      await readJobFile(other, whole);
      for (const target of [store, other, newDevice().open()]) {
        const before = await jobIn(target);
        const refused = await readJobFile(target, file?.blob ?? '');
        equal(refused.ok ? 'added' : refused.reason, 'incomplete', 'the file');
        equal(!refused.ok && refused.missing?.length, 3, 'what is missing, in the answer');
        same(await jobIn(target), before, 'the job');
      }
    }
  },
  {
    title: 'J27: it can be taken in as a job of its own, once, with a note of whence and what',
    async run(newDevice) {
      const { store, events } = await aDamagedJob(newDevice);
      const file = await writeJobFile(store, JOB);
      const [one, other] = [store, newDevice().open()];
      for (const target of [one, other]) {
        const taken = await rescueJobFile(target, file?.blob ?? '');
        equal(taken.ok && taken.added, events.length - 4 + 2, 'the entries taken in');
        const again = await rescueJobFile(target, file?.blob ?? '');
        equal(again.ok && again.added, 0, 'the entries taken in again');
      }
      const made = (await other.jobs())[0];
      equal(made.name, 'Barn (2)', 'its name');
      const job = await other.open(made.jobId);
      const [note] = job ? partOf(job.view, 'job').rescues : [];
      equal(note.value.jobId, JOB, 'whence');
      equal(note.value.missing.length, 3, 'what is missing');
      same(bytesOf((await one.open(made.jobId))?.view), bytesOf(job?.view), 'on both devices');
      const numbers = (await all(other, made.jobId)).map(({ deviceSeq }) => deviceSeq);
      same(numbers.join(), numbers.map((_, at) => at + 1).join(), 'the numbers');
      await other.append(made.jobId, [gauged(800)]);
      const whole = await writeJobFile(other, made.jobId);
      equal(whole?.missing.length, 0, 'what its own file lacks');
      equal((await readJobFile(one, whole?.blob ?? '')).ok, true, 'its own file');
    }
  },
  {
    title: 'J28: a view or a row of the job that is lost is worked out again from the events',
    async run(newDevice) {
      const device = newDevice();
      const store = device.open();
      await aDayOfWork(store);
      const before = await jobIn(store);
      for (const what of ['part', 'row'] as const) {
        await device.damage.lose(what, JOB);
        same(await jobIn(device.open()), before, `the job without its ${what}, opened`);
      }
      await device.damage.lose('row', JOB);
      const page = device.open();
      equal((await page.jobs()).length, 0, 'the jobs before the repair');
      same((await page.repair()).join(), JOB, 'what was repaired');
      equal((await page.jobs())[0].name, 'Barn', 'the list after it');
      equal((await page.repair()).length, 0, 'what a second repair finds');
      await device.damage.lose('row', JOB);
      const { events } = await store.append(JOB, [gauged(640)]);
      equal(events[0].deviceSeq, (await all(store)).length, 'the number of the next entry');
    }
  },
  {
    title: 'J29: a rebuild never lowers a last number, so that none is given twice',
    async run(newDevice) {
      const { store, events } = await aDamagedJob(newDevice);
      await store.rebuild(JOB);
      const appended = await store.append(JOB, [gauged(640)]);
      equal(appended.events[0].deviceSeq, events.length + 1, 'the next number');
    }
  },
  {
    title: 'J30: an earlier backup, or another phone, brings back what was lost and damaged',
    async run(newDevice) {
      for (const isRebuilt of [false, true]) {
        const { device, store, whole, before } = await aDamagedJob(newDevice);
        if (isRebuilt) await store.rebuild(JOB);
        const healed = await readJobFile(device.open(), whole);
        equal(healed.ok && healed.added, 4, 'the entries that came back');
        same(await jobIn(device.open()), before, 'the job');
        equal((await writeJobFile(store, JOB))?.missing.length, 0, 'what its file lacks');
        equal((await device.open().rebuild(JOB))?.missing.length, 0, 'what Rebuild misses');
        same(await jobIn(device.open()), before, 'the rebuilt job');
        const again = await readJobFile(store, whole);
        equal(again.ok && again.added, 0, 'the entries added a second time');
        equal((await give(store, newDevice().open())).ok, true, 'its file on another device');
      }
    }
  }
];

/** A day's work of which four rows are lost or damaged, the last one among them. */
async function aDamagedJob(newDevice: () => ContractDevice) {
  const device = newDevice();
  const store = device.open();
  await aDayOfWork(store);
  const before = await jobIn(store);
  const events: StoredEvent[] = await all(store);
  const whole = (await writeJobFile(store, JOB))?.blob ?? '';
  await device.damage.loseEvents(JOB, [events[3].id, events[4].id, events[events.length - 1].id]);
  await device.damage.spoilEvent(JOB, events[5].id);
  return { device, store, events, whole, before };
}
