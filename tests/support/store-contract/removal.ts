import { canonicalJson, current, partOf } from '$lib/journal';
import {
  type ContractCase,
  JOB,
  aDayOfWork,
  all,
  bytesOf,
  equal,
  gauged,
  opened,
  pictureOf,
  rejects,
  same,
  summaryIn
} from './kit.ts';
import { readJobFile } from '../../../src/lib/storage/job-file.ts';
import { writeJobFile } from '../../../src/lib/storage/job-file-write.ts';
import type { JournalStore } from '../../../src/lib/storage/store.ts';

const OTHER = JOB.replace(/a$/, 'b');

/** Writes a job file and notes it as a backup. */
async function backUp(store: JournalStore): Promise<Blob> {
  const file = await writeJobFile(store, JOB);
  if (!file) throw new Error('no job to back up');
  await store.markExported(JOB, await store.numbers(JOB), '2026-02-02T12:00:00.000Z');
  return file.blob;
}

/** What a store promises of a job that is removed from it. */
export const REMOVAL: readonly ContractCase[] = [
  {
    title: 'J36: a job of which anything is only here is not removed, and nothing of it is touched',
    async run(newDevice) {
      const store = newDevice().open();
      await aDayOfWork(store);
      await backUp(store);
      await store.append(JOB, [gauged(640), gauged(650)]);
      const before = await pictureOf(store);
      const refused = await store.remove(JOB);
      equal(!refused.ok && refused.onlyHere, 2, 'the entries that are only here');
      const elsewhere = await store.numbers(JOB);
      const [device] = Object.keys(elsewhere);
      const short = { [device]: elsewhere[device] - 1 };
      const again = await store.remove(JOB, short);
      equal(!again.ok && again.onlyHere, 1, 'where the crew lacks one');
      same(await pictureOf(store), before, 'the job');
      equal((await store.remove(JOB, elsewhere)).ok, true, 'where the crew has all');
      equal((await store.remove(JOB)).ok, true, 'a job that is not there');
    }
  },
  {
    title: 'J36: a removed job goes whole, and every other job stays to the byte',
    async run(newDevice) {
      const store = newDevice().open();
      const photo = { palletId: null, caption: 'corner', type: 'image/jpeg' } as const;
      const bytes = (first: number) => Uint8Array.of(first, 2, 3).buffer;
      await aDayOfWork(store);
      const one = await store.addPhoto(JOB, { ...photo, bytes: bytes(1) });
      const shown = current(partOf(one.view, 'job').photos);
      await store.append(OTHER, [opened, gauged(640)]);
      if (shown) await store.append(OTHER, [{ type: 'photoAdded', body: shown }]);
      const two = await store.addPhoto(JOB, { ...photo, bytes: bytes(9) });
      const alone = current(partOf(two.view, 'job').photos);
      const [view, events] = [(await store.open(OTHER))?.view, await all(store, OTHER)];
      await backUp(store);
      equal((await store.remove(JOB)).ok, true, 'the removal');
      equal(await store.open(JOB), undefined, 'the job');
      equal((await all(store)).length, 0, 'its entries');
      equal((await store.jobs()).length, 1, 'the list');
      equal((await store.repair()).length, 0, 'what is found again');
      equal(await store.photo(alone?.photoId ?? ''), undefined, 'its photo');
      equal((await store.photo(shown?.photoId ?? ''))?.bytes.byteLength, 3, 'the shared photo');
      same(bytesOf((await store.open(OTHER))?.view), bytesOf(view), 'the other view');
      same(canonicalJson(await all(store, OTHER)), canonicalJson(events), 'the other entries');
    }
  },
  {
    title: 'J37: a removed job comes back from its file, to the byte, and goes on',
    async run(newDevice) {
      const store = newDevice().open();
      await aDayOfWork(store);
      const before = [bytesOf((await store.open(JOB))?.view), canonicalJson(await all(store))];
      const file = await backUp(store);
      await store.remove(JOB);
      const back = await readJobFile(store, file);
      equal(back.ok, true, 'the file');
      same(bytesOf((await store.open(JOB))?.view), before[0], 'the view');
      same(canonicalJson(await all(store)), before[1], 'the entries');
      equal(summaryIn(await store.jobs()).unexported, 0, 'what is not backed up');
      const last = (await all(store)).length;
      const { events } = await store.append(JOB, [gauged(640)]);
      equal(events[0].deviceSeq, last + 1, 'the next number');
    }
  },
  {
    title: 'J37: after an older file no number is given twice, and the newer one fills the gap',
    async run(newDevice) {
      const store = newDevice().open();
      await store.append(JOB, [opened, gauged(600)]);
      const older = await backUp(store);
      await store.append(JOB, [gauged(610), gauged(620)]);
      const newer = await backUp(store);
      await store.remove(JOB);
      equal((await readJobFile(store, older)).ok, true, 'the older file');
      const { events } = await store.append(JOB, [gauged(630)]);
      equal(events[0].deviceSeq, 5, 'the number after an older file');
      equal(summaryIn(await store.jobs()).unexported, 1, 'what is not backed up');
      const filled = await readJobFile(store, newer);
      equal(filled.ok && filled.added, 2, 'what the newer file adds');
      const numbers = (await all(store)).map(({ deviceSeq }) => deviceSeq);
      same(numbers.sort().join(), '1,2,3,4,5', 'the numbers');
    }
  },
  {
    title: 'J38: no page writes on a job that was removed, nor shows what it remembers of it',
    async run(newDevice) {
      const device = newDevice();
      const [tab, other] = [device.open(), device.open()];
      await tab.append(JOB, [opened, gauged(600)]);
      await other.open(JOB);
      await backUp(tab);
      await tab.remove(JOB);
      for (const store of [tab, other, device.open()]) {
        await rejects(() => store.append(JOB, [gauged(610)]), 'an entry of a removed job');
        equal(await store.open(JOB), undefined, 'the job');
      }
      equal((await tab.jobs()).length, 0, 'the list');
    }
  }
];
