import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type StoredEvent, canonicalJson, canonicalView } from '$lib/journal';
import { type ImportResult, readJobFile, writeJobFile } from '$lib/storage';
import { MemoryStore } from '../support/memory-store.ts';
import { JOB_ID, journal } from '../support/journal-arbitraries.ts';

const SEED = 20_260_704;

function newStore(): MemoryStore {
  return new MemoryStore({ now: () => 1_770_000_000_000, randomHex: () => '0123456789abcdef' });
}

/** A file made by hand, so that the reader is not judged by the writer alone. */
function fileOf(
  events: readonly object[],
  changes: object = {},
  more: readonly string[] = []
): string {
  const lines = events.map((event) => canonicalJson(event) + '\n');
  const devices: Record<string, number> = {};
  for (const { deviceId } of events as StoredEvent[])
    devices[deviceId] = (devices[deviceId] ?? 0) + 1;
  const header = {
    format: 'evencourse-job',
    version: 1,
    jobId: JOB_ID,
    name: 'Barn',
    events: lines.length,
    sha256: createHash('sha256').update(lines.join('')).digest('hex'),
    devices,
    photos: more.length,
    ...changes
  };
  return [JSON.stringify(header) + '\n', ...lines, ...more].join('');
}

async function picture(store: MemoryStore): Promise<string> {
  const job = await store.open(JOB_ID);
  const events: StoredEvent[] = [];
  for await (const batch of store.events(JOB_ID)) events.push(...batch);
  return job ? canonicalView(job.view) + canonicalJson([job.summary, events]) : 'nothing';
}

/** The job without what the device notes of backups, which hangs on how its files came. */
async function jobIn(store: MemoryStore): Promise<string> {
  const summary = (await store.open(JOB_ID))?.summary;
  const noted = { ...summary, unexported: 0, exportedAt: null };
  return (await picture(store)).replace(canonicalJson(summary), canonicalJson(noted));
}

function reasonOf(result: ImportResult): string {
  return result.ok ? 'added' : result.reason;
}

const EXAMPLE = fc
  .sample(journal, { seed: SEED, numRuns: 20 })
  .reduce((a, b) => (b.length > a.length ? b : a));

describe('job files', () => {
  it('J14: written, read and written again, are the same bytes', async () => {
    await fc.assert(
      fc.asyncProperty(journal, async (events) => {
        const [store, other] = [newStore(), newStore()];
        expect(await readJobFile(store, fileOf(events))).toMatchObject({
          ok: true,
          added: events.length
        });
        const file = await writeJobFile(store, JOB_ID);
        const text = (await file?.blob.text()) ?? '';
        await readJobFile(other, text);
        expect(await picture(other)).toBe(await picture(store));
        expect(await (await writeJobFile(other, JOB_ID))?.blob.text()).toBe(text);
      }),
      { seed: SEED, numRuns: 60 }
    );
  });

  it('J14: give the same job in whatever order their parts come', async () => {
    await fc.assert(
      fc.asyncProperty(journal, fc.nat(40), async (events, cut) => {
        const [store, other] = [newStore(), newStore()];
        const early = events.slice(0, 1 + (cut % events.length));
        const files = [fileOf(early), fileOf(events), fileOf(early)];
        for (const file of files) expect((await readJobFile(store, file)).ok).toBe(true);
        expect((await readJobFile(other, fileOf(events))).ok).toBe(true);
        expect(await jobIn(store)).toBe(await jobIn(other));
      }),
      { seed: SEED, numRuns: 60 }
    );
  });

  it('J19: the hash in the header is that of the event lines, as any tool works it out', async () => {
    const store = newStore();
    await readJobFile(store, fileOf(EXAMPLE));
    const text = (await (await writeJobFile(store, JOB_ID))?.blob.text()) ?? '';
    const [head, ...lines] = text.split('\n');
    const header = JSON.parse(head) as { sha256: string; events: number };
    const body = lines.slice(0, header.events).join('\n') + '\n';
    expect(createHash('sha256').update(body).digest('hex')).toBe(header.sha256);
  });
});

describe('hostile job files', () => {
  /** Nothing of a bad file may be stored, whether the job was here before or not. */
  async function refuses(file: string | Blob, already = EXAMPLE.slice(0, 3)): Promise<string> {
    let reason = '';
    for (const before of [[], already]) {
      const store = newStore();
      if (before.length > 0) await readJobFile(store, fileOf(before));
      const unchanged = await picture(store);
      const result = await readJobFile(store, file);
      if (!result.ok) expect(await picture(store)).toBe(unchanged);
      reason = reasonOf(result);
    }
    return reason;
  }

  it('J15: cut off at any place are refused', async () => {
    const whole = fileOf(EXAMPLE);
    await fc.assert(
      fc.asyncProperty(fc.nat(whole.length - 1), async (length) => {
        expect(['torn', 'wrong-count', 'not-a-job-file']).toContain(
          await refuses(whole.slice(0, length))
        );
      }),
      { seed: SEED, numRuns: 200 }
    );
  });

  it('J15: with any one bit turned are refused, or say the same', async () => {
    const whole = new TextEncoder().encode(fileOf(EXAMPLE));
    const headerEnd = whole.indexOf(10);
    let refused = 0;
    await fc.assert(
      fc.asyncProperty(fc.nat(whole.length - 1), fc.nat(7), async (at, bit) => {
        const turned = whole.slice();
        turned[at] ^= 1 << bit;
        const reason = await refuses(new Blob([turned]));
        // The job's name in the header is only for people; nothing else may turn unnoticed.
        if (at > headerEnd) expect(reason).not.toBe('added');
        if (reason !== 'added') refused++;
      }),
      { seed: SEED, numRuns: 400 }
    );
    expect(refused).toBeGreaterThan(390);
  });

  it('J15: with lines in another order, twice, or left out are refused', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.nat(EXAMPLE.length - 2),
        fc.constantFrom('swap', 'double', 'drop'),
        async (at, how) => {
          const events: StoredEvent[] = [...EXAMPLE];
          if (how === 'swap') [events[at], events[at + 1]] = [events[at + 1], events[at]];
          if (how === 'double') events.splice(at, 0, events[at]);
          if (how === 'drop') events.splice(at, 1);
          const reason = await refuses(fileOf(events));
          const isLastOfDevice =
            how === 'drop' &&
            !EXAMPLE.slice(at + 1).some(({ deviceId }) => deviceId === EXAMPLE[at].deviceId);
          expect(reason).toBe(isLastOfDevice ? 'added' : how === 'drop' ? 'gap' : 'broken-line');
        }
      ),
      { seed: SEED, numRuns: 60 }
    );
  });

  it('J15: that are junk are refused', async () => {
    const junk = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 200 }),
      fc.jsonValue().map((value) => `${JSON.stringify(value)}\n`),
      fc.uint8Array({ maxLength: 200 }).map((bytes) => new Blob([Uint8Array.from(bytes)]))
    );
    await fc.assert(
      fc.asyncProperty(junk, async (file) => {
        expect(['not-a-job-file', 'broken-line']).toContain(await refuses(file));
      }),
      { seed: SEED, numRuns: 300 }
    );
  });

  // Version 1, which every type began with, whatever type comes first.
  const first = { ...EXAMPLE[0], v: 1 };
  const withBody = (body: object, type = 'slateWashed'): StoredEvent => ({
    ...first,
    type,
    body: { ...body }
  });
  const own = (key: string) => JSON.parse(`{"a":{"${key}":{"admin":true}}}`) as object;
  const deep = (levels: number): string => '['.repeat(levels) + ']'.repeat(levels);
  const raw = (line: string) => {
    const sha256 = createHash('sha256').update(`${line}\n`).digest('hex');
    const devices = { [first.deviceId]: 1 };
    return fileOf([], { events: 1, sha256, devices }) + `${line}\n`;
  };
  const plain = canonicalJson(withBody({}));

  it.each([
    ['a plain line', raw(plain), 'added'],
    ['nothing', '', 'not-a-job-file'],
    ['only a line feed', '\n', 'not-a-job-file'],
    ['another format', fileOf([first], { format: 'other' }), 'not-a-job-file'],
    ['a later version', fileOf([first], { version: 2, sha256: 0 }), 'too-new'],
    ['a wrong hash', fileOf([first], { sha256: '0'.repeat(64) }), 'wrong-hash'],
    ['a count too high', fileOf([first], { events: 2 }), 'wrong-count'],
    ['a count too low', fileOf(EXAMPLE, { events: 1, devices: {} }), 'wrong-hash'],
    ['a line too many', fileOf([first]) + 'more\n', 'wrong-count'],
    ['another job in the header', fileOf([first], { jobId: first.deviceId }), 'mixed-jobs'],
    ['devices that do not add up', fileOf([first], { devices: {} }), 'gap'],
    ['numbers that begin at 2', fileOf([{ ...first, deviceSeq: 2 }]), 'gap'],
    ['a prototype key', raw(canonicalJson(withBody(own('__proto__')))), 'broken-line'],
    ['a constructor key', raw(canonicalJson(withBody(own('constructor')))), 'broken-line'],
    ['a key given twice', raw(plain.replace('"at":', '"at":"x","at":')), 'broken-line'],
    ['spaces', raw(plain.replace(':', ': ')), 'broken-line'],
    ['20 levels', raw(canonicalJson(withBody({ a: JSON.parse(deep(20)) as unknown }))), 'added'],
    ['a million brackets', raw(deep(500_000)), 'broken-line'],
    ['an unclosed million', raw('['.repeat(1_000_000)), 'broken-line'],
    [
      'an id past the year 9999',
      raw(plain.replace(first.id, 'f' + first.id.slice(1))),
      'broken-line'
    ],
    ['a reading of 99 mm', fileOf([withBody({ points: [9900] }, 'slateGauged')]), 'broken-line'],
    [
      'a photo nobody added',
      fileOf([first], {}, ['{"base64":"AAAA","photo":"f1","type":"image/png"}\n']),
      'bad-photo'
    ],
    [
      'a photo that is a page',
      fileOf([first], {}, ['{"base64":"AAAA","photo":"f1","type":"text/html"}\n']),
      'bad-photo'
    ]
  ])('J15: with %s', async (_title, file, reason) => {
    expect(await refuses(file, [])).toBe(reason);
  });

  it('J15: too large are refused unread', async () => {
    const blob = {
      size: 2 ** 31,
      stream: () => {
        throw new Error('read');
      }
    };
    expect(reasonOf(await readJobFile(newStore(), blob as unknown as Blob))).toBe('too-large');
  });

  it('J15: with undos in a circle, or a thousand deep, or a thousand of one, are refused', async () => {
    const idOf = (place: number) =>
      `01900000-${String(place).padStart(4, '0')}-7000-8000-000000000000`;
    const undo = (place: number, voids: string): StoredEvent => ({
      ...first,
      id: idOf(place),
      deviceSeq: place,
      type: 'entryVoided',
      body: { voids }
    });
    const places = (count: number) => Array.from({ length: count }, (_, at) => at + 1);
    const circle = (count: number) => places(count).map((at) => undo(at, idOf((at % count) + 1)));
    const chain = (count: number) => places(count).map((at) => undo(at, idOf(at + 1)));
    const crowd = (count: number) => places(count).map((at) => undo(at, idOf(9999)));
    for (const events of [circle(1), circle(2), circle(500), chain(1001), crowd(1001)])
      expect(await refuses(fileOf(events), [])).toBe('undo-circle');
    for (const events of [chain(1000), crowd(1000)])
      expect(await refuses(fileOf(events), [])).toBe('added');
  });
});
