import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import {
  AskedHub,
  FINCH,
  HUB_KEY,
  INVITE,
  KEEPER,
  MEMBER,
  SPACE,
  STRANGER,
  WREN,
  key,
  person
} from '../../tests/support/hub-kit.ts';
import { deviceOf } from '../../tests/support/hub-store-contract.ts';

const DAY = 86_400_000;

let desk: AskedHub;
beforeEach(async () => {
  desk = await new AskedHub().start();
});
afterEach(() => desk.end());

describe('spaces and invitations', () => {
  it('only the holder of the hub key opens spaces', async () => {
    expect((await desk.ask('POST', '/space', STRANGER, {})).told).toBe('401 not-let-in');
    expect((await desk.ask('POST', '/space', undefined, {})).told).toBe('401 not-let-in');
    expect((await desk.open()).value).toEqual({ space: SPACE, role: 'keeper' });
    expect((await desk.open()).status, 'the same again').toBe(200);
    const other = { space: SPACE, ...person(STRANGER, FINCH) };
    expect((await desk.ask('POST', '/space', HUB_KEY, other)).told).toBe('409 taken');
    const inside = { space: key(16, 9), ...person(STRANGER, FINCH) };
    expect((await desk.ask('POST', '/space', KEEPER, inside)).told).toBe('403 not-let-in');
    expect((await desk.ask('POST', `/${SPACE}/pull`, HUB_KEY, { have: {} })).told).toBe(
      '403 not-let-in'
    );
  });

  it('an invitation lets one in for seven days, and a repeated join is harmless', async () => {
    await desk.open();
    expect((await desk.invite()).value.invites).toMatchObject([{ role: 'member', state: 'open' }]);
    desk.time += 7 * DAY - 1;
    const first = await desk.join();
    expect(first.value).toMatchObject({ space: SPACE, role: 'member' });
    expect((await desk.join()).value).toEqual(first.value);
    expect((await desk.join(STRANGER)).told).toBe('403 invite-used');
    expect((await desk.push(MEMBER, FINCH, 1, 1)).status).toBe(200);
  });

  it('an invitation that is over, taken back, wrong or cut lets nobody in', async () => {
    await desk.open();
    await desk.invite();
    expect((await desk.join(MEMBER, { secret: key(14, 9) })).told).toBe('403 invite-unknown');
    expect((await desk.join(MEMBER, { invite: key(12, 9) })).told).toBe('403 invite-unknown');
    expect((await desk.join(MEMBER, { secret: INVITE.secret.slice(1) })).told).toBe(
      '400 bad-request'
    );
    expect((await desk.join(MEMBER, { tokenHash: 'short' })).told).toBe('400 bad-request');
    expect((await desk.join(MEMBER, { device: '../x' })).told).toBe('400 bad-request');
    desk.time += 7 * DAY;
    expect((await desk.join()).told).toBe('403 invite-expired');
    await desk.ask('POST', `/${SPACE}/invite`, KEEPER, { revoke: INVITE.invite });
    expect((await desk.join()).told).toBe('403 invite-revoked');
    expect((await desk.pull(KEEPER))?.parcels).toEqual([]);
  });

  it('of 10,000 joins guessed from one address, ten a minute are looked at and none gets in', async () => {
    await desk.open();
    await desk.invite();
    const told: Record<string, number> = {};
    for (let guess = 0; guess < 10_000; guess++) {
      const secret = Buffer.from(String(guess).padStart(14, '.')).toString('base64url');
      const answer = (await desk.join(STRANGER, { secret })).told;
      told[answer] = (told[answer] ?? 0) + 1;
      desk.time += 30;
    }
    // 300 s hold five whole minutes and the first of the sixth.
    expect(told).toEqual({ '403 invite-unknown': 50, '429 too-many': 9950 });
    expect((await desk.join(MEMBER, {}, 'another address')).status).toBe(200);
    expect((await desk.store.accesses(SPACE)).length).toBe(2);
  });

  it('tokens guessed from one address are not looked at after ten a minute', async () => {
    await desk.open();
    const told = [];
    for (let guess = 0; guess < 12; guess++)
      told.push(
        (await desk.ask('POST', `/${SPACE}/pull`, key(32, 100 + guess), { have: {} })).status
      );
    expect(told).toEqual([...Array(10).fill(401), 429, 429]);
    expect((await desk.ask('POST', `/${SPACE}/pull`, KEEPER, { have: {} })).status).toBe(200);
  });

  it('what the hub keeps holds no token, secret or hub key', async () => {
    await desk.crew();
    await desk.push(MEMBER, FINCH, 1, 1);
    const rows = JSON.stringify([
      await desk.store.accesses(SPACE),
      await desk.store.invites(SPACE, desk.time)
    ]);
    for (const secret of [HUB_KEY, KEEPER, MEMBER, INVITE.secret]) {
      expect(rows).not.toContain(secret);
      expect(await desk.store.accessOf(secret)).toBeUndefined();
    }
  });
});

describe('roles', () => {
  it('a member appends for its own device only; a keeper carries in for others', async () => {
    await desk.crew();
    expect((await desk.push(MEMBER, WREN, 1, 1)).told).toBe('403 not-your-device');
    expect((await desk.push(MEMBER, FINCH, 1, 2)).value).toEqual({ last: 2 });
    expect((await desk.push(KEEPER, FINCH, 3, 3)).value).toEqual({ last: 3 });
    expect((await desk.push(KEEPER, deviceOf(7), 1, 4)).value).toEqual({ last: 4 });
  });

  it('a member neither invites, revokes nor removes others, and sees who is there', async () => {
    await desk.crew();
    for (const body of [
      {},
      { invite: key(12, 8), secretHash: key(32, 8), role: 'keeper' },
      { revoke: INVITE.invite }
    ])
      expect((await desk.ask('POST', `/${SPACE}/invite`, MEMBER, body)).told).toBe(
        '403 keeper-only'
      );
    const { value } = await desk.ask('POST', `/${SPACE}/access`, MEMBER, {});
    const accesses = value.accesses as { id: string; role: string }[];
    const keeper = accesses.find(({ role }) => role === 'keeper')?.id;
    expect((await desk.ask('POST', `/${SPACE}/access`, MEMBER, { remove: keeper })).told).toBe(
      '403 keeper-only'
    );
    expect(JSON.stringify(value)).not.toContain('token');
  });

  it('whoever is removed is out at once, his stream too; the last keeper stays', async () => {
    await desk.crew();
    const { answer } = await desk.ask('GET', `/${SPACE}/live`, MEMBER);
    const reader = answer.body?.getReader();
    await reader?.read();
    const { value } = await desk.ask('POST', `/${SPACE}/access`, MEMBER, {});
    const removed = await desk.ask('POST', `/${SPACE}/access`, KEEPER, { remove: value.own });
    expect(removed.value.accesses).toMatchObject(
      expect.arrayContaining([expect.objectContaining({ removed: true })])
    );
    expect((await reader?.read())?.done).toBe(true);
    expect((await desk.push(MEMBER, FINCH, 1, 1)).told).toBe('403 removed');
    expect((await desk.ask('POST', `/${SPACE}/pull`, MEMBER, { have: {} })).told).toBe(
      '403 removed'
    );
    const own = (await desk.ask('POST', `/${SPACE}/access`, KEEPER, {})).value.own;
    expect((await desk.ask('POST', `/${SPACE}/access`, KEEPER, { remove: own })).told).toBe(
      '409 last-keeper'
    );
  });

  it('a copied phone comes with a new device in its own role', async () => {
    await desk.crew();
    const added = await desk.ask('POST', `/${SPACE}/access`, MEMBER, person(STRANGER, deviceOf(3)));
    expect(added.status).toBe(200);
    expect((await desk.push(STRANGER, deviceOf(3), 1, 1)).status).toBe(200);
    expect((await desk.push(STRANGER, FINCH, 1, 1)).told).toBe('403 not-your-device');
    expect((await desk.ask('POST', `/${SPACE}/invite`, STRANGER, {})).told).toBe('403 keeper-only');
  });

  it('one space tells nothing of another', async () => {
    await desk.crew();
    const other = key(16, 8);
    await desk.ask('POST', '/space', HUB_KEY, { space: other, ...person(STRANGER, WREN) });
    for (const [method, path] of [
      ['POST', 'pull'],
      ['GET', 'live'],
      ['GET', `photo/${key(32, 1)}`],
      ['POST', 'access']
    ])
      expect(
        (
          await desk.ask(
            method,
            `/${SPACE}/${path}`,
            STRANGER,
            method === 'POST' ? { have: {} } : undefined
          )
        ).told
      ).toBe('403 not-let-in');
    expect((await desk.ask('POST', `/${key(16, 99)}/pull`, STRANGER, { have: {} })).told).toBe(
      '403 not-let-in'
    );
  });
});
