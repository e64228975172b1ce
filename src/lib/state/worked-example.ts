import type { NewEvent } from '$lib/journal';
import { workedExample } from '../../../seeds/worked-example.ts';
import { newJobId } from './new-job.ts';
import { journalStore } from './store.ts';

/** Writes a fresh copy of the worked example into this device's journal and gives the job's id. */
export async function openWorkedExample(): Promise<string> {
  const jobId = newJobId();
  const store = journalStore();
  let batch: NewEvent[] = [];
  let sorter = '';
  for (const step of workedExample().acts) {
    if (step.sorter !== sorter) {
      if (batch.length > 0) await store.append(jobId, batch, sorter);
      batch = [];
      sorter = step.sorter;
    }
    batch.push(step.act);
  }
  if (batch.length > 0) await store.append(jobId, batch, sorter);
  return jobId;
}
