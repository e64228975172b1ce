import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sqlite from 'node-sqlite3-wasm';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { createRandom, randomBelow } from '$lib/engine';
import { WrittenDown } from '../../tests/faults/power-cut.ts';
import { deviceOf } from '../../tests/support/hub-store-contract.ts';
import { report, rounds } from '../../tests/support/rounds.ts';
import { SqliteHubStore } from './sqlite-store.ts';

const SPACE = 'AAAAAAAAAAAAAAAAAAAAAA';
const MOST = 2 ** 31;
const WRITERS = 3;
const PARCELS_EACH = rounds(40, 200);
const CUTS = rounds(60, 600);

const folder = mkdtempSync(join(tmpdir(), 'power-cut-'));
const disk = new WrittenDown(folder);
/** What was answered, and how many acts the disk had been asked for by then. */
const answered: { device: string; last: number; acts: number }[] = [];

const bytesOf = (writer: number, number: number): Uint8Array =>
  new Uint8Array(200 + ((writer * 7919 + number * 104_729) % 9000)).fill((writer + number) & 0xff);

beforeAll(async () => {
  disk.begin();
  const store = new SqliteHubStore(join(folder, 'hub.db'));
  await store.openSpace(SPACE, { id: 'k', tokenHash: 'k', device: '', label: '' }, 1);
  await Promise.all(
    Array.from({ length: WRITERS }, async (_, writer) => {
      const device = deviceOf(writer);
      for (let number = 1; number <= PARCELS_EACH; number++) {
        const parcel = { device, first: number, last: number, bytes: bytesOf(writer, number) };
        expect((await store.append(SPACE, parcel, MOST, number)).ok).toBe(true);
        answered.push({ device, last: number, acts: disk.acts.length });
      }
    })
  );
  await store.close();
  disk.end();
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Parcels that were answered before the power failed and are not there, or not as they were. */
async function lostAfter(recorded: WrittenDown, cut: number, seed: number): Promise<number> {
  const after = join(folder, `after-${cut}-${seed}`);
  mkdirSync(after);
  recorded.standAfter(cut, after, createRandom(seed));
  const file = join(after, 'hub.db');
  let lost = 0;
  try {
    const store = new SqliteHubStore(file);
    const parcels = await store.above(SPACE, {}, MOST);
    await store.close();
    for (let writer = 0; writer < WRITERS; writer++) {
      const device = deviceOf(writer);
      const owed = answered.filter((one) => one.device === device && one.acts <= cut).length;
      const his = parcels.filter((one) => one.device === device);
      // No gap, none doubled, and each as it was given.
      expect(his.map(({ first }) => first)).toEqual(his.map((_, at) => at + 1));
      for (const { first, bytes } of his)
        expect(Buffer.compare(bytes, bytesOf(writer, first)), `${device} ${first}`).toBe(0);
      lost += Math.max(0, owed - his.length);
    }
    const database = new sqlite.Database(file);
    database.all('pragma locking_mode=exclusive');
    expect(database.get('pragma integrity_check')).toEqual({ integrity_check: 'ok' });
    database.close();
  } finally {
    rmSync(after, { recursive: true, force: true });
  }
  return lost;
}

it(`power that fails at ${CUTS} moments takes nothing that the hub had answered`, async () => {
  const random = createRandom(2026);
  let owed = 0;
  for (let round = 0; round < CUTS; round++) {
    const cut = randomBelow(random, disk.acts.length + 1);
    expect(await lostAfter(disk, cut, round), `before act ${cut}, seed ${round}`).toBe(0);
    owed += answered.filter(({ acts }) => acts <= cut).length;
  }
  report('hub, power cut', { cuts: CUTS, acts: disk.acts.length, 'parcels owed': owed, lost: 0 });
  expect(owed).toBeGreaterThan(CUTS);
});

it('a disk that only says that it has synced is seen to lose answered parcels', async () => {
  const liar = new WrittenDown(folder);
  const first = disk.acts.findIndex(({ what }) => what === 'sync');
  liar.acts.push(...disk.acts.filter(({ what }, at) => what !== 'sync' || at < first + 8));
  const lost = await lostAfter(liar, liar.acts.length, 1).catch(() => 1);
  expect(lost).toBeGreaterThan(0);
});
