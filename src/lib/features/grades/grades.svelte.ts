import { untrack } from 'svelte';
import {
  FEWEST_PILES,
  MOST_PILES,
  gradeFigures,
  splitIntoPiles,
  kickerCurve,
  naturalBreaks
} from '$lib/engine/grading';
import {
  type ThicknessBins,
  gradeIntervals,
  mergeBins,
  momentsOfBins,
  totalCount
} from '$lib/engine/thickness';
import { type BoundaryMethod, partOf } from '$lib/journal';
import { type RoofOfJob, kickSoftnessOf, roofLayoutOf, stockOf, taperOf } from '$lib/job';
import { gradesBody, pilesUnder } from '$lib/job';
import { type RunningTask, runTask } from '$lib/worker';
import {
  type GradeWay,
  type NoWay,
  type Suited,
  noWay,
  plainWay,
  rememberFigures,
  suitedWay,
  wayAt
} from './grade-ways.ts';
import { courseNeeds, groundOf, samplesOf, slatesOf, weightedSpread } from '$lib/job/sorted';
import { type HandleReach, moveThreshold, reachOf } from './grades-handles.ts';
import { type StockBar, outlineOf, stockBars } from './grades-picture.ts';
import { type JobState, inTurn } from '$lib/app';
import { rangesOf, rememberBands } from './grade-bands.ts';

/** What is worked out of taps and spot checks, once their statistics are loaded. */
type Estimates = typeof import('./grades-estimates.ts');

/** Fewer readings than this give intervals too wide to trust; ours. */
const FEW_READINGS = 60;

/** Fewest readings from which slates held out tell anything: kickers are rare. Ours. */
export const ENOUGH_TO_HOLD_OUT = 150;

/**
 * The boundaries being tried on the Grades screen: the spread they cut, the four ways to set them
 * and what each comes to. Nothing is in the journal before `set`.
 */
export class GradesState {
  readonly #job: () => JobState;
  #piles = $state<number>();
  #method = $state<BoundaryMethod>();
  /** Boundaries set by hand, by number of piles. */
  #byHand = $state.raw<Readonly<Record<number, readonly number[]>>>({});
  #suited = $state.raw<{ of: unknown; results: Readonly<Record<number, Suited>> }>({
    of: undefined,
    results: {}
  });
  #suitFailed = $state(false);
  #usesTaps = $state(true);
  #loaded = $state.raw<Estimates>();
  /** Whether the split that is shown first was worked out. */
  isReady = $state(false);
  /** Whether what the heavier statistics tell of it was, too. */
  #isTold = $state(false);
  isSetting = $state(false);

  constructor(job: () => JobState) {
    this.#job = job;
  }

  /**
   * Works out what is shown first, then what the statistics tell of it, which the first paint does
   * without: each part in a task of its own, so that the page stays quick.
   */
  async load(): Promise<void> {
    const loading = import('./grades-estimates.ts');
    await inTurn(
      () => this.stock,
      () => this.roof,
      () => this.figures,
      () => (this.isReady = true)
    );
    this.#loaded ??= await loading;
    await inTurn(
      () => this.#handsNow,
      () => this.#togetherNow
    );
    const spread = this.#togetherNow?.ok ? this.#togetherNow.bins : this.gaugedSpread;
    const bars = this.isAllGauged ? [] : stockBars(spread, this.stockSlates);
    await inTurn(...bars.map((bar) => () => this.#tell?.(bar)));
    this.#isTold = true;
  }

  /** The heavier statistics; undefined until they are loaded and have told what is shown first. */
  get estimates(): Estimates | undefined {
    return this.#isTold ? this.#loaded : undefined;
  }

  /** The stock that the plan is made from: the same slates as on every other screen. */
  readonly stock = $derived.by(() => stockOf(this.#job().view));
  readonly samples = $derived.by(() => samplesOf(this.#job().pallets, this.stock));
  readonly gaugedSpread = $derived(weightedSpread(this.samples));
  readonly gauged = $derived(Math.round(totalCount(this.gaugedSpread)));
  readonly tapped = $derived.by(() =>
    this.#job().pallets.reduce((sum, { tapped }) => sum + tapped, 0)
  );
  readonly stockSlates = $derived(slatesOf(this.samples));
  readonly isFew = $derived(this.gauged > 0 && this.gauged < FEW_READINGS);

  /** Every sorter's taps and hand; undefined while the statistics load. */
  readonly hands = $derived.by(() => (this.#isTold ? this.#handsNow : undefined));
  readonly #handsNow = $derived.by(() => this.#loaded?.handsOf(this.#job().view));
  /** Taps and gauge together; undefined while the statistics load, and without taps. */
  readonly together = $derived.by(() => (this.#isTold ? this.#togetherNow : undefined));
  readonly #togetherNow = $derived.by(() =>
    this.#handsNow && this.tapped > 0
      ? this.#loaded?.tapsAndGauge(this.#job().view, this.samples, this.#handsNow)
      : undefined
  );
  /** What is told of the slates in a band, by gauge and taps together or by the gauge alone. */
  readonly #tell = $derived.by(() => {
    const [loaded, together, samples] = [this.#loaded, this.#togetherNow, this.samples];
    const taps = this.#usesTaps && together?.ok && together.tapsCounted > 0 ? together : undefined;
    if (!loaded) return undefined;
    return rememberBands((band) =>
      taps ? loaded.gradeByDoubleSample(taps.sample, band) : loaded.estimateGrade(samples, band)
    );
  });
  readonly tapsCounted = $derived(this.together?.ok ? this.together.tapsCounted : 0);
  readonly canUseTaps = $derived(this.tapsCounted > 0);

  /** The spread that boundaries cut: with the taps where they count in millimetres. */
  readonly spread: ThicknessBins = $derived.by(() =>
    this.usesTaps && this.together?.ok ? this.together.bins : this.gaugedSpread
  );
  readonly moments = $derived(momentsOfBins(this.spread));

  readonly roof: RoofOfJob = $derived.by(() => roofLayoutOf(this.#job().view));
  readonly courses = $derived(this.roof.ok ? courseNeeds(this.roof.demand) : []);
  readonly ground = $derived.by(() =>
    groundOf(
      this.spread,
      this.stockSlates,
      this.courses,
      this.#job().settings,
      kickSoftnessOf(this.#job().view)
    )
  );
  readonly taper = $derived.by(() => taperOf(this.#job().view));
  /** Slates that rock on a flat board; undefined until what reckons it is there. */
  readonly twist = $derived.by(() => this.estimates?.twistOf(this.#job().view));
  readonly figuresAt = $derived(rememberFigures(gradeFigures(this.ground)));

  get usesTaps(): boolean {
    return this.#usesTaps && this.canUseTaps;
  }
  set usesTaps(uses: boolean) {
    this.#usesTaps = uses;
  }

  get piles(): number {
    return this.#piles ?? this.#job().piles;
  }
  set piles(piles: number) {
    this.#piles = Math.min(MOST_PILES, Math.max(FEWEST_PILES, piles));
  }

  get method(): BoundaryMethod {
    return this.#method ?? (this.#job().grades ? 'byHand' : 'naturalBreaks');
  }
  set method(method: BoundaryMethod) {
    this.#method = method;
  }

  readonly #natural = $derived(plainWay('naturalBreaks', this.spread, this.piles, this.figuresAt));
  readonly #equal = $derived(plainWay('equalShares', this.spread, this.piles, this.figuresAt));
  readonly #suits = $derived(suitedWay(this.#suitedNow(), this.figuresAt));
  readonly #hand = $derived.by((): GradeWay => {
    if (this.spread.counts.length === 0) return noWay('byHand', 'nothing-gauged');
    const thresholdsMm = this.#handThresholds();
    return thresholdsMm
      ? wayAt('byHand', thresholdsMm, this.figuresAt)
      : noWay('byHand', 'too-few-thicknesses', this.spread.counts.length);
  });

  /** The four ways, in the order they are shown. */
  readonly ways = $derived([this.#natural, this.#suits, this.#equal, this.#hand]);
  readonly way = $derived.by(
    () => this.ways.find(({ method }) => method === this.method) as GradeWay
  );
  readonly thresholdsMm = $derived(this.way.ok ? this.way.thresholdsMm : []);
  readonly figures = $derived(this.way.ok ? this.way.figures : undefined);

  /** Whether what is shown is what is in force. */
  readonly isInForce = $derived.by(() => {
    const inForce = this.#job().grades?.thresholdsMm;
    return !!inForce && isSame(inForce, this.thresholdsMm);
  });

  /** What the boundaries shown make of the piles that stand there. */
  readonly pilesAfter = $derived.by(() => pilesUnder(this.#job().view, this.thresholdsMm));
  /** The number of each grade's pile: as in use, or as these boundaries would have them. */
  readonly numbers: readonly number[] = $derived.by(() =>
    this.isInForce ? this.#job().pileNumbers : this.pilesAfter.numbers
  );

  /** Kickers against the number of piles, by natural breaks. */
  readonly curve = $derived.by(() =>
    kickerCurve(this.figuresAt, (piles) => naturalBreaks(this.spread, piles))
  );

  /** The boundaries that suit the roof, by number of piles; undefined until they are found. */
  suitedThresholds(piles: number): readonly number[] | undefined {
    const found = this.#suited.of === this.ground ? this.#suited.results[piles] : undefined;
    return found?.ok ? found.thresholdsMm : undefined;
  }

  /** Kickers per 100 joints of the boundaries that suit the roof; undefined until they are found. */
  suitedKickers(piles: number): number | undefined {
    const thresholdsMm = this.suitedThresholds(piles);
    return thresholdsMm && this.figuresAt(thresholdsMm).roof?.expectedKickersPer100Joints;
  }

  /** The numbers of the piles as they stand, thickest first. */
  readonly standing = $derived(this.stock.piles.map(({ number }) => number));

  readonly endsMm: HandleReach = $derived.by(() => {
    const { hundredths } = this.spread;
    return hundredths.length > 0
      ? { lowMm: hundredths[0] / 100, highMm: hundredths[hundredths.length - 1] / 100 }
      : { lowMm: 0, highMm: 0 };
  });

  /**
   * The spread as drawn: slates of the stock, with intervals once they are worked out. A bar that
   * nobody saw a slate of has none: how many it may hold is not for one bar to say.
   */
  readonly bars = $derived.by((): readonly StockBar[] => {
    const bars = stockBars(this.spread, this.stockSlates);
    const tell = this.#isTold ? this.#tell : undefined;
    if (!tell || this.isAllGauged) return bars;
    const intervals = rangesOf(bars.map(tell));
    return bars.map((bar, index) => (bar.slates > 0 ? { ...bar, ...intervals[index] } : bar));
  });
  readonly isAllGauged = $derived(this.gauged >= this.stockSlates);
  /** Whether the readings are so few that kickers told from them are too low, and none can be held out. */
  readonly isFlattered = $derived(!this.isAllGauged && this.gauged < ENOUGH_TO_HOLD_OUT);

  /** Estimated slates on each pile, by the spread shown; undefined while that loads. */
  readonly pileEstimates = $derived(this.way.ok ? this.#estimatesAt(this.thresholdsMm) : undefined);
  /**
   * Between how many slates each pile cut at given boundaries may hold, at 95 %, by the same data as
   * the piles shown; none where every slate was gauged or nothing tells yet.
   */
  pileIntervals(thresholdsMm: readonly number[]): ({ low: number; high: number } | undefined)[] {
    return this.isAllGauged ? [] : rangesOf(this.#estimatesAt(thresholdsMm) ?? []);
  }
  /** Mean of the stock with its range, by the spread shown; undefined where nothing tells it. */
  readonly meanEstimate = $derived.by(() => {
    const { estimates, together } = this;
    const told =
      estimates && together?.ok && this.usesTaps
        ? estimates.meanByDoubleSample(together.sample)
        : this.pallets?.mean;
    return told?.ok ? told : undefined;
  });
  readonly pallets = $derived(this.estimates?.palletsCompared(this.samples));

  /** Piles of the split shown that rest on one reading or none, with how many. */
  readonly barePiles = $derived.by(() =>
    this.thresholdsMm.length === 0
      ? []
      : splitIntoPiles(mergeBins(this.samples.map(({ bins }) => bins)), this.thresholdsMm)
          .map((bins, index) => ({ pile: index + 1, readings: totalCount(bins) }))
          .filter(({ readings }) => readings <= 1)
  );

  /** How far each boundary can be moved. */
  readonly reaches = $derived(
    this.thresholdsMm.map((_, index) => reachOf(this.thresholdsMm, index, this.endsMm))
  );

  /** One pallet's spread as an outline over the stock's. */
  outlineOf(palletId: string): number[] {
    const sample = this.samples.find((other) => other.palletId === palletId);
    return sample ? outlineOf(this.bars, sample.bins, this.stockSlates) : [];
  }

  /** Moves one boundary: from then on the boundaries are set by hand. */
  move(index: number, toMm: number): void {
    const moved = moveThreshold(this.thresholdsMm, index, toMm, this.endsMm);
    this.#byHand = { ...this.#byHand, [this.piles]: moved };
    this.#method = 'byHand';
  }

  /** Shows given boundaries as set by hand. */
  show(thresholdsMm: readonly number[]): void {
    this.piles = thresholdsMm.length + 1;
    this.#byHand = { ...this.#byHand, [this.piles]: thresholdsMm };
    this.#method = 'byHand';
  }

  /** Puts the boundaries shown in force, by one event. */
  async set(): Promise<boolean> {
    if (!this.way.ok) return false;
    const { method } = this.way;
    this.isSetting = true;
    try {
      const stored = await this.#job().act({
        type: 'gradesSet',
        body: gradesBody(
          this.#job().view,
          { method, sampleSlates: this.gauged },
          this.way.thresholdsMm
        )
      });
      if (stored) this.#method = method;
      return stored !== undefined;
    } finally {
      this.isSetting = false;
    }
  }

  /** Keeps the kick allowance of this job. */
  async setAllowance(kickAllowanceMm: number): Promise<boolean> {
    return !!(await this.#job().act({ type: 'jobSettingsSet', body: { kickAllowanceMm } }));
  }

  /**
   * Searches the boundaries that suit the roof, in the worker: for the piles shown first, then for
   * the other numbers of piles. To be run in an effect; gives what stops it.
   */
  searchSuited(): () => void {
    const { ground, piles } = this;
    const isWorth = this.courses.length > 0 && this.spread.counts.length > 0;
    let task: RunningTask<Suited> | undefined;
    let isStopped = false;
    const run = async (): Promise<void> => {
      this.#suitFailed = false;
      const others = Array.from({ length: MOST_PILES - 1 }, (_, index) => index + FEWEST_PILES);
      for (const count of [piles, ...others.filter((other) => other !== piles)]) {
        if (isStopped) return;
        if (this.#suited.of === ground && this.#suited.results[count]) continue;
        task = runTask('suitTheRoof', { ...ground, piles: count });
        const suited = await task.result;
        const before = this.#suited.of === ground ? this.#suited.results : {};
        this.#suited = { of: ground, results: { ...before, [count]: suited } };
      }
    };
    if (isWorth)
      untrack(run).catch(() => {
        if (!isStopped) this.#suitFailed = true;
      });
    return () => {
      isStopped = true;
      task?.cancel();
    };
  }

  #estimatesAt(thresholdsMm: readonly number[]) {
    const tell = this.#isTold ? this.#tell : undefined;
    return tell && gradeIntervals(thresholdsMm).map(tell);
  }

  #suitedNow(): Suited | NoWay {
    if (this.spread.counts.length === 0) return 'nothing-gauged';
    if (!this.roof.ok) return this.roof.reason === 'problems' ? 'roof-problems' : 'no-roof';
    if (this.courses.length === 0) return 'no-roof';
    if (this.#suitFailed) return 'failed';
    const isNow = this.#suited.of === this.ground;
    return (isNow && this.#suited.results[this.piles]) || 'working';
  }

  /** Boundaries by hand: as moved, else as in force, else by natural breaks to start from. */
  #handThresholds(): readonly number[] | undefined {
    const moved = this.#byHand[this.piles];
    if (moved) return moved;
    const inForce = this.#job().grades?.thresholdsMm;
    if (inForce?.length === this.piles - 1) return inForce;
    return this.#natural.ok ? this.#natural.thresholdsMm : undefined;
  }

  /** Every set of grades the job has had, oldest first. */
  readonly history = $derived.by(() => partOf(this.#job().view, 'job').grades);
}

function isSame(one: readonly number[], other: readonly number[]): boolean {
  return one.length === other.length && one.every((value, index) => value === other[index]);
}
