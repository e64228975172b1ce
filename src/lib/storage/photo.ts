import { EngineError } from '$lib/engine';
import type { NewEvent } from '$lib/journal';
import { type NewPhoto, PHOTO_TYPES, type StoredPhoto } from './store.ts';

/** A larger photo is refused: the caller has not made it small. */
export const MAX_PHOTO_BYTES = 8 * 1024 * 1024;

/**
 * The act that adds a photo, and what is kept of it. The hash in the act lets anyone who has the
 * journal tell whether a photo is the one that was added.
 *
 * @throws EngineError `out-of-range` for a photo too large or of another type
 */
export async function photoAct(
  { palletId, caption, type, bytes }: NewPhoto,
  randomHex: () => string
): Promise<{ act: NewEvent; kept: StoredPhoto }> {
  if (bytes.byteLength > MAX_PHOTO_BYTES)
    throw new EngineError('out-of-range', `photo has ${bytes.byteLength} bytes; make it smaller`);
  if (!PHOTO_TYPES.includes(type))
    throw new EngineError(
      'out-of-range',
      `photo is ${type}; give one of ${PHOTO_TYPES.join(', ')}`
    );
  const photoId = `photo-${randomHex()}${randomHex()}`;
  const { sha256Hex } = await import('./sha256.ts');
  const sha256 = sha256Hex(new Uint8Array(bytes));
  return {
    act: {
      type: 'photoAdded',
      body: { photoId, palletId, caption, sha256, bytes: bytes.byteLength }
    },
    kept: { photoId, type, bytes }
  };
}

/** A kept photo without the job it is filed under. */
export function photoOfRow({ photoId, type, bytes }: StoredPhoto): StoredPhoto {
  return { photoId, type, bytes };
}
