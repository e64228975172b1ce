import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { TestHub, JOB } from '../../../tests/support/crew-kit.ts';
import { hashOf } from '../../hub/handler.ts';
import { randomBytes, toBase64Url } from './bytes.ts';
import {
  crewOf,
  inviteMate,
  joinCrew,
  moveIn,
  newToken,
  openInvites,
  readHubKey,
  startCrew
} from './crew.ts';
import type { CrewRecord } from './crew-state.ts';
import { HubRefused } from './hub-client.ts';
import { readInvitation } from './invitation.ts';

const hub = new TestHub();
const origin = 'http://hub.test';
const hubKey = toBase64Url(randomBytes(32));
const device = (n: number) => `018f0000-0000-7000-8000-0000000000${n}`;
const keeper = { device: device(11), name: 'Wren' };
let mine: CrewRecord;

beforeAll(async () => {
  await hub.start();
  await hub.store.replaceHubKey(hashOf(hubKey), 1);
  mine = await startCrew(hub.fetch, { origin, hubKey }, JOB, keeper);
});
afterAll(() => hub.end());

/** What somebody who was handed a link reads in it. */
async function invited(role: 'member' | 'keeper' = 'member') {
  hub.time += 1000;
  const { id, url } = await inviteMate(hub.fetch, mine.link, role);
  const read = await readInvitation(`Join us: ${url} see you there`);
  if (!read.ok) throw new Error(read.fault);
  return { id, url, invitation: read.invitation };
}

describe('a crew', () => {
  it('is started by whoever has the hub key, and by nobody else', async () => {
    expect(mine.link).toMatchObject({ role: 'keeper', jobId: JOB, device: keeper.device });
    const wrong = { origin, hubKey: newToken() };
    await expect(startCrew(hub.fetch, wrong, JOB, keeper)).rejects.toThrow(HubRefused);
  });

  it('is joined by a link of at most 120 characters, once; a lost answer is no harm', async () => {
    const { url, invitation } = await invited();
    expect(url.length).toBeLessThanOrEqual(120);
    const [token, mate] = [newToken(), { device: device(12), name: 'Robin' }];
    const first = await joinCrew(hub.fetch, invitation, token, mate);
    expect(first?.link).toMatchObject({ role: 'member', jobId: JOB, space: mine.link.space });
    expect(await joinCrew(hub.fetch, invitation, token, mate)).toEqual(first);
    const another = joinCrew(hub.fetch, invitation, newToken(), { ...mate, device: device(13) });
    await expect(another).rejects.toMatchObject({ reason: 'invite-used' });
  });

  it('knows its people by name; the hub sees none of the names', async () => {
    const mates = await crewOf(hub.fetch, mine.link);
    expect(mates.map(({ name, isOwn, role }) => [name, isOwn, role])).toEqual([
      ['Wren', true, 'keeper'],
      ['Robin', false, 'member']
    ]);
    const labels = (await hub.store.accesses(mine.link.space)).map(({ label }) => label);
    for (const label of labels) expect(atob(label.replace(/[-_]/g, 'A'))).not.toMatch(/Wren|Robin/);
  });

  it('has invitations that are open, until they are used or taken back', async () => {
    const open = async (change = {}) =>
      (await openInvites(hub.fetch, mine.link, change)).map(({ id }) => id);
    const [one, two] = [await invited(), await invited('keeper')];
    expect(await open()).toEqual([one.id, two.id]);
    expect(await open({ revoke: two.id })).toEqual([one.id]);
    const mate = { device: device(18), name: 'Linnet' };
    const barred = joinCrew(hub.fetch, two.invitation, newToken(), mate);
    await expect(barred).rejects.toMatchObject({ reason: 'invite-revoked' });
    const theirs = await joinCrew(hub.fetch, one.invitation, newToken(), mate);
    expect(await open()).toEqual([]);
    const asked = openInvites(hub.fetch, theirs!.link);
    await expect(asked).rejects.toMatchObject({ reason: 'keeper-only' });
  });

  it('is closed to whoever was removed', async () => {
    const { invitation } = await invited();
    const mate = { device: device(14), name: 'Finch' };
    const theirs = await joinCrew(hub.fetch, invitation, newToken(), mate);
    const found = (await crewOf(hub.fetch, mine.link)).find(({ name }) => name === 'Finch');
    const left = await crewOf(hub.fetch, mine.link, { remove: found?.id });
    expect(left.find(({ name }) => name === 'Finch')?.removed).toBe(true);
    const asking = crewOf(hub.fetch, theirs!.link);
    await expect(asking).rejects.toMatchObject({ reason: 'removed' });
  });

  it('lets a device in again under a new id, in the same role', async () => {
    const moved = await moveIn(hub.fetch, mine, { device: device(15), name: 'Wren' });
    expect(moved.link).toMatchObject({ device: device(15), role: 'keeper' });
    expect(moved.link.token).not.toBe(mine.link.token);
    const mates = await crewOf(hub.fetch, moved.link);
    expect(mates.filter(({ name }) => name === 'Wren')).toHaveLength(2);
    expect(mates.find(({ isOwn }) => isOwn)?.device).toBe(device(15));
  });

  it('keeps a long name to what there is room for', async () => {
    const { invitation } = await invited();
    const name = '🐦'.repeat(200);
    await joinCrew(hub.fetch, invitation, newToken(), { device: device(16), name });
    expect((await crewOf(hub.fetch, mine.link)).at(-1)?.name).toBe('🐦'.repeat(40));
  });
});

describe('the link with the hub key', () => {
  it('is read, and nothing else is taken for one', () => {
    expect(readHubKey(`https://hub.test/join#hub1.${hubKey}`)).toBe(hubKey);
    for (const text of ['', 'https://hub.test/join', `https://hub.test/join#hub1.${hubKey}x`])
      expect(readHubKey(text)).toBeUndefined();
  });
});
