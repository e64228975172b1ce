import { describe, expect, it } from 'vitest';
import type { NewEvent, StoredEvent } from '$lib/journal';
import { checkJobFile, readJobFile } from './job-file.ts';
import { writeJobFile } from './job-file-write.ts';
import { MemoryStore } from '../../../tests/support/memory-store.ts';
import { testSurroundings } from '../../../tests/support/store-contract/test-surroundings.ts';

const JOB = '018f0000-0000-7000-8000-00000000000a';
const opened: NewEvent = { type: 'jobOpened', body: { name: 'Barn' } };
const tapped: NewEvent = {
  type: 'slateTapped',
  body: { palletId: 'p1', pile: 1, gradesId: null }
};

/** A store of which another tab merges a journal with older ids while it is read out. */
class DisturbedStore extends MemoryStore {
  disturb: (() => Promise<unknown>) | undefined;

  override async *events(jobId: string): AsyncGenerator<StoredEvent[]> {
    for await (const batch of super.events(jobId))
      for (const event of batch) {
        yield [event];
        await this.disturb?.();
        this.disturb = undefined;
        // What was merged below the ids already read is passed over, as in a real database.
        const fresh = await this.newest(jobId, 1000);
        for (const other of fresh.reverse())
          if (other.id > event.id && !batch.includes(other)) yield [other];
      }
  }
}

describe('writeJobFile', () => {
  it('J14: begins again when a merge comes in between, so that the file has no gap', async () => {
    const far = new MemoryStore(testSurroundings(1));
    await far.append(JOB, [opened, tapped]);
    const late = testSurroundings(2);
    const near = new DisturbedStore({ ...late, now: () => late.now() + 3_600_000 });
    const early = await writeJobFile(far, JOB);
    await readJobFile(near, early?.blob ?? '');
    await near.append(JOB, [tapped]);
    await far.append(JOB, [tapped]);
    await near.append(JOB, [tapped]);
    const more = await writeJobFile(far, JOB);
    near.disturb = () => readJobFile(near, more?.blob ?? '');
    const file = await writeJobFile(near, JOB);
    expect(file?.events).toBe(5);
    expect(await checkJobFile(file?.blob ?? '')).toMatchObject({ ok: true });
  });
});
