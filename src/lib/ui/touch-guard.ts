import type { Attachment } from 'svelte/attachments';

/** A contact wider than this, CSS px (about 30 mm), is a palm and no finger, even in a glove. */
const PALM_PX = 190;

/**
 * Lets only clean taps through to what it is put on: one finger, from down to up. While a second
 * finger or a palm touches, and until all have left, nothing is pressed. Keyboard and mouse are not
 * touched by it.
 */
export const oneFingerOnly: Attachment<HTMLElement> = (place) => {
  const touching = new Set<number>();
  let isFoul = false;

  const down = (event: PointerEvent): void => {
    if (event.pointerType !== 'touch') {
      isFoul = false;
      return;
    }
    if (touching.size === 0) isFoul = false;
    touching.add(event.pointerId);
    const isPalm = Math.max(event.width, event.height) > PALM_PX;
    if (touching.size > 1 || !event.isPrimary || isPalm) isFoul = true;
  };
  const up = (event: PointerEvent): void => void touching.delete(event.pointerId);
  const click = (event: MouseEvent): void => {
    // A click without a pointer comes from the keyboard.
    if (!isFoul || event.detail === 0) return;
    event.preventDefault();
    event.stopImmediatePropagation();
  };

  place.addEventListener('pointerdown', down, { capture: true });
  addEventListener('pointerup', up, { capture: true });
  addEventListener('pointercancel', up, { capture: true });
  place.addEventListener('click', click, { capture: true });
  return () => {
    place.removeEventListener('pointerdown', down, { capture: true });
    removeEventListener('pointerup', up, { capture: true });
    removeEventListener('pointercancel', up, { capture: true });
    place.removeEventListener('click', click, { capture: true });
  };
};
