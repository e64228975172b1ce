import type { PoolClient } from 'pg';
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
import { CHANNEL, PostgresPool, notify } from './postgres-pool.ts';
import type { AccessEntry, Heads, InviteEntry, SealedParcel } from './protocol.ts';
import { type Row, accessEntryOfRow, accessOfRow, inviteEntryOfRow, inviteState } from './rows.ts';
import { schema } from './schema.ts';

/** Held while the tables are made, so that processes starting together do not collide. */
const SCHEMA_LOCK = 4_173_001;

/**
 * The hub's data in PostgreSQL; several hub processes may share it. A parcel is stored and told of
 * in one statement.
 */
export class PostgresHubStore implements HubStore {
  readonly #pool: PostgresPool;

  private constructor(pool: PostgresPool) {
    this.#pool = pool;
  }

  /** @throws Error when the database cannot be reached */
  static async open(url: string): Promise<PostgresHubStore> {
    const pool = new PostgresPool(url);
    try {
      await pool.together(async (client) => {
        await client.query('select pg_advisory_xact_lock($1)', [SCHEMA_LOCK]);
        for (const table of schema('bytea')) await client.query(table);
      });
      await pool.listen();
    } catch (error) {
      await pool.close();
      throw error;
    }
    return new PostgresHubStore(pool);
  }

  async firstHubKey(tokenHash: string, at: number): Promise<boolean> {
    return this.#pool.together(async (client) => {
      await client.query('lock table access in share row exclusive mode');
      if ((await client.query("select 1 from access where role = 'opener'")).rowCount) return false;
      await addOpener(client, tokenHash, at);
      return true;
    });
  }

  async replaceHubKey(tokenHash: string, at: number): Promise<void> {
    await this.#pool.together(async (client) => {
      await client.query("delete from access where role = 'opener'");
      await addOpener(client, tokenHash, at);
    });
  }

  async openSpace(space: string, keeper: NewAccess, at: number): Promise<Made> {
    return this.#pool.together(async (client) => {
      const made = await client.query(
        'insert into space (id, since, bytes) values ($1, $2, 0) on conflict do nothing',
        [space, at]
      );
      if (made.rowCount === 0) {
        const held = await client.query(
          'select 1 from access where space = $1 and token_hash = $2',
          [space, keeper.tokenHash]
        );
        return held.rowCount ? 'there' : 'taken';
      }
      await addAccess(client, space, 'keeper', keeper, at, '');
      return 'made';
    });
  }

  async accessOf(tokenHash: string): Promise<Access | undefined> {
    const [row] = await this.#pool.rows('select * from access where token_hash = $1', [tokenHash]);
    return row && accessOfRow(row);
  }

  async addAccess(of: Access, added: NewAccess, most: number, at: number): Promise<Made> {
    return this.#pool.together(async (client) => {
      await lockSpace(client, of.space);
      const there = await client.query('select space from access where token_hash = $1', [
        added.tokenHash
      ]);
      if (there.rowCount) return there.rows[0].space === of.space ? 'there' : 'taken';
      if ((await accessCount(client, of.space)) >= most) return 'too-many';
      await addAccess(client, of.space, of.role, added, at, '');
      return 'made';
    });
  }

  async noteSeen(access: string, at: number): Promise<void> {
    await this.#pool.rows('update access set last_seen = $1 where id = $2', [at, access]);
  }

  async accesses(space: string): Promise<AccessEntry[]> {
    const rows = await this.#pool.rows('select * from access where space = $1 order by since, id', [
      space
    ]);
    return rows.map(accessEntryOfRow);
  }

  async removeAccess(
    space: string,
    access: string
  ): Promise<'done' | 'no-such-thing' | 'last-keeper'> {
    return this.#pool.together(async (client) => {
      await lockSpace(client, space);
      const { rows } = await client.query<Row>('select * from access where space = $1', [space]);
      const row = rows.find(({ id }) => id === access);
      if (!row) return 'no-such-thing';
      const keepers = rows.filter(({ role, removed }) => role === 'keeper' && removed === 0);
      if (keepers.length === 1 && keepers[0].id === access) return 'last-keeper';
      await client.query('update access set removed = 1 where id = $1', [access]);
      await notify(client, { kind: 'removed', space, access });
      return 'done';
    });
  }

  async addInvite(invite: NewInvite, most: number): Promise<Made> {
    const { id, secretHash, space, role, since, until } = invite;
    return this.#pool.together(async (client) => {
      await lockSpace(client, space);
      const there = await client.query('select secret_hash, space from invite where id = $1', [id]);
      if (there.rowCount) {
        const [row] = there.rows;
        return row.secret_hash === secretHash && row.space === space ? 'there' : 'taken';
      }
      const open = await client.query(
        `select count(*) as open from invite
         where space = $1 and used_by = '' and revoked = 0 and until > $2`,
        [space, since]
      );
      if (Number(open.rows[0].open) >= most) return 'too-many';
      await client.query(
        `insert into invite (id, secret_hash, space, role, since, until, used_by, revoked)
         values ($1, $2, $3, $4, $5, $6, '', 0)`,
        [id, secretHash, space, role, since, until]
      );
      return 'made';
    });
  }

  async redeem(
    invite: { readonly id: string; readonly secretHash: string },
    joining: NewAccess,
    most: number,
    at: number
  ): Promise<Redeemed> {
    return this.#pool.together(async (client): Promise<Redeemed> => {
      const found = await client.query<Row>('select * from invite where id = $1 for update', [
        invite.id
      ]);
      const row = found.rows.at(0);
      if (!row || row.secret_hash !== invite.secretHash)
        return { ok: false, reason: 'invite-unknown' };
      const space = String(row.space);
      const role = row.role as 'member' | 'keeper';
      const before = await client.query<Row>('select id from access where token_hash = $1', [
        joining.tokenHash
      ]);
      if (row.used_by === joining.tokenHash)
        return { ok: true, space, role, access: String(before.rows[0].id) };
      const state = inviteState(row, at);
      if (state !== 'open') return { ok: false, reason: `invite-${state}` };
      await lockSpace(client, space);
      if ((await accessCount(client, space)) >= most) return { ok: false, reason: 'too-many' };
      if (before.rowCount) return { ok: false, reason: 'invite-used' };
      await client.query('update invite set used_by = $1 where id = $2', [
        joining.tokenHash,
        invite.id
      ]);
      await addAccess(client, space, role, joining, at, invite.id);
      return { ok: true, space, role, access: joining.id };
    });
  }

  async invites(space: string, at: number): Promise<InviteEntry[]> {
    const rows = await this.#pool.rows('select * from invite where space = $1 order by since, id', [
      space
    ]);
    return rows.map((row) => inviteEntryOfRow(row, at));
  }

  async revokeInvite(space: string, invite: string): Promise<'done' | 'no-such-thing'> {
    const sql = 'update invite set revoked = 1 where space = $1 and id = $2 returning id';
    return (await this.#pool.rows(sql, [space, invite])).length === 0 ? 'no-such-thing' : 'done';
  }

  async append(
    space: string,
    { device, first, last, bytes }: SealedParcel,
    mostBytes: number,
    at: number
  ): Promise<Appended> {
    const news: SpaceNews = { kind: 'parcel', space, device, last };
    const [row] = await this.#pool.rows(
      `with moved as (
         insert into device as d (space, device, head, at)
         select $1, $2, $4::bigint, $8::bigint
         where (select bytes from space where id = $1) + octet_length($5::bytea) <= $6::bigint
           and ($3::bigint = 1 or exists (select 1 from device where space = $1 and device = $2))
         on conflict (space, device) do update set head = excluded.head, at = excluded.at
           where d.head = $3::bigint - 1
         returning head
       ), stored as (
         insert into parcel (space, device, first, last, body)
         select $1, $2, $3::bigint, $4::bigint, $5::bytea from moved
       ), counted as (
         update space set bytes = bytes + octet_length($5::bytea)
         where id = $1 and exists (select 1 from moved)
       )
       select head, pg_notify('${CHANNEL}', $7) from moved`,
      [space, device, first, last, bufferOf(bytes), mostBytes, JSON.stringify(news), at]
    );
    if (row) return { ok: true, last };
    const head = (await this.heads(space))[device] ?? 0;
    return first === head + 1
      ? { ok: false, reason: 'space-full' }
      : { ok: false, reason: 'behind', last: head };
  }

  async heads(space: string): Promise<Heads> {
    const rows = await this.#pool.rows('select device, head from device where space = $1', [space]);
    return Object.fromEntries(rows.map(({ device, head }) => [String(device), Number(head)]));
  }

  async above(space: string, have: Heads, bytes: number): Promise<SealedParcel[]> {
    // Which parcels are meant is worked out by their sizes; only those are then read.
    const rows = await this.#pool.rows(
      `with wanted as (
         select p.device, p.first, p.last,
           sum(octet_length(p.body)) over (order by p.device, p.last) as reach,
           row_number() over (order by p.device, p.last) as place
         from parcel p left join jsonb_each_text($2::jsonb) have on have.key = p.device
         where p.space = $1 and p.last > coalesce(have.value::bigint, 0)
       )
       select p.device, p.first, p.last, p.body
       from wanted w join parcel p on p.space = $1 and p.device = w.device and p.last = w.last
       where w.place = 1 or w.reach <= $3
       order by p.device, p.last`,
      [space, JSON.stringify(have), bytes]
    );
    return rows.map((row) => ({
      device: String(row.device),
      first: Number(row.first),
      last: Number(row.last),
      bytes: row.body as Uint8Array
    }));
  }

  async putPhoto(
    space: string,
    id: string,
    bytes: Uint8Array,
    mostBytes: number
  ): Promise<'done' | 'space-full'> {
    return this.#pool.together(async (client) => {
      await lockSpace(client, space);
      const there = await client.query('select 1 from photo where space = $1 and id = $2', [
        space,
        id
      ]);
      if (there.rowCount) return 'done';
      const room = await client.query(
        'update space set bytes = bytes + $2::bigint where id = $1 and bytes + $2::bigint <= $3::bigint',
        [space, bytes.length, mostBytes]
      );
      if (room.rowCount === 0) return 'space-full';
      await client.query('insert into photo (space, id, body) values ($1, $2, $3)', [
        space,
        id,
        bufferOf(bytes)
      ]);
      return 'done';
    });
  }

  async photo(space: string, id: string): Promise<Uint8Array<ArrayBuffer> | undefined> {
    const [row] = await this.#pool.rows('select body from photo where space = $1 and id = $2', [
      space,
      id
    ]);
    return row && new Uint8Array(row.body as Uint8Array);
  }

  onNews(hear: (news: SpaceNews) => void): () => void {
    return this.#pool.onNews(hear);
  }

  close(): Promise<void> {
    return this.#pool.close();
  }
}

async function addOpener(client: PoolClient, tokenHash: string, at: number): Promise<void> {
  const opener = { id: tokenHash, tokenHash, device: '', label: '' };
  await addAccess(client, '', 'opener', opener, at, '');
}

async function addAccess(
  client: PoolClient,
  space: string,
  role: string,
  { id, tokenHash, device, label }: NewAccess,
  at: number,
  invite: string
): Promise<void> {
  await client.query(
    `insert into access
       (id, token_hash, space, device, role, label, since, last_seen, removed, invite)
     values ($1, $2, $3, $4, $5, $6, $7::bigint, $7::bigint, 0, $8)`,
    [id, tokenHash, space, device, role, label, at, invite]
  );
}

async function accessCount(client: PoolClient, space: string): Promise<number> {
  const sql = 'select count(*) as count from access where space = $1';
  return Number((await client.query(sql, [space])).rows[0].count);
}

/** What is counted in a space is counted by one at a time. */
async function lockSpace(client: PoolClient, space: string): Promise<void> {
  await client.query('select 1 from space where id = $1 for update', [space]);
}

/** The same bytes as the driver wants them. */
function bufferOf(bytes: Uint8Array): Buffer {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}
