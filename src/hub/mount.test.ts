import { mkdtempSync, rmSync } from 'node:fs';
import { type IncomingMessage, createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import decodeQR from 'qr/decode.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addressOf, hubKeyLink, openHubForServer, terminalQr } from '../../scripts/hub.js';
import { hashOf } from './handler.ts';
import { deviceOf } from '../../tests/support/hub-store-contract.ts';

const folder = mkdtempSync(join(tmpdir(), 'hub-mount-'));
const key = (bytes: number, fill: number) => Buffer.alloc(bytes, fill).toString('base64url');
let hub: Awaited<ReturnType<typeof openHubForServer>>;
const server = createServer(async (request, response) => {
  if (!(await hub.answer(request, response))) response.writeHead(404).end('the app');
});
let origin: string;

beforeAll(async () => {
  hub = await openHubForServer({ HUB_DATA: folder });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});
afterAll(async () => {
  server.closeAllConnections();
  server.close();
  await hub.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('the hub beside the app', () => {
  it('answers under /hub/ over a real socket, streams too, and leaves the rest alone', async () => {
    expect(await (await fetch(`${origin}/hub/1`)).json()).toEqual({
      hub: 'evencourse',
      version: 1
    });
    expect(await (await fetch(`${origin}/hubcap`)).text()).toBe('the app');
    const headers = { authorization: `Bearer ${hub.newKey}` };
    const [space, token] = [key(16, 1), key(32, 2)];
    const body = { space, tokenHash: hashOf(token), device: deviceOf(1), label: '' };
    const opened = await fetch(`${origin}/hub/1/space`, {
      method: 'POST',
      headers: { ...headers, 'content-type': 'application/json' },
      body: JSON.stringify(body)
    });
    expect(await opened.json()).toEqual({ space, role: 'keeper' });
    const stop = new AbortController();
    const own = { authorization: `Bearer ${token}`, 'content-type': 'application/octet-stream' };
    const live = await fetch(`${origin}/hub/1/${space}/live`, {
      headers: own,
      signal: stop.signal
    });
    const reader = (live.body as ReadableStream<Uint8Array>).getReader();
    const read = async () => new TextDecoder().decode((await reader.read()).value);
    expect(await read()).toBe('{"heads":{}}\n');
    const path = `${origin}/hub/1/${space}/parcel?device=${deviceOf(1)}&first=1&last=2`;
    const pushed = await fetch(path, { method: 'POST', headers: own, body: new Uint8Array(9) });
    expect(await pushed.json()).toEqual({ last: 2 });
    expect(await read()).toBe(`["${deviceOf(1)}",2]\n`);
    stop.abort();
    const large = await fetch(path, {
      method: 'POST',
      headers: own,
      body: new Uint8Array(2 ** 21)
    });
    expect(large.status).toBe(413);
  });

  it('makes its key on the first start only, and a new one when asked', async () => {
    expect(hub.newKey).toMatch(/^[\w-]{43}$/);
    const first = hub.newKey;
    await hub.close();
    hub = await openHubForServer({ HUB_DATA: folder });
    expect(hub.newKey).toBeUndefined();
    await hub.close();
    hub = await openHubForServer({ HUB_DATA: folder, NEW_HUB_KEY: '1' });
    expect(hub.newKey).toMatch(/^[\w-]{43}$/);
    expect(hub.newKey).not.toBe(first);
  });

  it('believes the address that its own proxy tells, and nobody else’s', () => {
    const from = (remoteAddress: string, forwarded?: string) =>
      addressOf({
        socket: { remoteAddress },
        headers: forwarded === undefined ? {} : { 'x-forwarded-for': forwarded }
      } as unknown as IncomingMessage);
    expect(from('203.0.113.9', '198.51.100.1')).toBe('203.0.113.9');
    expect(from('127.0.0.1', '192.0.2.4, 198.51.100.1')).toBe('198.51.100.1');
    expect(from('::1', 'rubbish')).toBe('::1');
    expect(from('127.0.0.1')).toBe('127.0.0.1');
  });

  it('prints a code that a camera reads as the link', () => {
    const link = hubKeyLink('http://192.0.2.7:4173/', key(32, 3));
    expect(link).toBe(`http://192.0.2.7:4173/join#hub1.${key(32, 3)}`);
    const rows = terminalQr(link).split('\n');
    const size = rows[0].length;
    const scale = 4;
    const data = new Uint8Array((size * scale) ** 2 * 4);
    for (let y = 0; y < size * scale; y++)
      for (let x = 0; x < size * scale; x++) {
        const line = Math.floor(y / scale);
        const sign = rows[line >> 1]?.[Math.floor(x / scale)] ?? ' ';
        const isLight = sign === '█' || sign === (line % 2 === 0 ? '▀' : '▄');
        data.fill(isLight ? 255 : 0, (y * size * scale + x) * 4, (y * size * scale + x) * 4 + 3);
        data[(y * size * scale + x) * 4 + 3] = 255;
      }
    expect(decodeQR({ width: size * scale, height: size * scale, data })).toBe(link);
  });
});
