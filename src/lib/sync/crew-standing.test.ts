import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  type TestDevice,
  type TestHub,
  crewOfTwo,
  gauged
} from '../../../tests/support/crew-kit.ts';
import { type CrewRecord, newCrewState } from './crew-state.ts';
import { standingOf } from './crew-standing.ts';
import { HubClient } from './hub-client.ts';

const LINK = {
  ...{ origin: 'https://hub.test', space: 's', token: 't', jobKey: 'k', jobId: 'j' },
  ...{ device: 'own', role: 'keeper' as const }
};
const fresh = newCrewState(LINK);
const acknowledged = (last: number): CrewRecord => ({
  ...fresh,
  tips: { own: { last, mark: 'm' } }
});

describe('J32: what a device knows of its hub without asking', () => {
  it('is nothing before the hub acknowledged anything: all is still to be shared', () => {
    expect(standingOf(fresh, { own: 12, other: 40 })).toEqual({
      goesOut: true,
      notShared: 12,
      hasAll: false
    });
  });

  it('counts own entries that the hub did not acknowledge, and those of nobody else', () => {
    expect(standingOf(acknowledged(9), { own: 12, other: 40 }).notShared).toBe(3);
    expect(standingOf(acknowledged(12), { own: 12, other: 40 })).toEqual({
      goesOut: true,
      notShared: 0,
      hasAll: true
    });
  });

  it('is not all while a photo is to be given, nor for a device that was removed or copied', () => {
    const all = acknowledged(12);
    const numbers = { own: 12 };
    const photo = { id: 'p' } as CrewRecord['photosToGive'][number];
    expect(standingOf({ ...all, photosToGive: [photo] }, numbers)).toMatchObject({
      notShared: 0,
      hasAll: false
    });
    expect(standingOf({ ...all, isRemoved: true }, numbers)).toMatchObject({
      goesOut: false,
      hasAll: false
    });
    const held = { own: { why: 'same-number' as const, first: 3, detail: '' } };
    expect(standingOf({ ...all, held }, numbers)).toMatchObject({ goesOut: false, hasAll: false });
  });
});

describe('J32: what the hub said last', () => {
  let hub: TestHub;
  let finch: TestDevice;
  let wren: TestDevice;
  beforeEach(async () => {
    ({ hub, wren, finch } = await crewOfTwo());
  });
  afterEach(() => hub.end());

  it('is kept of a device that was removed, and not lost for want of signal', async () => {
    await finch.act(gauged(640));
    await finch.exchange();
    expect(finch.state.isRemoved).toBe(false);
    const client = new HubClient(hub.fetch, wren.state.link);
    const { accesses } = await client.accesses();
    await client.accesses({ remove: accesses.find(({ role }) => role === 'member')?.id });
    await finch.exchange();
    expect(finch.state.isRemoved).toBe(true);
    await finch.exchange(() => Promise.reject(new TypeError('no signal')));
    expect(finch.state.isRemoved).toBe(true);
  });
});
