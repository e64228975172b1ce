import { readReadingsCsv } from './csv.ts';
import { type CsvResult, MAX_CSV_BYTES } from './csv-types.ts';

/**
 * Reads a chosen file of readings. Its size is looked at before anything of it is read.
 *
 * UTF-8, or UTF-16 where the file begins with its mark (a spreadsheet's "Unicode text"); what is
 * neither is taken as Windows-1252, which older spreadsheets write.
 *
 * @param takesSums whether lines that look like a mean or a total are slates all the same
 */
export async function readReadingsCsvFile(file: Blob, takesSums = false): Promise<CsvResult> {
  if (file.size > MAX_CSV_BYTES)
    return {
      ok: false,
      problems: [{ code: 'too-large', bytes: file.size, limitBytes: MAX_CSV_BYTES }]
    };
  return readReadingsCsv(decode(new Uint8Array(await file.arrayBuffer())), takesSums);
}

function decode(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
