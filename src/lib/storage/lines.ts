import { MAX_LINE_LENGTH } from './job-file-format.ts';

/** A line without its line feed, and whether it had one. */
export interface Line {
  readonly text: string;
  readonly isEnded: boolean;
}

/**
 * The lines of a file, read piece by piece. A file that does not end in a line feed gives a last
 * line that is not ended.
 *
 * @throws RangeError for a line beyond all measure, TypeError for what is not UTF-8
 */
export async function* linesOf(file: Blob): AsyncGenerator<Line> {
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  const reader = file.stream().getReader();
  let rest = '';
  for (;;) {
    const { done, value } = await reader.read();
    const pieces = (
      rest + (done ? decoder.decode() : decoder.decode(value, { stream: true }))
    ).split('\n');
    rest = pieces.pop() as string;
    for (const text of pieces) yield { text, isEnded: true };
    if (rest.length > MAX_LINE_LENGTH) throw new RangeError('line too long');
    if (done) break;
  }
  if (rest !== '') yield { text: rest, isEnded: false };
}
