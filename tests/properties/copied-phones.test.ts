import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type NewEvent,
  type StoredEvent,
  BranchMap,
  branchAsDevice,
  branchDeviceId,
  canonicalView
} from '$lib/journal';
import { tallyPallets } from '$lib/job';
import { type Copies, type JournalStore, readJobFile, writeJobFile } from '$lib/storage';
import { JOB_ID } from '../support/journal-arbitraries.ts';
import { MemoryDatabase, MemoryStore } from '../support/memory-store.ts';
import { copyMemory } from '../support/store-contract/test-copy.ts';

const SEED = 20_261_128;

/** An act on a phone, an undo on it, a copy made of it, or its file given to another. */
type Step =
  | { readonly kind: 'act' | 'undo' | 'copy'; readonly phone: number }
  | { readonly kind: 'give'; readonly phone: number; readonly to: number };

const phone = fc.nat(5);
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 6, arbitrary: fc.record({ kind: fc.constant('act' as const), phone }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('undo' as const), phone }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('copy' as const), phone }) },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('give' as const), phone, to: phone }) }
);
const steps = fc.array(step, { minLength: 5, maxLength: 40, size: 'max' });

let drawn = 0;

/** Clocks of their own, so that the acts of phones lie between each other. */
function newPhone(database: MemoryDatabase): MemoryStore {
  let time = 1_770_000_000_000;
  const pace = 300 + 170 * (drawn++ % 5);
  const randomHex = () => (drawn++).toString(16).padStart(16, '0');
  return new MemoryStore({ now: () => (time += pace), randomHex }, database);
}

async function all(store: JournalStore): Promise<StoredEvent[]> {
  const events: StoredEvent[] = [];
  for await (const batch of store.events(JOB_ID)) events.push(...batch);
  return events;
}

async function give(from: JournalStore, to: JournalStore, copies: Copies) {
  const file = await writeJobFile(from, JOB_ID);
  if (!file) throw new Error('no file');
  return readJobFile(to, file.blob, copies);
}

/** What of all slates is in force, by the acts themselves: no view is asked. */
function slatesInForce(events: readonly StoredEvent[]): number {
  const undone = new Set(
    events.flatMap(({ type, body }) => (type === 'entryVoided' ? [body.voids] : []))
  );
  return events.filter(({ id, type }) => type === 'slateGauged' && !undone.has(id)).length;
}

describe('phones that are copied now and again', () => {
  it('J25, J26: whatever is done and given, all come to the same view and count each act once', async () => {
    let [copied, asked, branched] = [0, 0, 0];
    await fc.assert(
      fc.asyncProperty(steps, async (plan) => {
        const databases = [new MemoryDatabase()];
        const phones = [newPhone(databases[0])];
        await phones[0].append(JOB_ID, [{ type: 'jobOpened', body: { name: 'Barn' } }]);
        const made = new Map<string, StoredEvent>();
        for (const event of await all(phones[0])) made.set(event.id, event);
        for (const next of plan) {
          const at = next.phone % phones.length;
          if (next.kind === 'copy') {
            if (phones.length === 6) continue;
            databases.push(copyMemory(databases[at]));
            phones.push(newPhone(databases[databases.length - 1]));
            copied++;
          } else if (next.kind === 'give') {
            const to = phones[next.to % phones.length];
            const before = await all(to);
            const result = await give(phones[at], to, 'refuse');
            if (!result.ok) {
              asked++;
              expect(result).toMatchObject({ reason: 'conflict' });
              expect(result.copiedDevice).toBeDefined();
              expect(await all(to)).toEqual(before);
              const kept = await give(phones[at], to, 'keep-both');
              if (!kept.ok) throw new Error(JSON.stringify(kept));
              branched += kept.branched;
            }
            for (const event of await all(to))
              if (event.type === 'copyKept') made.set(event.id, event);
          } else {
            const slates = [...made.values()].filter(({ type }) => type === 'slateGauged');
            const here = new Set((await all(phones[at])).map(({ id }) => id));
            const voids = slates.find(({ id }) => here.has(id))?.id;
            const points = [400 + made.size];
            const slate: NewEvent = {
              type: 'slateGauged',
              body: { palletId: 'p1', points, gradesId: null, pile: null }
            };
            const act: NewEvent =
              next.kind === 'undo' && voids ? { type: 'entryVoided', body: { voids } } : slate;
            const { events } = await phones[at].append(JOB_ID, [act]);
            for (const event of events) made.set(event.id, event);
          }
        }
        // Everybody gives to everybody until nothing is new.
        for (let news = -1; news !== 0;) {
          news = 0;
          for (const from of phones)
            for (const to of phones) {
              if (from === to) continue;
              const result = await give(from, to, 'keep-both');
              if (!result.ok) throw new Error(JSON.stringify(result));
              news += result.added;
            }
        }
        const views = [];
        for (const store of phones) {
          const events = await all(store);
          expect(new Set(events.map(({ id }) => id)).size).toBe(events.length);
          const numbers = new Map<string, number>();
          for (const { deviceId, deviceSeq } of events) {
            expect(deviceSeq).toBe((numbers.get(deviceId) ?? 0) + 1);
            numbers.set(deviceId, deviceSeq);
          }
          for (const id of made.keys()) expect(events.some((event) => event.id === id)).toBe(true);
          const view = (await store.open(JOB_ID))?.view ?? new Map();
          const counted = tallyPallets(view).reduce((sum, { gauged }) => sum + gauged, 0);
          expect(counted).toBe(slatesInForce(events));
          views.push(canonicalView(view));
        }
        expect(new Set(views).size).toBe(1);
        // Once all hold everything, nobody is asked any more.
        for (const from of phones)
          for (const to of phones) expect((await give(from, to, 'refuse')).ok).toBe(true);
      }),
      { seed: SEED, numRuns: 60 }
    );
    expect(copied).toBeGreaterThan(60);
    expect(asked).toBeGreaterThan(40);
    expect(branched).toBeGreaterThan(100);
  });
});

describe('a branch', () => {
  const stored = (seq: number, id: string): StoredEvent => ({
    id: `01900000-${id.padStart(4, '0')}-7000-8000-000000000000`,
    jobId: JOB_ID,
    deviceId: '018f0000-0000-7000-8000-0000000000d1',
    deviceSeq: seq,
    at: '2026-05-04T08:00:00.000Z',
    sorter: '',
    type: 'slateTapped',
    v: 1,
    body: { palletId: 'p1', pile: 1, gradesId: null }
  });

  it('J25: is the same acts with the same ids, numbered from 1 under the new id, in map and function', () => {
    const branch = [stored(3, '13'), stored(4, '14'), stored(5, '15')];
    const before = structuredClone(branch);
    const deviceId = branchDeviceId(branch[0].id);
    expect(deviceId).toBe('01900000-0013-8000-8000-000000000000');
    const kept = branchAsDevice(branch, deviceId);
    expect(kept.map(({ deviceSeq }) => deviceSeq)).toEqual([1, 2, 3]);
    expect(kept.map(({ id, body }) => [id, body])).toEqual(
      branch.map(({ id, body }) => [id, body])
    );
    const map = new BranchMap({ [branch[0].deviceId]: 4 });
    const common = stored(2, '12');
    expect(map.meet(common, common)).toBe(true);
    expect(branch.map((event, at) => map.place(event, at))).toEqual(kept);
    expect(map.branches).toEqual([
      { deviceId: branch[0].deviceId, after: 2, keptAs: deviceId, events: 3 }
    ]);
    expect(branch).toEqual(before);
  });
});
