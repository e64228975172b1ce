import type { OneLimitPlan, PlacesFrom } from '$lib/engine/delivery';
import { type RunningTask, runTask } from '$lib/worker';
import { readAmount, readCount } from './delivery-fields.ts';
import type { PlanChoice, SamplePlanResult } from './delivery-plan.ts';
import type { JobState } from '$lib/app';
import { randomHex } from '$lib/app';

type Plans = typeof import('./delivery-plan.ts');

/** The typed fields of a plan. */
export const PLAN_FIELDS = [
  'goodShare',
  'goodAcceptance',
  'poorShare',
  'poorAcceptance',
  'drawAtLeast',
  'fullChecks'
] as const;
export type PlanField = (typeof PLAN_FIELDS)[number];

/** Choosing a sampling plan and drawing its list. Nothing is in the journal before `draw`. */
export class PlanDraft {
  readonly #job: () => JobState;
  #plans = $state.raw<Plans>();
  kind = $state<PlanChoice['kind']>('attributes');
  level = $state<PlanChoice['level']>('II');
  aqlPercent = $state(4);
  severity = $state<PlanChoice['severity']>('normal');
  from = $state<PlacesFrom>('anywhere');
  /** Per cent as typed. Starting values are ours. */
  fields = $state<Record<PlanField, string>>({
    goodShare: '4',
    goodAcceptance: '95',
    poorShare: '13',
    poorAcceptance: '10',
    drawAtLeast: '',
    fullChecks: ''
  });
  isDrawing = $state(false);
  /** The plan by the gauge alone that keeps the same two risks; undefined while worked out. */
  byGauge = $state.raw<OneLimitPlan>();

  constructor(job: () => JobState) {
    this.#job = job;
  }

  readonly lot = $derived.by(() =>
    this.#job().pallets.reduce((sum, { slates }) => sum + slates, 0)
  );
  readonly unread = $derived(
    PLAN_FIELDS.filter((field) => {
      const text = this.fields[field];
      const isCount = field === 'drawAtLeast' || field === 'fullChecks';
      const read = isCount ? readCount(text) : readAmount(text);
      const isNeeded = this.kind === 'own' && !isCount;
      const isUsed = isNeeded || isCount;
      return isUsed && (!read.ok || (isNeeded && read.value === undefined));
    })
  );
  readonly choice: PlanChoice | undefined = $derived.by(() => {
    if (this.unread.length > 0) return undefined;
    const number = (field: PlanField): number => {
      const isCount = field === 'drawAtLeast' || field === 'fullChecks';
      const read = (isCount ? readCount : readAmount)(this.fields[field]);
      return read.ok ? (read.value ?? 0) : 0;
    };
    const drawAtLeast = number('drawAtLeast');
    const fullChecks = number('fullChecks');
    return {
      kind: this.kind,
      level: this.level,
      aqlPercent: this.aqlPercent,
      severity: this.severity,
      from: this.from,
      good: { share: number('goodShare') / 100, acceptance: number('goodAcceptance') / 100 },
      poor: { share: number('poorShare') / 100, acceptance: number('poorAcceptance') / 100 },
      ...(drawAtLeast > 0 && { drawAtLeast }),
      ...(fullChecks > 0 && { fullChecks })
    };
  });
  readonly aqls: readonly number[] = $derived.by(() => {
    if (!this.#plans) return [this.aqlPercent];
    return this.kind === 'variables' ? this.#plans.VARIABLES_AQLS : this.#plans.ATTRIBUTES_AQLS;
  });
  readonly plan: SamplePlanResult | undefined = $derived.by(() =>
    this.#plans && this.choice && this.lot > 0
      ? this.#plans.workOutPlan(this.choice, this.lot)
      : undefined
  );
  /** Slates that get the full check where nothing is typed. */
  readonly usualFullChecks = $derived.by(() =>
    this.#plans && this.plan?.ok ? this.#plans.usualFullChecks(this.plan.sampleSize) : undefined
  );
  readonly packing = $derived.by(() => this.#plans?.packedPallets(this.#job().pallets));
  readonly canDraw = $derived.by(
    () => this.plan?.ok === true && this.packing?.wrong.length === 0 && !this.isDrawing
  );

  async load(): Promise<void> {
    this.#plans = await import('./delivery-plan.ts');
  }

  setKind(kind: PlanChoice['kind']): void {
    this.kind = kind;
    if (!this.aqls.includes(this.aqlPercent)) this.aqlPercent = 4;
  }

  /** Works out in the worker what the gauge alone would take; the function returned stops it. */
  compareWithGauge(): () => void {
    const { choice } = this;
    this.byGauge = undefined;
    if (!choice || choice.kind !== 'own' || !this.plan?.ok) return () => undefined;
    const task: RunningTask<{ ok: boolean; plan?: OneLimitPlan }> = runTask('findVariablesPlan', {
      good: choice.good,
      poor: choice.poor
    });
    void task.result.then((found) => (this.byGauge = found.plan)).catch(() => undefined); // stopped
    return () => task.cancel();
  }

  /** Draws the list by chance and keeps it; false when it was not saved. */
  async draw(): Promise<boolean> {
    if (!this.canDraw || !this.choice || !this.plan?.ok || !this.#plans) return false;
    this.isDrawing = true;
    try {
      const seed = parseInt(randomHex().slice(0, 8), 16);
      const act = this.#plans.drawAct(this.choice, this.plan, this.#job().pallets, seed);
      return act !== undefined && (await this.#job().act(act)) !== undefined;
    } finally {
      this.isDrawing = false;
    }
  }
}
