import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { StoredEvent } from '$lib/journal';
import { deriveKeys, newJobKey, seal } from './keys.ts';
import { sealParcel } from './parcel.ts';
import { pack } from './squeeze.ts';
import { HUB_PATH, HUB_VERSION } from '../../hub/protocol.ts';
import { TestDevice, TestHub, crewOfTwo, gauged } from '../../../tests/support/crew-kit.ts';

let hub: TestHub;
let wren: TestDevice;
let finch: TestDevice;
beforeEach(async () => {
  ({ hub, wren, finch } = await crewOfTwo());
});
afterEach(() => hub.end());

/** Bytes that are no parcel; a million of them are more than is drawn at once. */
function noise(length: number): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(length);
  for (let at = 0; at < length; at += 65_536)
    crypto.getRandomValues(bytes.subarray(at, Math.min(length, at + 65_536)));
  return bytes;
}

const id = (device: TestDevice) => device.store.deviceId();

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

  it.each([
    ['0 bytes', new Uint8Array(0)],
    ['a million bytes of noise', noise(1_000_000)]
  ])('%s in place of a parcel', async (_what, bytes) => {
    const parcel = { device: await id(finch), first: 1, last: 3, bytes };
    await hub.store.append(hub.space, parcel, 2 ** 31, 1);
    await expectHeld('not-ours');
  });

  it('a bomb is let grow no further than allowed: that run is held, the others go on', async () => {
    const device = await id(finch);
    const place = ['evencourse-parcel', 1, hub.space, device, 1, 1];
    const bytes = await seal(wren.keys.parcel, await pack(new Uint8Array(2 ** 28)), place);
    expect(bytes.length).toBeLessThan(2 ** 20);
    await hub.store.append(hub.space, { device, first: 1, last: 1, bytes }, 2 ** 31, 1);
    await expectHeld('too-large');
  });

  it.each(['cut', 'longer', 'swapped', 'of another device'] as const)(
    'parcels that the hub gives %s are held, and come once it gives them as they were',
    async (what) => {
      await finch.act(gauged(600));
      await finch.exchange();
      await finch.act(gauged(610));
      await finch.exchange();
      await wren.act(gauged(640));
      await wren.exchange();
      const { above } = hub.store;
      hub.store.above = async (...asked) => {
        const parcels = await above.apply(hub.store, asked);
        const his = parcels.filter(({ device }) => device === finch.state.link.device);
        const others = parcels.filter(({ device }) => device !== finch.state.link.device);
        const changed = his.map((parcel, at) => ({ ...parcel, bytes: changedBytes(what)(at) }));
        return [...others, ...changed];

        function changedBytes(how: typeof what): (at: number) => Uint8Array<ArrayBuffer> {
          const of = (at: number) => new Uint8Array(his[at].bytes);
          if (how === 'cut') return (at) => of(at).slice(0, -1);
          if (how === 'longer') return (at) => new Uint8Array([...of(at), 0]);
          if (how === 'swapped') return (at) => of(his.length - 1 - at);
          return () => new Uint8Array(others[0].bytes);
        }
      };
      const third = await new TestDevice(hub, 3).join();
      const report = await third.exchange();
      const held = { kind: 'held', device: await id(finch), why: 'not-ours', first: 1 };
      expect(report.warnings).toMatchObject([held]);
      expect(await third.all(), 'the others go on').toEqual(await ofOthers());
      hub.store.above = above;
      expect(await third.exchange()).toMatchObject({ received: 2, warnings: [] });
      await wren.exchange();
      expect(await third.picture()).toBe(await wren.picture());

      async function ofOthers(): Promise<StoredEvent[]> {
        const device = await id(finch);
        return (await wren.all()).filter(({ deviceId }) => deviceId !== device);
      }
    }
  );

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

describe('J32: a hub that says no: entries wait, are counted, and go once it says yes', () => {
  it.each([
    ['has no room', 507, { error: 'hub-full' }, 'hub-full'],
    ['has no room for this job', 507, { error: 'space-full' }, 'hub-full'],
    ['asks to wait', 429, { error: 'too-many' }, 'wait'],
    ['is older than the app', 404, { error: 'other-version', versions: [0] }, 'old-hub'],
    ['is newer than the app', 404, { error: 'other-version', versions: [2, 3] }, 'refused'],
    ['takes the device for another', 403, { error: 'not-your-device' }, 'refused'],
    ['finds the parcel too large', 413, { error: 'too-large' }, 'refused'],
    ['fails', 500, { error: 'hub-failed' }, 'no-answer']
  ])('%s', async (_what, status, told, outcome) => {
    await wren.act(gauged(640), gauged(655));
    const before = await wren.picture();
    const refusing: typeof hub.fetch = async (url, init) =>
      url.includes('/parcel') ? Response.json(told, { status }) : hub.fetch(url, init);
    expect(await wren.exchange(refusing)).toMatchObject({ outcome, notShared: 2 });
    expect(await wren.picture()).toBe(before);
    expect(await wren.exchange()).toMatchObject({ outcome: 'shared', notShared: 0 });
    await finch.exchange();
    expect(await finch.picture()).toBe(before);
  });

  it('a newer app is told by a hub which versions it knows', async () => {
    const newer: typeof hub.fetch = (url, init) => hub.fetch(url.replace(HUB_PATH, '/hub/2'), init);
    expect((await wren.exchange(newer)).outcome).toBe('refused');
    const answer = await newer(`http://hub.test${HUB_PATH}/x/pull`, { method: 'POST' });
    expect(await answer.json()).toEqual({ error: 'other-version', versions: [HUB_VERSION] });
  });
});

describe('a clock that goes wrong', () => {
  const MINUTE = 60_000;
  it.each([
    ['four minutes', 4 * MINUTE, false],
    ['six minutes', 6 * MINUTE, true],
    ['a year', 365 * 24 * 60 * MINUTE, true]
  ])('%s ahead or behind is never refused; told: %s', async (_what, off, isTold) => {
    for (const aheadMs of [off, -off]) {
      wren.clockAheadMs = aheadMs;
      await wren.act(gauged(640));
      const { outcome, warnings } = await wren.exchange();
      expect(outcome).toBe('shared');
      expect(warnings.map(({ kind }) => kind)).toEqual(isTold ? ['clock'] : []);
      for (const one of warnings)
        if (one.kind === 'clock') expect(one.aheadMs).toBeCloseTo(aheadMs, -3.1);
    }
    await finch.exchange();
    expect(await finch.picture()).toBe(await wren.picture());
  });

  it('of answers that were long on their way, the quickest is believed', async () => {
    let late = 10 * MINUTE;
    const slow: typeof hub.fetch = async (url, init) => {
      const answer = await hub.fetch(url, init);
      const date = new Date(hub.time - late).toUTCString();
      late = 0;
      return new Response(await answer.arrayBuffer(), { status: answer.status, headers: { date } });
    };
    await wren.act(gauged(640));
    expect((await wren.exchange(slow)).warnings).toEqual([]);
  });
});
