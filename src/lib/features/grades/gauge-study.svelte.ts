import { type Reading, parseReading } from '$lib/gauge';
import { fromHundredths } from '$lib/engine';
import { current, partOf } from '$lib/journal';
import type { GradesState } from './grades.svelte.ts';
import type { JobState } from '$lib/app';

/** Size of a study: so many slates, gauged by so many sorters, so many times each. */
export interface StudySize {
  readonly parts: number;
  readonly sorters: number;
  readonly trials: number;
}

/** What is offered; the constants of the pencil method end at ten parts, three sorters and trials. */
export const STUDY_SIZES = { parts: [5, 10], sorters: [1, 2, 3], trials: [2, 3] } as const;

/** The reading that comes next, each counted from 1. */
export interface StudyStep {
  readonly trial: number;
  readonly sorter: number;
  readonly part: number;
}

/**
 * A guided gauge study: one reading after another, slate by slate, so that nobody remembers what the
 * slate read before. In the journal only once it is kept.
 */
export class GaugeStudy {
  readonly #job: () => JobState;
  readonly #grades: () => GradesState;
  isOpen = $state(false);
  size = $state.raw<StudySize>({ parts: 10, sorters: 2, trials: 2 });
  names = $state<string[]>(['', '', '']);
  /** Hundredths of a millimetre in the order read: by trial, then sorter, then part. */
  #readings = $state.raw<readonly number[]>([]);
  entry = $state('');
  refused = $state.raw<Exclude<Reading, { ok: true }>>();
  isKeeping = $state(false);

  constructor(job: () => JobState, grades: () => GradesState) {
    this.#job = job;
    this.#grades = grades;
  }

  readonly total = $derived(this.size.parts * this.size.sorters * this.size.trials);
  readonly done = $derived(this.#readings.length);
  readonly isComplete = $derived(this.done === this.total);
  readonly next = $derived.by((): StudyStep | undefined => {
    if (this.isComplete) return undefined;
    const { parts, sorters } = this.size;
    const round = Math.floor(this.done / parts);
    return {
      part: (this.done % parts) + 1,
      sorter: (round % sorters) + 1,
      trial: Math.floor(round / sorters) + 1
    };
  });
  /** The last reading taken, mm. */
  readonly lastMm = $derived(
    this.done > 0 ? fromHundredths(this.#readings[this.done - 1]) : undefined
  );

  /** Readings by part, then sorter, then trial, hundredths of a millimetre. */
  readonly table = $derived.by((): number[][][] => {
    const { parts, sorters, trials } = this.size;
    return Array.from({ length: parts }, (_part, part) =>
      Array.from({ length: sorters }, (_sorter, sorter) =>
        Array.from(
          { length: trials },
          (_trial, trial) => this.#readings[(trial * sorters + sorter) * parts + part]
        )
      )
    );
  });

  /** What the study says, once it is complete and the statistics are loaded. */
  readonly result = $derived.by(() => {
    const { estimates } = this.#grades();
    if (!this.isComplete || !estimates) return undefined;
    const inMm = this.table.map((part) => part.map((trials) => trials.map(fromHundredths)));
    return { ranges: estimates.averageRangeStudy(inMm), anova: estimates.anovaStudy(inMm) };
  });

  /** The study kept last in this job. */
  readonly kept = $derived.by(() => current(partOf(this.#job().view, 'job').studies));

  /** Starts afresh with a size. */
  start(size: StudySize): void {
    this.size = size;
    this.#readings = [];
    this.entry = '';
    this.refused = undefined;
    this.isOpen = true;
  }

  /** Takes what stands in the field, or says why not. */
  take(): void {
    if (this.isComplete) return;
    const unit = this.#job().settings.readingUnit === 'in' ? 'inch' : 'mm';
    const reading = parseReading(this.entry, unit);
    if (!reading.ok) {
      this.refused = reading;
      return;
    }
    this.refused = undefined;
    this.#readings = [...this.#readings, reading.hundredths];
    this.entry = '';
  }

  /** Takes the last reading back. */
  back(): void {
    this.#readings = this.#readings.slice(0, -1);
    this.refused = undefined;
  }

  /** Keeps the study and makes its repeatability the one that this job reckons with. */
  async keep(): Promise<boolean> {
    const anova = this.result?.anova;
    if (!anova?.ok) return false;
    const { repeatabilitySdMm } = anova;
    const sorters = Array.from({ length: this.size.sorters }, (_, index) =>
      this.names[index].trim()
    );
    this.isKeeping = true;
    try {
      const stored = await this.#job().act([
        { type: 'gaugeStudied', body: { readings: this.table, sorters, repeatabilitySdMm } },
        { type: 'jobSettingsSet', body: { gaugeSdMm: Math.min(5, repeatabilitySdMm) } }
      ]);
      if (stored) this.isOpen = false;
      return stored !== undefined;
    } finally {
      this.isKeeping = false;
    }
  }
}
