import { createHash, randomBytes } from 'node:crypto';
import { Refused, binary, bodyOf, json, need, objectOf, refusal } from './answers.ts';
import { type Access, HubFull, type HubStore, type NewAccess } from './hub-store.ts';
import {
  HUB_PATH,
  HUB_VERSION,
  LIMITS,
  type Limits,
  type Role,
  isDevice,
  isHeads,
  isKey,
  isNumber,
  packPull
} from './protocol.ts';
import { Rate } from './rate.ts';
import { Streams } from './streams.ts';

/** A hub: requests in, answers out. It needs no socket, so a test can call it as a server does. */
export interface Hub {
  /** @param address whence the request comes, for the limits */
  handle(request: Request, address: string): Promise<Response>;
  readonly streams: number;
  close(): Promise<void>;
}

export interface HubSettings {
  readonly store: HubStore;
  readonly now: () => number;
  readonly limits?: Partial<Limits>;
  /** Hears of faults that are no refusal. */
  readonly onFault?: (error: unknown) => void;
}

/** What goes with one request. */
interface Call {
  readonly request: Request;
  readonly url: URL;
  readonly address: string;
  readonly access: Access;
  /** What stands after the endpoint's name, such as the id of a photo. */
  readonly rest: string;
}

const DAY = 86_400_000;
/** Last seen is noted no more often. */
const SEEN_EVERY = 30_000;

export function createHub({ store, now, limits: own, onFault }: HubSettings): Hub {
  const limits = { ...LIMITS, ...own };
  const streams = new Streams(store, limits.streamsPerToken, limits.pulseMs);
  const joins = new Rate(limits.joinsPerMinute);
  const guesses = new Rate(limits.joinsPerMinute);
  const requests = new Rate(limits.requestsPerMinute);

  const inSpace: Record<string, (call: Call) => Promise<Response>> = {
    'POST parcel': takeParcel,
    'POST pull': pull,
    'GET live': live,
    'PUT photo': takePhoto,
    'GET photo': givePhoto,
    'POST invite': invite,
    'POST access': access
  };

  return {
    async handle(request, address) {
      const answer = await route(request, address).catch(answerTo);
      // A device compares its clock with it.
      answer.headers.set('date', new Date(now()).toUTCString());
      return answer;
    },
    get streams() {
      return streams.count;
    },
    async close() {
      streams.close();
      await store.close();
    }
  };

  async function route(request: Request, address: string): Promise<Response> {
    const url = new URL(request.url);
    if (url.pathname === HUB_PATH) return json({ hub: 'evencourse', version: HUB_VERSION });
    if (!url.pathname.startsWith(`${HUB_PATH}/`))
      throw new Refused(404, 'other-version', { versions: [HUB_VERSION] });
    const [first, second = '', rest = '', ...more] = url.pathname
      .slice(HUB_PATH.length + 1)
      .split('/');
    if (request.method === 'POST' && second === '') {
      if (first === 'space') return openSpace(request, address);
      if (first === 'join') return join(request, address);
    }
    const endpoint = `${request.method} ${second}`;
    const answer = Object.hasOwn(inSpace, endpoint) ? inSpace[endpoint] : undefined;
    if (!answer || more.length > 0) throw new Refused(404, 'no-such-thing');
    const access = await letIn(request, address);
    // A space that is not his is told of no otherwise than one that is not there.
    if (access.space !== first || access.space === '') throw new Refused(403, 'not-let-in');
    if (!requests.take(access.id, now())) throw new Refused(429, 'too-many');
    // A hub without room still gives what it has.
    if (now() - access.lastSeen >= SEEN_EVERY)
      await store.noteSeen(access.id, now()).catch(unlessFull);
    return answer({ request, url, address, access, rest });
  }

  function answerTo(error: unknown): Response {
    if (error instanceof Refused) return refusal(error);
    if (error instanceof HubFull) return refusal(new Refused(507, 'hub-full'));
    onFault?.(error);
    return refusal(new Refused(500, 'hub-failed'));
  }

  async function letIn(request: Request, address: string): Promise<Access> {
    const token = /^Bearer ([A-Za-z0-9_-]{43})$/.exec(
      request.headers.get('authorization') ?? ''
    )?.[1];
    const access = token ? await store.accessOf(hashOf(token)) : undefined;
    if (!access) {
      if (!guesses.take(address, now())) throw new Refused(429, 'too-many');
      throw new Refused(401, 'not-let-in');
    }
    if (access.removed) throw new Refused(403, 'removed');
    return access;
  }

  async function openSpace(request: Request, address: string): Promise<Response> {
    const opener = await letIn(request, address);
    if (opener.role !== 'opener') throw new Refused(403, 'not-let-in');
    const body = await objectOf(request, limits.requestBytes);
    const space = need(body.space, isSpace, 'space');
    const made = await store.openSpace(space, newAccess(body), now());
    if (made === 'taken') throw new Refused(409, 'taken');
    return json({ space, role: 'keeper' });
  }

  async function join(request: Request, address: string): Promise<Response> {
    if (!joins.take(address, now())) throw new Refused(429, 'too-many');
    const body = await objectOf(request, limits.requestBytes);
    const id = need(body.invite, isInvite, 'invite');
    const secretHash = hashOf(need(body.secret, isSecret, 'secret'));
    const joined = await store.redeem({ id, secretHash }, newAccess(body), limits.accesses, now());
    if (!joined.ok) throw new Refused(joined.reason === 'too-many' ? 429 : 403, joined.reason);
    return json({ space: joined.space, role: joined.role, access: joined.access });
  }

  async function takeParcel({ request, url, access }: Call): Promise<Response> {
    const device = need(url.searchParams.get('device'), isDevice, 'device');
    const first = need(Number(url.searchParams.get('first')), isNumber, 'first');
    const last = need(Number(url.searchParams.get('last')), isNumber, 'last');
    if (last < first) throw new Refused(400, 'bad-request', { what: 'last' });
    if (device !== access.device && access.role !== 'keeper')
      throw new Refused(403, 'not-your-device');
    const bytes = await bodyOf(request, limits.parcelBytes);
    if (bytes.length === 0) throw new Refused(400, 'bad-request', { what: 'an empty parcel' });
    const parcel = { device, first, last, bytes };
    const stored = await store.append(access.space, parcel, limits.spaceBytes, now());
    if (stored.ok) return json({ last: stored.last });
    if (stored.reason === 'behind') throw new Refused(409, 'behind', { last: stored.last });
    throw new Refused(507, 'space-full');
  }

  async function pull({ request, access: { space } }: Call): Promise<Response> {
    const body = await objectOf(request, limits.requestBytes);
    const have = need(body.have, isHeads, 'have');
    // Heads last: they are then never below what the parcels reach.
    const parcels = await store.above(space, have, limits.pullBytes);
    return binary(packPull(await store.heads(space), parcels));
  }

  async function live({ access }: Call): Promise<Response> {
    const stream = streams.open(access);
    if (!stream) throw new Refused(429, 'too-many');
    return binary(stream, 'application/x-ndjson');
  }

  async function takePhoto({ request, access: { space }, rest }: Call): Promise<Response> {
    const id = need(rest, isPhoto, 'photo');
    const bytes = await bodyOf(request, limits.photoBytes);
    if (bytes.length === 0) throw new Refused(400, 'bad-request', { what: 'an empty photo' });
    const kept = await store.putPhoto(space, id, bytes, limits.spaceBytes);
    if (kept === 'space-full') throw new Refused(507, 'space-full');
    return json({ photo: id });
  }

  async function givePhoto({ access: { space }, rest }: Call): Promise<Response> {
    const bytes = await store.photo(space, need(rest, isPhoto, 'photo'));
    if (!bytes) throw new Refused(404, 'no-such-thing');
    return binary(bytes);
  }

  /** Makes, lists or revokes invitations, by what the body names. */
  async function invite({ request, access: { space, role } }: Call): Promise<Response> {
    if (role !== 'keeper') throw new Refused(403, 'keeper-only');
    const body = await objectOf(request, limits.requestBytes);
    if (body.revoke !== undefined) {
      const done = await store.revokeInvite(space, need(body.revoke, isInvite, 'revoke'));
      if (done !== 'done') throw new Refused(404, done);
    } else if (body.invite !== undefined) {
      const made = await store.addInvite(
        {
          id: need(body.invite, isInvite, 'invite'),
          secretHash: need(body.secretHash, isHash, 'secretHash'),
          space,
          role: need(body.role, isRole, 'role'),
          since: now(),
          until: now() + limits.inviteDays * DAY
        },
        limits.openInvites
      );
      if (made === 'taken') throw new Refused(409, 'taken');
      if (made === 'too-many') throw new Refused(429, 'too-many');
    }
    return json({ invites: await store.invites(space, now()) });
  }

  /** Lists who is let in, takes an access back, or adds a device of one's own. */
  async function access({ request, access: own }: Call): Promise<Response> {
    const body = await objectOf(request, limits.requestBytes);
    if (body.remove !== undefined) {
      const id = need(body.remove, isInvite, 'remove');
      if (id !== own.id && own.role !== 'keeper') throw new Refused(403, 'keeper-only');
      const done = await store.removeAccess(own.space, id);
      if (done !== 'done') throw new Refused(done === 'last-keeper' ? 409 : 404, done);
    } else if (body.tokenHash !== undefined) {
      const made = await store.addAccess(own, newAccess(body), limits.accesses, now());
      if (made === 'taken') throw new Refused(409, 'taken');
      if (made === 'too-many') throw new Refused(429, 'too-many');
    }
    return json({ own: own.id, accesses: await store.accesses(own.space) });
  }
}

/** The hash of a token or secret, which is all that the hub keeps of it: SHA-256 in base64url. */
export function hashOf(secret: string): string {
  return createHash('sha256').update(secret).digest('base64url');
}

function unlessFull(error: unknown): void {
  if (!(error instanceof HubFull)) throw error;
}

function newAccess(body: Record<string, unknown>): NewAccess {
  return {
    id: randomBytes(12).toString('base64url'),
    tokenHash: need(body.tokenHash, isHash, 'tokenHash'),
    device: need(body.device, isDevice, 'device'),
    label: need(body.label, isLabel, 'label')
  };
}

const isSpace = (value: unknown): value is string => isKey(value, 16);
const isInvite = (value: unknown): value is string => isKey(value, 12);
const isSecret = (value: unknown): value is string => isKey(value, 14);
const isHash = (value: unknown): value is string => isKey(value, 32);
const isPhoto = isHash;
const isRole = (value: unknown): value is Role => value === 'member' || value === 'keeper';
const isLabel = (value: unknown): value is string =>
  typeof value === 'string' && /^[A-Za-z0-9_-]{0,400}$/.test(value);
