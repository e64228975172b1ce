import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { HubFull, type HubStore, type SpaceNews } from './hub-store.ts';
import { PostgresHubStore } from './postgres-store.ts';
import { takePidLock } from './pid-lock.ts';
import { LIMITS } from './protocol.ts';
import { SqliteHubStore } from './sqlite-store.ts';
import { deviceOf, holdsTheContract, parcelOf } from '../../tests/support/hub-store-contract.ts';
import { type TestPostgres, startPostgres } from '../../tests/support/postgres.ts';

const folder = mkdtempSync(join(tmpdir(), 'hub-'));
const opened: HubStore[] = [];
const keep = <T extends HubStore>(store: T): T => {
  opened.push(store);
  return store;
};
afterEach(async () => {
  for (const store of opened.splice(0)) await store.close().catch(() => undefined);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const SPACE = 'AAAAAAAAAAAAAAAAAAAAAA';
const KEEPER = { id: 'k', tokenHash: 'k', device: deviceOf(1), label: '' };

describe('the hub on SQLite', () => {
  let number = 0;
  const file = () => join(folder, `${number}`, 'hub.db');
  holdsTheContract(
    async () => {
      number++;
      return keep(new SqliteHubStore(file()));
    },
    async () => keep(new SqliteHubStore(file()))
  );

  it('a process number given anew since the lock was written holds nothing', async () => {
    number++;
    const store = keep(new SqliteHubStore(file()));
    writeFileSync(
      `${file()}.pid`,
      readFileSync(`${file()}.pid`, 'utf8').replace(/^\d+/, `${process.ppid}`)
    );
    // The lock names a living process, but not by its start: the number was given anew.
    expect(() => takePidLock(`${file()}.pid`)()).not.toThrow();
    await store.openSpace(SPACE, KEEPER, 1);
    expect(await store.heads(SPACE)).toEqual({});
  });

  it('what a killed hub left behind does not keep the next from starting', async () => {
    number++;
    mkdirSync(`${file()}.lock`, { recursive: true });
    writeFileSync(`${file()}.pid`, '999999999 1\n');
    const store = keep(new SqliteHubStore(file()));
    expect(await store.openSpace(SPACE, KEEPER, 1)).toBe('made');
    await store.close();
    expect(existsSync(`${file()}.pid`)).toBe(false);
  });

  it('a living process keeps its lock', () => {
    const lock = join(folder, 'living.pid');
    const stat = readFileSync(`/proc/${process.ppid}/stat`, 'utf8');
    const start = stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19];
    writeFileSync(lock, `${process.ppid} ${start}\n`);
    expect(() => takePidLock(lock)).toThrow(/runs already/);
    expect(readFileSync(lock, 'utf8')).toBe(`${process.ppid} ${start}\n`);
  });

  it('a fault in one piece of a turn leaves the other pieces whole', async () => {
    number++;
    const store = keep(new SqliteHubStore(file()));
    await store.openSpace(SPACE, KEEPER, 1);
    const wrong = {
      ...parcelOf(deviceOf(1), 2, 2),
      last: { not: 'a number' } as unknown as number
    };
    const [one, two, three] = await Promise.allSettled([
      store.append(SPACE, parcelOf(deviceOf(1), 1, 1), LIMITS.spaceBytes, 1),
      store.append(SPACE, wrong, LIMITS.spaceBytes, 1),
      store.append(SPACE, parcelOf(deviceOf(1), 2, 2), LIMITS.spaceBytes, 1)
    ]);
    expect([one.status, two.status, three.status]).toEqual(['fulfilled', 'rejected', 'fulfilled']);
    expect(await store.heads(SPACE)).toEqual({ [deviceOf(1)]: 2 });
  });
});

const postgres: TestPostgres | undefined = await startPostgres();

describe('the hub on PostgreSQL', () => {
  if (!postgres) {
    it('is not installed here: not run', () => expect(postgres).toBeUndefined());
    return;
  }
  const { url, stop } = postgres;
  let admin: pg.Client;
  beforeAll(async () => {
    admin = new pg.Client({ connectionString: url });
    await admin.connect();
  });
  afterAll(async () => {
    await admin.end();
    await stop();
  });
  let number = 0;
  const database = () => url.replace(/postgres$/, `hub${number}`);
  const fresh = async () => {
    await admin.query(`create database hub${++number}`);
    return keep(await PostgresHubStore.open(database()));
  };
  holdsTheContract(fresh, async () => keep(await PostgresHubStore.open(database())));

  it('two hubs on one database start together, and each hears of what the other stored', async () => {
    await admin.query(`create database hub${++number}`);
    const [one, two] = await Promise.all(
      [0, 1].map(async () => keep(await PostgresHubStore.open(database())))
    );
    await one.openSpace(SPACE, KEEPER, 1);
    const heard = new Promise<SpaceNews>((resolve) => two.onNews(resolve));
    await one.append(SPACE, parcelOf(deviceOf(1), 1, 2), LIMITS.spaceBytes, 1);
    expect(await heard).toEqual({ kind: 'parcel', space: SPACE, device: deviceOf(1), last: 2 });
    expect(await two.heads(SPACE)).toEqual({ [deviceOf(1)]: 2 });
  });

  it('a disk that is full (53100) takes nothing, and goes on once there is room', async () => {
    const store = await fresh();
    await store.openSpace(SPACE, KEEPER, 1);
    const owner = new pg.Client({ connectionString: database() });
    await owner.connect();
    await owner.query(`create function no_room() returns trigger language plpgsql as
      $$ begin raise exception 'could not extend file' using errcode = '53100'; end $$`);
    for (const table of ['parcel', 'photo'])
      await owner.query(
        `create trigger no_room before insert on ${table} for each row execute function no_room()`
      );
    const append = () => store.append(SPACE, parcelOf(deviceOf(1), 1, 2), LIMITS.spaceBytes, 1);
    await expect(append()).rejects.toThrow(HubFull);
    const photo = store.putPhoto(SPACE, 'photo', new Uint8Array(1), LIMITS.spaceBytes);
    await expect(photo).rejects.toThrow(HubFull);
    expect(await store.heads(SPACE)).toEqual({});
    await owner.query('drop function no_room cascade');
    await owner.end();
    expect(await append()).toEqual({ ok: true, last: 2 });
  });

  it('a connection that breaks comes back, and listeners are told to look again', async () => {
    const store = await fresh();
    await store.openSpace(SPACE, KEEPER, 1);
    const again = new Promise<SpaceNews>((resolve) => store.onNews(resolve));
    await admin.query('select pg_terminate_backend(pid) from pg_stat_activity where datname = $1', [
      `hub${number}`
    ]);
    expect(await again).toEqual({ kind: 'look-again' });
    const heard = new Promise<SpaceNews>((resolve) => store.onNews(resolve));
    await store.append(SPACE, parcelOf(deviceOf(1), 1, 1), LIMITS.spaceBytes, 1);
    expect(await heard).toMatchObject({ kind: 'parcel', last: 1 });
  });
});
