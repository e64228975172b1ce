import { type RoofLayout, type RoofOrder, roofOrder } from '$lib/engine/roof';
import { type JobSettings, deliveryOf, keptShares, pileMaterials, slatesThere } from '$lib/job';
import { type CsvStyle, csvFile, safeFileName } from '$lib/storage';
import { type JobState, type ReadyFile, download, readyFile, share } from '$lib/app';

export type { CsvStyle };

/** One line of the order, as a page and a file show it. */
export interface OrderLine {
  readonly item: string;
  readonly size: string;
  readonly takes?: number;
  readonly breakage?: number;
  readonly spares?: number;
  /** With breakage and spares; as the order where nothing of it can be there. */
  readonly needed: number;
  readonly there?: number;
  readonly order: number;
  readonly unit: string;
}

/** What the order's form sets. */
export type OrderAllowancesSet = Pick<
  JobSettings,
  'breakageShare' | 'sparesShare' | 'battenWasteShare' | 'battenLengthMm' | 'layingPacePerHour'
>;

/** What to order for a job's roof, and the file of it. */
export class RoofOrderState {
  readonly #job: () => JobState;
  ready = $state.raw<ReadyFile>();

  constructor(job: () => JobState) {
    this.#job = job;
  }

  /** The order for a roof, with the job's allowances, stock, plan, pace and price. */
  of(roof: RoofLayout): RoofOrder {
    const { settings, view } = this.#job();
    const nails = pileMaterials(view, roof).flatMap(({ nailLength, nails = 0 }) => ({
      lengthMm: nailLength.nearestSoldMm,
      nails
    }));
    const pricePerThousand = deliveryOf(view)?.pricePerThousand;
    const rates = {
      ...(settings.layingPacePerHour !== null && { piecesPerHour: settings.layingPacePerHour }),
      ...(pricePerThousand !== undefined && { pricePerThousand })
    };
    return roofOrder(
      roof.totals,
      { ...settings, ...keptShares(settings) },
      nails,
      rates,
      slatesThere(view, roof)
    );
  }

  /** Whether the thickness of slates is known, which nails go by. */
  isThicknessKnown(roof: RoofLayout): boolean {
    return pileMaterials(this.#job().view, roof).length > 0;
  }

  /** The currency of the price; empty where none is entered. */
  get currency(): string {
    return deliveryOf(this.#job().view)?.currency ?? '';
  }

  async use(allowances: OrderAllowancesSet): Promise<void> {
    await this.#job().act({ type: 'jobSettingsSet', body: allowances });
  }

  /**
   * Makes the file of the order and hands it to the downloads, or keeps it ready to be sent.
   *
   * @param hasStock whether what is there has columns
   */
  save(
    lines: readonly OrderLine[],
    headings: readonly string[],
    style: CsvStyle,
    hasStock: boolean
  ): void {
    const rows = lines.map(
      ({ item, size, takes, breakage, spares, needed, there, order, unit }) => [
        item,
        size,
        takes === undefined
          ? undefined
          : { value: takes, decimals: Number.isInteger(takes) ? 0 : 1 },
        breakage === undefined ? undefined : { value: breakage, decimals: 0 },
        spares === undefined ? undefined : { value: spares, decimals: 0 },
        ...(hasStock
          ? [
              { value: needed, decimals: 0 },
              there === undefined ? undefined : { value: there, decimals: 0 }
            ]
          : []),
        { value: order, decimals: 0 },
        unit
      ]
    );
    const name = safeFileName(`${this.#job().name} order`, 'csv');
    this.ready = readyFile(csvFile([headings, ...rows], style), name);
    if (!this.ready.canShare) download(this.ready);
  }

  async send(): Promise<void> {
    if (this.ready && !(await share(this.ready))) download(this.ready);
  }
}
