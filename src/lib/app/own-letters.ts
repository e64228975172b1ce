/**
 * Takes the app's own letters into use: at once where they are on the device already, else when the
 * page is idle for the first time, so that a slow line brings the first button before the letters.
 */
export function useOwnLetters(): void {
  const use = (): void => document.documentElement.classList.add('own-letters');
  if (navigator.serviceWorker?.controller) return use();
  // Not in every browser.
  if ('requestIdleCallback' in window) requestIdleCallback(use);
  else setTimeout(use);
}
