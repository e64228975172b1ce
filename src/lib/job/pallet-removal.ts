import { type JobView, type NewEvent, palletIds, partOf } from '$lib/journal';

/**
 * The act that takes a pallet back that was added by mistake: it undoes each entry of it, of a mixed
 * pallet in every length. They stay in the journal.
 *
 * @param view the whole job, all its lengths
 * @returns undefined where something was entered for the pallet beside its name and count: a reading, a
 *   slate sorted or set aside, a stack, a defect, a place on a sample list
 */
export function palletRemoval(view: JobView, palletId: string): NewEvent[] | undefined {
  const parts = partsOfPallet(view, palletId);
  const { stacks, defects, draws } = partOf(view, 'job');
  const isOfPallet = (id: string | null) => id !== null && parts.includes(id);
  const isNamed =
    stacks.some(({ value }) => isOfPallet(value.palletId)) ||
    defects.some(({ value }) => isOfPallet(value.palletId)) ||
    draws.some(({ value }) => value.positions.some((place) => isOfPallet(place.palletId)));
  if (isNamed) return undefined;
  const entries = parts.flatMap((id) => {
    const { declared, ...counted } = partOf(view, `pallet:${id}`);
    const isCounted = Object.values(counted).some((field) => Object.keys(field).length > 0);
    return isCounted ? [undefined] : declared.map(({ id: entry }) => entry);
  });
  if (entries.length === 0 || entries.includes(undefined)) return undefined;
  return entries
    .filter((entry) => entry !== undefined)
    .map((voids) => ({ type: 'entryVoided', body: { voids } }));
}

/** The ids of a pallet: of a mixed one, a part for each length, alike before the dot. */
function partsOfPallet(view: JobView, palletId: string): string[] {
  const [head, length] = palletId.split('.');
  if (length === undefined) return [palletId];
  return palletIds(view).filter((id) => id.startsWith(`${head}.`));
}
