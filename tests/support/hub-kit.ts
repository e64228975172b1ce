import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Hub, createHub, hashOf } from '../../src/hub/handler.ts';
import { type Limits, unpackPull } from '../../src/hub/protocol.ts';
import { SqliteHubStore } from '../../src/hub/sqlite-store.ts';
import { deviceOf } from './hub-store-contract.ts';

/** A key of so many bytes, all the same, as it is written. */
export const key = (bytes: number, fill: number): string =>
  Buffer.alloc(bytes, fill).toString('base64url');

export const HUB_KEY = key(32, 1);
export const SPACE = key(16, 2);
export const [KEEPER, MEMBER, STRANGER] = [key(32, 3), key(32, 4), key(32, 5)];
export const [WREN, FINCH] = [deviceOf(1), deviceOf(2)];
export const INVITE = { invite: key(12, 6), secret: key(14, 7) };

type Body = Uint8Array<ArrayBuffer> | string | Record<string, unknown>;

/** What a person is let in with. */
export const person = (token: string, device: string) => ({
  tokenHash: hashOf(token),
  device,
  label: ''
});

/** For tests: a hub on a real file, asked by requests as they come from the network. */
export class AskedHub {
  readonly #folder = mkdtempSync(join(tmpdir(), 'hub-'));
  /** What went wrong inside, as whoever runs the hub is told. */
  readonly faults: unknown[] = [];
  time = 1_790_000_000_000;
  hub!: Hub;
  store!: SqliteHubStore;

  async start(limits: Partial<Limits> = {}): Promise<this> {
    this.store = new SqliteHubStore(join(this.#folder, 'hub.db'));
    await this.store.firstHubKey(hashOf(HUB_KEY), this.time);
    const onFault = (error: unknown) => void this.faults.push(error);
    this.hub = createHub({ store: this.store, now: () => this.time, limits, onFault });
    return this;
  }

  /** The same hub on the same file with other limits. */
  async startAgain(limits: Partial<Limits>): Promise<void> {
    await this.hub.close();
    await this.start(limits);
  }

  async end(): Promise<void> {
    await this.hub.close();
    rmSync(this.#folder, { recursive: true, force: true });
  }

  async ask(method: string, path: string, token?: string, body?: Body, address = '::1') {
    const answer = await this.hub.handle(
      new Request(`http://hub.test/hub/1${path}`, {
        method,
        headers: token ? { authorization: `Bearer ${token}` } : {},
        body:
          body === undefined || typeof body === 'string' || body instanceof Uint8Array
            ? body
            : JSON.stringify(body)
      }),
      address
    );
    const isJson = answer.headers.get('content-type') === 'application/json';
    const value = (isJson ? await answer.json() : {}) as Record<string, unknown>;
    const told = `${answer.status} ${value.error ?? 'ok'}`;
    return { answer, status: answer.status, value, told };
  }

  /** Opens the space, with its keeper. */
  open() {
    return this.ask('POST', '/space', HUB_KEY, { space: SPACE, ...person(KEEPER, WREN) });
  }

  invite(role = 'member') {
    const { invite, secret } = INVITE;
    const made = { invite, secretHash: hashOf(secret), role };
    return this.ask('POST', `/${SPACE}/invite`, KEEPER, made);
  }

  join(token = MEMBER, more: Record<string, unknown> = {}, address = '::1') {
    const asked = { ...INVITE, ...person(token, FINCH), ...more };
    return this.ask('POST', '/join', undefined, asked, address);
  }

  /** The space with its keeper and one member. */
  async crew(): Promise<void> {
    await this.open();
    await this.invite();
    await this.join();
  }

  push(token: string, device: string, first: number, last: number, bytes = 10) {
    const path = `/${SPACE}/parcel?device=${device}&first=${first}&last=${last}`;
    return this.ask('POST', path, token, new Uint8Array(bytes).fill(first));
  }

  async pull(token: string, have: Record<string, number> = {}) {
    const { answer } = await this.ask('POST', `/${SPACE}/pull`, token, { have });
    return unpackPull(new Uint8Array(await answer.arrayBuffer()));
  }
}
