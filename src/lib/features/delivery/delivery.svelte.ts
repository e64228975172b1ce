import type { ClaimClock, LayersAlike } from '$lib/engine/delivery';
import { type BodyOf, type JobView, partOf } from '$lib/journal';
import { journalSha256 } from '$lib/storage';
import {
  type OfferedSlate,
  countedByStanding,
  gaugedWhileSorting,
  listProgress,
  offeredSlates,
  orderInForce,
  palletsSorted,
  signedVerdict
} from '$lib/job';
import { groundMark, isGroundChanged } from './signed-ground.ts';
import type { TakerAsk } from './taker-asks.ts';
import type { NoFindings } from './delivery-judge.ts';
import { today } from '$lib/app';
import type { JobState } from '$lib/app';
import { journalStore } from '$lib/app';

type Judge = typeof import('./delivery-judge.ts');
type Engine = typeof import('$lib/engine/delivery');

/** Courses laid, whole or in part. */
function coursesBegun(view: JobView): number {
  const { laid, partLaid } = partOf(view, 'laying');
  return new Set([...Object.keys(laid), ...Object.keys(partLaid)]).size;
}

/**
 * The delivery of a job as the screens show it. The statistics are fetched when first needed:
 * before `load` is done there are no findings.
 */
export class DeliveryState {
  readonly #job: () => JobState;
  readonly #today: string;
  #judge = $state.raw<Judge>();
  #engine = $state.raw<Engine>();
  isSigning = $state(false);

  constructor(job: () => JobState, day: string = today()) {
    this.#job = job;
    this.#today = day;
  }

  readonly view = $derived.by(() => this.#job().view);
  readonly order = $derived(orderInForce(this.view));
  readonly pallets = $derived.by(() => this.#job().pallets);
  readonly delivered = $derived(this.pallets.reduce((sum, { slates }) => sum + slates, 0));
  readonly offered: readonly OfferedSlate[] = $derived(offeredSlates(this.view));
  readonly judging = $derived(this.offered.filter(({ standing }) => standing === 'judges'));
  readonly apart = $derived(this.offered.filter(({ standing }) => standing !== 'judges'));
  readonly apartByReason = $derived(countedByStanding(this.apart));
  readonly gaugedWhileSorting = $derived(gaugedWhileSorting(this.view));
  readonly progress = $derived(listProgress(this.view, this.offered));
  /** Courses laid so far, whole or in part. */
  readonly coursesLaid = $derived(coursesBegun(this.view));
  readonly palletsSorted = $derived(palletsSorted(this.view));
  readonly signed = $derived(signedVerdict(this.view));
  /** What was decided, by whom and when; undefined before. */
  readonly signature = $derived(this.signed && { ...this.signed.value, at: this.signed.at });
  readonly isLoaded = $derived(this.#judge !== undefined && this.#engine !== undefined);

  /** What the evidence comes to; undefined while the statistics are fetched. */
  readonly judgement = $derived(this.#judge?.judgeJob(this.view, this.offered));
  readonly judged = $derived(this.judgement?.ok ? this.judgement : undefined);
  /** What may be said while the list is unfinished: then nothing is judged. */
  readonly soFar = $derived(
    this.judgement?.ok === false && this.judgement.reason === 'list-unfinished'
      ? this.judgement.soFar
      : undefined
  );
  /** The plan that the list in force is judged by, with its risks. */
  readonly listPlan = $derived(
    this.progress && this.#judge?.planOfList(this.view, this.progress.draw, this.offered)
  );
  /** Why nothing at all can be said yet. */
  readonly noFindings: NoFindings | undefined = $derived(
    this.judgement?.ok === false && this.judgement.reason !== 'list-unfinished'
      ? this.judgement.reason
      : undefined
  );
  /** What the findings alone say. */
  readonly found = $derived((this.judged ?? this.soFar)?.verdict.verdict);

  /** How long a claim can be made; undefined where dates are missing. */
  readonly clock: ClaimClock | undefined = $derived.by(() => {
    const { arrivedOn, daysToClaim } = this.order ?? {};
    if (!this.#engine || !arrivedOn || daysToClaim === undefined) return undefined;
    return this.#engine.claimClock(arrivedOn, daysToClaim, this.#today);
  });

  /**
   * How alike the judged slates of one layer are; undefined where too few share a layer, and where
   * every slate was picked by itself: then it takes nothing from what the sample tells.
   */
  readonly layersAlike: LayersAlike | undefined = $derived.by(() => {
    if (!partOf(this.view, 'job').draws.some(({ value }) => value.fewLayers)) return undefined;
    const gauged = this.judging.flatMap(({ palletId, layer, thicknessMm }) =>
      thicknessMm === undefined ? [] : [{ palletId, layer, thicknessMm }]
    );
    return this.#engine?.layersAlike(gauged);
  });

  /** Whether order, pallets or readings are others than those that were signed. */
  readonly isSignedStale = $derived.by(
    () => !!this.signed && isGroundChanged(this.signed, this.view, this.judging)
  );
  /** The signature, where it holds for the figures as they are. */
  readonly signedNow = $derived(this.isSignedStale ? undefined : this.signed);

  /** What was decided of these figures, by whom and when. */
  readonly signatureNow = $derived(this.isSignedStale ? undefined : this.signature);

  /** Entries made after the verdict in force was signed. */
  readonly entriesSinceSigning = $derived.by(() => {
    const events = this.#job().summary?.events ?? 0;
    return this.signed ? Math.max(0, events - this.signed.value.events - 1) : 0;
  });

  /** Fetches the statistics. */
  async load(): Promise<void> {
    [this.#engine, this.#judge] = await Promise.all([
      import('$lib/engine/delivery'),
      import('./delivery-judge.ts')
    ]);
  }

  /** Signs a verdict with the hash of every entry so far; false when it was not saved. */
  async sign(
    verdict: BodyOf<'verdictSigned'>['verdict'],
    signedBy: string,
    note: string,
    asks: readonly TakerAsk[] = []
  ): Promise<boolean> {
    if (this.isSigning) return false;
    this.isSigning = true;
    try {
      const { sha256, events } = await journalSha256(journalStore(), this.#job().jobId);
      const body = {
        ...{ verdict, signedBy, note },
        ...(verdict === 'take' && asks.length > 0 && { asks: [...asks] }),
        ground: groundMark(this.view, this.judging),
        ...{ journalSha256: sha256, events }
      };
      return (await this.#job().act({ type: 'verdictSigned', body })) !== undefined;
    } finally {
      this.isSigning = false;
    }
  }
}
