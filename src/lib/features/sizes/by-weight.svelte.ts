import { EngineError } from '$lib/engine';
import { meanOfUnseen } from '$lib/engine/statistics';
import { momentsOfBins } from '$lib/engine/thickness';
import { CUSTOMARY_DENSITY, type Ranged, countByWeight, densityOfPallet } from '$lib/engine/sizes';
import { type JobState, newJobId } from '$lib/app';
import { readNumber } from '$lib/ui';

/** Share by which a thickness that nobody measured may be out: ours. */
const TYPED_MAY_BE_OUT = 0.1;
/** No pallet is so many times thicker or thinner than those measured: ours, for two that differ much. */
const FURTHEST_OUT = 2;

/** A delivery told by its weight: how many slates it is, and how sure that is. */
export class ByWeightState {
  readonly #job: () => JobState;
  tonnes = $state('');
  thickness = $state('');
  pallets = $state('1');
  kilograms = $state('');
  counted = $state('');
  label = $state('');
  added = $state.raw<{ readonly label: string; readonly slates: number }>();

  constructor(job: () => JobState) {
    this.#job = job;
  }

  /** Mean thickness of each pallet of the size in hand that has readings. */
  readonly #means: readonly number[] = $derived.by(() =>
    this.#job().pallets.flatMap(({ gaugedBins }) => {
      const moments = momentsOfBins(gaugedBins);
      return moments.ok ? [moments.meanMm] : [];
    })
  );
  /** Pallets that were measured. */
  readonly measuredOn: number = $derived(this.#means.length);

  /**
   * Mean thickness of the weighed pallets, told by those that were measured: slates of one are alike,
   * so the range holds how pallets differ. One pallet cannot tell: then a tenth, as for a guess.
   */
  readonly measured: Ranged | undefined = $derived.by(() => {
    const [first] = this.#means;
    if (first === undefined) return undefined;
    const unseen = meanOfUnseen(
      this.#means,
      Math.max(1, Math.round(numberIn(this.pallets) ?? 1)),
      0.95
    );
    if (!unseen.ok) return asGuessed(first);
    const { mean: value, low, high } = unseen;
    return {
      value,
      low: Math.max(low, value / FURTHEST_OUT),
      high: Math.min(high, value * FURTHEST_OUT)
    };
  });

  readonly thicknessMm: Ranged | undefined = $derived.by(() => {
    if (this.thickness.trim() === '') return this.measured;
    const value = numberIn(this.thickness);
    return value === undefined ? undefined : asGuessed(value);
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
    // A second tap enters nothing more.
    this.label = '';
    if (await this.#job().act({ type: 'palletAdded', body })) this.added = { label, slates };
    else this.label = label;
  }
}

function asGuessed(value: number): Ranged {
  return { value, low: value * (1 - TYPED_MAY_BE_OUT), high: value * (1 + TYPED_MAY_BE_OUT) };
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
