import { palletMeansChart, type PalletSummary } from './control-chart.ts';
import type { JudgedSlate } from './sample-evidence.ts';
import { meanAndSd } from './variables-judgement.ts';

/** What the unsorted sample says of one pallet. */
export interface PalletFinding {
  readonly id: string;
  readonly judged: number;
  readonly outside: number;
  /** Slates gauged, with their mean and SD, mm; both 0 where none was, SD 0 where one was. */
  readonly sampled: number;
  readonly meanMm: number;
  readonly sdMm: number;
}

/** Pallets side by side, and the chart of their means. */
export interface PalletsCompared {
  /** By id, in the order of its characters. */
  readonly pallets: readonly PalletFinding[];
  /** The chart, or why there is none. */
  readonly chart: ReturnType<typeof palletMeansChart>;
}

/** Compares the pallets of a delivery by their sampled slates; the same in any order of slates. */
export function compareJudgedPallets(judged: readonly JudgedSlate[]): PalletsCompared {
  const ids = [...new Set(judged.map(({ palletId }) => palletId))].sort();
  const pallets = ids.map((id): PalletFinding => {
    const own = judged.filter(({ palletId }) => palletId === id);
    const thicknesses = own.flatMap(({ thicknessMm }) => thicknessMm ?? []);
    const { mean, sd } = meanAndSd(thicknesses);
    return {
      id,
      judged: own.length,
      outside: own.filter(({ isOutside }) => isOutside).length,
      sampled: thicknesses.length,
      meanMm: mean,
      sdMm: sd
    };
  });
  const summaries: readonly PalletSummary[] = pallets.map(({ id, sampled, meanMm, sdMm }) => ({
    id,
    sampled,
    meanMm,
    sdMm
  }));
  return { pallets, chart: palletMeansChart(summaries) };
}
