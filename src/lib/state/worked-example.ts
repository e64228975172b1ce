import { exampleEvents } from '../../../seeds/worked-example.ts';
import { newJobId } from './new-job.ts';
import { journalStore, randomHex } from './store.ts';

/** Writes a fresh copy of the worked example into this device's journal and gives the job's id. */
export async function openWorkedExample(): Promise<string> {
  const jobId = newJobId();
  const store = journalStore();
  const deviceId = await store.deviceId();
  const result = await store.merge(
    exampleEvents({ jobId, deviceId, endsAt: Date.now(), randomHex })
  );
  if (!result.ok) throw new Error(`the worked example was refused: ${result.reason}`);
  return jobId;
}
