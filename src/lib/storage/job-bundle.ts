import * as v from 'valibot';
import { header } from './job-file-format.ts';
import { parseGuarded } from './json-guard.ts';

/** The byte of a line feed. */
const LINE_FEED = 10;
/** Bytes read at a time. */
const PIECE = 2 ** 20;
/** A longer first line is no header. */
const LONGEST_HEADER = 4 * PIECE;

/**
 * The job files that a file holds: those of several jobs may stand in it one after the other, each
 * from its header to its last line. Anything else stays in one piece, for the check of a job file to
 * say what is wrong with it.
 */
export async function jobFilesIn(file: Blob): Promise<Blob[]> {
  const files: Blob[] = [];
  const jobs = new Set<string>();
  for (let at = 0; at < file.size;) {
    const head = await lineEnd(file, at, 1, LONGEST_HEADER);
    const read = head === undefined ? undefined : headIn(await file.slice(at, head).text());
    if (!head || !read || jobs.has(read.jobId)) return [file];
    const end = await lineEnd(file, head, read.lines);
    if (end === undefined) return [file];
    jobs.add(read.jobId);
    files.push(file.slice(at, end));
    at = end;
  }
  return files.length > 0 ? files : [file];
}

/** Whose job a header is of and how many lines follow it; undefined for what is no header. */
function headIn(text: string): { jobId: string; lines: number } | undefined {
  const parsed = parseGuarded(text);
  const checked = parsed.ok ? v.safeParse(header, parsed.value) : undefined;
  if (!checked?.success) return undefined;
  const { jobId, events, photos } = checked.output;
  return { jobId, lines: events + photos };
}

/** Where so many lines from a byte on end; undefined where the file has fewer. */
async function lineEnd(
  file: Blob,
  from: number,
  lines: number,
  most = Infinity
): Promise<number | undefined> {
  let left = lines;
  const end = Math.min(file.size, from + most);
  for (let at = from; at < end; at += PIECE) {
    const bytes = new Uint8Array(await file.slice(at, Math.min(at + PIECE, end)).arrayBuffer());
    let found = -1;
    while (left > 0 && (found = bytes.indexOf(LINE_FEED, found + 1)) >= 0) left--;
    if (left === 0) return at + found + 1;
  }
  return undefined;
}
