import pg from 'pg';
import { HubFull, type SpaceNews } from './hub-store.ts';
import type { Row } from './rows.ts';

/** Where processes of one hub tell each other of news, as `pg_notify` names it. */
export const CHANNEL = 'evencourse_hub';
const RECONNECT_MS = 500;

/**
 * Connections to PostgreSQL: a pool for statements and transactions, and one connection that hears
 * the news of every process of the hub.
 */
export class PostgresPool {
  readonly #url: string;
  readonly #pool: pg.Pool;
  readonly #listeners = new Set<(news: SpaceNews) => void>();
  #ear: pg.Client | undefined;
  #isClosed = false;

  constructor(url: string) {
    this.#url = url;
    this.#pool = new pg.Pool({ connectionString: url, max: 8 });
    // A connection that breaks while idle is dropped; the next request gets another.
    this.#pool.on('error', () => undefined);
  }

  onNews(hear: (news: SpaceNews) => void): () => void {
    this.#listeners.add(hear);
    return () => this.#listeners.delete(hear);
  }

  async close(): Promise<void> {
    this.#isClosed = true;
    await this.#ear?.end().catch(() => undefined);
    await this.#pool.end();
  }

  /** Listens to all processes on a connection of its own, and connects again when it breaks. */
  async listen(): Promise<void> {
    const ear = new pg.Client({ connectionString: this.#url });
    this.#ear = ear;
    ear.on('notification', ({ payload }) => this.#tell(JSON.parse(payload ?? '') as SpaceNews));
    let isBroken = false;
    const again = () => {
      if (isBroken || this.#isClosed) return;
      isBroken = true;
      ear.end().catch(() => undefined);
      setTimeout(() => {
        if (this.#isClosed) return;
        this.listen().then(
          () => this.#tell({ kind: 'look-again' }),
          () => undefined
        );
      }, RECONNECT_MS);
    };
    ear.on('error', again);
    ear.on('end', again);
    try {
      await ear.connect();
      await ear.query(`listen ${CHANNEL}`);
    } catch (error) {
      again();
      throw error;
    }
  }

  #tell(news: SpaceNews): void {
    for (const hear of this.#listeners) hear(news);
  }

  /** @throws HubFull when the disk is full */
  async rows(sql: string, values: unknown[]): Promise<Row[]> {
    try {
      return (await this.#pool.query<Row>(sql, values)).rows;
    } catch (error) {
      throw fullOr(error);
    }
  }

  /**
   * Several statements in one transaction.
   *
   * @throws HubFull when the disk is full
   */
  async together<T>(work: (client: pg.PoolClient) => Promise<T>): Promise<T> {
    const client = await this.#pool.connect();
    try {
      await client.query('begin');
      const value = await work(client);
      await client.query('commit');
      client.release();
      return value;
    } catch (error) {
      await client.query('rollback').then(
        () => client.release(),
        () => client.release(true)
      );
      throw fullOr(error);
    }
  }
}

/** Tells every process of the hub, once the transaction is committed. */
export async function notify(client: pg.PoolClient, news: SpaceNews): Promise<void> {
  await client.query('select pg_notify($1, $2)', [CHANNEL, JSON.stringify(news)]);
}

function fullOr(error: unknown): unknown {
  return (error as { code?: unknown } | null)?.code === '53100' ? new HubFull(error) : error;
}
