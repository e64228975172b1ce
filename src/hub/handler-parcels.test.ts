import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { HubFull } from './hub-store.ts';
import {
  AskedHub,
  FINCH,
  KEEPER,
  MEMBER,
  SPACE,
  STRANGER,
  WREN,
  key
} from '../../tests/support/hub-kit.ts';

let desk: AskedHub;
beforeEach(async () => {
  desk = await new AskedHub().start();
});
afterEach(() => desk.end());

describe('parcels', () => {
  it('a lost answer or a doubled request is told where the head is', async () => {
    await desk.crew();
    expect((await desk.push(MEMBER, FINCH, 1, 3)).value).toEqual({ last: 3 });
    const again = await desk.push(MEMBER, FINCH, 1, 3);
    expect([again.told, again.value.last]).toEqual(['409 behind', 3]);
    expect((await desk.push(MEMBER, FINCH, 7, 9)).value.last, 'a gap').toBe(3);
  });

  it('are given out as they came, with the heads', async () => {
    await desk.crew();
    await desk.push(MEMBER, FINCH, 1, 3, 70_000);
    await desk.push(KEEPER, WREN, 1, 1, 5);
    const pulled = await desk.pull(KEEPER, { [WREN]: 1 });
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
    await desk.crew();
    const path = `/${SPACE}/parcel?device=${device}&first=${first}&last=${last}`;
    expect((await desk.ask('POST', path, MEMBER, new Uint8Array(bytes))).told).toBe(told);
    expect((await desk.pull(MEMBER))?.parcels.length).toBe(told === '200 ok' ? 1 : 0);
  });

  it('a body that says it is short and is long is read no further than allowed', async () => {
    await desk.crew();
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
    expect((await desk.hub.handle(request, '::1')).status).toBe(413);
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
    await desk.crew();
    expect((await desk.ask('POST', `/${SPACE}/pull`, MEMBER, body)).told).toBe('400 bad-request');
  });

  it('a full space and a full disk are told apart, and nothing is lost', async () => {
    await desk.startAgain({ spaceBytes: 100 });
    await desk.crew();
    expect((await desk.push(MEMBER, FINCH, 1, 1, 90)).status).toBe(200);
    expect((await desk.push(MEMBER, FINCH, 2, 2, 11)).told).toBe('507 space-full');
    desk.store.append = () => Promise.reject(new HubFull(new Error('SQLITE_FULL')));
    expect((await desk.push(MEMBER, FINCH, 2, 2, 1)).told).toBe('507 hub-full');
    expect((await desk.pull(MEMBER))?.heads).toEqual({ [FINCH]: 1 });
  });

  it('a fault of the store is an answer, and is told to whoever runs the hub', async () => {
    await desk.crew();
    desk.store.append = () => Promise.reject(new Error('the disk is on fire'));
    const { told, value } = await desk.push(MEMBER, FINCH, 1, 1);
    expect(told).toBe('500 hub-failed');
    expect(JSON.stringify(value)).not.toContain('fire');
    expect(String(desk.faults[0])).toContain('fire');
  });

  it('a token that asks too often waits, and others do not', async () => {
    await desk.startAgain({ requestsPerMinute: 3 });
    await desk.crew();
    const told = [];
    for (let at = 1; at <= 5; at++) told.push((await desk.push(MEMBER, FINCH, at, at)).status);
    expect(told).toEqual([200, 200, 200, 429, 429]);
    desk.time += 60_001;
    expect((await desk.push(MEMBER, FINCH, 4, 4)).status).toBe(200);
  });
});

describe('photos', () => {
  const id = key(32, 77);
  it('are kept sealed and given to members only', async () => {
    await desk.crew();
    const put = await desk.ask('PUT', `/${SPACE}/photo/${id}`, MEMBER, new Uint8Array([1, 2, 3]));
    expect(put.value).toEqual({ photo: id });
    const { answer } = await desk.ask('GET', `/${SPACE}/photo/${id}`, KEEPER);
    expect([...new Uint8Array(await answer.arrayBuffer())]).toEqual([1, 2, 3]);
    expect((await desk.ask('GET', `/${SPACE}/photo/${key(32, 78)}`, KEEPER)).told).toBe(
      '404 no-such-thing'
    );
    expect((await desk.ask('GET', `/${SPACE}/photo/${id}`, STRANGER)).told).toBe('401 not-let-in');
    expect((await desk.ask('PUT', `/${SPACE}/photo/short`, MEMBER, new Uint8Array(1))).told).toBe(
      '400 bad-request'
    );
  });

  it('of 8 MiB are taken, larger ones are not', async () => {
    await desk.crew();
    expect(
      (await desk.ask('PUT', `/${SPACE}/photo/${id}`, MEMBER, new Uint8Array(8 * 2 ** 20))).status
    ).toBe(200);
    const larger = new Uint8Array(8 * 2 ** 20 + 1025);
    expect((await desk.ask('PUT', `/${SPACE}/photo/${key(32, 1)}`, MEMBER, larger)).told).toBe(
      '413 too-large'
    );
  });
});
