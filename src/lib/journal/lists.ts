/** Whether no two items of a list give the same text. */
export function allDiffer<T>(items: readonly T[], textOf: (item: T) => string): boolean {
  return new Set(items.map(textOf)).size === items.length;
}

/** Of the items that give the same text the last, in the order in which the texts first came. */
export function lastOfEach<T>(items: readonly T[], textOf: (item: T) => string): T[] {
  return [...new Map(items.map((item): [string, T] => [textOf(item), item])).values()];
}
