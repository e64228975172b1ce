import type { HubRefusal } from './protocol.ts';

/** Thrown anywhere in a request, answered in one place. */
export class Refused extends Error {
  readonly status: number;
  readonly reason: HubRefusal;
  readonly more: Record<string, unknown>;

  constructor(status: number, reason: HubRefusal, more: Record<string, unknown> = {}) {
    super(reason);
    this.status = status;
    this.reason = reason;
    this.more = more;
  }
}

const HEADERS = { 'cache-control': 'no-store', 'x-content-type-options': 'nosniff' };

export function json(value: unknown, status = 200, headers: Record<string, string> = {}): Response {
  return new Response(JSON.stringify(value), {
    status,
    headers: { ...HEADERS, 'content-type': 'application/json', ...headers }
  });
}

export function binary(body: BodyInit, type = 'application/octet-stream'): Response {
  return new Response(body, { headers: { ...HEADERS, 'content-type': type } });
}

export function refusal({ status, reason, more }: Refused): Response {
  const wait: Record<string, string> = status === 429 ? { 'retry-after': '30' } : {};
  return json({ error: reason, ...more }, status, wait);
}

/**
 * The body of a request, read no further than it may be long.
 *
 * @throws Refused 413 for a longer one
 */
export async function bodyOf(request: Request, most: number): Promise<Uint8Array<ArrayBuffer>> {
  const told = Number(request.headers.get('content-length') ?? 0);
  if (told > most) throw new Refused(413, 'too-large', { most });
  const pieces: Uint8Array[] = [];
  let size = 0;
  const reader = request.body?.getReader();
  while (reader) {
    const { done, value } = await reader.read();
    if (done) break;
    size += value.length;
    if (size > most) {
      await reader.cancel().catch(() => undefined);
      throw new Refused(413, 'too-large', { most });
    }
    pieces.push(value);
  }
  const body = new Uint8Array(size);
  let at = 0;
  for (const piece of pieces) {
    body.set(piece, at);
    at += piece.length;
  }
  return body;
}

/** @throws Refused 400 for what is no JSON object */
export async function objectOf(request: Request, most: number): Promise<Record<string, unknown>> {
  const bytes = await bodyOf(request, most);
  try {
    const value: unknown = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
    if (typeof value === 'object' && value !== null && !Array.isArray(value))
      return value as Record<string, unknown>;
  } catch {
    // told below
  }
  throw new Refused(400, 'bad-request', { what: 'the body is no JSON object' });
}

/** Takes a field of a request. @throws Refused 400 when it is not what it must be */
export function need<T>(value: unknown, is: (value: unknown) => value is T, what: string): T {
  if (is(value)) return value;
  throw new Refused(400, 'bad-request', { what });
}
