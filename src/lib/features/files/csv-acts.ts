import type { NewEvent } from '$lib/journal';
import type { CsvReading } from '$lib/storage';

/**
 * Rows of a file as events. A pallet is known by its label; a new one is taken to hold as many
 * slates as the file has rows of it. Gauged rows are measured and lie on no pile yet.
 */
export function csvActs(
  rows: readonly CsvReading[],
  known: readonly { label: string; palletId: string }[],
  gradesInForce: string | undefined,
  newId: () => string
): { acts: NewEvent[]; pallets: number } {
  const ids = new Map(known.map(({ label, palletId }) => [label, palletId]));
  const counts = new Map<string, number>();
  for (const { pallet } of rows) counts.set(pallet, (counts.get(pallet) ?? 0) + 1);
  const acts: NewEvent[] = [];
  for (const [label, slates] of counts) {
    if (ids.has(label)) continue;
    const palletId = newId();
    ids.set(label, palletId);
    acts.push({ type: 'palletAdded', body: { palletId, label, slates } });
  }
  const gradesId = gradesInForce ?? null;
  for (const { pallet, thicknessHundredths, grade, setAside } of rows) {
    const palletId = ids.get(pallet) as string;
    const points = thicknessHundredths === undefined ? undefined : [thicknessHundredths];
    if (setAside) acts.push({ type: 'slateSetAside', body: { palletId, ...setAside, points } });
    else if (points)
      acts.push({ type: 'slateGauged', body: { palletId, points, gradesId: null, pile: null } });
    else if (grade) acts.push({ type: 'slateTapped', body: { palletId, pile: grade, gradesId } });
  }
  return { acts, pallets: counts.size };
}
