import {
  type AccessEntry,
  HUB_PATH,
  HUB_VERSION,
  type Heads,
  type HubRefusal,
  type InviteEntry,
  type Role,
  type SealedParcel,
  unpackPull
} from '../../hub/protocol.ts';

/** No answer came, or none that a hub gives: the request may or may not have been done. */
export class HubSilent extends Error {
  constructor(cause?: unknown) {
    super('no answer from the hub', { cause });
    this.name = 'HubSilent';
  }
}

/** The hub said no, and why. */
export class HubRefused extends Error {
  readonly status: number;
  readonly reason: HubRefusal;
  /** For `behind`: the head of the device. */
  readonly last: number;
  /** For `other-version`: whether the hub is older than this app, and not newer. */
  readonly isOlder: boolean;

  constructor(status: number, reason: HubRefusal, last: number, isOlder = false) {
    super(`the hub refused: ${reason}`);
    this.name = 'HubRefused';
    this.status = status;
    this.reason = reason;
    this.last = last;
    this.isOlder = isOlder;
  }
}

export type Fetch = (url: string, init: RequestInit) => Promise<Response>;

/** The hub as one device sees it: each method is one request. */
export class HubClient {
  readonly #fetch: Fetch;
  readonly #origin: string;
  readonly #space: string;
  readonly #token: string;
  readonly #now: () => number;
  /**
   * How far the clock here is ahead of the hub's, ms; the least that any answer told, since each
   * was on its way for a while. Undefined until one told it.
   */
  clockAheadMs: number | undefined;

  constructor(
    fetch: Fetch,
    { origin, space, token }: { origin: string; space: string; token: string },
    now: () => number = Date.now
  ) {
    this.#fetch = fetch;
    this.#origin = origin;
    this.#space = space;
    this.#token = token;
    this.#now = now;
  }

  /** @throws HubRefused `behind` with the head when the parcel does not follow it */
  async append({ device, first, last, bytes }: SealedParcel): Promise<void> {
    await this.#ask(
      'POST',
      `/${this.#space}/parcel?device=${device}&first=${first}&last=${last}`,
      bytes
    );
  }

  async pull(have: Heads): Promise<{ heads: Heads; parcels: SealedParcel[] }> {
    const answer = await this.#ask('POST', `/${this.#space}/pull`, { have });
    const pulled = unpackPull(await bytesOf(answer));
    if (!pulled) throw new HubSilent(new Error('the answer was cut'));
    return pulled;
  }

  async putPhoto(name: string, bytes: Uint8Array<ArrayBuffer>): Promise<void> {
    await this.#ask('PUT', `/${this.#space}/photo/${name}`, bytes);
  }

  /** A sealed photo; undefined when the hub does not have it. */
  async photo(name: string): Promise<Uint8Array<ArrayBuffer> | undefined> {
    try {
      return await bytesOf(await this.#ask('GET', `/${this.#space}/photo/${name}`));
    } catch (error) {
      if (error instanceof HubRefused && error.status === 404) return undefined;
      throw error;
    }
  }

  /** The stream of news, to be read line by line. */
  async live(signal: AbortSignal): Promise<ReadableStream<Uint8Array>> {
    const answer = await this.#ask('GET', `/${this.#space}/live`, undefined, signal);
    if (!answer.body) throw new HubSilent();
    return answer.body;
  }

  async invites(change: Record<string, unknown> = {}): Promise<InviteEntry[]> {
    return (await this.#json('POST', `/${this.#space}/invite`, change)).invites as InviteEntry[];
  }

  async accesses(
    change: Record<string, unknown> = {}
  ): Promise<{ own: string; accesses: AccessEntry[] }> {
    const { own, accesses } = await this.#json('POST', `/${this.#space}/access`, change);
    return { own: String(own), accesses: accesses as AccessEntry[] };
  }

  async openSpace(keeper: Record<string, unknown>): Promise<void> {
    await this.#json('POST', '/space', { space: this.#space, ...keeper });
  }

  async join(body: Record<string, unknown>): Promise<{ space: string; role: Role }> {
    const { space, role } = await this.#json('POST', '/join', body);
    return { space: String(space), role: role as Role };
  }

  async #json(method: string, path: string, body: Record<string, unknown>) {
    const answer = await this.#ask(method, path, body);
    try {
      return (await answer.json()) as Record<string, unknown>;
    } catch (error) {
      throw new HubSilent(error);
    }
  }

  async #ask(
    method: string,
    path: string,
    body?: Uint8Array | Record<string, unknown>,
    signal?: AbortSignal
  ): Promise<Response> {
    const isBinary = body instanceof Uint8Array;
    const headers: Record<string, string> = {};
    if (this.#token) headers.authorization = `Bearer ${this.#token}`;
    if (body) headers['content-type'] = isBinary ? 'application/octet-stream' : 'application/json';
    let answer: Response;
    try {
      answer = await this.#fetch(`${this.#origin}${HUB_PATH}${path}`, {
        method,
        headers,
        body: isBinary ? (body as Uint8Array<ArrayBuffer>) : body && JSON.stringify(body),
        cache: 'no-store',
        signal
      });
    } catch (error) {
      throw new HubSilent(error);
    }
    this.#noteClock(Date.parse(answer.headers.get('date') ?? ''));
    if (answer.ok) return answer;
    const told = (await answer.json().catch(() => null)) as {
      error?: unknown;
      last?: unknown;
      versions?: unknown;
    } | null;
    if (typeof told?.error !== 'string') throw new HubSilent(new Error(`status ${answer.status}`));
    const versions = Array.isArray(told.versions) ? told.versions.map(Number) : [];
    const isOlder = versions.length > 0 && Math.max(...versions) < HUB_VERSION;
    const reason = told.error as HubRefusal;
    throw new HubRefused(answer.status, reason, Number(told.last ?? 0), isOlder);
  }

  #noteClock(hubTime: number): void {
    if (Number.isNaN(hubTime)) return;
    const ahead = this.#now() - hubTime;
    if (Math.abs(ahead) <= Math.abs(this.clockAheadMs ?? Infinity)) this.clockAheadMs = ahead;
  }
}

async function bytesOf(answer: Response): Promise<Uint8Array<ArrayBuffer>> {
  try {
    return new Uint8Array(await answer.arrayBuffer());
  } catch (error) {
    throw new HubSilent(error);
  }
}
