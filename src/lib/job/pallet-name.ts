/** The word itself in each language of the app, as it may be written before a name. */
const WORD = /^pal(let|é|ette|eta|et)[\s:.]+(?=\S)/i;

/**
 * A pallet's name without the word before it: sentences say "pallet" themselves.
 *
 * @example "Pallet 1" → "1"; "Pallet" and "Palermo" stay
 */
export const palletName = (label: string): string => label.trim().replace(WORD, '');
