import type { SetsProblem } from '$lib/engine/sizes';
import { setsProblems } from '$lib/engine/sizes';
import type { SlateSizeBody } from '$lib/journal';
import { slateForEngine } from '$lib/job';
import {
  FIRST_SIZE,
  type LaidElsewhere,
  misplacedSizes,
  type SizesLaidOut,
  type SizesNotLaidOut,
  setOfSize,
  sizesLaidOut
} from '$lib/job/sizes';
import { type JobState, randomHex } from '$lib/app';
import { type ShownUnit, fieldText, readLength } from '$lib/ui';

/** One size as it is typed. */
export interface SizeRow {
  readonly sizeId: string;
  length: string;
  isRandom: boolean;
  width: string;
  from: string;
  to: string;
  mean: string;
}

/** The sizes of a job as they are typed, and the courses that they make. */
export class SizesState {
  readonly #job: () => JobState;
  rows = $state<SizeRow[]>([]);
  isTried = $state(false);
  isChanged = $state(false);

  constructor(job: () => JobState) {
    this.#job = job;
    const { sizes, spec } = job();
    const first = spec && { sizeId: FIRST_SIZE, lengthMm: spec.lengthMm, widthMm: spec.widthMm };
    const shown = sizes.length > 0 ? sizes : first ? [first] : [];
    this.rows = shown.map((size) => rowOf(size, this.unit));
  }

  get unit(): ShownUnit {
    return this.#job().settings.lengthUnit;
  }

  readonly read: readonly SlateSizeBody[] = $derived.by(() =>
    this.rows.map((row) => sizeOf(row, this.unit))
  );

  readonly problems: readonly SetsProblem[] = $derived.by(() => {
    const { spec } = this.#job();
    return spec ? setsProblems(this.read.map(setOfSize), slateForEngine(spec)) : [];
  });

  readonly laid: SizesLaidOut | SizesNotLaidOut | undefined = $derived.by(() =>
    this.#job().sizes.length > 0 ? sizesLaidOut(this.#job().whole) : undefined
  );

  /** What lies of another size than the one that is to lie there as things stand. */
  readonly misplaced: readonly LaidElsewhere[] = $derived.by(() =>
    this.#job().sizes.length > 0 ? misplacedSizes(this.#job().whole) : []
  );

  add(): void {
    const { rows } = this;
    const blank = { width: '', from: '', to: '', mean: '', length: '' };
    const isRandom = rows.at(-1)?.isRandom ?? false;
    this.rows = [...rows, { ...blank, sizeId: `size-${randomHex().slice(0, 8)}`, isRandom }];
    this.isChanged = true;
  }

  remove(sizeId: string): void {
    this.rows = this.rows.filter((row) => row.sizeId !== sizeId);
    this.isChanged = true;
  }

  /** Stores the sizes; resolves to whether they were saved. */
  async save(): Promise<boolean> {
    this.isTried = true;
    if (this.problems.length > 0) return false;
    const sizes = this.read.map((size) => ({ ...size }));
    const saved = await this.#job().act({ type: 'slateSizesSet', body: { sizes } });
    if (saved) this.isChanged = false;
    return saved !== undefined;
  }

  /** Takes the job back to the one slate of Roof. */
  async backToOne(): Promise<void> {
    await this.#job().act({ type: 'slateSizesSet', body: { sizes: [] } });
  }

  /** Keeps the courses as they are proposed. */
  async choose(): Promise<void> {
    const { laid } = this;
    if (!laid?.ok) return;
    const courses = laid.sets.map(({ set, courses: n }) => ({ sizeId: set.id, courses: n }));
    await this.#job().act({ type: 'setCoursesChosen', body: { courses } });
  }

  /** Lets the courses follow the stock again. */
  async free(): Promise<void> {
    await this.#job().act({ type: 'setCoursesChosen', body: { courses: [] } });
  }
}

function rowOf(size: SlateSizeBody, unit: ShownUnit): SizeRow {
  const text = (mm: number | undefined) => (mm === undefined ? '' : fieldText(mm, unit));
  return {
    sizeId: size.sizeId,
    length: text(size.lengthMm),
    isRandom: size.widthMm === undefined,
    width: text(size.widthMm),
    from: text(size.widthFromMm),
    to: text(size.widthToMm),
    mean: text(size.meanWidthMm)
  };
}

/** A row read; what cannot be read is no number, which the check of the sizes then tells. */
function sizeOf(row: SizeRow, unit: ShownUnit): SlateSizeBody {
  const mm = (text: string): number => {
    const reading = readLength(text, unit);
    return reading.ok ? Math.round(reading.value * 10) / 10 : Number.NaN;
  };
  const size = { sizeId: row.sizeId, lengthMm: mm(row.length) };
  if (!row.isRandom) return { ...size, widthMm: mm(row.width) };
  const random = { ...size, widthFromMm: mm(row.from), widthToMm: mm(row.to) };
  return row.mean.trim() === '' ? random : { ...random, meanWidthMm: mm(row.mean) };
}
