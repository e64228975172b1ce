import { type JobView, meanHundredths, partOf } from '$lib/journal';
import { type OfferedSlate, labelsOf } from '$lib/job';

/** Every slate that judges, with all that was measured of it, pallet by pallet and top layer first. */
export function judgedReadings(view: JobView, judging: readonly OfferedSlate[]) {
  const labels = labelsOf(view);
  const ids = new Set(judging.map(({ id }) => id));
  return partOf(view, 'sample')
    .slates.filter(({ id }) => ids.has(id))
    .map(({ id, value }) => ({
      id,
      label: labels.get(value.palletId) ?? value.palletId,
      thicknessMm: value.points.length > 0 ? meanHundredths(value.points) / 100 : undefined,
      pointsMm: value.points.map((point) => point / 100),
      setAside: value.setAside,
      ...value.sample
    }))
    .sort(
      (one, other) =>
        one.label.localeCompare(other.label, 'en', { numeric: true }) ||
        (one.layer ?? 0) - (other.layer ?? 0) ||
        (one.place ?? 0) - (other.place ?? 0)
    );
}
