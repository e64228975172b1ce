import { beforeEach, describe, expect, it } from 'vitest';
import type { StoredEvent } from '$lib/journal';
import { testSurroundings } from '../../../tests/support/store-contract/test-surroundings.ts';
import { MemoryDatabase, MemoryStore } from '../../../tests/support/memory-store.ts';
import { JOB, gauged, opened } from '../../../tests/support/crew-kit.ts';
import { FrameReader, writeFrames } from './frames.ts';
import { readLacksCode, writeLacksCode } from './lacks.ts';
import {
  type Handover,
  handoverFor,
  mergeMate,
  packHandover,
  readMateText,
  unpackHandover,
  writeMateText
} from './mate-file.ts';
import { pack } from './squeeze.ts';
import { utf8 } from './bytes.ts';

let wren: MemoryStore;
let wrens: MemoryDatabase;
let finch: MemoryStore;
beforeEach(async () => {
  wrens = new MemoryDatabase();
  wren = new MemoryStore(testSurroundings(1), wrens);
  finch = new MemoryStore(testSurroundings(2));
  await wren.append(JOB, [opened, gauged(640), gauged(650)], 'Wren');
});

async function all(store: MemoryStore): Promise<StoredEvent[]> {
  const events: StoredEvent[] = [];
  for await (const batch of store.events(JOB)) events.push(...batch);
  return events;
}

const handoverOf = (events: StoredEvent[]): Handover => ({
  ...{ jobId: JOB, events, lacked: events.length, isWhole: true },
  ...{ photos: [], photosLeft: 0 }
});

/** Sends from one to the other what the other's code says that he lacks. */
async function send(from: MemoryStore, to: MemoryStore) {
  const code = writeLacksCode(JOB, await to.numbers(JOB));
  const have = readLacksCode(JOB, await from.numbers(JOB), code);
  const hand = await handoverFor(from, JOB, have);
  const read = await readMateText(await writeMateText(hand, 'Open it.'));
  if (!read.ok) throw new Error(read.detail);
  return { sent: hand.lacked, result: await mergeMate(to, read) };
}

describe('what is sent to a mate', () => {
  it('is the whole job at first, then only what he lacks, both ways', async () => {
    expect(await send(wren, finch)).toMatchObject({ sent: 3, result: { ok: true, added: 3 } });
    await finch.append(JOB, [gauged(700)], 'Finch');
    await wren.append(JOB, [gauged(660), gauged(661)], 'Wren');
    expect(await send(wren, finch)).toMatchObject({ sent: 2, result: { ok: true, added: 2 } });
    expect(await send(finch, wren)).toMatchObject({ sent: 1, result: { ok: true, added: 1 } });
    expect(await all(finch)).toEqual(await all(wren));
  });

  it('joins no two histories: after a phone was copied, a part is refused and the whole is not lost', async () => {
    await send(wren, finch);
    const copied = new MemoryDatabase();
    for (const [name, value] of wrens.jobs)
      copied.jobs.set(name, { ...value, events: new Map(value.events) });
    for (const [name, value] of wrens.device) copied.device.set(name, value);
    const twin = new MemoryStore(testSurroundings(3), copied);
    await wren.append(JOB, [gauged(660), gauged(661)], 'Wren');
    await twin.append(JOB, [gauged(770), gauged(771), gauged(772)], 'Wren');
    await send(wren, finch);
    // His code says that number 5 is there: it is, but of the other phone.
    const own = await twin.numbers(JOB);
    const have = readLacksCode(JOB, own, writeLacksCode(JOB, await finch.numbers(JOB)));
    const part = await readMateText(
      await writeMateText(await handoverFor(twin, JOB, have), 'Open it.')
    );
    if (!part.ok) throw new Error(part.detail);
    expect(part.isWhole).toBe(false);
    const before = await all(finch);
    expect(await mergeMate(finch, part, 'keep-both')).toMatchObject({ reason: 'conflict' });
    expect(await all(finch)).toEqual(before);
    // The whole job is taken with both kept, each once.
    const whole = await readMateText(await writeMateText(await handoverFor(twin, JOB), 'Open it.'));
    if (!whole.ok) throw new Error(whole.detail);
    expect(await mergeMate(finch, whole)).toMatchObject({ reason: 'conflict' });
    expect(await mergeMate(finch, whole, 'keep-both')).toMatchObject({ added: 3, branched: 3 });
    const readings = (await all(finch)).flatMap(({ body }) => (body.points as number[]) ?? []);
    expect(readings.sort()).toEqual([640, 650, 660, 661, 770, 771, 772]);
  });

  it('brings photos along, as far as there is room, and believes none that is not its own', async () => {
    const photo = (fill: number, size = 4) => ({
      palletId: null,
      caption: '',
      type: 'image/png' as const,
      bytes: new Uint8Array(size).fill(fill).buffer
    });
    await wren.addPhoto(JOB, photo(1));
    await wren.addPhoto(JOB, photo(2, 200));
    const hand = await handoverFor(wren, JOB, {}, 100);
    expect([hand.photos.length, hand.photosLeft]).toEqual([1, 1]);
    const read = await readMateText(await writeMateText(hand, 'Open it.'));
    if (!read.ok) throw new Error(read.detail);
    expect(await mergeMate(finch, read)).toMatchObject({ ok: true });
    const [kept] = hand.photos;
    expect(await finch.photo(kept.photoId)).toEqual(kept);
    const forged = { ...hand, photos: [{ ...kept, bytes: new Uint8Array(5).buffer }] };
    expect(await unpackHandover(await packHandover(forged))).toMatchObject({
      ok: false,
      fault: 'broken'
    });
  });

  it('is a text that a messenger may wrap, quote or put words around', async () => {
    const text = await writeMateText(await handoverFor(wren, JOB), 'Open it in the app.');
    expect(text.split('\n').every((line) => line.length <= 76)).toBe(true);
    for (const sent of [text, `Here you are!\n${text}\nCheers`, text.replaceAll('\n', '\r\n')])
      expect(await readMateText(sent)).toMatchObject({ ok: true, jobId: JOB });
  });

  it('cut anywhere, or with a sign changed, is refused', async () => {
    const text = await writeMateText(await handoverFor(wren, JOB), 'Open it.');
    for (let length = 0; length < text.length - 1; length += 7)
      expect((await readMateText(text.slice(0, length))).ok, String(length)).toBe(false);
    const body = text.indexOf('\n\n') + 2;
    for (let at = body; at < text.length - 1; at += 5) {
      const changed = text.slice(0, at) + (text[at] === 'A' ? 'B' : 'A') + text.slice(at + 1);
      expect((await readMateText(changed)).ok, String(at)).toBe(false);
    }
  });

  it.each([
    ['', 'not-ours'],
    ['Good morning', 'not-ours'],
    ['Evencourse job, part 2. Open it.\n\nAAAA\n.00000000', 'too-new'],
    ['Evencourse job, part 1. Open it.', 'cut'],
    ['Evencourse job, part 1. Open it.\n\nAAAA\n.00000000', 'cut']
  ])('%j: %s', async (text, fault) => {
    expect(await readMateText(text)).toMatchObject({ ok: false, fault });
  });

  it('with forged lines is refused, though it is packed rightly', async () => {
    const [event] = await all(wren);
    for (const forged of [
      { ...event, deviceSeq: 0 },
      { ...event, jobId: event.id },
      { ...event, body: {} }
    ])
      expect(await unpackHandover(await packHandover(handoverOf([forged])))).toMatchObject({
        ok: false,
        fault: 'broken'
      });
    expect(await unpackHandover(await pack(utf8('no head\n')))).toMatchObject({ fault: 'broken' });
    expect(await unpackHandover(await pack(new Uint8Array(2 ** 24 + 1)))).toMatchObject({
      fault: 'cut'
    });
  });

  it('1,000 readings shown as codes take about 25 kB', async () => {
    await wren.append(
      JOB,
      Array.from({ length: 1000 }, (_, at) => gauged(500 + ((at * 37) % 200)))
    );
    const packed = await packHandover(await handoverFor(wren, JOB));
    process.stdout.write(
      `crew: 1,003 events pack to ${packed.length} bytes, ${writeFrames(packed).length} codes\n`
    );
    expect(packed.length).toBeLessThan(40_000);
    const reader = new FrameReader();
    for (const frame of writeFrames(packed)) reader.take(frame);
    expect(await unpackHandover(reader.bytes ?? new Uint8Array())).toMatchObject({ ok: true });
  });
});
