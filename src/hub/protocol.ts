/**
 * What the hub and its clients agree on, protocol /hub/1. The hub stores sealed parcels: each holds
 * the events `first` to `last` of one device in one job, and the hub cannot read them.
 */
export const HUB_VERSION = 1;
export const HUB_PATH = `/hub/${HUB_VERSION}`;

const MIB = 2 ** 20;

export const LIMITS = {
  /** Bytes of one sealed parcel. */
  parcelBytes: MIB,
  /** Bytes of one sealed photo: the largest photo and its seal. */
  photoBytes: 8 * MIB + 1024,
  /** Bytes of any other request. */
  requestBytes: 64 * 1024,
  /** About so many bytes of parcels in one answer; one parcel always fits. */
  pullBytes: 4 * MIB,
  /** Bytes kept for one space, photos included. */
  spaceBytes: 2 ** 31,
  joinsPerMinute: 10,
  requestsPerMinute: 1200,
  streamsPerToken: 4,
  /** Devices let into a space over its life, removed ones included. */
  accesses: 200,
  /** Invitations not used yet. */
  openInvites: 50,
  inviteDays: 7,
  /** How often an open stream says that it lives. */
  pulseMs: 20_000
};

export type Limits = typeof LIMITS;

/** By device, the last of its numbers that is meant. */
export type Heads = Record<string, number>;

export type Role = 'member' | 'keeper';

/** One parcel as it travels. */
export interface SealedParcel {
  readonly device: string;
  readonly first: number;
  readonly last: number;
  readonly bytes: Uint8Array;
}

/** A device let into a space. `label` is sealed: the hub cannot read the nickname. */
export interface AccessEntry {
  readonly id: string;
  readonly device: string;
  readonly role: Role;
  readonly label: string;
  /** Milliseconds since 1970. */
  readonly since: number;
  readonly lastSeen: number;
  readonly removed: boolean;
}

export interface InviteEntry {
  readonly id: string;
  readonly role: Role;
  readonly since: number;
  readonly until: number;
  readonly state: 'open' | 'used' | 'revoked' | 'expired';
}

/** Why a request was refused; the words for people are made from it by the client. */
export type HubRefusal =
  | 'bad-request'
  | 'no-such-thing'
  | 'not-let-in'
  | 'removed'
  | 'keeper-only'
  | 'not-your-device'
  | 'behind'
  | 'too-large'
  | 'too-many'
  | 'space-full'
  | 'hub-full'
  | 'taken'
  | 'invite-unknown'
  | 'invite-used'
  | 'invite-expired'
  | 'invite-revoked'
  | 'last-keeper'
  | 'other-version'
  | 'hub-failed';

/**
 * The answer to a pull as bytes: the length of the head in four bytes (big-endian), the head as
 * JSON, then the parcels one after another.
 */
export function packPull(heads: Heads, parcels: readonly SealedParcel[]): Uint8Array<ArrayBuffer> {
  const list = parcels.map(({ device, first, last, bytes }) => [device, first, last, bytes.length]);
  const head = new TextEncoder().encode(JSON.stringify({ heads, parcels: list }));
  const size = parcels.reduce((sum, { bytes }) => sum + bytes.length, 4 + head.length);
  const packed = new Uint8Array(size);
  new DataView(packed.buffer).setUint32(0, head.length);
  packed.set(head, 4);
  let at = 4 + head.length;
  for (const { bytes } of parcels) {
    packed.set(bytes, at);
    at += bytes.length;
  }
  return packed;
}

/** Reads what {@link packPull} made; undefined when it is anything else. Never throws. */
export function unpackPull(
  packed: Uint8Array
): { readonly heads: Heads; readonly parcels: SealedParcel[] } | undefined {
  try {
    const size = new DataView(packed.buffer, packed.byteOffset, packed.byteLength).getUint32(0);
    const text = new TextDecoder('utf-8', { fatal: true }).decode(packed.subarray(4, 4 + size));
    const { heads, parcels } = JSON.parse(text) as { heads: unknown; parcels: unknown };
    if (!isHeads(heads) || !Array.isArray(parcels)) return undefined;
    let at = 4 + size;
    const unpacked = parcels.map((entry: unknown): SealedParcel => {
      if (!Array.isArray(entry)) throw new TypeError('not a parcel');
      const [device, first, last, length] = entry as unknown[];
      if (typeof device !== 'string' || !isNumber(first) || !isNumber(last) || last < first)
        throw new TypeError('not a parcel');
      // A parcel of no bytes is none, which is for whoever opens it to say: the others go on.
      if ((length !== 0 && !isNumber(length)) || at + length > packed.length)
        throw new RangeError('cut short');
      const bytes = packed.subarray(at, at + length);
      at += length;
      return { device, first, last, bytes };
    });
    return at === packed.length ? { heads, parcels: unpacked } : undefined;
  } catch {
    return undefined;
  }
}

/** Whether a value is a vector of device numbers. */
export function isHeads(value: unknown): value is Heads {
  return (
    typeof value === 'object' &&
    value !== null &&
    !Array.isArray(value) &&
    Object.entries(value).every(
      ([device, last]) => isDevice(device) && (isNumber(last) || last === 0)
    )
  );
}

/** Whether a text can be a device's id: a UUID in lower case. */
export function isDevice(text: unknown): text is string {
  return typeof text === 'string' && /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/.test(text);
}

/** Whether a value can be the number of an event. */
export function isNumber(value: unknown): value is number {
  return Number.isSafeInteger(value) && (value as number) >= 1;
}

/** Whether a text is base64url of so many bytes. */
export function isKey(text: unknown, bytes: number): text is string {
  return (
    typeof text === 'string' &&
    text.length === Math.ceil((bytes * 4) / 3) &&
    /^[A-Za-z0-9_-]+$/.test(text)
  );
}
