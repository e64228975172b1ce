/** A text in small letters without accents, as people type it in haste. */
export function plain(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{Mn}/gu, '')
    .toLowerCase();
}
