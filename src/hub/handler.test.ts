import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Hub, createHub, hashOf } from './handler.ts';
import { HubFull } from './hub-store.ts';
import { type Limits, unpackPull } from './protocol.ts';
import { SqliteHubStore } from './sqlite-store.ts';
import { deviceOf } from '../../tests/support/hub-store-contract.ts';

const key = (bytes: number, fill: number) => Buffer.alloc(bytes, fill).toString('base64url');
const HUB_KEY = key(32, 1);
const SPACE = key(16, 2);
const [KEEPER, MEMBER, STRANGER] = [key(32, 3), key(32, 4), key(32, 5)];
const [WREN, FINCH] = [deviceOf(1), deviceOf(2)];
const INVITE = { invite: key(12, 6), secret: key(14, 7) };
const DAY = 86_400_000;

let folder: string;
let store: SqliteHubStore;
let hub: Hub;
let time: number;
const faults: unknown[] = [];

async function start(limits: Partial<Limits> = {}): Promise<void> {
  store = new SqliteHubStore(join(folder, 'hub.db'));
  await store.firstHubKey(hashOf(HUB_KEY), time);
  hub = createHub({ store, now: () => time, limits, onFault: (error) => faults.push(error) });
}

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'hub-'));
  time = 1_790_000_000_000;
  faults.length = 0;
  await start();
});
afterEach(async () => {
  await hub.close();
  rmSync(folder, { recursive: true, force: true });
});

type Body = Uint8Array<ArrayBuffer> | string | Record<string, unknown>;

async function ask(method: string, path: string, token?: string, body?: Body, address = '::1') {
  const answer = await hub.handle(
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
  return { answer, status: answer.status, value, told: `${answer.status} ${value.error ?? 'ok'}` };
}

const person = (token: string, device: string) => ({ tokenHash: hashOf(token), device, label: '' });
const open = () => ask('POST', '/space', HUB_KEY, { space: SPACE, ...person(KEEPER, WREN) });
const invite = (role = 'member') =>
  ask('POST', `/${SPACE}/invite`, KEEPER, {
    invite: INVITE.invite,
    secretHash: hashOf(INVITE.secret),
    role
  });
const join_ = (token = MEMBER, more: Record<string, unknown> = {}, address = '::1') =>
  ask('POST', '/join', undefined, { ...INVITE, ...person(token, FINCH), ...more }, address);
const push = (token: string, device: string, first: number, last: number, bytes = 10) =>
  ask(
    'POST',
    `/${SPACE}/parcel?device=${device}&first=${first}&last=${last}`,
    token,
    new Uint8Array(bytes).fill(first)
  );
async function crew(): Promise<void> {
  await open();
  await invite();
  await join_();
}
async function pull(token: string, have: Record<string, number> = {}) {
  const { answer } = await ask('POST', `/${SPACE}/pull`, token, { have });
  return unpackPull(new Uint8Array(await answer.arrayBuffer()));
}

describe('spaces and invitations', () => {
  it('only the holder of the hub key opens spaces', async () => {
    expect((await ask('POST', '/space', STRANGER, {})).told).toBe('401 not-let-in');
    expect((await ask('POST', '/space', undefined, {})).told).toBe('401 not-let-in');
    expect((await open()).value).toEqual({ space: SPACE, role: 'keeper' });
    expect((await open()).status, 'the same again').toBe(200);
    const other = { space: SPACE, ...person(STRANGER, FINCH) };
    expect((await ask('POST', '/space', HUB_KEY, other)).told).toBe('409 taken');
    const inside = { space: key(16, 9), ...person(STRANGER, FINCH) };
    expect((await ask('POST', '/space', KEEPER, inside)).told).toBe('403 not-let-in');
    expect((await ask('POST', `/${SPACE}/pull`, HUB_KEY, { have: {} })).told).toBe(
      '403 not-let-in'
    );
  });

  it('an invitation lets one in for seven days, and a repeated join is harmless', async () => {
    await open();
    expect((await invite()).value.invites).toMatchObject([{ role: 'member', state: 'open' }]);
    time += 7 * DAY - 1;
    const first = await join_();
    expect(first.value).toMatchObject({ space: SPACE, role: 'member' });
    expect((await join_()).value).toEqual(first.value);
    expect((await join_(STRANGER)).told).toBe('403 invite-used');
    expect((await push(MEMBER, FINCH, 1, 1)).status).toBe(200);
  });

  it('an invitation that is over, taken back, wrong or cut lets nobody in', async () => {
    await open();
    await invite();
    expect((await join_(MEMBER, { secret: key(14, 9) })).told).toBe('403 invite-unknown');
    expect((await join_(MEMBER, { invite: key(12, 9) })).told).toBe('403 invite-unknown');
    expect((await join_(MEMBER, { secret: INVITE.secret.slice(1) })).told).toBe('400 bad-request');
    expect((await join_(MEMBER, { tokenHash: 'short' })).told).toBe('400 bad-request');
    expect((await join_(MEMBER, { device: '../x' })).told).toBe('400 bad-request');
    time += 7 * DAY;
    expect((await join_()).told).toBe('403 invite-expired');
    await ask('POST', `/${SPACE}/invite`, KEEPER, { revoke: INVITE.invite });
    expect((await join_()).told).toBe('403 invite-revoked');
    expect((await pull(KEEPER))?.parcels).toEqual([]);
  });

  it('of 10,000 joins guessed from one address, ten a minute are looked at and none gets in', async () => {
    await open();
    await invite();
    const told: Record<string, number> = {};
    for (let guess = 0; guess < 10_000; guess++) {
      const secret = Buffer.from(String(guess).padStart(14, '.')).toString('base64url');
      const answer = (await join_(STRANGER, { secret })).told;
      told[answer] = (told[answer] ?? 0) + 1;
      time += 30;
    }
    // 300 s hold five whole minutes and the first of the sixth.
    expect(told).toEqual({ '403 invite-unknown': 50, '429 too-many': 9950 });
    expect((await join_(MEMBER, {}, 'another address')).status).toBe(200);
    expect((await store.accesses(SPACE)).length).toBe(2);
  });

  it('tokens guessed from one address are not looked at after ten a minute', async () => {
    await open();
    const told = [];
    for (let guess = 0; guess < 12; guess++)
      told.push((await ask('POST', `/${SPACE}/pull`, key(32, 100 + guess), { have: {} })).status);
    expect(told).toEqual([...Array(10).fill(401), 429, 429]);
    expect((await ask('POST', `/${SPACE}/pull`, KEEPER, { have: {} })).status).toBe(200);
  });

  it('what the hub keeps holds no token, secret or hub key', async () => {
    await crew();
    await push(MEMBER, FINCH, 1, 1);
    const rows = JSON.stringify([await store.accesses(SPACE), await store.invites(SPACE, time)]);
    for (const secret of [HUB_KEY, KEEPER, MEMBER, INVITE.secret]) {
      expect(rows).not.toContain(secret);
      expect(await store.accessOf(secret)).toBeUndefined();
    }
  });
});

describe('roles', () => {
  it('a member appends for its own device only; a keeper carries in for others', async () => {
    await crew();
    expect((await push(MEMBER, WREN, 1, 1)).told).toBe('403 not-your-device');
    expect((await push(MEMBER, FINCH, 1, 2)).value).toEqual({ last: 2 });
    expect((await push(KEEPER, FINCH, 3, 3)).value).toEqual({ last: 3 });
    expect((await push(KEEPER, deviceOf(7), 1, 4)).value).toEqual({ last: 4 });
  });

  it('a member neither invites, revokes nor removes others, and sees who is there', async () => {
    await crew();
    for (const body of [
      {},
      { invite: key(12, 8), secretHash: key(32, 8), role: 'keeper' },
      { revoke: INVITE.invite }
    ])
      expect((await ask('POST', `/${SPACE}/invite`, MEMBER, body)).told).toBe('403 keeper-only');
    const { value } = await ask('POST', `/${SPACE}/access`, MEMBER, {});
    const accesses = value.accesses as { id: string; role: string }[];
    const keeper = accesses.find(({ role }) => role === 'keeper')?.id;
    expect((await ask('POST', `/${SPACE}/access`, MEMBER, { remove: keeper })).told).toBe(
      '403 keeper-only'
    );
    expect(JSON.stringify(value)).not.toContain('token');
  });

  it('whoever is removed is out at once, his stream too; the last keeper stays', async () => {
    await crew();
    const { answer } = await ask('GET', `/${SPACE}/live`, MEMBER);
    const reader = answer.body?.getReader();
    await reader?.read();
    const { value } = await ask('POST', `/${SPACE}/access`, MEMBER, {});
    const removed = await ask('POST', `/${SPACE}/access`, KEEPER, { remove: value.own });
    expect(removed.value.accesses).toMatchObject(
      expect.arrayContaining([expect.objectContaining({ removed: true })])
    );
    expect((await reader?.read())?.done).toBe(true);
    expect((await push(MEMBER, FINCH, 1, 1)).told).toBe('403 removed');
    expect((await ask('POST', `/${SPACE}/pull`, MEMBER, { have: {} })).told).toBe('403 removed');
    const own = (await ask('POST', `/${SPACE}/access`, KEEPER, {})).value.own;
    expect((await ask('POST', `/${SPACE}/access`, KEEPER, { remove: own })).told).toBe(
      '409 last-keeper'
    );
  });

  it('a copied phone comes with a new device in its own role', async () => {
    await crew();
    const added = await ask('POST', `/${SPACE}/access`, MEMBER, person(STRANGER, deviceOf(3)));
    expect(added.status).toBe(200);
    expect((await push(STRANGER, deviceOf(3), 1, 1)).status).toBe(200);
    expect((await push(STRANGER, FINCH, 1, 1)).told).toBe('403 not-your-device');
    expect((await ask('POST', `/${SPACE}/invite`, STRANGER, {})).told).toBe('403 keeper-only');
  });

  it('one space tells nothing of another', async () => {
    await crew();
    const other = key(16, 8);
    await ask('POST', '/space', HUB_KEY, { space: other, ...person(STRANGER, WREN) });
    for (const [method, path] of [
      ['POST', 'pull'],
      ['GET', 'live'],
      ['GET', `photo/${key(32, 1)}`],
      ['POST', 'access']
    ])
      expect(
        (
          await ask(
            method,
            `/${SPACE}/${path}`,
            STRANGER,
            method === 'POST' ? { have: {} } : undefined
          )
        ).told
      ).toBe('403 not-let-in');
    expect((await ask('POST', `/${key(16, 99)}/pull`, STRANGER, { have: {} })).told).toBe(
      '403 not-let-in'
    );
  });
});

describe('parcels', () => {
  it('a lost answer or a doubled request is told where the head is', async () => {
    await crew();
    expect((await push(MEMBER, FINCH, 1, 3)).value).toEqual({ last: 3 });
    const again = await push(MEMBER, FINCH, 1, 3);
    expect([again.told, again.value.last]).toEqual(['409 behind', 3]);
    expect((await push(MEMBER, FINCH, 7, 9)).value.last, 'a gap').toBe(3);
  });

  it('are given out as they came, with the heads', async () => {
    await crew();
    await push(MEMBER, FINCH, 1, 3, 70_000);
    await push(KEEPER, WREN, 1, 1, 5);
    const pulled = await pull(KEEPER, { [WREN]: 1 });
    expect(pulled?.heads).toEqual({ [WREN]: 1, [FINCH]: 3 });
    expect(pulled?.parcels.map(({ device, first, last }) => [device, first, last])).toEqual([
      [FINCH, 1, 3]
    ]);
    expect(Buffer.from(pulled?.parcels[0].bytes ?? []).equals(Buffer.alloc(70_000, 1))).toBe(true);
  });

  it.each([
    ['no bytes', FINCH, '1', '1', 0, '400 bad-request'],
    ['a MiB and a byte', FINCH, '1', '1', 2 ** 20 + 1, '413 too-large'],
    ['the largest', FINCH, '1', '1', 2 ** 20, '200 ok'],
    ['no device', '', '1', '1', 9, '400 bad-request'],
    ['a device that is none', '__proto__', '1', '1', 9, '400 bad-request'],
    ['number 0', FINCH, '0', '1', 9, '400 bad-request'],
    ['turned numbers', FINCH, '2', '1', 9, '400 bad-request'],
    ['half a number', FINCH, '1', '1.5', 9, '400 bad-request'],
    ['a number beyond all', FINCH, '1', '1e300', 9, '400 bad-request'],
    ['words for numbers', FINCH, 'one', 'two', 9, '400 bad-request']
  ])('with %s', async (_what, device, first, last, bytes, told) => {
    await crew();
    const path = `/${SPACE}/parcel?device=${device}&first=${first}&last=${last}`;
    expect((await ask('POST', path, MEMBER, new Uint8Array(bytes))).told).toBe(told);
    expect((await pull(MEMBER))?.parcels.length).toBe(told === '200 ok' ? 1 : 0);
  });

  it('a body that says it is short and is long is read no further than allowed', async () => {
    await crew();
    let read = 0;
    const endless = new ReadableStream<Uint8Array>({
      pull(controller) {
        read += 65_536;
        controller.enqueue(new Uint8Array(65_536));
      }
    });
    const request = new Request(
      `http://hub.test/hub/1/${SPACE}/parcel?device=${FINCH}&first=1&last=1`,
      {
        method: 'POST',
        headers: { authorization: `Bearer ${MEMBER}` },
        body: endless,
        duplex: 'half'
      } as RequestInit
    );
    expect((await hub.handle(request, '::1')).status).toBe(413);
    expect(read).toBeLessThan(2 ** 20 + 4 * 65_536);
  });

  it.each([
    ['a list', '[]'],
    ['half of JSON', '{"have":'],
    ['nothing', ''],
    ['a have that is no vector', '{"have":{"x":1}}'],
    ['negative numbers', `{"have":{"${FINCH}":-1}}`],
    ['hostile keys', '{"have":{"__proto__":1}}']
  ])('a pull with %s is refused', async (_what, body) => {
    await crew();
    expect((await ask('POST', `/${SPACE}/pull`, MEMBER, body)).told).toBe('400 bad-request');
  });

  it('a full space and a full disk are told apart, and nothing is lost', async () => {
    await hub.close();
    await start({ spaceBytes: 100 });
    await crew();
    expect((await push(MEMBER, FINCH, 1, 1, 90)).status).toBe(200);
    expect((await push(MEMBER, FINCH, 2, 2, 11)).told).toBe('507 space-full');
    store.append = () => Promise.reject(new HubFull(new Error('SQLITE_FULL')));
    expect((await push(MEMBER, FINCH, 2, 2, 1)).told).toBe('507 hub-full');
    expect((await pull(MEMBER))?.heads).toEqual({ [FINCH]: 1 });
  });

  it('a fault of the store is an answer, and is told to whoever runs the hub', async () => {
    await crew();
    store.append = () => Promise.reject(new Error('the disk is on fire'));
    const { told, value } = await push(MEMBER, FINCH, 1, 1);
    expect(told).toBe('500 hub-failed');
    expect(JSON.stringify(value)).not.toContain('fire');
    expect(String(faults[0])).toContain('fire');
  });

  it('a token that asks too often waits, and others do not', async () => {
    await hub.close();
    await start({ requestsPerMinute: 3 });
    await crew();
    const told = [];
    for (let at = 1; at <= 5; at++) told.push((await push(MEMBER, FINCH, at, at)).status);
    expect(told).toEqual([200, 200, 200, 429, 429]);
    time += 60_001;
    expect((await push(MEMBER, FINCH, 4, 4)).status).toBe(200);
  });
});

describe('photos', () => {
  const id = key(32, 77);
  it('are kept sealed and given to members only', async () => {
    await crew();
    const put = await ask('PUT', `/${SPACE}/photo/${id}`, MEMBER, new Uint8Array([1, 2, 3]));
    expect(put.value).toEqual({ photo: id });
    const { answer } = await ask('GET', `/${SPACE}/photo/${id}`, KEEPER);
    expect([...new Uint8Array(await answer.arrayBuffer())]).toEqual([1, 2, 3]);
    expect((await ask('GET', `/${SPACE}/photo/${key(32, 78)}`, KEEPER)).told).toBe(
      '404 no-such-thing'
    );
    expect((await ask('GET', `/${SPACE}/photo/${id}`, STRANGER)).told).toBe('401 not-let-in');
    expect((await ask('PUT', `/${SPACE}/photo/short`, MEMBER, new Uint8Array(1))).told).toBe(
      '400 bad-request'
    );
  });

  it('of 8 MiB are taken, larger ones are not', async () => {
    await crew();
    expect(
      (await ask('PUT', `/${SPACE}/photo/${id}`, MEMBER, new Uint8Array(8 * 2 ** 20))).status
    ).toBe(200);
    const larger = new Uint8Array(8 * 2 ** 20 + 1025);
    expect((await ask('PUT', `/${SPACE}/photo/${key(32, 1)}`, MEMBER, larger)).told).toBe(
      '413 too-large'
    );
  });
});

describe('the live stream', () => {
  const lines = async (reader: ReadableStreamDefaultReader<Uint8Array>, count: number) => {
    let text = '';
    while (text.split('\n').length <= count)
      text += new TextDecoder().decode((await reader.read()).value);
    return text;
  };

  it('tells the heads, then each parcel of its own space', async () => {
    await crew();
    await push(MEMBER, FINCH, 1, 2);
    const { answer } = await ask('GET', `/${SPACE}/live`, KEEPER);
    expect(answer.headers.get('content-type')).toBe('application/x-ndjson');
    const reader = (answer.body as ReadableStream<Uint8Array>).getReader();
    expect(await lines(reader, 1)).toBe(`{"heads":{"${FINCH}":2}}\n`);
    await ask('POST', '/space', HUB_KEY, { space: key(16, 8), ...person(STRANGER, WREN) });
    await ask(
      'POST',
      `/${key(16, 8)}/parcel?device=${WREN}&first=1&last=1`,
      STRANGER,
      new Uint8Array(1)
    );
    await push(MEMBER, FINCH, 3, 3);
    await push(KEEPER, WREN, 1, 5);
    expect(await lines(reader, 2)).toBe(`["${FINCH}",3]\n["${WREN}",5]\n`);
    await reader.cancel();
    expect(hub.streams).toBe(0);
  });

  it('four a token, and an empty line tells that it lives', async () => {
    await hub.close();
    await start({ pulseMs: 5 });
    await crew();
    const open_ = () => ask('GET', `/${SPACE}/live`, MEMBER);
    const streams = [await open_(), await open_(), await open_(), await open_()];
    expect((await open_()).told).toBe('429 too-many');
    expect((await ask('GET', `/${SPACE}/live`, KEEPER)).status).toBe(200);
    const reader = (streams[0].answer.body as ReadableStream<Uint8Array>).getReader();
    expect(await lines(reader, 3)).toMatch(/^\{"heads":\{\}\}\n\n\n/);
    await reader.cancel();
    expect((await open_()).status).toBe(200);
  });
});

describe('addresses', () => {
  it.each([
    ['GET', 'http://hub.test/hub/1', 200],
    ['GET', 'http://hub.test/hub/2/x/pull', 404],
    ['GET', 'http://hub.test/hub/1/x/y/z/more', 404],
    ['DELETE', `http://hub.test/hub/1/${SPACE}/parcel`, 404],
    ['GET', `http://hub.test/hub/1/${SPACE}/constructor`, 404],
    ['POST', 'http://hub.test/hub/1/constructor', 404]
  ])('%s %s: %i', async (method, url, status) => {
    expect((await hub.handle(new Request(url, { method }), '::1')).status).toBe(status);
    expect(faults).toEqual([]);
  });

  it('no answer may be kept or framed as anything else', async () => {
    const { answer } = await ask('GET', '');
    expect(answer.headers.get('cache-control')).toBe('no-store');
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
    expect(answer.headers.get('set-cookie')).toBeNull();
  });
});
