import type { StoredEvent } from '$lib/journal';
import { PHOTO_TYPES, type StoredPhoto, sha256Hex } from '$lib/storage';
import { joinBytes } from './bytes.ts';
import type { CrewRecord, SyncJournal } from './crew-state.ts';
import type { HubClient } from './hub-client.ts';
import { type SpaceKeys, photoName, seal, unseal } from './keys.ts';

interface Parts {
  readonly journal: SyncJournal;
  readonly hub: HubClient;
  readonly keys: SpaceKeys;
  readonly save: (state: CrewRecord) => Promise<void>;
}

const besideOf = (space: string, name: string) => ['evencourse-photo', 1, space, name];

/** Gives the hub the photos of acts that it has, one after another. */
export async function givePhotos(state: CrewRecord, parts: Parts): Promise<CrewRecord> {
  const { journal, hub, keys, save } = parts;
  const { space } = state.link;
  while (state.photosToGive.length > 0) {
    const [act, ...left] = state.photosToGive;
    const photo = await journal.photo(bodyOf(act).photoId);
    if (photo) {
      const name = await photoName(keys, bodyOf(act).sha256);
      const type = new Uint8Array([PHOTO_TYPES.indexOf(photo.type)]);
      const plain = joinBytes(type, new Uint8Array(photo.bytes));
      await hub.putPhoto(name, await seal(keys.photo, plain, besideOf(space, name)));
    }
    state = { ...state, photosToGive: left };
    await save(state);
  }
  return state;
}

/** Fetches the photos of acts that came in; one that the hub does not have yet is asked for again. */
export async function fetchPhotos(state: CrewRecord, parts: Parts): Promise<CrewRecord> {
  const { journal, hub, keys, save } = parts;
  const { space } = state.link;
  for (const act of state.photosWanted) {
    const { photoId, sha256 } = bodyOf(act);
    if (!(await journal.photo(photoId))) {
      const name = await photoName(keys, sha256);
      const sealed = await hub.photo(name);
      if (!sealed) continue;
      const photo = photoOf(
        photoId,
        sha256,
        await unseal(keys.photo, sealed, besideOf(space, name))
      );
      // One that is not what its act says can only be wrong again.
      if (photo) await journal.merge([act], [photo]);
    }
    state = { ...state, photosWanted: state.photosWanted.filter(({ id }) => id !== act.id) };
    await save(state);
  }
  return state;
}

function photoOf(
  photoId: string,
  sha256: string,
  plain: Uint8Array<ArrayBuffer> | undefined
): StoredPhoto | undefined {
  const type = plain && PHOTO_TYPES.at(plain[0] ?? PHOTO_TYPES.length);
  if (!plain || !type) return undefined;
  const bytes = plain.slice(1);
  return sha256Hex(bytes) === sha256 ? { photoId, type, bytes: bytes.buffer } : undefined;
}

function bodyOf({ body }: StoredEvent): { photoId: string; sha256: string } {
  return { photoId: String(body.photoId), sha256: String(body.sha256) };
}
