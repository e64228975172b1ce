import { untrack } from 'svelte';
import { type BodyOf, lastOfEach, own, partOf } from '$lib/journal';
import type { JobState } from './job.svelte.ts';
import { smallJpeg } from './small-jpeg.ts';
import { journalStore } from './store.ts';

/** What became of the photo chosen last. */
export type PhotoStatus =
  | { readonly kind: 'idle' | 'working' | 'not-a-photo' }
  | { readonly kind: 'too-large'; readonly bytes: number }
  | { readonly kind: 'failed'; readonly detail: string };

/** A file larger than this is not opened: a phone may run out of memory over it. Ours. */
export const LARGEST_PHOTO_BYTES = 30 * 1024 * 1024;

/** A photo as the screen shows it; no address when this device does not have it. */
export interface ShownPhoto extends BodyOf<'photoAdded'> {
  readonly at: string;
  readonly url: string | undefined;
}

/** Photos of a job, in the order they were taken: made small, kept, shown. */
export class JobPhotos {
  readonly #job: () => JobState;
  status = $state.raw<PhotoStatus>({ kind: 'idle' });
  #urls = $state.raw<Readonly<Record<string, string | undefined>>>({});

  constructor(job: () => JobState) {
    this.#job = job;
  }

  readonly photos: readonly ShownPhoto[] = $derived.by(() =>
    // A crafted file may add a photo twice.
    lastOfEach(partOf(this.#job().view, 'job').photos, ({ value }) => value.photoId).map(
      ({ at, value }) => ({ ...value, at, url: own(this.#urls, value.photoId) })
    )
  );

  /** Keeps a photo, made small; false when it was refused or not saved. */
  async add(file: File, caption: string, palletId: string | null): Promise<boolean> {
    if (file.size > LARGEST_PHOTO_BYTES) {
      this.status = { kind: 'too-large', bytes: file.size };
      return false;
    }
    this.status = { kind: 'working' };
    const bytes = await smallJpeg(file);
    if (!bytes) {
      this.status = { kind: 'not-a-photo' };
      return false;
    }
    try {
      const photo = {
        palletId,
        caption: caption.slice(0, 200),
        type: 'image/jpeg',
        bytes
      } as const;
      await journalStore().addPhoto(this.#job().jobId, photo);
      this.status = { kind: 'idle' };
      return true;
    } catch (error) {
      this.status = { kind: 'failed', detail: String(error) };
      return false;
    }
  }

  /** Fetches the photos that are not at hand yet; a mate's may come after its entry. */
  async show(): Promise<void> {
    // Whatever is committed may bring one.
    void this.#job().summary;
    for (const { photoId } of this.photos) {
      if (untrack(() => this.#urls[photoId])) continue;
      const photo = await journalStore().photo(photoId);
      if (this.#urls[photoId]) continue;
      const url = photo && URL.createObjectURL(new Blob([photo.bytes], { type: photo.type }));
      this.#urls = { ...this.#urls, [photoId]: url };
    }
  }

  /** Gives the memory of the shown photos back. */
  close(): void {
    for (const url of Object.values(this.#urls)) if (url) URL.revokeObjectURL(url);
    this.#urls = {};
  }
}
