/** How often is looked whether the screen stands. */
const LOOK_MS = 100;

/**
 * Takes the app's own letters into use: at once where they are on the device already, else when the
 * page is idle and its screen is busy no more, so that a slow line brings the first button before
 * the letters.
 */
export function useOwnLetters(): void {
  const use = (): void => document.documentElement.classList.add('own-letters');
  if (navigator.serviceWorker?.controller) return use();
  const look = (): void => {
    if (document.querySelector('main[aria-busy="true"]')) setTimeout(whenIdle, LOOK_MS);
    else use();
  };
  const whenIdle = (): void => {
    // Not in every browser.
    if ('requestIdleCallback' in window) requestIdleCallback(look);
    else setTimeout(look);
  };
  whenIdle();
}
