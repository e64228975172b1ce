import { ASSUMED_TAPER_SD_MM, type KickSoftness, kickSoftness } from '$lib/engine/grading';
import { type JobView, palletIds, partOf } from '$lib/journal';
import { UNSTUDIED_GAUGE_SD_MM } from './slate-judgement.ts';
import { settingsOf, specOf } from './queries.ts';

/** Slates gauged at two points or more from which the taper of a job is taken from them. */
export const ENOUGH_TAPERS = 20;

/** Leverage of a slate of unknown size: 500 mm long with a headlap of 70 mm. */
const USUAL_LEVERAGE = (500 + 70) / (2 * 500);

/** The scatter of steps where neither slate nor taper nor gauge is known. */
export const ASSUMED_SOFTNESS: KickSoftness = kickSoftness(
  ASSUMED_TAPER_SD_MM,
  UNSTUDIED_GAUGE_SD_MM,
  USUAL_LEVERAGE
);

/** A job's taper from left to right: its SD, and from how many slates; assumed from 0. */
export interface TaperOfJob {
  readonly sdMm: number;
  readonly slates: number;
}

/**
 * Taper of the job's slates, from those gauged at two points or more: the root of the mean squared
 * difference of thickest and thinnest point. With more than two points that is a little too much. Below
 * {@link ENOUGH_TAPERS} slates the assumed value.
 */
export function taperOf(view: JobView): TaperOfJob {
  let slates = 0;
  let squares = 0;
  for (const palletId of palletIds(view))
    for (const [hundredths, count] of Object.entries(partOf(view, `pallet:${palletId}`).taper)) {
      slates += count;
      squares += count * (Number(hundredths) / 100) ** 2;
    }
  return slates < ENOUGH_TAPERS
    ? { sdMm: ASSUMED_TAPER_SD_MM, slates: 0 }
    : { sdMm: Math.sqrt(squares / slates), slates };
}

/**
 * How far the steps of a job's joints scatter about the difference of two readings: by the taper of its
 * slates, its gauge, and the slates below.
 */
export function kickSoftnessOf(view: JobView): KickSoftness {
  const spec = specOf(view);
  const leverage =
    spec && spec.lengthMm > spec.headlapMm
      ? (spec.lengthMm + spec.headlapMm) / (2 * spec.lengthMm)
      : USUAL_LEVERAGE;
  const gaugeSdMm = settingsOf(view).gaugeSdMm ?? UNSTUDIED_GAUGE_SD_MM;
  return kickSoftness(taperOf(view).sdMm, gaugeSdMm, leverage);
}
