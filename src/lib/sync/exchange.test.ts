import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { EngineError } from '$lib/engine';
import { HubClient } from './hub-client.ts';
import {
  JOB,
  type TestDevice,
  type TestHub,
  crewOfTwo,
  gauged
} from '../../../tests/support/crew-kit.ts';

let hub: TestHub;
let wren: TestDevice;
let finch: TestDevice;
beforeEach(async () => {
  ({ hub, wren, finch } = await crewOfTwo());
});
afterEach(() => hub.end());

describe('J32: an exchange', () => {
  it('brings what one did to the other, and back', async () => {
    await wren.act(gauged(640), gauged(655));
    expect(await wren.exchange()).toEqual({
      outcome: 'shared',
      notShared: 0,
      received: 0,
      warnings: []
    });
    await finch.act(gauged(700));
    expect(await finch.exchange()).toMatchObject({ outcome: 'shared', received: 2 });
    expect(await wren.exchange()).toMatchObject({ outcome: 'shared', received: 1 });
    expect(await wren.picture()).toBe(await finch.picture());
    expect((await wren.all()).length).toBe(4);
  });

  it('without signal nothing changes, and what is not shared yet is counted', async () => {
    await wren.act(gauged(640), gauged(655));
    const before = await wren.picture();
    const report = await wren.exchange(() => Promise.reject(new TypeError('no signal')));
    expect(report).toEqual({ outcome: 'no-answer', notShared: 2, received: 0, warnings: [] });
    expect(await wren.picture()).toBe(before);
    expect((await wren.exchange()).notShared).toBe(0);
  });

  it('a lost answer is found out, and nothing is sent twice', async () => {
    await wren.act(gauged(640));
    let isLost = false;
    const report = await wren.exchange(async (url, init) => {
      const answer = await hub.fetch(url, init);
      if (!url.includes('/parcel') || isLost) return answer;
      isLost = true;
      throw new TypeError('the answer was lost');
    });
    expect(report).toMatchObject({ outcome: 'no-answer', notShared: 1 });
    await wren.act(gauged(650));
    expect(await wren.exchange()).toMatchObject({ outcome: 'shared', notShared: 0 });
    expect((await finch.exchange()).received).toBe(2);
  });

  it('30,000 events of a job with large plans go in parcels that the hub takes', async () => {
    for (let part = 0; part < 30; part++)
      await wren.act(...Array.from({ length: 1000 }, (_, at) => gauged(500 + (at % 300))));
    expect(await wren.exchange()).toMatchObject({ outcome: 'shared', notShared: 0 });
    expect(await finch.exchange()).toMatchObject({ outcome: 'shared', received: 30_000 });
    expect(await finch.picture()).toBe(await wren.picture());
  }, 120_000);

  it('photos follow their acts, sealed, and are held to their hash', async () => {
    const bytes = new Uint8Array([255, 216, 7, 7]).buffer;
    const photo = { palletId: null, caption: 'corner', type: 'image/jpeg', bytes } as const;
    const { events } = await wren.store.addPhoto(JOB, photo);
    const { photoId, sha256 } = events[0].body as { photoId: string; sha256: string };
    let isOut = true;
    const report = await wren.exchange((url, init) =>
      url.includes('/photo/') && isOut ? Promise.reject(new TypeError('cut')) : hub.fetch(url, init)
    );
    expect(report.outcome).toBe('no-answer');
    expect((await finch.exchange()).outcome).toBe('shared');
    expect(await finch.store.photo(photoId)).toBeUndefined();
    isOut = false;
    await wren.exchange();
    await finch.exchange();
    expect(new Uint8Array((await finch.store.photo(photoId))?.bytes ?? new ArrayBuffer())).toEqual(
      new Uint8Array(bytes)
    );
    expect(finch.state.photosWanted).toEqual([]);
    // The hub's own files hold nothing of what was said, nor what would open it.
    const files = readdirSync(hub.folder, { withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map(({ name: file }) => readFileSync(join(hub.folder, file), 'latin1'));
    const whole = files.join('');
    expect(whole).toContain(hub.space);
    const { token, jobKey } = wren.state.link;
    for (const secret of [
      'corner',
      sha256,
      photoId,
      'slateGauged',
      'Wren',
      'Barn',
      JOB,
      token,
      jobKey
    ])
      expect(whole, secret).not.toContain(secret);
  });

  it('a full disk keeps the cursor, is said, and is tried again', async () => {
    await wren.act(gauged(640));
    await wren.exchange();
    const merge = finch.store.merge.bind(finch.store);
    finch.store.merge = () => Promise.reject(new DOMException('full', 'QuotaExceededError'));
    expect((await finch.exchange()).outcome).toBe('device-full');
    expect((await finch.all()).length).toBe(1);
    finch.store.merge = merge;
    expect(await finch.exchange()).toMatchObject({ outcome: 'shared', received: 1 });
  });

  it('whoever was removed is told so and keeps what he has', async () => {
    const client = new HubClient(hub.fetch, wren.state.link);
    const { accesses } = await client.accesses();
    await client.accesses({ remove: accesses.find(({ role }) => role === 'member')?.id });
    await finch.act(gauged(600));
    expect(await finch.exchange()).toMatchObject({ outcome: 'removed', notShared: 1 });
    expect((await finch.all()).length).toBe(2);
  });

  it('a fault of our own is not taken for a bad line', async () => {
    finch.store.numbers = () => Promise.reject(new EngineError('inconsistent', 'a fault'));
    await expect(finch.exchange()).rejects.toThrow('a fault');
  });
});
