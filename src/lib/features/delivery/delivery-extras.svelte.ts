import { type BodyOf, type Setting, partOf } from '$lib/journal';
import { orderInForce } from '$lib/job';
import { type StackDoubt, doubtOf } from './stack-doubt.ts';
import { readBetween, readCount } from './delivery-fields.ts';
import type { JobState } from '$lib/app';

const MOST_IN_STACK = 1000;
const THICKEST_STACK_MM = 20_000;

/** Stacks and notes beside the sampled slates. */
export class DeliveryExtras {
  readonly #job: () => JobState;
  stackSlates = $state('100');
  stackTotal = $state('');
  stackPallet = $state('');
  /** What of the stack could not be taken when it was to be kept. */
  wrong = $state.raw<readonly ('slates' | 'total')[]>([]);
  /** Slates of the stack as typed; undefined where that is no count. */
  readonly slates = $derived.by(() => {
    const read = readCount(this.stackSlates, MOST_IN_STACK);
    return read.ok && read.value ? read.value : undefined;
  });
  #doubt = $state.raw<{ readonly typed: string; readonly doubt: StackDoubt }>();
  /** Why the stack as typed is not kept yet: it may be misread. */
  readonly doubt = $derived.by(() =>
    this.#doubt?.typed === this.#typed() ? this.#doubt.doubt : undefined
  );
  note = $state('');
  isNoteMissing = $state(false);

  constructor(job: () => JobState) {
    this.#job = job;
  }

  readonly stacks: readonly Setting<BodyOf<'stackMeasured'>>[] = $derived.by(
    () => partOf(this.#job().view, 'job').stacks
  );
  readonly notes: readonly Setting<BodyOf<'defectNoted'>>[] = $derived.by(
    () => partOf(this.#job().view, 'job').defects
  );

  /**
   * Keeps a measured stack. One whose height is odd for its slates is asked about first.
   *
   * @param isSure whether somebody said that the height is as typed
   */
  async addStack(isSure = false): Promise<void> {
    const { slates } = this;
    const read = readBetween(this.stackTotal, 1, THICKEST_STACK_MM, 'size-range');
    const totalMm = read.ok ? read.value : undefined;
    this.wrong = [
      ...(slates === undefined ? (['slates'] as const) : []),
      ...(totalMm === undefined ? (['total'] as const) : [])
    ];
    this.#doubt = undefined;
    if (slates === undefined || totalMm === undefined) return;
    const doubt = isSure ? undefined : doubtOf(slates, totalMm, orderInForce(this.#job().view));
    if (doubt) {
      this.#doubt = { typed: this.#typed(), doubt };
      return;
    }
    const body = { palletId: this.stackPallet || null, slates, totalMm };
    if (await this.#job().act({ type: 'stackMeasured', body })) this.stackTotal = '';
  }

  /** Keeps the stack with the height that is likely. */
  async addLikely(): Promise<void> {
    const likelyMm = this.doubt?.likelyMm;
    if (likelyMm === undefined) return;
    this.stackTotal = String(likelyMm);
    await this.addStack();
  }

  #typed(): string {
    return `${this.stackSlates}|${this.stackTotal}`;
  }

  /** Keeps a note for the supplier. */
  async addNote(): Promise<void> {
    const text = this.note.trim();
    this.isNoteMissing = text === '';
    if (this.isNoteMissing) return;
    const palletId = this.stackPallet || null;
    if (await this.#job().act({ type: 'defectNoted', body: { palletId, text } })) this.note = '';
  }

  async takeBack(eventId: string): Promise<void> {
    await this.#job().undo(eventId);
  }
}
