import { type JobView, type StoredEvent, partOf } from '$lib/journal';

/**
 * The slope on which a course was laid last, whole or in part: by this device, where it laid one
 * lately, else by anyone; undefined before any. Acts taken back do not count.
 *
 * @param newest events of the job, newest first; not modified
 */
export function lastSlope(
  view: JobView,
  newest: readonly StoredEvent[],
  deviceId: string
): string | undefined {
  const { laid, partLaid } = partOf(view, 'laying');
  const settings = [...Object.values(laid), ...Object.values(partLaid)].flat();
  const slopeOf = new Map(settings.map(({ id, value }) => [id, value.slopeId]));
  const own = newest.find((event) => event.deviceId === deviceId && slopeOf.has(event.id));
  const last = own?.id ?? [...slopeOf.keys()].reduce((one, id) => (id > one ? id : one), '');
  return slopeOf.get(last);
}
