import { describe, expect, it } from 'vitest';
import type { StoredEvent } from '$lib/journal';
import { type JobRow, emptiedRow, newRow, summaryOf, withBackup, withEvents } from './job-row.ts';

const [HERE, FAR] = ['here', 'far'];
const [EARLY, LATE] = ['2026-03-02T17:00:00.000Z', '2026-03-03T17:00:00.000Z'];

const events = (deviceId: string, from: number, to: number): StoredEvent[] =>
  Array.from({ length: to - from + 1 }, (_, at) => ({
    id: `${deviceId}${from + at}`,
    jobId: 'j',
    deviceId,
    deviceSeq: from + at,
    at: EARLY,
    sorter: '',
    type: 'slateGauged',
    v: 1,
    body: {}
  }));

const rowOf = (...runs: StoredEvent[][]): JobRow => runs.reduce(withEvents, newRow('j'));

describe('J20: the events that are in no job file', () => {
  it('are all of them, and none of a job without events, before there is a file', () => {
    expect(summaryOf(newRow('j'))).toMatchObject({ unexported: 0, exportedAt: null });
    expect(summaryOf(rowOf(events(HERE, 1, 4), events(FAR, 1, 3))).unexported).toBe(7);
  });

  it('are told device by device: many events of one make up for none of another', () => {
    const row = withBackup(rowOf(events(HERE, 1, 4), events(FAR, 1, 90)), { [FAR]: 90 }, EARLY);
    expect(summaryOf(row).unexported).toBe(4);
  });

  it('are those that no file holds, where each of several holds a part', () => {
    const row = rowOf(events(HERE, 1, 4), events(FAR, 1, 9));
    const both = withBackup(withBackup(row, { [HERE]: 3 }, EARLY), { [FAR]: 9 }, LATE);
    expect(summaryOf(both)).toMatchObject({ unexported: 1, exportedAt: EARLY });
  });

  it('are no fewer for a file that holds more than is here', () => {
    const row = withBackup(rowOf(events(HERE, 1, 2)), { [FAR]: 50 }, EARLY);
    expect(summaryOf(row).unexported).toBe(2);
  });

  it('are no more for an older file, nor does it move the moment', () => {
    const row = withBackup(rowOf(events(HERE, 1, 9)), { [HERE]: 9 }, EARLY);
    expect(summaryOf(withBackup(row, { [HERE]: 3 }, LATE))).toMatchObject({
      unexported: 0,
      exportedAt: EARLY
    });
  });
});

describe('J20: a row of an earlier version, which counted the events of its newest backup', () => {
  const old: JobRow = {
    ...rowOf(events(HERE, 1, 9)),
    inFiles: undefined,
    exported: 6,
    exportedAt: EARLY
  };

  it('goes on from that count where all events are of one device', () => {
    expect(summaryOf(old).unexported).toBe(3);
    expect(summaryOf(withEvents(old, events(FAR, 1, 5))).unexported).toBe(8);
    expect(summaryOf(withEvents(emptiedRow(old), events(HERE, 1, 9))).unexported).toBe(3);
  });

  it('counts nothing as backed up where there are several: nobody knows whose they were', () => {
    const several = { ...old, sequences: { [HERE]: 5, [FAR]: 4 } };
    expect(summaryOf(several).unexported).toBe(9);
  });
});
