import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { canonicalView } from '$lib/journal';
import {
  JOB,
  TestDevice,
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

const id = (device: TestDevice) => device.store.deviceId();

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
