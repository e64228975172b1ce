/** Names that a desktop system keeps for its devices. */
const RESERVED = /^(con|prn|aux|nul|com\d|lpt\d)$/i;

/**
 * A file name made from what a person typed: letters and digits of any script, spaces, dashes and
 * underscores; no path, no dot in front, no control or direction signs; at most 80 characters.
 *
 * @example safeFileName('../Barn: north / "old"', 'csv') // 'Barn north old.csv'
 */
export function safeFileName(name: string, extension: string): string {
  const plain = name
    .normalize('NFC')
    .replace(/[^\p{L}\p{M}\p{N} _-]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const cut = [...plain].slice(0, 80).join('').trim();
  const stem = cut === '' || RESERVED.test(cut) ? `job ${cut}`.trim() : cut;
  return `${stem}.${extension}`;
}
