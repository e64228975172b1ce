import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { StoredEvent } from '$lib/journal';
import { deriveKeys, newJobKey } from './keys.ts';
import { sealParcel } from './parcel.ts';
import { TestDevice, TestHub, crewOfTwo, gauged } from '../../../tests/support/crew-kit.ts';

let hub: TestHub;
let wren: TestDevice;
let finch: TestDevice;
beforeEach(async () => {
  ({ hub, wren, finch } = await crewOfTwo());
});
afterEach(() => hub.end());

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
