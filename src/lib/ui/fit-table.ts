const unfitted = new Set<HTMLElement>();

/**
 * Gives the place of a table the class `in-blocks` where the table as such is wider than it, now and
 * whenever either changes. For `{@attach fitTable}`.
 */
export function fitTable(place: HTMLElement): () => void {
  // Only in the next frame, or the new height would set the observer off while it still tells.
  const observer = new ResizeObserver(() => fitInNextFrame(place));
  fitInNextFrame(place);
  for (const part of [place, ...place.children]) observer.observe(part);
  return () => observer.disconnect();
}

/** All tables of a frame are measured in one go, or each would have the page laid out again. */
function fitInNextFrame(place: HTMLElement): void {
  if (unfitted.size === 0) requestAnimationFrame(fitAll);
  unfitted.add(place);
}

function fitAll(): void {
  const places = [...unfitted];
  unfitted.clear();
  for (const place of places) place.classList.remove('in-blocks');
  const tooWide = places.filter(({ scrollWidth, clientWidth }) => scrollWidth > clientWidth);
  for (const place of tooWide) place.classList.add('in-blocks');
}
