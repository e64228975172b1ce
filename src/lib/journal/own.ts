/**
 * What a record holds under a key of its own. A plain look-up would find `constructor` and the like
 * in every object, and an id may be any word.
 */
export function own<T>(record: Readonly<Record<string, T>>, key: string): T | undefined {
  return Object.hasOwn(record, key) ? record[key] : undefined;
}
