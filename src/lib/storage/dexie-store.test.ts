import 'fake-indexeddb/auto';
import { Dexie } from 'dexie';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { type NewEvent, canonicalView, partOf } from '$lib/journal';
import { CONTRACT, type ContractDevice } from '../../../tests/support/store-contract/suite.ts';
import { DexieStore } from './dexie-store.ts';
import { isQuotaExceeded } from './reconnect.ts';
import { damageTo } from '../../../tests/support/store-contract/test-damage.ts';
import { copyDatabase } from '../../../tests/support/store-contract/test-copy.ts';
import { testSurroundings } from '../../../tests/support/store-contract/test-surroundings.ts';

const JOB = '018f0000-0000-7000-8000-00000000000a';
const gauged = (hundredths: number): NewEvent => ({
  type: 'slateGauged',
  body: { palletId: 'p1', points: [hundredths], gradesId: null, pile: null }
});

const opened: DexieStore[] = [];
let seed = 1;

function openStore(name: string, surroundings = {}): DexieStore {
  const store = new DexieStore({ ...testSurroundings(seed++), ...surroundings }, name);
  opened.push(store);
  return store;
}

function newDevice(name = `device ${seed++}`): ContractDevice {
  return {
    open: (surroundings) => openStore(name, surroundings),
    clear: () => Dexie.delete(name),
    copy: async () => {
      const copyName = `device ${seed++}`;
      await copyDatabase(name, copyName);
      return newDevice(copyName);
    },
    damage: damageTo(name)
  };
}

afterEach(() => {
  for (const store of opened.splice(0)) store.database.close();
});

describe('the contract, in IndexedDB', () => {
  for (const { title, run } of CONTRACT) it(title, () => run(() => newDevice()));
});

describe('the append-only middleware', () => {
  it('J4: refuses to change or delete an event, a bundle of them or a photo', async () => {
    const store = openStore('append-only');
    const { events } = await store.append(JOB, [gauged(640)]);
    const bytes = new Uint8Array([1]).buffer;
    await store.addPhoto(JOB, { palletId: null, caption: '', type: 'image/png', bytes });
    const others = Array.from({ length: 50 }, (_, at) => ({
      ...events[0],
      id: events[0].id.replace(/^......../, `a00000${String(at).padStart(2, '0')}`),
      deviceSeq: at + 1,
      jobId: JOB.replace(/a$/, 'b')
    }));
    expect(await store.merge(others)).toMatchObject({ ok: true, added: 50 });
    const { database } = store;
    const key: [string, string] = [JOB, events[0].id];
    for (const change of [
      () => database.events.put({ ...events[0], sorter: 'x' }),
      () => database.events.delete(key),
      () => database.events.clear(),
      () => database.events.update(key, { sorter: 'x' }),
      () => database.events.where('[jobId+id]').equals(key).delete(),
      () => database.events.bulkPut([{ ...events[0], sorter: 'x' }]),
      () => database.bundles.clear(),
      () => database.bundles.delete([others[0].jobId, others[49].id, others[0].id]),
      () => database.bundles.toCollection().modify({ size: 0 }),
      () => database.photos.clear()
    ])
      await expect(change()).rejects.toThrow(/append-only/);
    expect(await database.events.get(key)).toEqual(events[0]);
    expect(await database.bundles.toArray()).toMatchObject([{ size: 50, events: others }]);
    expect(await database.photos.count()).toBe(1);
    // While one job is removed, the rows of every other stay closed.
    const other = { jobId: `${JOB.slice(0, -1)}f`, photoIds: new Set<string>() };
    for (const change of [
      () => database.events.delete(key),
      () => database.events.bulkDelete([key]),
      () => database.photos.toCollection().delete(),
      () => database.events.where('[jobId+id]').above(['', '']).delete()
    ])
      await expect(database.removing(other, async () => void (await change()))).rejects.toThrow(
        /append-only/
      );
    expect(await database.events.get(key)).toEqual(events[0]);
    expect(await database.photos.count()).toBe(1);
  });
});

describe('what a merge brings', () => {
  it('J18: lies in rows when it is a little, in bundles when it is much', async () => {
    const [store, far] = [openStore('a little'), openStore('from far')];
    for (const [count, rows, bundles] of [
      [49, 49, 0],
      [50, 49, 1]
    ]) {
      const { events } = await far.append(
        JOB,
        Array.from({ length: count }, () => gauged(640))
      );
      await store.merge(events);
      expect(await store.database.events.count()).toBe(rows);
      expect(await store.database.bundles.count()).toBe(bundles);
    }
    expect((await store.newest(JOB, 200)).length).toBe(99);
    expect(await store.numbers(JOB)).toEqual({ [await far.deviceId()]: 99 });
  });
});

describe('a lost connection', () => {
  it('J6: an act that was committed before the answer was lost is not doubled', async () => {
    const store = openStore('lost answer');
    await store.append(JOB, [gauged(600)]);
    const { database } = store;
    const transaction = database.transaction.bind(database) as (...given: unknown[]) => unknown;
    let lost = 0;
    const losing = async (...given: unknown[]) => {
      const answer = await transaction(...given);
      if (given[0] === 'rw' && lost++ === 0)
        throw new Dexie.DatabaseClosedError('connection to the database server lost');
      return answer;
    };
    database.transaction = losing as typeof database.transaction;
    const { events, view } = await store.append(JOB, [gauged(640), gauged(650)]);
    expect(lost).toBe(2);
    expect(events.map(({ deviceSeq }) => deviceSeq)).toEqual([2, 3]);
    expect(await database.events.count()).toBe(3);
    expect(partOf(view, 'pallet:p1').piles['|0'].gauged).toEqual({ 600: 1, 640: 1, 650: 1 });
  });

  it('J6: a database closed under many acts and looks is opened once more for all', async () => {
    const store = openStore('closed');
    await store.append(JOB, [gauged(600)]);
    for (let round = 0; round < 5; round++) {
      const work = Array.from({ length: 10 }, (_, at) => store.append(JOB, [gauged(610 + at)]));
      const looks = Array.from({ length: 10 }, () => store.newest(JOB, 1));
      store.database.close({ disableAutoOpen: true });
      await Promise.all([...work, ...looks]);
    }
    const numbers = (await store.newest(JOB, 100)).map(({ deviceSeq }) => deviceSeq);
    expect(numbers).toEqual(Array.from({ length: 51 }, (_, at) => 51 - at));
  });

  it('J16: a tab that lost its connection is still told of what another does', async () => {
    const [one, two] = [openStore('told'), openStore('told')];
    await one.append(JOB, [gauged(600)]);
    let calls = 0;
    const stop = two.watch(JOB, () => calls++, 1);
    await two.newest(JOB, 1);
    two.database.close({ disableAutoOpen: true });
    await two.newest(JOB, 1);
    await one.append(JOB, [gauged(610)]);
    await vi.waitFor(() => expect(calls).toBeGreaterThan(0), { timeout: 3000 });
    stop();
  });

  it('J6: a first start that fails is tried again', async () => {
    const store = openStore('first start');
    const { device } = store.database;
    const put = device.put.bind(device);
    device.put = () => Dexie.Promise.reject(new DOMException('', 'DataError'));
    await expect(store.deviceId()).rejects.toThrow();
    device.put = put;
    expect(await store.deviceId()).toHaveLength(36);
  });
});

describe('a full disk', () => {
  it('J21: is said to be full, stores nothing, and the act goes through later', async () => {
    const store = openStore('full');
    const before = await store.append(JOB, [gauged(600)]);
    const { parts } = store.database;
    const bulkPut = parts.bulkPut.bind(parts);
    parts.bulkPut = (() => {
      throw new DOMException('full', 'QuotaExceededError');
    }) as unknown as typeof parts.bulkPut;
    const error: unknown = await store
      .append(JOB, [gauged(640)])
      .catch((caught: unknown) => caught);
    expect(isQuotaExceeded(error)).toBe(true);
    expect(await store.database.events.count()).toBe(1);
    const now = await store.open(JOB);
    expect(now && canonicalView(now.view)).toBe(canonicalView(before.view));
    parts.bulkPut = bulkPut;
    const { events, view } = await store.append(JOB, [gauged(640)]);
    expect(events[0].deviceSeq).toBe(2);
    expect(partOf(view, 'pallet:p1').piles['|0'].gauged).toEqual({ 600: 1, 640: 1 });
  });

  it('J21: is recognised inside whatever wraps it', () => {
    const quota = new DOMException('', 'QuotaExceededError');
    const named = (name: string, more: object) => Object.assign(new Error(), { name }, more);
    expect(isQuotaExceeded(quota)).toBe(true);
    expect(isQuotaExceeded(named('AbortError', { inner: quota }))).toBe(true);
    expect(isQuotaExceeded(named('AbortError', { inner: named('X', { inner: quota }) }))).toBe(
      true
    );
    expect(isQuotaExceeded(named('BulkError', { failures: [quota] }))).toBe(true);
    expect(isQuotaExceeded(named('AbortError', {}))).toBe(false);
    expect(isQuotaExceeded(undefined)).toBe(false);
  });
});

describe('a view of another release', () => {
  it('J17: is rebuilt before it is shown, and before anything is written upon it', async () => {
    const store = openStore('release');
    const { view } = await store.append(JOB, [gauged(600), gauged(610)]);
    const spoil = async () => {
      await store.database.jobs.update(JOB, { viewVersion: 99 });
      await store.database.parts.clear();
      await store.database.parts.put({
        jobId: JOB,
        part: 'fromTheFuture',
        value: { plans: [] }
      });
    };
    await spoil();
    const shown = await store.open(JOB);
    expect(shown && canonicalView(shown.view)).toBe(canonicalView(view));
    await spoil();
    const written = await store.append(JOB, [gauged(610)]);
    expect(partOf(written.view, 'pallet:p1').piles['|0'].gauged).toEqual({ 600: 1, 610: 2 });
    const other = await openStore('release').open(JOB);
    expect(other && canonicalView(other.view)).toBe(canonicalView(written.view));
    expect(await store.database.parts.count()).toBe(other?.view.size);
  });
});

describe('the cost of an act', () => {
  it('J18: an act rewrites as many parts in a large job as in a small one', async () => {
    const store = openStore('large');
    const { parts } = store.database;
    const bulkPut = parts.bulkPut.bind(parts);
    const written: number[] = [];
    parts.bulkPut = ((rows: never[]) => {
      written.push(rows.length);
      return bulkPut(rows);
    }) as typeof parts.bulkPut;
    await store.append(JOB, [{ type: 'jobOpened', body: { name: 'Barn' } }]);
    for (let pallet = 0; pallet < 40; pallet++)
      await store.append(JOB, [
        {
          type: 'slateGauged',
          body: { palletId: `p${pallet}`, points: [600], gradesId: null, pile: null }
        }
      ]);
    // The pallet, and its minutes of that day.
    expect(Math.max(...written)).toBe(2);
  });
});
