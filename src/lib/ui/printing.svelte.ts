import { flushSync } from 'svelte';

/** Whether the page is being printed: what only a sheet shows is made then, and not before. */
export class Printing {
  isPrinting = $state(false);

  /** Follows the printer until the returned function is called. */
  follow(): () => void {
    const media = matchMedia('print');
    const set = (isPrinting: boolean) => (): void =>
      flushSync(() => {
        this.isPrinting = isPrinting;
      });
    const [start, end] = [set(true), set(false)];
    const change = (): void => (media.matches ? start() : end());
    media.addEventListener('change', change);
    addEventListener('beforeprint', start);
    addEventListener('afterprint', end);
    return () => {
      media.removeEventListener('change', change);
      removeEventListener('beforeprint', start);
      removeEventListener('afterprint', end);
    };
  }
}
