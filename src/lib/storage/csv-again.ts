import { palletName } from '$lib/job';
import { palletLabels, readingsInForce } from './csv-export.ts';
import type { CsvReading } from './csv-types.ts';
import type { JournalStore } from './store.ts';

/** The rows of a file beside the readings that a job has already. */
export interface CsvComparison {
  /** Rows that have an equal reading in the job. */
  readonly known: number;
  /** The other rows, in the order of the file. */
  readonly fresh: readonly CsvReading[];
  /**
   * Whether the file looks as if it, or a part of it, was taken in before: on some pallet at least
   * half of its rows are known. Fewer may well be chance, because other slates measure the same.
   */
  readonly isLikelyAgain: boolean;
}

const LIKELY_SHARE = 0.5;

/**
 * Compares the rows of a file with the readings in force of a job, to find a file that is taken in a
 * second time.
 *
 * Two are equal when pallet, thickness to 0.01 mm, grade of a tap, and reason and use of a slate set
 * aside are the same. A file need not hold points and marks of a slate, it holds no sorter that is
 * read, and the time of a reading that was taken in is that of taking it in: these do not count.
 *
 * Equal readings are legitimate: slates measure the same. So each reading of the job stands for one
 * row only: of five equal rows, two are known where the job has two, the first two of the file.
 *
 * Costs one pass over the file, and over the job's events if it has any of the file's pallets.
 */
export async function compareReadings(
  store: JournalStore,
  jobId: string,
  rows: readonly CsvReading[]
): Promise<CsvComparison> {
  const inJob = await countReadings(
    store,
    jobId,
    new Set(rows.map(({ pallet }) => palletName(pallet)))
  );
  const ofPallet = new Map<string, { rows: number; known: number }>();
  const fresh = rows.filter((row) => {
    const tally = ofPallet.get(row.pallet) ?? { rows: 0, known: 0 };
    ofPallet.set(row.pallet, tally);
    tally.rows++;
    const key = keyOf(row);
    const left = inJob.get(key) ?? 0;
    if (left === 0) return true;
    inJob.set(key, left - 1);
    tally.known++;
    return false;
  });
  const isLikelyAgain = [...ofPallet.values()].some(
    ({ rows: all, known }) => known >= all * LIKELY_SHARE
  );
  return { known: rows.length - fresh.length, fresh, isLikelyAgain };
}

/** How many readings of each kind a job has on some pallets. */
async function countReadings(
  store: JournalStore,
  jobId: string,
  pallets: ReadonlySet<string>
): Promise<Map<string, number>> {
  const counts = new Map<string, number>();
  const job = await store.open(jobId);
  const labels = job ? palletLabels(job.view) : new Map<string, string>();
  if (!job || ![...labels.values()].some((label) => pallets.has(palletName(label)))) return counts;
  for await (const readings of readingsInForce(store, jobId, job.view, labels))
    for (const reading of readings) {
      if (!pallets.has(palletName(reading.pallet))) continue;
      const key = keyOf(reading);
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
  return counts;
}

/** The same text for equal readings. A grade counts only where nothing stronger was noted. */
function keyOf({
  pallet,
  thicknessHundredths,
  grade,
  setAside
}: Pick<CsvReading, 'pallet' | 'thicknessHundredths' | 'grade' | 'setAside'>): string {
  const kind = setAside
    ? `${setAside.reason}/${setAside.use}`
    : thicknessHundredths === undefined
      ? `grade ${grade}`
      : 'gauged';
  return `${kind}|${thicknessHundredths ?? ''}|${palletName(pallet)}`;
}
