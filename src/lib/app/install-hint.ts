/**
 * Whether to tell the person how to install the app: a phone or tablet whose browser offers no
 * install button and clears sites that are not opened for a week.
 *
 * @param userAgent as the browser gives it; a tablet may call itself a desktop computer
 * @param touchPoints fingers that the screen tells apart
 */
export function needsInstallHint(
  userAgent: string,
  touchPoints: number,
  isInstalled: boolean
): boolean {
  if (isInstalled) return false;
  return /iPhone|iPad|iPod/.test(userAgent) || (/Macintosh/.test(userAgent) && touchPoints > 1);
}
