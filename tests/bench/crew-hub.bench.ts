/**
 * The hub and the exchange by themselves, on SQLite: durable parcels a second, memory with 500 live
 * lines, 30,000 entries given and taken, and the time from an act on one device until another holds
 * it. Figures to hold within a factor of two: 420 parcels a second, 150 MB, 1.0 s and 0.4 s,
 * p50 16 ms, p99 255 ms.
 *
 * `npm run bench crew-hub`; needs a build (npm run build).
 */
import { randomBytes } from 'node:crypto';
import { hashOf } from '../../src/hub/handler.ts';
import { HUB_PATH } from '../../src/hub/protocol.ts';
import { HubClient } from '../../src/lib/sync/hub-client.ts';
import { LiveLine } from '../../src/lib/sync/live.ts';
import { TestDevice, TestHub, crewOfTwo, gauged, opened } from '../support/crew-kit.ts';
import { deviceOf } from '../support/hub-store-contract.ts';
import { type HubProcess, hubProcess } from './hub-process.ts';
import { quantile } from './quantile.ts';

const WRITERS = 40;
const PARCELS_EACH = 50;
const PARCEL_BYTES = 600;
const LINES = 500;
const LINES_EACH = 4;
const ENTRIES = 30_000;
const ACTS = 200;
const ENTRIES_AN_ACT = 2000;

const drawn = (bytes: number): string => randomBytes(bytes).toString('base64url');
const seconds = (since: number): string => ((performance.now() - since) / 1000).toFixed(2);

/** A crew in a space of its own: each has a token, and comes from an address of its own. */
class Crew {
  readonly #hub: HubProcess;
  readonly #space = drawn(16);
  readonly tokens: string[] = [];

  constructor(hub: HubProcess) {
    this.#hub = hub;
  }

  async ask(path: string, token: string, init: RequestInit = {}, from = 0): Promise<Response> {
    const url = `${this.#hub.url}${HUB_PATH.slice(1)}${path}`;
    const headers = {
      'content-type': 'application/octet-stream',
      ...(token && { authorization: `Bearer ${token}` }),
      'x-forwarded-for': `10.0.${from >> 8}.${from & 255}`
    };
    const answer = await fetch(url, { method: 'POST', ...init, headers });
    if (!answer.ok) throw new Error(`${path}: ${answer.status} ${await answer.text()}`);
    return answer;
  }

  /** The path of the space. */
  at(path: string): string {
    return `/${this.#space}/${path}`;
  }

  async gather(people: number): Promise<void> {
    const member = (number: number, token: string) => ({
      tokenHash: hashOf(token),
      device: deviceOf(number),
      label: ''
    });
    const say = (body: object): RequestInit => ({ body: JSON.stringify(body) });
    for (let number = 1; number <= people; number++) {
      const token = drawn(32);
      const entry = member(number, token);
      if (number === 1) {
        await this.ask('/space', this.#hub.key, say({ space: this.#space, ...entry }));
      } else {
        const [invite, secret] = [drawn(12), drawn(14)];
        const made = { invite, secretHash: hashOf(secret), role: 'member' };
        await this.ask(this.at('invite'), this.tokens[0], say(made), 1);
        await this.ask('/join', '', say({ invite, secret, ...entry }), number);
      }
      this.tokens.push(token);
    }
  }
}

async function parcelsASecond(hub: HubProcess): Promise<void> {
  const crew = new Crew(hub);
  await crew.gather(WRITERS);
  const body = new Uint8Array(PARCEL_BYTES).fill(7);
  const start = performance.now();
  await Promise.all(
    crew.tokens.map(async (token, at) => {
      for (let number = 1; number <= PARCELS_EACH; number++) {
        const query = `device=${deviceOf(at + 1)}&first=${number}&last=${number}`;
        await (await crew.ask(crew.at(`parcel?${query}`), token, { body }, at)).arrayBuffer();
      }
    })
  );
  const parcels = WRITERS * PARCELS_EACH;
  const took = (performance.now() - start) / 1000;
  console.log(`${parcels} parcels, ${WRITERS} writers: ${(parcels / took).toFixed(0)} a second`);
}

async function liveLines(hub: HubProcess): Promise<void> {
  const crew = new Crew(hub);
  await crew.gather(LINES / LINES_EACH);
  const before = await hub.memoryMb();
  const hangUp = new AbortController();
  for (let line = 0; line < LINES; line++) {
    const token = crew.tokens[Math.floor(line / LINES_EACH)];
    const { signal } = hangUp;
    const answer = await crew.ask(crew.at('live'), token, { method: 'GET', signal }, line);
    await answer.body?.getReader().read();
  }
  console.log(`${LINES} live lines: ${await hub.memoryMb()} MB, ${before} MB without them`);
  hangUp.abort();
}

async function manyEntries(): Promise<void> {
  const hub = await new TestHub().start();
  const wren = await new TestDevice(hub, 1).join();
  const finch = await new TestDevice(hub, 2).join();
  await wren.act(opened);
  for (let made = 0; made < ENTRIES; made += ENTRIES_AN_ACT)
    await wren.act(...Array.from({ length: ENTRIES_AN_ACT }, (_, at) => gauged(400 + (at % 400))));
  let start = performance.now();
  const given = await wren.exchange();
  const push = seconds(start);
  start = performance.now();
  const taken = await finch.exchange();
  const pull = seconds(start);
  if (given.notShared !== 0 || taken.received !== ENTRIES + 1)
    throw new Error('entries are missing');
  console.log(`${ENTRIES} entries: given in ${push} s, taken in ${pull} s`);
  await hub.end();
}

/** Acts one after the other; the other device hears of each on its live line and fetches it. */
async function actToOther(): Promise<void> {
  const { hub, wren, finch } = await crewOfTwo();
  let heard: () => void = () => undefined;
  const { link } = finch.state;
  const line = new LiveLine({
    hub: new HubClient(hub.fetch, link),
    onNews: () => heard(),
    onRemoved: () => undefined,
    after: (ms, done) => {
      const timer = setTimeout(done, ms);
      return () => clearTimeout(timer);
    },
    random: Math.random
  });
  const first = new Promise<void>((resolve) => (heard = resolve));
  const listening = line.run();
  await first;
  const times: number[] = [];
  for (let act = 0; act < ACTS; act++) {
    const news = new Promise<void>((resolve) => (heard = resolve));
    const start = performance.now();
    await wren.act(gauged(400 + act));
    await wren.exchange();
    await news;
    if ((await finch.exchange()).received !== 1) throw new Error('it did not come');
    times.push(performance.now() - start);
  }
  line.stop();
  await listening;
  const [half, most] = [quantile(times, 0.5), quantile(times, 0.99)].map((ms) => ms.toFixed(1));
  console.log(`from an act to the other device, ${ACTS} acts: p50 ${half} ms, p99 ${most} ms`);
  await hub.end();
}

const hub = await hubProcess();
await liveLines(hub);
await parcelsASecond(hub);
await hub.end();
await manyEntries();
await actToOther();
