import { type JobView, partOf } from '$lib/journal';
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
  pictureOf,
  same,
  undo
} from './kit.ts';
import { readJobFile } from '../../../src/lib/storage/job-file.ts';
import { writeJobFile } from '../../../src/lib/storage/job-file-write.ts';
import type { JournalStore } from '../../../src/lib/storage/store.ts';

/** What a store promises of phones that were copied or put back. */
export const COPIES: readonly ContractCase[] = [
  {
    title: 'J25: the file of a copied phone is refused and named, and nothing changes',
    async run(newDevice) {
      const { phone, copy, deviceId } = await copiedPhones(newDevice);
      const before = await pictureOf(copy);
      const refused = await give(phone, copy);
      equal(refused.ok ? 'added' : refused.reason, 'conflict', 'the file');
      equal(!refused.ok && refused.copiedDevice, deviceId, 'the device that was copied');
      same(await pictureOf(copy), before, 'the job');
      equal(await copy.deviceId(), deviceId, 'the device');
    }
  },
  {
    title: 'J25: both are kept, counted once, under an id of their own, with a note of whence',
    async run(newDevice) {
      const { phone, copy, deviceId } = await copiedPhones(newDevice);
      const kept = await give(phone, copy, 'keep-both');
      equal(kept.ok && kept.added, 4, 'the events added');
      equal(kept.ok && kept.branched, 4, 'the events under a new id');
      const view = (await copy.open(JOB))?.view as JobView;
      same(slatesOf(view), '600,610,620,700,710', 'the slates');
      const [note] = partOf(view, 'job').copies;
      const [branch] = note.value.branches;
      equal(branch.deviceId, deviceId, 'whence');
      equal(branch.events, 4, 'the events of the note');
      const branched = (await all(copy)).filter((event) => event.deviceId === branch.keptAs);
      same(branched.map(({ deviceSeq }) => deviceSeq).join(), '1,2,3,4', 'the numbers');
      await expectOneRun(copy);
      const before = await pictureOf(copy);
      equal((await give(phone, copy, 'keep-both')).ok, true, 'a second time');
      equal((await give(phone, copy)).ok, true, 'a third time, unasked');
      same(await pictureOf(copy), before, 'the job');
      await copy.rebuild(JOB);
      same(await pictureOf(copy), before, 'the rebuilt job');
      const { events } = await copy.append(JOB, [gauged(720)]);
      equal(events[0].deviceId === deviceId, false, 'the id that the copy goes on with');
    }
  },
  {
    title: 'J25, J26: a third device that holds either, both phones and a new one take the result',
    async run(newDevice) {
      const { phone, copy } = await copiedPhones(newDevice);
      const [third, fourth, fresh] = [0, 1, 2].map(() => newDevice().open());
      await give(phone, third);
      await give(copy, fourth);
      await give(phone, copy, 'keep-both');
      for (const other of [third, fourth, phone, fresh]) {
        equal((await give(copy, other)).ok, true, 'the result');
        same(bytesOf((await other.open(JOB))?.view), bytesOf((await copy.open(JOB))?.view), 'view');
        await expectOneRun(other);
      }
      const everyone = [phone, copy, third, fourth, fresh];
      for (const [at, store] of everyone.entries()) await store.append(JOB, [gauged(800 + at)]);
      for (const from of everyone)
        for (const to of everyone) equal((await give(from, to)).ok, true, 'an exchange');
      for (const from of everyone)
        for (const to of everyone) equal((await give(from, to)).ok, true, 'the way back');
      for (const store of everyone) {
        const view = (await store.open(JOB))?.view as JobView;
        same(slatesOf(view), '600,610,620,700,710,800,801,802,803,804', 'the slates');
        same(bytesOf(view), bytesOf((await phone.open(JOB))?.view), 'the view');
        await expectOneRun(store);
      }
    }
  },
  {
    title: 'J25, J26: each of two copies keeps both by itself, and they come to the same view',
    async run(newDevice) {
      const { phone, copy } = await copiedPhones(newDevice);
      const [ofPhone, ofCopy] = [await writeJobFile(phone, JOB), await writeJobFile(copy, JOB)];
      if (!ofPhone || !ofCopy) throw new Error('no file');
      equal((await readJobFile(copy, ofPhone.blob, 'keep-both')).ok, true, 'on the copy');
      equal((await readJobFile(phone, ofCopy.blob, 'keep-both')).ok, true, 'on the phone');
      equal((await give(copy, phone)).ok, true, 'the exchange');
      equal((await give(phone, copy)).ok, true, 'the way back');
      same(bytesOf((await phone.open(JOB))?.view), bytesOf((await copy.open(JOB))?.view), 'views');
      same(slatesOf((await phone.open(JOB))?.view as JobView), '600,610,620,700,710', 'the slates');
    }
  },
  {
    title: 'J25: another open page of the copied phone goes on under the new id',
    async run(newDevice) {
      const { phone, copyDevice, copy } = await copiedPhones(newDevice);
      const otherPage = copyDevice.open();
      await otherPage.append(JOB, [gauged(730)]);
      await give(phone, copy, 'keep-both');
      await otherPage.append(JOB, [gauged(740)]);
      equal(await otherPage.deviceId(), await copyDevice.open().deviceId(), 'the device');
      await expectOneRun(otherPage);
      same(await jobIn(otherPage), await jobIn(copy), 'the job');
    }
  },
  {
    title:
      'J26: an entry that is here under another number must be the same, and a branch explain it',
    async run(newDevice) {
      const store = newDevice().open();
      await aDayOfWork(store);
      const events = await all(store);
      const before = await pictureOf(store);
      const moved = events.map((event) => ({ ...event, deviceId: JOB }));
      const other = { ...events[0], deviceSeq: 1, deviceId: events[0].id, body: { name: 'Mill' } };
      for (const wrong of [moved, [other]]) {
        const result = await store.merge(wrong, [], 'made-here', 'keep-both');
        equal(result.ok ? 'added' : result.reason, 'conflict', 'the merge');
        same(await pictureOf(store), before, 'the job');
      }
    }
  }
];

/** A phone with a day's work and a copy of it, on both of which work went on. */
async function copiedPhones(newDevice: () => ContractDevice) {
  const device = newDevice();
  const phone = device.open();
  await aDayOfWork(phone);
  const [common] = await phone.newest(JOB, 1);
  const copyDevice = await device.copy();
  const copy = copyDevice.open();
  await phone.append(JOB, [gauged(600, 'far'), gauged(610, 'far')]);
  await phone.append(JOB, [undo(common.id)]);
  await copy.append(JOB, [gauged(700, 'far'), gauged(710, 'far')]);
  await phone.append(JOB, [gauged(620, 'far')]);
  return { phone, copyDevice, copy, deviceId: await phone.deviceId() };
}

/** Thicknesses of the slates of the pallet "far" and those after it, thinnest first. */
function slatesOf(view: JobView): string {
  const counts = { ...partOf(view, 'pallet:far').piles['|0'].gauged };
  for (const [thickness, count] of Object.entries(partOf(view, 'pallet:p1').piles['|0'].gauged))
    if (Number(thickness) >= 800) counts[thickness] = count;
  return Object.entries(counts)
    .flatMap(([thickness, count]) => Array.from({ length: count }, () => thickness))
    .join();
}

/** Every device's numbers run 1, 2, 3 …, and each id is there once. */
async function expectOneRun(store: JournalStore): Promise<void> {
  const events = await all(store);
  const last = new Map<string, number>();
  for (const { deviceId, deviceSeq } of events) {
    equal(deviceSeq, (last.get(deviceId) ?? 0) + 1, `the number of ${deviceId}`);
    last.set(deviceId, deviceSeq);
  }
  equal(new Set(events.map(({ id }) => id)).size, events.length, 'the ids');
}
