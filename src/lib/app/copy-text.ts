/** Puts a text on the clipboard. False where the browser has none or refuses; it never throws. */
export async function copyText(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false; // over plain http there is no clipboard at all
  }
}
