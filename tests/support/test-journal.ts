import { type NewEvent, readEvent } from '../../src/lib/journal/events.ts';
import { EMPTY_VIEW, foldAll } from '../../src/lib/journal/fold.ts';
import type { JobView } from '../../src/lib/journal/view.ts';

/** For tests: a journal in which each act has the next id. */
export class TestJournal {
  #acts: NewEvent[] = [];

  add(...acts: NewEvent[]): this {
    this.#acts.push(...acts);
    return this;
  }

  /** The id that the act at a place has. */
  static id(place: number): string {
    return `01900000-0000-7000-8000-${String(place).padStart(12, '0')}`;
  }

  get length(): number {
    return this.#acts.length;
  }

  get view(): JobView {
    const reads = this.#acts.map((act, place) =>
      readEvent({
        ...act,
        id: TestJournal.id(place),
        jobId: TestJournal.id(999_999),
        deviceId: TestJournal.id(999_998),
        deviceSeq: place + 1,
        at: '2024-05-01T08:00:00.000Z',
        sorter: '',
        v: 1
      })
    );
    const broken = reads.filter(({ kind }) => kind !== 'known');
    if (broken.length > 0) throw new Error(JSON.stringify(broken));
    return foldAll(reads, EMPTY_VIEW);
  }
}
