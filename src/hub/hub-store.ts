import type { AccessEntry, Heads, InviteEntry, Role, SealedParcel } from './protocol.ts';

/** What the hub knows of whoever holds a token. */
export interface Access {
  readonly id: string;
  /** The space; empty for the hub key, which opens spaces. */
  readonly space: string;
  readonly device: string;
  readonly role: Role | 'opener';
  readonly removed: boolean;
  readonly lastSeen: number;
}

export interface NewAccess {
  readonly id: string;
  readonly tokenHash: string;
  readonly device: string;
  readonly label: string;
}

export interface NewInvite {
  readonly id: string;
  readonly secretHash: string;
  readonly space: string;
  readonly role: Role;
  readonly since: number;
  readonly until: number;
}

/** Something that happened in a space, told to its open streams. */
export type SpaceNews =
  | {
      readonly kind: 'parcel';
      readonly space: string;
      readonly device: string;
      readonly last: number;
    }
  | { readonly kind: 'removed'; readonly space: string; readonly access: string }
  /** Some news may have been missed: look again. */
  | { readonly kind: 'look-again' };

export type Appended =
  | { readonly ok: true; readonly last: number }
  | { readonly ok: false; readonly reason: 'behind'; readonly last: number }
  | { readonly ok: false; readonly reason: 'space-full' };

export type Redeemed =
  | { readonly ok: true; readonly space: string; readonly role: Role; readonly access: string }
  | {
      readonly ok: false;
      readonly reason:
        'invite-unknown' | 'invite-used' | 'invite-expired' | 'invite-revoked' | 'too-many';
    };

export type Made = 'made' | 'there' | 'taken' | 'too-many';

/**
 * Where a hub keeps what it was given. SQLite and PostgreSQL fulfil the same contract, and one suite
 * holds both to it. Every promise settles only when the data is durable. Times are milliseconds
 * since 1970, from the caller.
 */
export interface HubStore {
  /** Notes the hash of the hub key unless there is one; true when it was noted now. */
  firstHubKey(tokenHash: string, at: number): Promise<boolean>;
  /** Puts another hub key in place of the old one. */
  replaceHubKey(tokenHash: string, at: number): Promise<void>;
  /** Opens a space with its first keeper. The same once more: `there`. */
  openSpace(space: string, keeper: NewAccess, at: number): Promise<Made>;
  /** Who holds a token, removed ones included. */
  accessOf(tokenHash: string): Promise<Access | undefined>;
  /** Lets the holder of one access in with a further device. */
  addAccess(of: Access, added: NewAccess, most: number, at: number): Promise<Made>;
  noteSeen(access: string, at: number): Promise<void>;
  accesses(space: string): Promise<AccessEntry[]>;
  /** Takes an access back. The last keeper stays. */
  removeAccess(space: string, access: string): Promise<'done' | 'no-such-thing' | 'last-keeper'>;
  addInvite(invite: NewInvite, most: number): Promise<Made>;
  /** Lets someone in once; the same token hash again gets the same answer. */
  redeem(
    invite: { readonly id: string; readonly secretHash: string },
    joining: NewAccess,
    most: number,
    at: number
  ): Promise<Redeemed>;
  invites(space: string, at: number): Promise<InviteEntry[]>;
  revokeInvite(space: string, invite: string): Promise<'done' | 'no-such-thing'>;
  /** Stores a parcel only if it follows the head of its device: compare and append. */
  append(space: string, parcel: SealedParcel, mostBytes: number, at: number): Promise<Appended>;
  heads(space: string): Promise<Heads>;
  /** Parcels that reach above `have`, each device's in order; about `bytes`, and at least one. */
  above(space: string, have: Heads, bytes: number): Promise<SealedParcel[]>;
  /** Keeps a photo; one that is there stays as it is. */
  putPhoto(
    space: string,
    id: string,
    bytes: Uint8Array,
    mostBytes: number
  ): Promise<'done' | 'space-full'>;
  photo(space: string, id: string): Promise<Uint8Array<ArrayBuffer> | undefined>;
  /** Tells of news, from whichever process it comes; returns how to stop. */
  onNews(hear: (news: SpaceNews) => void): () => void;
  close(): Promise<void>;
}

/** Thrown when there is no room on the disk; nothing was stored. */
export class HubFull extends Error {
  constructor(cause: unknown) {
    super('the disk of the hub is full', { cause });
    this.name = 'HubFull';
  }
}
