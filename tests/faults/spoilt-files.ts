import { createHash } from 'node:crypto';
import { type Random, createRandom } from '../../src/lib/engine/index.ts';

/** A job file that must be refused, and by which of the reasons in words. */
export interface SpoiltFile {
  readonly what: string;
  readonly text: string | Buffer;
  readonly reason: RegExp;
}

const BROKEN = /A line of the file is broken|no job file of this app/;
const CHANGED = /fingerprint does not match|line of the file is broken/;

/** A good job file spoilt in each way that a copy, a program or a person may spoil it. */
export function spoiltFiles(good: string): SpoiltFile[] {
  const lines = good.trimEnd().split('\n');
  const [header, ...events] = lines;
  const count = events.length;
  const mended = (changed: readonly string[]): string => withTrueHash(header, changed);
  const swapped = [events[1], events[0], ...events.slice(2)];
  const withBody = (body: string): string[] => [
    events[0].replace(/"body":\{[^}]*\}/, `"body":${body}`),
    ...events.slice(1)
  ];
  return [
    { what: 'empty', text: '', reason: /no job file/ },
    { what: 'another file', text: 'pallet,thickness_mm\nA,6.40\n', reason: /no job file/ },
    { what: 'cut inside a line', text: good.slice(0, -20), reason: /cut off/ },
    {
      what: 'cut between lines',
      text: `${lines.slice(0, -3).join('\n')}\n`,
      reason: /as many entries/
    },
    {
      what: 'a line twice',
      text: `${[...lines, lines[count]].join('\n')}\n`,
      reason: /as many entries/
    },
    { what: 'two lines turned', text: mended(swapped), reason: BROKEN },
    {
      what: 'two lines turned, old hash',
      text: `${[header, ...swapped].join('\n')}\n`,
      reason: CHANGED
    },
    {
      what: 'a wrong hash',
      text: good.replace(/"sha256":"./, '"sha256":"x'),
      reason: /no job file|fingerprint/
    },
    {
      what: 'another hash',
      text: good.replace(/"sha256":"[0-9a-f]{8}/, '"sha256":"00000000'),
      reason: /fingerprint/
    },
    {
      what: 'a later version',
      text: good.replace('"version":1', '"version":2'),
      reason: /later version/
    },
    {
      what: 'an entry missing',
      text: mended(events.slice(0, -2).concat(events.slice(-1))),
      reason: /numbers of a device have a gap/
    },
    {
      what: 'a prototype key',
      text: mended(withBody('{"__proto__":{"name":"x"},"name":"y"}')),
      reason: BROKEN
    },
    {
      what: 'a constructor key',
      text: mended(withBody('{"constructor":{"prototype":1},"name":"y"}')),
      reason: BROKEN
    },
    {
      what: 'deep nesting',
      text: mended(withBody(`${'['.repeat(50_000)}${']'.repeat(50_000)}`)),
      reason: BROKEN
    },
    { what: 'a body of the wrong kind', text: mended(withBody('{"name":7}')), reason: BROKEN },
    {
      what: 'spaces put in',
      text: mended([events[0].replace('{', '{ '), ...events.slice(1)]),
      reason: BROKEN
    },
    { what: 'a line without end', text: `${header}\n${'x'.repeat(13 * 2 ** 20)}`, reason: BROKEN },
    {
      what: 'not UTF-8',
      text: Buffer.concat([Buffer.from(`${header}\n`), Buffer.from([0xff, 0xfe, 0x0a])]),
      reason: BROKEN
    }
  ];
}

/** The good file with single bits turned over, pieces cut out or moved, by a seeded chance. */
export function randomlySpoilt(good: string, howMany: number, seed: number): Buffer[] {
  const random = createRandom(seed);
  return Array.from({ length: howMany }, () => {
    for (;;) {
      const bytes = spoil(Buffer.from(good), random);
      if (!bytes.equals(Buffer.from(good))) return bytes;
    }
  });
}

function spoil(bytes: Buffer, random: Random): Buffer {
  const at = Math.floor(random() * bytes.length);
  const to = at + 1 + Math.floor(random() * Math.min(2000, bytes.length - at));
  const way = Math.floor(random() * 4);
  if (way === 0) {
    bytes[at] ^= 1 << Math.floor(random() * 8);
    return bytes;
  }
  if (way === 1) return bytes.subarray(0, at);
  if (way === 2) return Buffer.concat([bytes.subarray(0, at), bytes.subarray(to)]);
  return Buffer.concat([bytes.subarray(0, to), bytes.subarray(at)]);
}

/** The header made true for other event lines, so that only what they say can be wrong. */
function withTrueHash(header: string, events: readonly string[]): string {
  const body = events.map((line) => `${line}\n`).join('');
  const sha256 = createHash('sha256').update(body).digest('hex');
  const fields = JSON.parse(header) as { devices: Record<string, number> };
  const devices = Object.fromEntries(Object.keys(fields.devices).map((id) => [id, events.length]));
  return `${JSON.stringify({ ...fields, sha256, events: events.length, devices })}\n${body}`;
}
