/** How far below or above the screen a part is built: about two screens of a phone. */
const AHEAD_PX = 1600;

/** Tells once that an element comes near the screen. For `{@attach whenNear(…)}`. */
export function whenNear(tell: () => void): (element: Element) => () => void {
  return (element) => {
    const observer = new IntersectionObserver(
      (entries) => {
        if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
        observer.disconnect();
        tell();
      },
      { rootMargin: `${AHEAD_PX}px 0px` }
    );
    observer.observe(element);
    return () => observer.disconnect();
  };
}
