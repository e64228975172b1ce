import { MAX_LINE_LENGTH } from './job-file-format.ts';

/** A line without its line feed, and whether it had one. */
export interface Line {
  readonly text: string;
  readonly isEnded: boolean;
}

/** Bytes read at a time. */
const PIECE = 2 ** 20;

/**
 * The lines of a file, read piece by piece; those that end in a piece come together. A file that
 * does not end in a line feed gives a last line that is not ended.
 *
 * @throws RangeError for a line beyond all measure, TypeError for what is not UTF-8
 */
export async function* linesOf(file: Blob): AsyncGenerator<readonly Line[]> {
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  let rest = '';
  for (let at = 0; at < file.size; at += PIECE) {
    const bytes = await file.slice(at, at + PIECE).arrayBuffer();
    const texts = (rest + decoder.decode(bytes, { stream: true })).split('\n');
    rest = texts.pop() as string;
    if (texts.length > 0) yield texts.map((text) => ({ text, isEnded: true }));
    if (rest.length > MAX_LINE_LENGTH) throw new RangeError('line too long');
  }
  rest += decoder.decode();
  if (rest !== '') yield [{ text: rest, isEnded: false }];
}
