/**
 * Tells the width of an element's content in whole CSS pixels, at first and whenever it changes. It waits
 * for the browser to lay the page out: asked for at once, the browser lays out all of a page half made.
 * For `{@attach tellWidth(…)}`.
 */
export function tellWidth(tell: (widthPx: number) => void): (element: Element) => () => void {
  return (element) => {
    const observer = new ResizeObserver(([{ contentRect }]) => tell(Math.round(contentRect.width)));
    observer.observe(element);
    return () => observer.disconnect();
  };
}
