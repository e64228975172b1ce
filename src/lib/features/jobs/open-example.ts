import { gradesOf, planAdoption, planRequestOf, settingsOf, tallyPallets } from '$lib/job';
import { chapelRoof, exampleEvents } from '$lib/example';
import { newJobId } from '$lib/app';
import { journalStore, randomHex } from '$lib/app';

/**
 * Writes a fresh copy of the worked example into this device's journal, plans its roof and gives
 * the job's id. The plan is the one by the rule, made now from the example's slates and slopes.
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
  const { createPilesAsSorted, heldRiskOf, roofPlans } = await import('$lib/job/sorted');
  const ground =
    opened && planRequestOf(opened.view, (stock) => createPilesAsSorted()(opened.view, stock).bins);
  if (!opened || !ground?.ok) throw new Error('the worked example has nothing to plan');
  const { view } = opened;
  const { kickAllowanceMm, runOutRisk } = settingsOf(view);
  const grades = gradesOf(view);
  const risk = heldRiskOf(ground, tallyPallets(view), grades, runOutRisk);
  const { byRule, heldUnder } = roofPlans(ground.request, risk);
  if (byRule.status !== 'optimal') throw new Error('the worked example is short of slates');
  const gradesId = grades?.gradesId ?? null;
  const body = planAdoption(ground, byRule, gradesId, kickAllowanceMm, 'byRule', heldUnder);
  await journalStore().append(jobId, [{ type: 'planAdopted', body }]);
}
