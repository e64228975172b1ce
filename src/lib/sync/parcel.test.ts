import { createHmac, createDecipheriv, hkdfSync } from 'node:crypto';
import { gunzipSync } from 'node:zlib';
import { beforeAll, describe, expect, it } from 'vitest';
import { canonicalJson, type StoredEvent } from '$lib/journal';
import { toBase64Url, utf8 } from './bytes.ts';
import { type SpaceKeys, deriveKeys, photoName, seal } from './keys.ts';
import { markOf, openParcel, sealParcel } from './parcel.ts';
import { MAX_UNPACKED_BYTES, pack, unpack } from './squeeze.ts';

const JOB = '018f0000-0000-7000-8000-00000000000a';
const DEVICE = '018f0000-0000-7000-8000-000000000001';
const KEY = toBase64Url(new Uint8Array(32).fill(9));
const SPACE = 'AAAAAAAAAAAAAAAAAAAAAA';
const event = (deviceSeq: number): StoredEvent => ({
  id: `01900000-0000-7000-8000-${String(deviceSeq).padStart(12, '0')}`,
  jobId: JOB,
  deviceId: DEVICE,
  deviceSeq,
  at: '2024-05-01T08:00:00.000Z',
  sorter: 'Wren',
  type: 'jobOpened',
  v: 1,
  body: { name: 'Barn' }
});
const note = { seen: { [DEVICE]: 4 }, after: 'x' };
let keys: SpaceKeys;
beforeAll(async () => {
  keys = await deriveKeys(KEY, SPACE);
});
const sealed = async () => {
  const parcel = await sealParcel(
    keys,
    SPACE,
    { device: DEVICE, events: [event(5), event(6)] },
    note
  );
  if (!parcel) throw new Error('too large');
  return parcel;
};

describe('a parcel', () => {
  it('opens to what was put in', async () => {
    const parcel = await sealed();
    expect(await openParcel(keys, SPACE, JOB, parcel)).toEqual({
      ok: true,
      parcel: { device: DEVICE, first: 5, last: 6, events: [event(5), event(6)], ...note }
    });
  });

  it('is what its page says, opened by other means: HKDF, AES-256-GCM, gzip, canonical lines', async () => {
    const { bytes } = await sealed();
    const key = hkdfSync('sha256', Buffer.from(KEY, 'base64url'), SPACE, 'evencourse 1 parcel', 32);
    const open = createDecipheriv('aes-256-gcm', Buffer.from(key), bytes.subarray(0, 12));
    open.setAAD(Buffer.from(JSON.stringify(['evencourse-parcel', 1, SPACE, DEVICE, 5, 6])));
    open.setAuthTag(bytes.subarray(-16));
    const packed = Buffer.concat([open.update(bytes.subarray(12, -16)), open.final()]);
    const lines = gunzipSync(packed).toString('utf8').split('\n');
    expect(lines).toEqual([
      `{"after":"x","seen":{"${DEVICE}":4}}`,
      canonicalJson(event(5)),
      canonicalJson(event(6)),
      ''
    ]);
  });

  it('with any one bit turned, or moved to another place, does not open', async () => {
    const parcel = await sealed();
    for (let at = 0; at < parcel.bytes.length; at++) {
      const bytes = parcel.bytes.slice();
      bytes[at] ^= 1;
      expect(await openParcel(keys, SPACE, JOB, { ...parcel, bytes })).toMatchObject({
        fault: 'not-ours'
      });
    }
    for (const moved of [
      { first: 4, last: 5 },
      { last: 7 },
      { device: JOB },
      { bytes: parcel.bytes.slice(0, 20) },
      { bytes: new Uint8Array() }
    ])
      expect(await openParcel(keys, SPACE, JOB, { ...parcel, ...moved })).toMatchObject({
        fault: 'not-ours'
      });
  });

  it('that is a bomb is let grow no further than allowed', async () => {
    const bomb = await pack(new Uint8Array(MAX_UNPACKED_BYTES + 1));
    expect(bomb.length).toBeLessThan(20_000);
    expect(await unpack(bomb)).toBeUndefined();
    expect((await unpack(await pack(new Uint8Array(MAX_UNPACKED_BYTES))))?.length).toBe(
      MAX_UNPACKED_BYTES
    );
    const bytes = await seal(keys.parcel, bomb, ['evencourse-parcel', 1, SPACE, DEVICE, 1, 1]);
    const opened = await openParcel(keys, SPACE, JOB, { device: DEVICE, first: 1, last: 1, bytes });
    expect(opened).toMatchObject({ ok: false, fault: 'too-large' });
  });

  it.each([
    ['nothing', ''],
    ['no line end', '{"after":"","seen":{}}'],
    ['no head', `${canonicalJson(event(1))}\n`],
    ['a head of hostile keys', `{"after":"","seen":{"__proto__":1}}\n${canonicalJson(event(1))}\n`],
    ['too few lines', '{"after":"","seen":{}}\n'],
    [
      'too many lines',
      `{"after":"","seen":{}}\n${canonicalJson(event(1))}\n${canonicalJson(event(2))}\n`
    ],
    ['a line that is not canonical', `{"after":"","seen":{}}\n${JSON.stringify(event(1))}\n`],
    ['half a line', `{"after":"","seen":{}}\n${canonicalJson(event(1)).slice(9)}\n`],
    ['deep nesting', `{"after":"","seen":{}}\n${'['.repeat(9999)}\n`]
  ])('rightly sealed, with %s, is refused with the reason', async (_what, text) => {
    const bytes = await seal(keys.parcel, await pack(utf8(text)), [
      'evencourse-parcel',
      1,
      SPACE,
      DEVICE,
      1,
      1
    ]);
    expect(
      await openParcel(keys, SPACE, JOB, { device: DEVICE, first: 1, last: 1, bytes })
    ).toMatchObject({ ok: false, fault: 'broken' });
  });

  it('gzip that is cut or followed by more is none', async () => {
    const packed = await pack(utf8('slate'));
    expect(await unpack(packed.slice(0, -3))).toBeUndefined();
    expect(await unpack(utf8('slate'))).toBeUndefined();
  });
});

it('a photo is named by HMAC-SHA-256 of its hash (RFC 2104), under a key of its own', async () => {
  const key = hkdfSync('sha256', Buffer.from(KEY, 'base64url'), SPACE, 'evencourse 1 id', 32);
  const name = createHmac('sha256', Buffer.from(key)).update('ab12').digest('base64url');
  expect(await photoName(keys, 'ab12')).toBe(name);
});

it('marks differ where anything of an event differs', async () => {
  const mark = await markOf(event(1));
  expect(mark).toMatch(/^[0-9a-f]{32}$/);
  expect(await markOf({ ...event(1), sorter: 'Finch' })).not.toBe(mark);
  expect(await markOf(undefined)).toBe('');
});
