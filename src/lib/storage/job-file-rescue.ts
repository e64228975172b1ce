import { type StoredEvent, type NewEvent, createIdSource, eventVersion } from '$lib/journal';
import { checkJobFile } from './job-file.ts';
import { MergeRefused, orRefusal } from './merge-check.ts';
import { isEntries } from './missing.ts';
import { sha256Hex } from './sha256.ts';
import type { ImportResult, JournalStore } from './store.ts';

/**
 * Takes the file of a damaged job in as a job of its own: the same acts under the same ids, numbered
 * from 1 under a device id of their own, then a note of whence they came and what is missing. Job
 * and device id follow from the file, so taking it in again changes nothing, and two phones that
 * take it in have the same job.
 */
export async function rescueJobFile(
  store: JournalStore,
  source: Blob | string
): Promise<ImportResult> {
  const checked = await checkJobFile(source);
  if (!checked.ok) return checked;
  const { header, photos, events } = checked;
  const missing = header.missing ?? [];
  if (missing.length === 0) return { ok: false, reason: 'not-a-job-file', line: 1 };
  const entries = missing.filter(isEntries);
  const lostPhotos = missing.flatMap((one) => (isEntries(one) ? [] : [one]));
  const hash = (of: string) => hashOf(`${header.jobId} ${header.sha256} ${of}`);
  const [jobId, deviceId] = [uuidFrom(hash('job')), uuidFrom(hash('device'))];
  const notes: readonly NewEvent[] = [
    { type: 'jobOpened', body: { name: nameOf(header.name, header.jobId) } },
    {
      type: 'jobRescued',
      body: {
        jobId: header.jobId,
        events: header.events,
        missing: entries.map(({ device, ...range }) => ({ deviceId: device, ...range })),
        photos: lostPhotos.map(({ photo, reason }) => ({ photoId: photo, reason }))
      }
    }
  ];
  const isLostPhoto = ({ type, body }: StoredEvent): boolean =>
    type === 'photoAdded' && lostPhotos.some(({ photo }) => photo === body.photoId);
  async function* renumbered(): AsyncGenerator<readonly StoredEvent[]> {
    let deviceSeq = 0;
    let last: StoredEvent | undefined;
    for await (const batch of events()) {
      last = batch.at(-1) ?? last;
      yield batch
        .filter((event) => !isLostPhoto(event))
        .map((event) => ({ ...event, jobId, deviceId, deviceSeq: ++deviceSeq }));
    }
    if (!last) throw new MergeRefused('not-a-job-file');
    const { id, at } = last;
    const newId = createIdSource(
      () => 0,
      () => hash('note').slice(0, 16),
      id
    );
    yield notes.map(({ type, body }) => ({
      id: newId(),
      jobId,
      deviceId,
      deviceSeq: ++deviceSeq,
      at,
      sorter: '',
      type,
      v: eventVersion(type),
      body
    }));
  }
  return orRefusal(() => store.merge(renumbered, photos, 'made-here'));
}

/** A name that tells the two jobs apart; it follows from the file, in whatever language. */
function nameOf(name: string, jobId: string): string {
  return `${(name.trim() || jobId.slice(0, 8)).slice(0, 190)} (2)`;
}

function hashOf(text: string): string {
  return sha256Hex(new TextEncoder().encode(text));
}

/** A hash as a UUID of version 8 (RFC 9562, left to the application). */
function uuidFrom(hash: string): string {
  return [
    hash.slice(0, 8),
    hash.slice(8, 12),
    `8${hash.slice(13, 16)}`,
    `8${hash.slice(17, 20)}`,
    hash.slice(20, 32)
  ].join('-');
}
