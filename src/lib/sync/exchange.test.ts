import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { EngineError } from '$lib/engine';
import { type StoredEvent, canonicalView } from '$lib/journal';
import { HubClient } from './hub-client.ts';
import { deriveKeys, newJobKey } from './keys.ts';
import { sealParcel } from './parcel.ts';
import { JOB, TestDevice, TestHub, gauged, opened } from '../../../tests/support/crew-kit.ts';

let hub: TestHub;
let wren: TestDevice;
let finch: TestDevice;
beforeEach(async () => {
  hub = await new TestHub().start();
  wren = await new TestDevice(hub, 1).join();
  finch = await new TestDevice(hub, 2).join();
  await wren.act(opened);
  await wren.exchange();
  await finch.exchange();
});
afterEach(() => hub.end());

const id = (device: TestDevice) => device.store.deviceId();

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

describe('J34: a hub that was put back from an old copy', () => {
  it('gets all again from the author, and it is told', async () => {
    await wren.act(gauged(600));
    await wren.exchange();
    const putBack = await hub.copy();
    await finch.act(gauged(610), gauged(620));
    await finch.exchange();
    await wren.exchange();
    await putBack();
    await finch.act(gauged(630));
    const report = await finch.exchange();
    expect(report.warnings).toMatchObject([
      { kind: 'put-back', device: await id(finch), had: 2, has: 0 }
    ]);
    expect(report).toMatchObject({ outcome: 'shared', notShared: 0 });
    await wren.exchange();
    expect(await wren.picture()).toBe(await finch.picture());
    expect((await finch.exchange()).warnings).toEqual([]);
  });

  it('gets from the keeper what its author can send no more', async () => {
    const putBack = await hub.copy();
    await finch.act(gauged(610), gauged(620));
    await finch.exchange();
    await wren.exchange();
    await putBack();
    expect((await wren.exchange()).warnings).toMatchObject([{ kind: 'put-back' }]);
    const third = await new TestDevice(hub, 3).join();
    await third.exchange();
    expect(await third.picture()).toBe(await finch.picture());
  });
});

describe('a copied phone', () => {
  it('is refused, and the others go on', async () => {
    await finch.act(gauged(600));
    await finch.exchange();
    const twin = finch.clone(77);
    await finch.act(gauged(610));
    await twin.act(gauged(999), gauged(998));
    expect((await finch.exchange()).outcome).toBe('shared');
    const before = await twin.picture();
    const report = await twin.exchange();
    expect(report.warnings).toMatchObject([
      { kind: 'held', why: 'same-number', device: await id(finch), first: 2 }
    ]);
    expect(report.notShared).toBe(2);
    expect(await twin.picture()).toBe(before);
    await wren.act(gauged(640));
    await wren.exchange();
    expect((await twin.exchange()).received, 'what others do still comes').toBe(1);
    expect((await wren.all()).length).toBe(4);
  });

  it('is noticed though the hub was put back and the twin wrote on', async () => {
    await finch.act(gauged(600));
    await finch.exchange();
    const putBack = await hub.copy();
    const twin = finch.clone(77);
    await finch.act(gauged(610), gauged(620));
    await finch.exchange();
    await wren.exchange();
    await putBack();
    await twin.act(gauged(999), gauged(998), gauged(997), gauged(996));
    await twin.exchange();
    const before = await wren.picture();
    const report = await wren.exchange();
    expect(report.warnings).toMatchObject([{ kind: 'held', why: 'same-number' }]);
    expect(await wren.picture()).toBe(before);
  });
});

describe('J25, J26 over the hub: both histories of a copied phone are kept', () => {
  /** Readings in the order of what they are, each as often as it counts. */
  const readings = async (device: TestDevice): Promise<unknown[]> =>
    (await device.all()).flatMap(({ body }) => body.points ?? []).sort();

  it.each(['member', 'keeper'] as const)(
    'one tap on the copy of a %s: nothing is counted twice, and all come to the same',
    async (role) => {
      const phone = role === 'member' ? finch : wren;
      const third = role === 'member' ? wren : finch;
      await phone.act(gauged(600));
      await phone.exchange();
      const twin = phone.clone(77);
      await phone.act(gauged(610), gauged(620));
      await phone.exchange();
      await twin.act(gauged(999), gauged(998), gauged(997));
      const shared = await id(phone);
      expect((await twin.exchange()).warnings).toMatchObject([
        { why: 'same-number', device: shared }
      ]);
      expect(await twin.keepBoth(shared)).toBe(true);
      expect(await id(twin)).not.toBe(shared);
      expect(await twin.exchange()).toMatchObject({
        outcome: 'shared',
        notShared: 0,
        warnings: []
      });
      // Both work on, and a third takes it all.
      await twin.act(gauged(700));
      await phone.act(gauged(710));
      for (let round = 0; round < 2; round++)
        for (const device of [twin, phone, third])
          expect(await device.exchange()).toMatchObject({
            outcome: 'shared',
            notShared: 0,
            warnings: []
          });
      const late = await new TestDevice(hub, 9).join();
      await late.exchange();
      const all = [600, 610, 620, 700, 710, 997, 998, 999];
      for (const device of [twin, phone, third, late]) expect(await readings(device)).toEqual(all);
      const views = [twin, phone, third, late].map(async ({ store }) =>
        canonicalView((await store.open(JOB))!.view)
      );
      expect(new Set(await Promise.all(views)).size).toBe(1);
    }
  );

  it('goes on after any lost answer, and a second tap changes nothing', async () => {
    await finch.act(gauged(600));
    await finch.exchange();
    const shared = await id(finch);
    for (let lost = 0; lost < 4; lost++) {
      const twin = finch.clone(100 + lost);
      await finch.act(gauged(610 + lost));
      await finch.exchange();
      await twin.act(gauged(900 + lost));
      await twin.exchange();
      let requests = 0;
      const weather: typeof hub.fetch = async (url, init) => {
        const answer = await hub.fetch(url, init);
        if (requests++ === lost) throw new TypeError('the answer was lost');
        return answer;
      };
      await twin.keepBoth(shared, weather).catch(() => undefined);
      await twin.exchange(weather);
      await twin.exchange();
      await twin.keepBoth(shared);
      await twin.exchange();
      expect(await twin.exchange()).toMatchObject({ notShared: 0, warnings: [] });
      await wren.exchange();
      expect(await readings(wren)).toEqual(await readings(twin));
    }
    expect(await readings(wren)).toEqual([600, 610, 611, 612, 613, 900, 901, 902, 903]);
  });

  it('of an old profile put back, which the hub has more of than it, too', async () => {
    await finch.act(gauged(600));
    await finch.exchange();
    const old = finch.clone(55);
    await finch.act(gauged(610), gauged(620));
    await finch.exchange();
    // It comes back from the old copy and goes to work before there is signal.
    await old.act(gauged(630));
    await old.exchange();
    expect(await old.keepBoth(await id(finch))).toBe(true);
    expect(await old.exchange()).toMatchObject({ notShared: 0, warnings: [] });
    await wren.exchange();
    expect(await readings(wren)).toEqual([600, 610, 620, 630]);
  });
});

describe('J33: a hostile hub or member', () => {
  /** A parcel sealed by whoever has the keys of the crew, put straight into the hub. */
  async function plant(device: TestDevice, events: StoredEvent[], note = { seen: {}, after: '' }) {
    const run = { device: await id(device), events };
    const parcel = await sealParcel(wren.keys, hub.space, run, note);
    if (!parcel) throw new Error('too large');
    return hub.store.append(hub.space, parcel, 2 ** 31, 1);
  }

  async function expectHeld(why: string): Promise<void> {
    await wren.act(gauged(640));
    await wren.exchange();
    const third = await new TestDevice(hub, 3).join();
    const report = await third.exchange();
    expect(report.outcome).toBe('shared');
    expect(report.warnings).toMatchObject([{ kind: 'held', device: await id(finch), why }]);
    expect(await third.all(), 'the others go on').toEqual(await wren.all());
    expect((await third.exchange()).warnings, 'and it stays held').toMatchObject([{ why }]);
  }

  it('noise in place of a parcel: that run is held, the others go on', async () => {
    const bytes = crypto.getRandomValues(new Uint8Array(60_000));
    await hub.store.append(
      hub.space,
      { device: await id(finch), first: 1, last: 3, bytes },
      2 ** 31,
      1
    );
    await expectHeld('not-ours');
  });

  it.each([
    ['another device', (event: StoredEvent) => ({ ...event, deviceId: event.id })],
    ['another job', (event: StoredEvent) => ({ ...event, jobId: event.id })],
    ['another number', (event: StoredEvent) => ({ ...event, deviceSeq: 7 })],
    ['no body', (event: StoredEvent) => ({ ...event, body: {} })]
  ])('an event of %s is not believed', async (_what, change) => {
    const [event] = await finch.act(gauged(600));
    const run = { device: await id(finch), events: [event] };
    const first = await sealParcel(
      wren.keys,
      hub.space,
      { ...run, events: [change(event)] },
      { seen: {}, after: '' }
    );
    await hub.store.append(
      hub.space,
      { ...first!, device: run.device, first: 1, last: 1 },
      2 ** 31,
      1
    );
    await expectHeld(_what === 'another number' ? 'not-ours' : 'broken');
  });

  it('undos in a circle are held', async () => {
    const [one, two] = await finch.act(gauged(600), gauged(610));
    const circle = [
      { ...one, type: 'entryVoided', body: { voids: two.id } },
      { ...two, type: 'entryVoided', body: { voids: one.id } }
    ];
    await plant(finch, circle);
    await expectHeld('circular');
  });

  it('a parcel of another space, other numbers or another key does not open', async () => {
    const [event] = await finch.act(gauged(600));
    const run = { device: await id(finch), events: [event] };
    const note = { seen: {}, after: '' };
    const elsewhere = await deriveKeys(newJobKey(), hub.space);
    const moved = await sealParcel(wren.keys, 'another space', run, note);
    const locked = await sealParcel(elsewhere, hub.space, run, note);
    for (const parcel of [moved, locked]) {
      const other = await new TestHub().start();
      const there = await new TestDevice(other, 5).join();
      there.state = { ...there.state, link: { ...there.state.link } };
      await other.store.append(other.space, parcel!, 2 ** 31, 1);
      expect((await there.exchange()).warnings).toMatchObject([{ why: 'not-ours' }]);
      await other.end();
    }
  });

  it('a gap in what is served is refused by number', async () => {
    await finch.act(gauged(600));
    await finch.exchange();
    await finch.act(gauged(610));
    await finch.exchange();
    const above = hub.store.above.bind(hub.store);
    hub.store.above = async (...asked) =>
      (await above(...asked)).filter(
        ({ first, device }) => first !== 1 || device !== finch.state.link.device
      );
    const report = await wren.exchange();
    expect(report.warnings).toMatchObject([{ kind: 'held', why: 'gap', first: 2 }]);
    hub.store.above = above;
    expect(await wren.exchange()).toMatchObject({ received: 2, warnings: [] });
  });

  it('what is withheld is told: others saw more than is served', async () => {
    const third = await new TestDevice(hub, 3).join();
    await finch.act(gauged(600), gauged(610));
    await finch.exchange();
    await third.exchange();
    await third.act(gauged(700));
    await third.exchange();
    const { heads, above } = hub.store;
    const device = await id(finch);
    hub.store.heads = async (space) => ({ ...(await heads.call(hub.store, space)), [device]: 0 });
    hub.store.above = async (...asked) =>
      (await above.apply(hub.store, asked)).filter((parcel) => parcel.device !== device);
    const report = await wren.exchange();
    expect(report.warnings).toEqual([{ kind: 'withheld', device, seen: 2, given: 0 }]);
    Object.assign(hub.store, { heads, above });
    expect(await wren.exchange()).toMatchObject({ received: 2, warnings: [] });
  });

  it('replay adds nothing, and a hub that repeats itself for ever is left', async () => {
    await finch.act(gauged(600));
    await finch.exchange();
    await wren.exchange();
    const { above } = hub.store;
    hub.store.above = (space, _have, bytes) => above.call(hub.store, space, {}, bytes);
    expect(await wren.exchange()).toMatchObject({ outcome: 'shared', received: 0, warnings: [] });
  });

  it.each([
    ['a cut answer', () => new Response(new Uint8Array([0, 0, 0, 9, 1]))],
    [
      'a page of another server',
      () => new Response('<html>', { headers: { 'content-type': 'text/html' } })
    ],
    ['an error page', () => new Response('Bad gateway', { status: 502 })]
  ])('%s is no answer', async (_what, answer) => {
    expect((await wren.exchange(async () => answer())).outcome).toBe('no-answer');
  });
});
