import { planCourses } from '$lib/engine/courses';
import { gradesOf, planAdoption, planRequestOf, settingsOf } from '$lib/job';
import { chapelRoof, exampleEvents } from '$lib/example';
import { newJobId } from '$lib/app';
import { journalStore, randomHex } from '$lib/app';

/**
 * Writes a fresh copy of the worked example into this device's journal, plans its roof and gives
 * the job's id. The plan is the planner's own, made now from the example's slates and slopes.
 */
export async function openWorkedExample(): Promise<string> {
  const jobId = newJobId();
  const store = journalStore();
  const deviceId = await store.deviceId();
  const result = await store.merge(
    exampleEvents({ jobId, deviceId, endsAt: Date.now(), randomHex })
  );
  if (!result.ok) throw new Error(`the worked example was refused: ${result.reason}`);
  await adoptPlan(jobId);
  return jobId;
}

/** Writes a fresh copy of the chapel roof, of three lengths, into this device's journal; its id. */
export async function openChapelRoof(): Promise<string> {
  const jobId = newJobId();
  const store = journalStore();
  const device = { jobId, deviceId: await store.deviceId(), endsAt: Date.now(), randomHex };
  const result = await store.merge(exampleEvents(device, chapelRoof().acts));
  if (!result.ok) throw new Error(`the chapel roof was refused: ${result.reason}`);
  return jobId;
}

async function adoptPlan(jobId: string): Promise<void> {
  const opened = await journalStore().open(jobId);
  const { createPilesAsSorted } = await import('$lib/job/sorted');
  const ground =
    opened && planRequestOf(opened.view, (stock) => createPilesAsSorted()(opened.view, stock).bins);
  if (!opened || !ground?.ok) throw new Error('the worked example has nothing to plan');
  const plan = planCourses(ground.request);
  if (plan.status !== 'optimal') throw new Error('the worked example is short of slates');
  const { kickAllowanceMm } = settingsOf(opened.view);
  const gradesId = gradesOf(opened.view)?.gradesId ?? null;
  const body = planAdoption(ground, plan, gradesId, kickAllowanceMm);
  await journalStore().append(jobId, [{ type: 'planAdopted', body }]);
}
