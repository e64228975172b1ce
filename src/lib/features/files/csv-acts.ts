import { palletName } from '$lib/job';
import type { NewEvent } from '$lib/journal';
import type { CsvReading } from '$lib/storage';

/** The list of a slate whose file names none, in a job that has drawn none. */
const NO_LIST = 'file';

/**
 * Rows of a file as events. A pallet is known by its label; a new one is taken to hold as many
 * slates as the file has rows of it. Gauged rows are measured and lie on no pile yet. A slate of the
 * sample that names no list is one of the list in force.
 */
export function csvActs(
  rows: readonly CsvReading[],
  known: readonly { label: string; palletId: string }[],
  inForce: { readonly gradesId?: string; readonly drawId?: string },
  newId: () => string
): { acts: NewEvent[]; pallets: number; added: { label: string; slates: number }[] } {
  const ids = new Map(known.map(({ label, palletId }) => [label, palletId]));
  const counts = new Map<string, number>();
  for (const { pallet } of rows) {
    const label = palletName(pallet);
    counts.set(label, (counts.get(label) ?? 0) + 1);
  }
  const acts: NewEvent[] = [];
  const added: { label: string; slates: number }[] = [];
  for (const [label, slates] of counts) {
    if (ids.has(label)) continue;
    const palletId = newId();
    ids.set(label, palletId);
    added.push({ label, slates });
    acts.push({ type: 'palletAdded', body: { palletId, label, slates } });
  }
  const gradesId = inForce.gradesId ?? null;
  for (const row of rows) {
    const { pallet, thicknessHundredths, pointsHundredths, grade, setAside, rocks } = row;
    const palletId = ids.get(palletName(pallet)) as string;
    const mean = thicknessHundredths === undefined ? undefined : [thicknessHundredths];
    const points = pointsHundredths ? [...pointsHundredths] : mean;
    const drawId = row.sample?.drawId ?? inForce.drawId ?? NO_LIST;
    const sample = row.sample && { ...row.sample, drawId };
    if (setAside)
      acts.push({
        type: 'slateSetAside',
        body: { palletId, ...setAside, ...(points && { points }), ...(sample && { sample }) }
      });
    else if (points)
      acts.push({
        type: 'slateGauged',
        body: {
          palletId,
          points,
          gradesId: null,
          pile: null,
          ...(sample && { sample }),
          ...(rocks !== undefined && { rocks })
        }
      });
    else if (grade) acts.push({ type: 'slateTapped', body: { palletId, pile: grade, gradesId } });
  }
  return { acts, pallets: counts.size, added };
}
