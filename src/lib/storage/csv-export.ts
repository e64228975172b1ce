import {
  type JobView,
  type JournalEvent,
  ViewDraft,
  current,
  isVoided,
  meanHundredths,
  palletIds,
  partOf,
  readEvent
} from '$lib/journal';
import { type CsvExportRow, type CsvStyle, readingLine, readingsHeading } from './csv-write.ts';
import type { JournalStore } from './store.ts';

/**
 * All readings and taps of a job that are in force, oldest first, as a file: one line a slate. Spot
 * checks are left out, because they are second looks at slates that have a line already.
 *
 * @returns undefined when there is no such job
 */
export async function exportReadingsCsv(
  store: JournalStore,
  jobId: string,
  style: CsvStyle = 'standard'
): Promise<Blob | undefined> {
  const job = await store.open(jobId);
  if (!job) return undefined;
  const parts: string[] = [readingsHeading(style)];
  for await (const rows of readingsInForce(store, jobId, job.view, palletNames(job.view)))
    parts.push(rows.map((row) => readingLine(row, style)).join(''));
  return new Blob(parts, { type: 'text/csv;charset=utf-8' });
}

/**
 * The readings and taps of a job that are in force, oldest first, in batches.
 *
 * @param names what each pallet is called, by its id
 */
export async function* readingsInForce(
  store: JournalStore,
  jobId: string,
  view: JobView,
  names: ReadonlyMap<string, string>
): AsyncGenerator<readonly CsvExportRow[]> {
  const voids = new ViewDraft(view);
  for await (const batch of store.events(jobId))
    yield batch.flatMap((event) => {
      const read = readEvent(event);
      if (read.kind !== 'known' || isVoided(voids, event.id)) return [];
      return rowOf(read.event, names) ?? [];
    });
}

function rowOf(event: JournalEvent, names: ReadonlyMap<string, string>): CsvExportRow | undefined {
  const of = (palletId: string) => ({
    pallet: names.get(palletId) ?? palletId,
    time: event.at,
    sorter: event.sorter
  });
  switch (event.type) {
    case 'slateGauged': {
      const { palletId, points, pile, sample, rocks } = event.body;
      return { ...of(palletId), ...gauged(points), pile: pile ?? undefined, sample, rocks };
    }
    case 'slateTapped':
      return { ...of(event.body.palletId), grade: event.body.pile };
    case 'slateSetAside': {
      const { palletId, reason, use, points, sample } = event.body;
      return { ...of(palletId), ...gauged(points), setAside: { reason, use }, sample };
    }
    default:
      return undefined;
  }
}

function gauged(
  points: readonly number[] | undefined
): Pick<CsvExportRow, 'thicknessHundredths' | 'pointsHundredths'> {
  if (!points) return {};
  const mean = { thicknessHundredths: meanHundredths(points) };
  return points.length > 1 ? { ...mean, pointsHundredths: points } : mean;
}

/** The label of each pallet, by its id. */
export function palletLabels(view: JobView): ReadonlyMap<string, string> {
  return new Map(
    palletIds(view).map((id) => [id, current(partOf(view, `pallet:${id}`).declared)?.label ?? id])
  );
}

/** What each pallet is called: its label, with its id behind it where two share one. */
function palletNames(view: JobView): ReadonlyMap<string, string> {
  const labels = [...palletLabels(view)];
  const count = new Map<string, number>();
  for (const [, label] of labels) count.set(label, (count.get(label) ?? 0) + 1);
  return new Map(
    labels.map(([id, label]) => [id, (count.get(label) ?? 0) > 1 ? `${label} (${id})` : label])
  );
}
