import { EngineError } from '$lib/engine';
import { momentsOfBins } from '$lib/engine/thickness';
import { CUSTOMARY_DENSITY, type Ranged, countByWeight, densityOfPallet } from '$lib/engine/sizes';
import { stockOf } from '$lib/job';
import { type JobState, newJobId } from '$lib/app';
import { readNumber } from '$lib/ui';

/** Share by which a thickness that nobody measured may be out: ours. */
const TYPED_MAY_BE_OUT = 0.1;

/** A delivery told by its weight: how many slates it is, and how sure that is. */
export class ByWeightState {
  readonly #job: () => JobState;
  tonnes = $state('');
  thickness = $state('');
  kilograms = $state('');
  counted = $state('');
  label = $state('');
  added = $state.raw<{ readonly label: string; readonly slates: number }>();

  constructor(job: () => JobState) {
    this.#job = job;
  }

  /** Mean thickness as measured, with twice its standard error to either side. */
  readonly measured: Ranged | undefined = $derived.by(() => {
    const { view, pallets } = this.#job();
    const readings = pallets.reduce((sum, { gauged }) => sum + gauged, 0);
    const moments = momentsOfBins(stockOf(view).spread);
    if (readings < 2 || !moments.ok) return undefined;
    const value = moments.meanMm;
    const error = (2 * (moments.sdMm ?? 0)) / Math.sqrt(readings);
    return { value, low: value - error, high: value + error };
  });

  readonly thicknessMm: Ranged | undefined = $derived.by(() => {
    if (this.thickness.trim() === '') return this.measured;
    const value = numberIn(this.thickness);
    return value === undefined
      ? undefined
      : { value, low: value * (1 - TYPED_MAY_BE_OUT), high: value * (1 + TYPED_MAY_BE_OUT) };
  });

  /** The density of a weighed pallet; `odd` where weight, count and size cannot all be right. */
  readonly mended: Ranged | 'odd' | undefined = $derived.by(() => {
    const [kilograms, slates] = [numberIn(this.kilograms), numberIn(this.counted)];
    const { thicknessMm } = this;
    const { spec } = this.#job();
    if (kilograms === undefined || slates === undefined || !thicknessMm || !spec) return undefined;
    return orOdd(() => densityOfPallet(kilograms, kilograms / 200, slates, spec, thicknessMm));
  });

  readonly density: Ranged = $derived.by(() =>
    this.mended && this.mended !== 'odd' ? this.mended : CUSTOMARY_DENSITY
  );

  readonly slates: Ranged | undefined = $derived.by(() => {
    const tonnes = numberIn(this.tonnes);
    const { thicknessMm } = this;
    const { spec } = this.#job();
    if (tonnes === undefined || !thicknessMm || !spec) return undefined;
    const counted = orOdd(() => countByWeight(tonnes * 1000, spec, thicknessMm, this.density));
    return counted === 'odd' ? undefined : counted;
  });

  /** Enters the slates as a pallet of the size in hand. */
  async add(): Promise<void> {
    const slates = this.slates?.value;
    const label = this.label.trim();
    if (slates === undefined || label === '') return;
    const body = { palletId: newJobId(), label, slates };
    if (await this.#job().act({ type: 'palletAdded', body })) this.added = { label, slates };
  }
}

function numberIn(text: string): number | undefined {
  const read = text.trim() === '' ? undefined : readNumber(text);
  return read?.ok && read.value > 0 ? read.value : undefined;
}

function orOdd(work: () => Ranged): Ranged | 'odd' {
  try {
    return work();
  } catch (error) {
    if (error instanceof EngineError) return 'odd';
    throw error;
  }
}
