import { mkdirSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import sqlite, { type Database, type JSValue, type Statement } from 'node-sqlite3-wasm';
import type {
  Access,
  Appended,
  HubStore,
  Made,
  NewAccess,
  NewInvite,
  Redeemed,
  SpaceNews
} from './hub-store.ts';
import { fullOr } from './full-disk.ts';
import { takePidLock } from './pid-lock.ts';
import type { AccessEntry, Heads, InviteEntry, SealedParcel } from './protocol.ts';
import { type Row, accessEntryOfRow, accessOfRow, inviteEntryOfRow, inviteState } from './rows.ts';
import { schema } from './schema.ts';

interface Waiting {
  readonly work: () => unknown;
  readonly resolve: (value: never) => void;
  readonly reject: (error: unknown) => void;
}

/**
 * The hub's data in one file. All writing that arrives in one turn of the loop is one transaction
 * and one wait for the disk. Power may fail at any moment: what was answered is there.
 */
export class SqliteHubStore implements HubStore {
  readonly #database: Database;
  readonly #folder: string;
  readonly #unlock: () => void;
  readonly #statements = new Map<string, Statement>();
  readonly #listeners = new Set<(news: SpaceNews) => void>();
  #waiting: Waiting[] = [];
  #news: SpaceNews[] = [];

  /** @throws Error when another hub has the file open */
  constructor(file: string) {
    this.#folder = dirname(file);
    mkdirSync(this.#folder, { recursive: true });
    this.#unlock = takePidLock(`${file}.pid`);
    try {
      // Left behind by a hub that was killed; ours is the only process, as the lock above says.
      rmSync(`${file}.lock`, { recursive: true, force: true });
      this.#database = new sqlite.Database(file);
      for (const pragma of ['locking_mode=exclusive', 'journal_mode=wal', 'synchronous=full'])
        this.#database.all(`pragma ${pragma}`);
      for (const table of schema('blob')) this.#database.exec(table);
    } catch (error) {
      this.#unlock();
      throw error;
    }
  }

  firstHubKey(tokenHash: string, at: number): Promise<boolean> {
    return this.#write(() => {
      if (this.#row("select id from access where role = 'opener'")) return false;
      this.#addOpener(tokenHash, at);
      return true;
    });
  }

  replaceHubKey(tokenHash: string, at: number): Promise<void> {
    return this.#write(() => {
      this.#run("delete from access where role = 'opener'");
      this.#addOpener(tokenHash, at);
    });
  }

  openSpace(space: string, keeper: NewAccess, at: number): Promise<Made> {
    return this.#write(() => {
      if (this.#row('select id from space where id = ?', space))
        return this.#row(
          'select id from access where space = ? and token_hash = ?',
          space,
          keeper.tokenHash
        )
          ? 'there'
          : 'taken';
      this.#run('insert into space (id, since, bytes) values (?, ?, 0)', space, at);
      this.#addAccess(space, 'keeper', keeper, at, '');
      return 'made';
    });
  }

  async accessOf(tokenHash: string): Promise<Access | undefined> {
    const row = this.#row('select * from access where token_hash = ?', tokenHash);
    return row && accessOfRow(row);
  }

  addAccess(of: Access, added: NewAccess, most: number, at: number): Promise<Made> {
    return this.#write(() => {
      const there = this.#row('select space from access where token_hash = ?', added.tokenHash);
      if (there) return there.space === of.space ? 'there' : 'taken';
      if (this.#accessCount(of.space) >= most) return 'too-many';
      this.#addAccess(of.space, of.role, added, at, '');
      return 'made';
    });
  }

  noteSeen(access: string, at: number): Promise<void> {
    return this.#write(() => {
      this.#run('update access set last_seen = ? where id = ?', at, access);
    });
  }

  async accesses(space: string): Promise<AccessEntry[]> {
    return this.#rows('select * from access where space = ? order by since, id', space).map(
      accessEntryOfRow
    );
  }

  removeAccess(space: string, access: string): Promise<'done' | 'no-such-thing' | 'last-keeper'> {
    return this.#write(() => {
      const row = this.#row('select * from access where space = ? and id = ?', space, access);
      if (!row) return 'no-such-thing';
      const others = this.#row(
        `select count(*) as others from access
         where space = ? and id <> ? and role = 'keeper' and removed = 0`,
        space,
        access
      );
      if (row.role === 'keeper' && Number(row.removed) === 0 && Number(others?.others) === 0)
        return 'last-keeper';
      this.#run('update access set removed = 1 where id = ?', access);
      this.#news.push({ kind: 'removed', space, access });
      return 'done';
    });
  }

  addInvite(invite: NewInvite, most: number): Promise<Made> {
    const { id, secretHash, space, role, since, until } = invite;
    return this.#write(() => {
      const there = this.#row('select secret_hash, space from invite where id = ?', id);
      if (there)
        return there.secret_hash === secretHash && there.space === space ? 'there' : 'taken';
      const open = this.#row(
        `select count(*) as open from invite
         where space = ? and used_by = '' and revoked = 0 and until > ?`,
        space,
        since
      );
      if (Number(open?.open) >= most) return 'too-many';
      this.#run(
        `insert into invite (id, secret_hash, space, role, since, until, used_by, revoked)
         values (?, ?, ?, ?, ?, ?, '', 0)`,
        id,
        secretHash,
        space,
        role,
        since,
        until
      );
      return 'made';
    });
  }

  redeem(
    invite: { readonly id: string; readonly secretHash: string },
    joining: NewAccess,
    most: number,
    at: number
  ): Promise<Redeemed> {
    return this.#write((): Redeemed => {
      const row = this.#row('select * from invite where id = ?', invite.id);
      if (!row || row.secret_hash !== invite.secretHash)
        return { ok: false, reason: 'invite-unknown' };
      const space = String(row.space);
      const role = row.role as 'member' | 'keeper';
      if (row.used_by === joining.tokenHash) {
        const before = this.#row('select id from access where token_hash = ?', joining.tokenHash);
        return { ok: true, space, role, access: String(before?.id) };
      }
      const state = inviteState(row, at);
      if (state !== 'open') return { ok: false, reason: `invite-${state}` };
      if (this.#accessCount(space) >= most) return { ok: false, reason: 'too-many' };
      if (this.#row('select id from access where token_hash = ?', joining.tokenHash))
        return { ok: false, reason: 'invite-used' };
      this.#run('update invite set used_by = ? where id = ?', joining.tokenHash, invite.id);
      this.#addAccess(space, role, joining, at, invite.id);
      return { ok: true, space, role, access: joining.id };
    });
  }

  async invites(space: string, at: number): Promise<InviteEntry[]> {
    const rows = this.#rows('select * from invite where space = ? order by since, id', space);
    return rows.map((row) => inviteEntryOfRow(row, at));
  }

  revokeInvite(space: string, invite: string): Promise<'done' | 'no-such-thing'> {
    return this.#write(() =>
      this.#run('update invite set revoked = 1 where space = ? and id = ?', space, invite) === 0
        ? 'no-such-thing'
        : 'done'
    );
  }

  append(space: string, parcel: SealedParcel, mostBytes: number, at: number): Promise<Appended> {
    const { device, first, last, bytes } = parcel;
    return this.#write((): Appended => {
      const head = this.#headOf(space, device);
      if (first !== head + 1) return { ok: false, reason: 'behind', last: head };
      if (!this.#takeRoom(space, bytes.length, mostBytes))
        return { ok: false, reason: 'space-full' };
      this.#run(
        'insert into parcel (space, device, first, last, body) values (?, ?, ?, ?, ?)',
        space,
        device,
        first,
        last,
        bytes
      );
      this.#run(
        `insert into device (space, device, head, at) values (?, ?, ?, ?)
         on conflict (space, device) do update set head = excluded.head, at = excluded.at`,
        space,
        device,
        last,
        at
      );
      this.#news.push({ kind: 'parcel', space, device, last });
      return { ok: true, last };
    });
  }

  async heads(space: string): Promise<Heads> {
    const rows = this.#rows('select device, head from device where space = ?', space);
    return Object.fromEntries(rows.map(({ device, head }) => [String(device), Number(head)]));
  }

  async above(space: string, have: Heads, bytes: number): Promise<SealedParcel[]> {
    const parcels: SealedParcel[] = [];
    let left = bytes;
    for (const [device, head] of Object.entries(await this.heads(space))) {
      let above = have[device] ?? 0;
      while (above < head && (left > 0 || parcels.length === 0)) {
        const row = this.#row(
          `select first, last, body from parcel
           where space = ? and device = ? and last > ? order by last limit 1`,
          space,
          device,
          above
        );
        if (!row) break;
        const body = row.body as Uint8Array;
        left -= body.length;
        above = Number(row.last);
        if (left < 0 && parcels.length > 0) return parcels;
        parcels.push({ device, first: Number(row.first), last: above, bytes: body });
      }
    }
    return parcels;
  }

  putPhoto(
    space: string,
    id: string,
    bytes: Uint8Array,
    mostBytes: number
  ): Promise<'done' | 'space-full'> {
    return this.#write(() => {
      if (this.#row('select id from photo where space = ? and id = ?', space, id)) return 'done';
      if (!this.#takeRoom(space, bytes.length, mostBytes)) return 'space-full';
      this.#run('insert into photo (space, id, body) values (?, ?, ?)', space, id, bytes);
      return 'done';
    });
  }

  async photo(space: string, id: string): Promise<Uint8Array<ArrayBuffer> | undefined> {
    const row = this.#row('select body from photo where space = ? and id = ?', space, id);
    return row && new Uint8Array(row.body as Uint8Array);
  }

  onNews(hear: (news: SpaceNews) => void): () => void {
    this.#listeners.add(hear);
    return () => this.#listeners.delete(hear);
  }

  async close(): Promise<void> {
    this.#flush();
    for (const statement of this.#statements.values()) statement.finalize();
    this.#statements.clear();
    this.#database.close();
    this.#unlock();
  }

  #write<T>(work: () => T): Promise<T> {
    return new Promise<T>((resolve, reject) => {
      this.#waiting.push({ work, resolve, reject });
      if (this.#waiting.length === 1) setImmediate(() => this.#flush());
    });
  }

  /** Does what has gathered, each piece whole or not at all, and answers after the commit. */
  #flush(): void {
    const waiting = this.#waiting;
    if (waiting.length === 0) return;
    this.#waiting = [];
    this.#news = [];
    const answers: (() => void)[] = [];
    try {
      this.#database.exec('begin immediate');
      for (const { work, resolve, reject } of waiting) {
        const told = this.#news.length;
        this.#database.exec('savepoint piece');
        try {
          const value = work();
          answers.push(() => resolve(value as never));
        } catch (error) {
          this.#news.length = told;
          this.#database.exec('rollback to piece');
          answers.push(() => reject(fullOr(error, this.#folder)));
        }
        this.#database.exec('release piece');
      }
      this.#database.exec('commit');
    } catch (error) {
      if (this.#database.inTransaction) this.#database.exec('rollback');
      const told = fullOr(error, this.#folder);
      for (const { reject } of waiting) reject(told);
      return;
    }
    for (const answer of answers) answer();
    for (const news of this.#news) for (const hear of this.#listeners) hear(news);
  }

  #addOpener(tokenHash: string, at: number): void {
    const opener = { id: tokenHash, tokenHash, device: '', label: '' };
    this.#addAccess('', 'opener', opener, at, '');
  }

  #addAccess(space: string, role: string, access: NewAccess, at: number, invite: string): void {
    const { id, tokenHash, device, label } = access;
    this.#run(
      `insert into access
         (id, token_hash, space, device, role, label, since, last_seen, removed, invite)
       values (?, ?, ?, ?, ?, ?, ?, ?, 0, ?)`,
      id,
      tokenHash,
      space,
      device,
      role,
      label,
      at,
      at,
      invite
    );
  }

  #accessCount(space: string): number {
    return Number(this.#row('select count(*) as count from access where space = ?', space)?.count);
  }

  #headOf(space: string, device: string): number {
    const row = this.#row('select head from device where space = ? and device = ?', space, device);
    return Number(row?.head ?? 0);
  }

  #takeRoom(space: string, bytes: number, most: number): boolean {
    const sql = 'update space set bytes = bytes + ? where id = ? and bytes + ? <= ?';
    return this.#run(sql, bytes, space, bytes, most) === 1;
  }

  #prepared(sql: string): Statement {
    const known = this.#statements.get(sql);
    if (known) return known;
    const made = this.#database.prepare(sql);
    this.#statements.set(sql, made);
    return made;
  }

  #row(sql: string, ...values: JSValue[]): Row | undefined {
    return this.#prepared(sql).get(values) ?? undefined;
  }

  #rows(sql: string, ...values: JSValue[]): Row[] {
    return this.#prepared(sql).all(values);
  }

  /** @returns how many rows it changed */
  #run(sql: string, ...values: JSValue[]): number {
    return this.#prepared(sql).run(values).changes;
  }
}
