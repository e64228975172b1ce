import type {
  BetterDelivery,
  ComparedDelivery,
  DeliverySummary,
  PalletsCompared,
  compareDeliveries
} from '$lib/engine/delivery';
import { jobName, tallyPallets } from '$lib/job';
import { labelsOf, offeredSlates, orderInForce } from '$lib/job';
import { journalStore } from '$lib/app';

/** One judged delivery of this device, with what its pallets say. */
export interface DeliveryOfJob {
  readonly jobId: string;
  readonly name: string;
  readonly pallets: PalletsCompared;
  readonly labels: ReadonlyMap<string, string>;
}

/** The deliveries of all jobs on this device, each opened and judged in turn. */
export class DeliveriesState {
  opened = $state(0);
  jobs = $state(0);
  isLoaded = $state(false);
  failed = $state.raw<readonly string[]>([]);
  each = $state.raw<readonly DeliveryOfJob[]>([]);
  compared = $state.raw<ReturnType<typeof compareDeliveries>>();
  better = $state.raw<BetterDelivery<ComparedDelivery>>();
  #isClosed = false;

  /** Opens every job on this device; `close` ends it early. */
  async load(): Promise<void> {
    const store = journalStore();
    const [jobs, { judgeJob, LEVEL }, engine] = await Promise.all([
      store.jobs(),
      import('./delivery-judge.ts'),
      import('$lib/engine/delivery')
    ]);
    this.jobs = jobs.length;
    const summaries: DeliverySummary[] = [];
    for (const { jobId, name } of jobs) {
      if (this.#isClosed) return;
      try {
        const view = (await store.open(jobId))?.view;
        const offered = view && offeredSlates(view);
        const judgement = view && offered && judgeJob(view, offered);
        if (view && offered && judgement?.ok) {
          const thicknesses = offered.flatMap(({ standing, thicknessMm }) =>
            standing === 'judges' && thicknessMm !== undefined ? [thicknessMm] : []
          );
          const { findings } = judgement;
          const tallies = tallyPallets(view);
          if (thicknesses.length > 0) {
            const { meanMm, sdMm } = momentsOf(thicknesses);
            const sortedKickers = findings.roof.evenness?.sortedKickersPer100;
            summaries.push({
              id: jobId,
              supplier: orderInForce(view)?.supplier ?? '',
              arrivalDate: orderInForce(view)?.arrivedOn ?? '',
              sampled: findings.outsideOrder.judged,
              meanMm,
              sdMm,
              outside: findings.outsideOrder.outside,
              sorted: tallies.reduce((sum, { sorted }) => sum + sorted, 0),
              setAside: tallies.reduce((sum, { setAside }) => sum + setAside, 0),
              ...(sortedKickers !== undefined && { kickersPer100Joints: sortedKickers })
            });
            this.each = [
              ...this.each,
              {
                jobId,
                name: jobName(view),
                pallets: findings.pallets,
                labels: labelsOf(view)
              }
            ];
          }
        }
      } catch {
        this.failed = [...this.failed, name];
      }
      this.opened++;
    }
    this.compared = engine.compareDeliveries(summaries, LEVEL);
    this.better = engine.betterDelivery(this.compared.deliveries);
    this.isLoaded = true;
  }

  close(): void {
    this.#isClosed = true;
  }
}

/** Mean and SD (n − 1) of thicknesses; the SD of one is 0. */
function momentsOf(thicknesses: readonly number[]): { meanMm: number; sdMm: number } {
  const n = thicknesses.length;
  const meanMm = thicknesses.reduce((sum, mm) => sum + mm, 0) / n;
  const squares = thicknesses.reduce((sum, mm) => sum + (mm - meanMm) ** 2, 0);
  return { meanMm, sdMm: n > 1 ? Math.sqrt(squares / (n - 1)) : 0 };
}
