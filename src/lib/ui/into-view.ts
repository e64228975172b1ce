/**
 * Brings an answer into view when it appears, as little as needed; of one taller than the screen,
 * its beginning. For `{@attach intoView}`.
 */
export function intoView(element: Element): void {
  element.scrollIntoView({ block: 'nearest' });
}
