import { expect, it } from 'vitest';
import type { HubStore, NewAccess, SpaceNews } from '../../src/hub/hub-store.ts';
import { LIMITS, type SealedParcel } from '../../src/hub/protocol.ts';

const SPACE = 'AAAAAAAAAAAAAAAAAAAAAA';
const OTHER = 'BBBBBBBBBBBBBBBBBBBBBB';
const AT = 1_790_000_000_000;
export const deviceOf = (number: number) =>
  `018f0000-0000-7000-8000-${String(number).padStart(12, '0')}`;
const [WREN, FINCH] = [deviceOf(1), deviceOf(2)];
const MOST = LIMITS.spaceBytes;

const person = (name: string, device = WREN): NewAccess => ({
  id: `access-${name}`,
  tokenHash: `token-${name}`,
  device,
  label: `label-${name}`
});

export function parcelOf(device: string, first: number, last: number, size = 8): SealedParcel {
  return { device, first, last, bytes: new Uint8Array(size).fill(first & 0xff) };
}

/**
 * What each store of the hub must do. `open` gives a store on empty data; `reopen` one on the same
 * data after the first was closed.
 */
export function holdsTheContract(
  open: () => Promise<HubStore>,
  reopen: () => Promise<HubStore>
): void {
  const withSpace = async () => {
    const store = await open();
    await store.openSpace(SPACE, person('keeper'), AT);
    return store;
  };

  it('the hub key is noted once, and replaced only when asked', async () => {
    const store = await open();
    expect(await store.firstHubKey('one', AT)).toBe(true);
    expect(await store.firstHubKey('two', AT)).toBe(false);
    expect((await store.accessOf('one'))?.role).toBe('opener');
    expect(await store.accessOf('two')).toBeUndefined();
    await store.replaceHubKey('two', AT);
    expect(await store.accessOf('one')).toBeUndefined();
    expect((await store.accessOf('two'))?.role).toBe('opener');
  });

  it('a space is opened once; the same again is there, by another it is taken', async () => {
    const store = await open();
    expect(await store.openSpace(SPACE, person('keeper'), AT)).toBe('made');
    expect(await store.openSpace(SPACE, person('keeper'), AT)).toBe('there');
    expect(await store.openSpace(SPACE, person('thief'), AT)).toBe('taken');
    expect(await store.accessOf('token-thief')).toBeUndefined();
    expect(await store.accessOf('token-keeper')).toEqual({
      id: 'access-keeper',
      space: SPACE,
      device: WREN,
      role: 'keeper',
      removed: false,
      lastSeen: AT
    });
  });

  it('a parcel is stored only if it follows the head of its device', async () => {
    const store = await withSpace();
    const append = (first: number, last: number, device = WREN) =>
      store.append(SPACE, parcelOf(device, first, last), MOST, AT);
    expect(await append(2, 3)).toEqual({ ok: false, reason: 'behind', last: 0 });
    expect(await append(1, 3)).toEqual({ ok: true, last: 3 });
    expect(await append(1, 3)).toEqual({ ok: false, reason: 'behind', last: 3 });
    expect(await append(3, 5)).toEqual({ ok: false, reason: 'behind', last: 3 });
    expect(await append(5, 6)).toEqual({ ok: false, reason: 'behind', last: 3 });
    expect(await append(4, 4)).toEqual({ ok: true, last: 4 });
    expect(await append(1, 9, FINCH)).toEqual({ ok: true, last: 9 });
    expect(await store.heads(SPACE)).toEqual({ [WREN]: 4, [FINCH]: 9 });
    expect(await store.heads(OTHER)).toEqual({});
  });

  it('of many at once that claim the same number, one is stored, and runs stay whole', async () => {
    const store = await withSpace();
    for (let round = 0; round < 10; round++) {
      const answers = await Promise.all(
        [0, 1, 2, 3].flatMap((twin) =>
          [WREN, FINCH].map((device) =>
            store.append(
              SPACE,
              { ...parcelOf(device, round + 1, round + 1), bytes: new Uint8Array([twin]) },
              MOST,
              AT
            )
          )
        )
      );
      expect(answers.filter(({ ok }) => ok).length, `round ${round}`).toBe(2);
    }
    const parcels = await store.above(SPACE, {}, MOST);
    expect(parcels.length).toBe(20);
    expect(await store.heads(SPACE)).toEqual({ [WREN]: 10, [FINCH]: 10 });
  });

  it('gives the parcels that reach above what one has, each device in order, to the byte', async () => {
    const store = await withSpace();
    await store.append(SPACE, parcelOf(WREN, 1, 3), MOST, AT);
    await store.append(SPACE, parcelOf(WREN, 4, 10), MOST, AT);
    await store.append(SPACE, parcelOf(FINCH, 1, 2), MOST, AT);
    const told = async (have: Record<string, number>, bytes = MOST) =>
      (await store.above(SPACE, have, bytes)).map(
        ({ device, first, last, bytes: body }) =>
          `${device === WREN ? 'Wren' : 'Finch'} ${first}-${last} ${[...body].join('')}`
      );
    const all = ['Wren 1-3 11111111', 'Wren 4-10 44444444', 'Finch 1-2 11111111'];
    expect((await told({})).sort()).toEqual([...all].sort());
    expect((await told({ [WREN]: 3 })).sort()).toEqual(all.slice(1).sort());
    // Who has the half of a parcel gets the whole.
    expect(await told({ [WREN]: 6, [FINCH]: 2 })).toEqual([all[1]]);
    expect(await told({ [WREN]: 10, [FINCH]: 2 })).toEqual([]);
    expect(await told({ [WREN]: 99, [FINCH]: 99 })).toEqual([]);
    // At least one, though it is larger than asked for; then only as many as fit.
    expect((await told({ [FINCH]: 2 }, 1)).length).toBe(1);
    expect(await told({ [FINCH]: 2 }, 16)).toEqual(all.slice(0, 2));
    expect(await told({ [FINCH]: 2 }, 15)).toEqual(all.slice(0, 1));
  });

  it('a space that is full takes no more and changes nothing', async () => {
    const store = await withSpace();
    expect((await store.append(SPACE, parcelOf(WREN, 1, 1, 60), 100, AT)).ok).toBe(true);
    expect(await store.append(SPACE, parcelOf(WREN, 2, 2, 41), 100, AT)).toEqual({
      ok: false,
      reason: 'space-full'
    });
    expect(await store.putPhoto(SPACE, 'photo', new Uint8Array(41), 100)).toBe('space-full');
    expect(await store.photo(SPACE, 'photo')).toBeUndefined();
    expect(await store.heads(SPACE)).toEqual({ [WREN]: 1 });
    expect((await store.append(SPACE, parcelOf(WREN, 2, 2, 40), 100, AT)).ok).toBe(true);
  });

  it('a photo stays as it was first given', async () => {
    const store = await withSpace();
    expect(await store.putPhoto(SPACE, 'photo', new Uint8Array([1, 2, 255]), MOST)).toBe('done');
    expect(await store.putPhoto(SPACE, 'photo', new Uint8Array([9]), MOST)).toBe('done');
    expect([...((await store.photo(SPACE, 'photo')) ?? [])]).toEqual([1, 2, 255]);
    expect(await store.photo(OTHER, 'photo')).toBeUndefined();
  });

  const invitation = (id: string, until = AT + 1000) => ({
    id,
    secretHash: `secret-${id}`,
    space: SPACE,
    role: 'member' as const,
    since: AT,
    until
  });
  const secretOf = (id: string) => ({ id, secretHash: `secret-${id}` });

  it('an invitation lets one in, once; the same person again gets the same answer', async () => {
    const store = await withSpace();
    expect(await store.addInvite(invitation('i'), 9)).toBe('made');
    expect(await store.addInvite(invitation('i'), 9)).toBe('there');
    expect(await store.addInvite({ ...invitation('i'), secretHash: 'x' }, 9)).toBe('taken');
    const finch = person('finch', FINCH);
    const joined = { ok: true, space: SPACE, role: 'member', access: 'access-finch' };
    expect(await store.redeem(secretOf('i'), finch, 9, AT)).toEqual(joined);
    expect(await store.redeem(secretOf('i'), { ...finch, id: 'other' }, 9, AT)).toEqual(joined);
    expect(await store.redeem(secretOf('i'), person('thief'), 9, AT)).toEqual({
      ok: false,
      reason: 'invite-used'
    });
    expect((await store.accesses(SPACE)).map(({ label, role }) => `${label} ${role}`)).toEqual([
      'label-finch member',
      'label-keeper keeper'
    ]);
    expect((await store.invites(SPACE, AT)).map(({ state }) => state)).toEqual(['used']);
  });

  it('of many who hold the same invitation, one gets in', async () => {
    const store = await withSpace();
    await store.addInvite(invitation('i'), 9);
    const answers = await Promise.all(
      Array.from({ length: 8 }, (_, at) => store.redeem(secretOf('i'), person(`p${at}`), 99, AT))
    );
    expect(answers.filter(({ ok }) => ok).length).toBe(1);
    expect((await store.accesses(SPACE)).length).toBe(2);
  });

  it('an invitation that is wrong, over, taken back or beyond the most lets nobody in', async () => {
    const store = await withSpace();
    await store.addInvite(invitation('over', AT), 9);
    await store.addInvite(invitation('back'), 9);
    await store.addInvite(invitation('good'), 9);
    expect(await store.revokeInvite(SPACE, 'back')).toBe('done');
    expect(await store.revokeInvite(OTHER, 'good')).toBe('no-such-thing');
    const reason = async (id: string, secretHash = `secret-${id}`, most = 9) => {
      const answer = await store.redeem({ id, secretHash }, person('x'), most, AT);
      return answer.ok ? 'let in' : answer.reason;
    };
    expect(await reason('none')).toBe('invite-unknown');
    expect(await reason('good', 'secret-guess')).toBe('invite-unknown');
    expect(await reason('over')).toBe('invite-expired');
    expect(await reason('back')).toBe('invite-revoked');
    expect(await reason('good', undefined, 1)).toBe('too-many');
    expect((await store.accesses(SPACE)).length).toBe(1);
    expect(await reason('good')).toBe('let in');
    expect(await store.addInvite(invitation('one'), 1)).toBe('made');
    expect(await store.addInvite(invitation('two'), 1)).toBe('too-many');
  });

  it('an access is taken back for good; the last keeper stays', async () => {
    const store = await withSpace();
    await store.addInvite(invitation('i'), 9);
    await store.redeem(secretOf('i'), person('finch', FINCH), 9, AT);
    expect(await store.removeAccess(SPACE, 'access-keeper')).toBe('last-keeper');
    expect(await store.removeAccess(OTHER, 'access-finch')).toBe('no-such-thing');
    expect(await store.removeAccess(SPACE, 'access-finch')).toBe('done');
    expect((await store.accessOf('token-finch'))?.removed).toBe(true);
    await store.noteSeen('access-keeper', AT + 5);
    expect((await store.accesses(SPACE)).find(({ role }) => role === 'keeper')?.lastSeen).toBe(
      AT + 5
    );
  });

  it('who is in may come with a further device in the same role', async () => {
    const store = await withSpace();
    const keeper = await store.accessOf('token-keeper');
    if (!keeper) throw new Error('no keeper');
    expect(await store.addAccess(keeper, person('twin', FINCH), 9, AT)).toBe('made');
    expect(await store.addAccess(keeper, person('twin', FINCH), 9, AT)).toBe('there');
    expect(await store.addAccess(keeper, person('third'), 2, AT)).toBe('too-many');
    expect(await store.accessOf('token-twin')).toMatchObject({ role: 'keeper', device: FINCH });
  });

  it('news of parcels and removals is told to whoever listens, refusals are not', async () => {
    const store = await withSpace();
    const heard: SpaceNews[] = [];
    let wake = () => {};
    const stop = store.onNews((news) => {
      heard.push(news);
      wake();
    });
    await store.addInvite(invitation('i'), 9);
    await store.redeem(secretOf('i'), person('finch', FINCH), 9, AT);
    await store.append(SPACE, parcelOf(WREN, 5, 5), MOST, AT);
    await store.append(SPACE, parcelOf(WREN, 1, 4), MOST, AT);
    await store.removeAccess(SPACE, 'access-finch');
    while (heard.length < 2) await new Promise<void>((resolve) => (wake = resolve));
    stop();
    expect(heard).toEqual([
      { kind: 'parcel', space: SPACE, device: WREN, last: 4 },
      { kind: 'removed', space: SPACE, access: 'access-finch' }
    ]);
  });

  it('what was answered is there when the store is opened again', async () => {
    const store = await withSpace();
    for (let number = 1; number <= 20; number++)
      await store.append(SPACE, parcelOf(WREN, number, number, 5000), MOST, AT);
    await store.putPhoto(SPACE, 'photo', new Uint8Array([7]), MOST);
    await store.close();
    const again = await reopen();
    expect(await again.heads(SPACE)).toEqual({ [WREN]: 20 });
    const parcels = await again.above(SPACE, {}, MOST);
    expect(parcels.map(({ first, bytes }) => `${first} ${bytes.length} ${bytes[0]}`)).toEqual(
      Array.from({ length: 20 }, (_, at) => `${at + 1} 5000 ${at + 1}`)
    );
    expect([...((await again.photo(SPACE, 'photo')) ?? [])]).toEqual([7]);
    expect((await again.accessOf('token-keeper'))?.role).toBe('keeper');
  });
}
