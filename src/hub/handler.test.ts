import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  AskedHub,
  FINCH,
  HUB_KEY,
  KEEPER,
  MEMBER,
  SPACE,
  STRANGER,
  WREN,
  key,
  person
} from '../../tests/support/hub-kit.ts';

let desk: AskedHub;
beforeEach(async () => {
  desk = await new AskedHub().start();
});
afterEach(() => desk.end());

describe('the live stream', () => {
  const lines = async (reader: ReadableStreamDefaultReader<Uint8Array>, count: number) => {
    let text = '';
    while (text.split('\n').length <= count)
      text += new TextDecoder().decode((await reader.read()).value);
    return text;
  };

  it('tells the heads, then each parcel of its own space', async () => {
    await desk.crew();
    await desk.push(MEMBER, FINCH, 1, 2);
    const { answer } = await desk.ask('GET', `/${SPACE}/live`, KEEPER);
    expect(answer.headers.get('content-type')).toBe('application/x-ndjson');
    const reader = (answer.body as ReadableStream<Uint8Array>).getReader();
    expect(await lines(reader, 1)).toBe(`{"heads":{"${FINCH}":2}}\n`);
    await desk.ask('POST', '/space', HUB_KEY, { space: key(16, 8), ...person(STRANGER, WREN) });
    await desk.ask(
      'POST',
      `/${key(16, 8)}/parcel?device=${WREN}&first=1&last=1`,
      STRANGER,
      new Uint8Array(1)
    );
    await desk.push(MEMBER, FINCH, 3, 3);
    await desk.push(KEEPER, WREN, 1, 5);
    expect(await lines(reader, 2)).toBe(`["${FINCH}",3]\n["${WREN}",5]\n`);
    await reader.cancel();
    expect(desk.hub.streams).toBe(0);
  });

  it('four a token, and an empty line tells that it lives', async () => {
    await desk.startAgain({ pulseMs: 5 });
    await desk.crew();
    const open_ = () => desk.ask('GET', `/${SPACE}/live`, MEMBER);
    const streams = [await open_(), await open_(), await open_(), await open_()];
    expect((await open_()).told).toBe('429 too-many');
    expect((await desk.ask('GET', `/${SPACE}/live`, KEEPER)).status).toBe(200);
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
    expect((await desk.hub.handle(new Request(url, { method }), '::1')).status).toBe(status);
    expect(desk.faults).toEqual([]);
  });

  it('no answer may be kept or framed as anything else', async () => {
    const { answer } = await desk.ask('GET', '');
    expect(answer.headers.get('cache-control')).toBe('no-store');
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
    expect(answer.headers.get('set-cookie')).toBeNull();
  });
});
