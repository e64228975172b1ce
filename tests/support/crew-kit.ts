import { copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { canonicalView, type NewEvent, type StoredEvent } from '$lib/journal';
import { MemoryDatabase, MemoryStore } from './memory-store.ts';
import { testSurroundings } from './store-contract/test-surroundings.ts';
import { type Hub, createHub, hashOf } from '../../src/hub/handler.ts';
import { SqliteHubStore } from '../../src/hub/sqlite-store.ts';
import { randomBytes, toBase64Url } from '../../src/lib/sync/bytes.ts';
import { type CrewRecord, newCrewState } from '../../src/lib/sync/crew-state.ts';
import { exchangeAs } from '../../src/lib/sync/exchange-as.ts';
import { keepBothRuns } from '../../src/lib/sync/keep-both.ts';
import { type Fetch, HubClient } from '../../src/lib/sync/hub-client.ts';
import { type SpaceKeys, deriveKeys, newJobKey } from '../../src/lib/sync/keys.ts';

export const JOB = '018f0000-0000-7000-8000-00000000000a';
export const opened: NewEvent = { type: 'jobOpened', body: { name: 'Barn' } };
export const gauged = (hundredths: number, palletId = 'p1'): NewEvent => ({
  type: 'slateGauged',
  body: { palletId, points: [hundredths], gradesId: null, pile: null }
});

/** What goes wrong on the way between a device and the hub. */
export interface Weather {
  /** Asked before each request. */
  next(): 'fair' | 'offline' | 'lost-answer' | 'doubled' | 'hub-full';
}

/** For tests: a hub on a real file, without sockets, that can be put back from an old copy. */
export class TestHub {
  readonly folder = mkdtempSync(join(tmpdir(), 'crew-'));
  readonly key = newJobKey();
  readonly space = toBase64Url(randomBytes(16));
  readonly #hubKey = toBase64Url(randomBytes(32));
  #file = join(this.folder, 'hub.db');
  #copies = 0;
  hub!: Hub;
  store!: SqliteHubStore;
  requests = 0;
  time = 1_790_000_000_000;

  async start(): Promise<this> {
    this.store = new SqliteHubStore(this.#file);
    await this.store.firstHubKey(hashOf(this.#hubKey), 1);
    const limits = { requestsPerMinute: 1e9, joinsPerMinute: 1e9 };
    this.hub = createHub({ store: this.store, now: () => this.time, limits });
    return this;
  }

  readonly fetch: Fetch = (url, init) => {
    this.requests++;
    return this.hub.handle(new Request(url, init), '::1');
  };

  /** The same hub through some weather. */
  through(weather: Weather): Fetch {
    return async (url, init) => {
      const what = weather.next();
      if (what === 'offline') throw new TypeError('no signal');
      if (what === 'hub-full') return Response.json({ error: 'hub-full' }, { status: 507 });
      const answer = await this.fetch(url, init);
      if (what === 'lost-answer') throw new TypeError('the answer was lost');
      return what === 'doubled' ? this.fetch(url, init) : answer;
    };
  }

  /** A copy of all that it holds now; returns how to put it back. */
  async copy(): Promise<() => Promise<void>> {
    const copy = join(this.folder, `copy-${++this.#copies}.db`);
    await this.hub.close();
    copyFileSync(this.#file, copy);
    await this.start();
    return async () => {
      await this.hub.close();
      this.#file = join(this.folder, `hub-${++this.#copies}.db`);
      copyFileSync(copy, this.#file);
      await this.start();
    };
  }

  /** Lets a device in: the first as keeper, the others by invitation. */
  async letIn(device: string, token: string): Promise<'keeper' | 'member'> {
    const anyone = (access: string) =>
      new HubClient(this.fetch, { origin: 'http://hub.test', space: this.space, token: access });
    const entry = { tokenHash: hashOf(token), device, label: '' };
    if (!this.#keeper) {
      await anyone(this.#hubKey).openSpace(entry);
      this.#keeper = token;
      return 'keeper';
    }
    const [invite, secret] = [toBase64Url(randomBytes(12)), toBase64Url(randomBytes(14))];
    const made = { invite, secretHash: hashOf(secret), role: 'member' };
    await anyone(this.#keeper).invites(made);
    await anyone('').join({ invite, secret, ...entry });
    return 'member';
  }
  #keeper = '';

  async end(): Promise<void> {
    await this.hub.close();
    rmSync(this.folder, { recursive: true, force: true });
  }
}

/** For tests: a device of the crew with its own journal. */
export class TestDevice {
  readonly store: MemoryStore;
  readonly database: MemoryDatabase;
  readonly hub: TestHub;
  state!: CrewRecord;
  keys!: SpaceKeys;
  /** How far its clock is ahead of the hub's, ms. */
  clockAheadMs = 0;

  constructor(hub: TestHub, seed: number, database = new MemoryDatabase()) {
    this.hub = hub;
    this.database = database;
    const { now, randomHex } = testSurroundings(seed);
    this.store = new MemoryStore({ now: () => now() + this.clockAheadMs, randomHex }, database);
  }

  async join(): Promise<this> {
    const [device, token] = [await this.store.deviceId(), toBase64Url(randomBytes(32))];
    const role = await this.hub.letIn(device, token);
    const { space, key } = this.hub;
    this.keys = await deriveKeys(key, space);
    const link = { origin: 'http://hub.test', space, token, jobKey: key, jobId: JOB, device, role };
    this.state = newCrewState(link);
    return this;
  }

  /** One exchange; a fresh one each time, as after the app was closed. */
  async exchange(fetch: Fetch = this.hub.fetch) {
    const joiner = { device: await this.store.deviceId(), name: 'Wren' };
    const exchange = await exchangeAs(fetch, this.state, joiner, {
      journal: this.store,
      now: () => this.hub.time + this.clockAheadMs,
      save: async (state) => {
        this.state = state;
      }
    });
    return exchange.run();
  }

  /** Keeps both histories of a device that the hub has other events of. */
  async keepBoth(device: string, fetch: Fetch = this.hub.fetch): Promise<boolean> {
    const parts = { journal: this.store, fetch, name: 'Wren' };
    const kept = await keepBothRuns(this.state, device, parts);
    if (kept) this.state = kept;
    return kept !== undefined;
  }

  async act(...acts: NewEvent[]): Promise<StoredEvent[]> {
    return (await this.store.append(JOB, acts, 'Wren')).events;
  }

  async all(): Promise<StoredEvent[]> {
    const events: StoredEvent[] = [];
    for await (const batch of this.store.events(JOB)) events.push(...batch);
    return events;
  }

  /** Events and view as one text. */
  async picture(): Promise<string> {
    const job = await this.store.open(JOB);
    return JSON.stringify([await this.all(), job ? canonicalView(job.view) : '']);
  }

  /** Another device with all that this one holds, as when a phone is copied. */
  clone(seed: number): TestDevice {
    const copied = new MemoryDatabase();
    for (const [name, value] of this.database.jobs)
      copied.jobs.set(name, { ...value, events: new Map(value.events) });
    for (const [name, value] of this.database.device) copied.device.set(name, value);
    const twin = new TestDevice(this.hub, seed, copied);
    twin.state = this.state;
    twin.keys = this.keys;
    return twin;
  }
}

/** For tests: a hub, and a job that Wren began and Finch has. */
export async function crewOfTwo(): Promise<{ hub: TestHub; wren: TestDevice; finch: TestDevice }> {
  const hub = await new TestHub().start();
  const wren = await new TestDevice(hub, 1).join();
  const finch = await new TestDevice(hub, 2).join();
  await wren.act(opened);
  await wren.exchange();
  await finch.exchange();
  return { hub, wren, finch };
}
