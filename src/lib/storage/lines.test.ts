import { describe, expect, it } from 'vitest';
import { MAX_LINE_LENGTH } from './job-file-format.ts';
import { type Line, linesOf } from './lines.ts';

async function linesIn(...parts: BlobPart[]): Promise<Line[]> {
  const lines: Line[] = [];
  for await (const piece of linesOf(new Blob(parts))) lines.push(...piece);
  return lines;
}

describe('linesOf', () => {
  it.each([
    ['', []],
    ['\n', [{ text: '', isEnded: true }]],
    [
      'a\nb',
      [
        { text: 'a', isEnded: true },
        { text: 'b', isEnded: false }
      ]
    ],
    ['\uFEFFa\r\n', [{ text: '\uFEFFa\r', isEnded: true }]]
  ])('of %j', async (text, lines) => {
    expect(await linesIn(text)).toEqual(lines);
  });

  it('puts letters together that the pieces of a file cut through', async () => {
    const bytes = new TextEncoder().encode('é小\nx');
    for (let cut = 1; cut < bytes.length; cut++)
      expect(await linesIn(bytes.slice(0, cut), bytes.slice(cut))).toEqual([
        { text: 'é小', isEnded: true },
        { text: 'x', isEnded: false }
      ]);
  });

  it('stops at a line beyond all measure and at what is not UTF-8', async () => {
    await expect(linesIn('x'.repeat(MAX_LINE_LENGTH + 1))).rejects.toThrow(RangeError);
    await expect(linesIn(new Uint8Array([0x61, 0xff, 0x0a]))).rejects.toThrow(TypeError);
    await expect(linesIn(new Uint8Array([0x61, 0xc3]))).rejects.toThrow(TypeError);
  });
});
