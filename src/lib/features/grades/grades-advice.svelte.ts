import {
  type RegradeAdvice,
  handBias,
  naturalBreaks,
  regradeAdvice,
  weightedKappa
} from '$lib/engine/grading';
import { totalCount } from '$lib/engine/thickness';
import { adoptedPlanOf, numbersOf, planRequestOf } from '$lib/job';
import { handKey } from '$lib/job/sorted';
import type { AsSorted } from './grades-as-sorted.ts';
import type { SorterHand } from '$lib/job/sorted';
import { type SortedUnder, sampleAndSince, sortedUnder } from '$lib/job/sorted';
import type { GradesState } from './grades.svelte.ts';
import type { JobState } from '$lib/app';
import { UNSTUDIED_GAUGE_SD_MM } from '$lib/job';

/** Kickers per 100 joints from which moving a boundary is worth a word. Ours. */
const WORTH_SAYING = 0.5;

/** What a change of grades would mean for slates that are on piles. */
export interface Regrade {
  readonly sorted: SortedUnder;
  /** Kickers per 100 joints as the piles stand, and with the boundaries asked about. */
  readonly beforePer100: number;
  readonly afterPer100: number;
  /** What would have to be looked at again; undefined where the piles differ in number. */
  readonly advice: RegradeAdvice | undefined;
  /** Slates on piles whose thickness nothing tells. */
  readonly unknownSlates: number;
}

/** What is known of the sorting: hands, gauge, drift, and what a change would cost. */
export class GradesAdvice {
  readonly #job: () => JobState;
  readonly #grades: () => GradesState;
  /** The ± that is near enough for the count of a pile, slates; undefined: a fortieth of the stock. */
  #withinSlates = $state<number>();

  constructor(job: () => JobState, grades: () => GradesState) {
    this.#job = job;
    this.#grades = grades;
  }

  get withinSlates(): number {
    return this.#withinSlates ?? Math.max(1, Math.round(this.#grades().stockSlates / 40));
  }
  set withinSlates(slates: number) {
    this.#withinSlates = slates;
  }

  /** How many more slates to gauge, and of which pallets; undefined while that loads. */
  readonly sample = $derived.by(() => {
    const { estimates, samples, thresholdsMm } = this.#grades();
    if (thresholdsMm.length === 0) return undefined;
    return estimates?.sampleAdvice(samples, thresholdsMm, this.withinSlates);
  });

  /** Slates on piles, by the grades they were sorted under. */
  readonly sorted = $derived.by(() => {
    const { together } = this.#grades();
    return sortedUnder(this.#job().view, (palletId, gradesId, sorter, pile) =>
      together?.ok ? together.told(handKey(gradesId, sorter), pile, palletId) : undefined
    );
  });

  /** What the boundaries shown would mean for slates sorted under other ones. */
  readonly regrades = $derived.by((): Regrade[] => {
    const { thresholdsMm } = this.#grades();
    return this.sorted.flatMap((sorted) => {
      const oldMm = this.#thresholdsOf(sorted.gradesId);
      if (thresholdsMm.length === 0 || !oldMm || isSame(oldMm, thresholdsMm)) return [];
      const regrade = this.#regrade(sorted, oldMm, thresholdsMm);
      // Slates on a pile that gets a new number stay as they lie: there is nothing to look at again.
      const isKept = isSame(this.#numbersOf(sorted.gradesId), this.#grades().numbers);
      return [isKept ? regrade : { ...regrade, advice: undefined }];
    });
  });

  /** Slates that were put on piles before there were grades. */
  readonly sortedBefore = $derived(
    this.sorted.find(({ gradesId }) => gradesId === '')?.slates ?? 0
  );

  /** Whether the stock has drifted from the sample that the grades in force came from. */
  readonly drift = $derived.by(() => {
    const { grades, view } = this.#job();
    const { estimates } = this.#grades();
    if (!grades || !estimates || this.sorted.length === 0) return undefined;
    return estimates.stockDrift(sampleAndSince(view, grades.gradesId));
  });

  /**
   * Boundaries that the spread as known now asks for, where moving there is worth a word: natural
   * breaks, or those that suit the roof, whichever saves more; natural breaks where they save alike.
   */
  readonly betterMove = $derived.by(() => {
    const { grades } = this.#job();
    if (!grades || this.sorted.length === 0) return undefined;
    const { spread } = this.#grades();
    const piles = grades.thresholdsMm.length + 1;
    const cut = naturalBreaks(spread, piles);
    const suited = this.#grades().suitedThresholds(piles);
    const sorted = this.sorted.find(({ gradesId }) => gradesId === grades.gradesId);
    if (!sorted) return undefined;
    const moves = [...(cut.ok ? [cut.thresholdsMm] : []), ...(suited ? [suited] : [])].map(
      (thresholdsMm) => ({
        thresholdsMm,
        regrade: this.#regrade(sorted, grades.thresholdsMm, thresholdsMm)
      })
    );
    const gainOf = ({ regrade: { advice } }: (typeof moves)[number]): number =>
      advice && advice.after.coursesMissing <= advice.before.coursesMissing
        ? advice.gainPer100Joints
        : 0;
    const best = moves.reduce<(typeof moves)[number] | undefined>(
      (most, move) => (!most || gainOf(move) > gainOf(most) + 1e-9 ? move : most),
      undefined
    );
    return best && gainOf(best) >= WORTH_SAYING ? best : undefined;
  });

  /**
   * Piles that do not carry what the plan still takes from them, as Courses and Lay tell them;
   * undefined without a plan for the grades in force.
   */
  readonly shortPiles = $derived.by(() => {
    const { view, grades } = this.#job();
    const ground = planRequestOf(view);
    const adopted = ground.ok ? adoptedPlanOf(view, ground) : undefined;
    return adopted && grades && adopted.body.gradesId === grades.gradesId
      ? adopted.short
      : undefined;
  });

  /** Courses that whole piles under the grades in force cannot fill any more. */
  readonly coursesMissing = $derived.by(() => {
    const { grades } = this.#job();
    const figures = grades && this.#grades().figuresAt(grades.thresholdsMm);
    return figures?.roof?.coursesMissing ?? 0;
  });

  /** Every sorter under every set of grades, the newest grades first. */
  readonly sorters = $derived.by(() =>
    (this.#grades().hands ?? []).toReversed().map((hand) => ({
      ...hand,
      isInForce: hand.gradesId === (this.#job().grades?.gradesId ?? ''),
      linear: hand.table ? weightedKappa(hand.table, 'linear') : undefined,
      quadratic: hand.table ? weightedKappa(hand.table, 'quadratic') : undefined,
      bias:
        hand.hand.ok && hand.thresholdsMm
          ? handBias(hand.hand.thresholdsMm, hand.thresholdsMm)
          : undefined
    }))
  );

  /** Repeatability SD that is reckoned with, mm, and whether a study told it. */
  readonly gaugeSdMm = $derived.by(() => this.#job().settings.gaugeSdMm ?? UNSTUDIED_GAUGE_SD_MM);
  readonly isGaugeStudied = $derived.by(() => this.#job().settings.gaugeSdMm !== null);

  /** The figures as they come out of real sorting: by gauge, and by every hand that is known. */
  readonly asSorted = $derived.by(() => this.asSortedAt(this.#grades().thresholdsMm));

  /** The same for boundaries that are not the ones shown; none while the statistics load. */
  asSortedAt(thresholdsMm: readonly number[]): AsSorted[] {
    const { estimates, ground, hands } = this.#grades();
    if (!estimates || thresholdsMm.length === 0) return [];
    return [
      estimates.sortedByGauge(ground, thresholdsMm, this.gaugeSdMm),
      ...estimates.sortedByHands(ground, thresholdsMm, hands ?? [])
    ];
  }

  /** When a set of grades was set; undefined for piles made before there were grades. */
  setAt(gradesId: string): string | undefined {
    return this.#grades().history.find(({ id }) => id === gradesId)?.at;
  }

  #thresholdsOf(gradesId: string): readonly number[] | undefined {
    return this.#grades().history.find(({ id }) => id === gradesId)?.value.thresholdsMm;
  }

  #numbersOf(gradesId: string): readonly number[] {
    const grades = this.#grades().history.find(({ id }) => id === gradesId)?.value;
    return grades ? numbersOf(grades) : [];
  }

  #regrade(sorted: SortedUnder, oldMm: readonly number[], newMm: readonly number[]): Regrade {
    const known = sorted.onPiles.reduce((sum, { bins }) => sum + totalCount(bins), 0);
    const per100 = (thresholdsMm: readonly number[]): number => {
      const figures = this.#grades().figuresAt(thresholdsMm);
      return (figures.roof ?? figures).expectedKickersPer100Joints;
    };
    return {
      sorted,
      beforePer100: per100(oldMm),
      afterPer100: per100(newMm),
      advice:
        oldMm.length === newMm.length
          ? regradeAdvice(this.#grades().figuresAt, oldMm, newMm, sorted.onPiles)
          : undefined,
      unknownSlates: Math.max(0, Math.round(sorted.slates - known))
    };
  }
}

/** A sorter's hand with its agreement. */
export type SorterStudy = GradesAdvice['sorters'][number] & SorterHand;

function isSame(one: readonly number[], other: readonly number[]): boolean {
  return one.length === other.length && one.every((value, index) => value === other[index]);
}
