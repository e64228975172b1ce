/** How often is looked for the first button, and how many times at most. */
const LOOK_MS = 100;
const LOOKS = 100;

/**
 * Takes the app's own letters into use: at once where they are on the device already, else when the
 * page is idle and its first button stands, so that a slow line brings that before the letters.
 */
export function useOwnLetters(): void {
  const use = (): void => document.documentElement.classList.add('own-letters');
  if (navigator.serviceWorker?.controller) return use();
  let looks = 0;
  const look = (): void => {
    if (document.querySelector('main .primary') || ++looks >= LOOKS) use();
    else setTimeout(whenIdle, LOOK_MS);
  };
  const whenIdle = (): void => {
    // Not in every browser.
    if ('requestIdleCallback' in window) requestIdleCallback(look);
    else setTimeout(look);
  };
  whenIdle();
}
