import { correction, generate } from 'lean-qr';
import decodeQR from 'qr/decode.js';
import { describe, expect, it } from 'vitest';
import { createRandom } from '$lib/engine';
import { FRAME_BYTES, FrameReader, writeFrames } from './frames.ts';

const random = createRandom(20);
const bytesOf = (length: number) => Uint8Array.from({ length }, () => Math.floor(random() * 256));

/** A code as a camera would see it: some pixels a module, light around it. */
function pictureOf(text: string, scale = 3, quiet = 4) {
  const code = generate(text, { minCorrectionLevel: correction.L });
  const size = (code.size + 2 * quiet) * scale;
  const data = new Uint8Array(size * size * 4).fill(255);
  for (let y = 0; y < size; y++)
    for (let x = 0; x < size; x++)
      if (code.get(Math.floor(x / scale) - quiet, Math.floor(y / scale) - quiet))
        data.fill(0, (y * size + x) * 4, (y * size + x) * 4 + 3);
  return { width: size, height: size, data };
}

describe('codes shown one after another', () => {
  it('drawn by one library and read by the other give the bytes back', () => {
    const bytes = bytesOf(5 * FRAME_BYTES + 17);
    const frames = writeFrames(bytes);
    expect(Math.max(...frames.map(({ length }) => length))).toBeLessThanOrEqual(848);
    const reader = new FrameReader();
    for (const frame of frames) expect(reader.take(decodeQR(pictureOf(frame)))).toBe('new');
    expect(reader.bytes).toEqual(bytes);
  });

  it.each([0, 1, FRAME_BYTES, FRAME_BYTES + 1])('%i bytes, in any order, some twice', (length) => {
    const bytes = bytesOf(length);
    const frames = writeFrames(bytes);
    const reader = new FrameReader();
    for (const frame of [...frames].reverse()) {
      expect(reader.bytes).toBeUndefined();
      expect(reader.take(frame)).toBe('new');
      expect(reader.take(frame)).toBe('again');
    }
    expect(reader.bytes).toEqual(bytes);
  });

  it('tell how far it is and what is missing', () => {
    const frames = writeFrames(bytesOf(4 * FRAME_BYTES));
    const reader = new FrameReader();
    expect(reader.progress).toEqual({ seen: 0, of: 0, missing: [] });
    reader.take(frames[2]);
    reader.take(frames[0]);
    expect(reader.progress).toEqual({ seen: 2, of: 4, missing: [2, 4] });
    expect(reader.bytes).toBeUndefined();
  });

  it('of two runs are never mixed', () => {
    const [one, other] = [bytesOf(2 * FRAME_BYTES), bytesOf(2 * FRAME_BYTES)];
    const reader = new FrameReader();
    reader.take(writeFrames(one)[0]);
    reader.take(writeFrames(other)[1]);
    expect(reader.bytes).toBeUndefined();
    reader.take(writeFrames(other)[0]);
    expect(reader.bytes).toEqual(other);
  });

  it('that were forged do not fit together, and one may begin anew', () => {
    const frames = writeFrames(bytesOf(2 * FRAME_BYTES));
    const other = writeFrames(bytesOf(2 * FRAME_BYTES))[1].split('.');
    const forged = [...frames[1].split('.').slice(0, 4), other[4]].join('.');
    const reader = new FrameReader();
    reader.take(frames[0]);
    expect(reader.take(forged)).toBe('new');
    expect(reader.bytes).toBeUndefined();
    reader.clear();
    for (const frame of frames) reader.take(frame);
    expect(reader.bytes).toBeDefined();
  });

  it.each([
    'https://slates.example.org/',
    'E1',
    'E2.0123456789ab.1.1.AA',
    'E1.0123456789ab.0.1.AA',
    'E1.0123456789ab.2.1.AA',
    'E1.0123456789ab.1.2.AA',
    'E1.0123456789ab.1.9999.AA',
    'E1.0123456789ab.1.1.A',
    `E1.0123456789ab.1.1.${'A'.repeat(9000)}`
  ])('%s is not ours', (text) => {
    expect(new FrameReader().take(text)).toBe('not-ours');
  });

  it('too much to show is refused', () => {
    expect(() => writeFrames(new Uint8Array(4001 * FRAME_BYTES))).toThrow(RangeError);
  });
});
