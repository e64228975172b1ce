import {
  type GradeFigures,
  type NothingToLay,
  type SuitedThresholds,
  type TooFewThicknesses,
  equalShares,
  naturalBreaks
} from '$lib/engine/grading';
import type { ThicknessBins } from '$lib/engine/thickness';
import type { BoundaryMethod } from '$lib/journal';

/** What the search for boundaries that suit the roof came to. */
export type Suited = SuitedThresholds | TooFewThicknesses | NothingToLay;

/** Why a way has no boundaries now. */
export type NoWay =
  'nothing-gauged' | 'too-few-thicknesses' | 'no-roof' | 'roof-problems' | 'working' | 'failed';

/** One way to set the boundaries, with what it comes to. */
export type GradeWay =
  | {
      readonly ok: true;
      readonly method: BoundaryMethod;
      /** Falling. */
      readonly thresholdsMm: readonly number[];
      readonly figures: GradeFigures;
      /** Slates of the same spread that this way finds missing for the roof; 0 for none. */
      readonly missingSlates: number;
    }
  | {
      readonly ok: false;
      readonly method: BoundaryMethod;
      readonly reason: NoWay;
      /** Different thicknesses there are, where they are too few. */
      readonly distinct: number;
    };

type FiguresAt = (thresholdsMm: readonly number[]) => GradeFigures;

/** Boundaries whose figures are kept; ours, about twice as many as the screen tells of at once. */
const REMEMBERED = 12;

/** The same figures, worked out once though several parts of the screen ask for them. */
export function rememberFigures(figuresAt: FiguresAt): FiguresAt {
  const known = new Map<string, GradeFigures>();
  return (thresholdsMm) => {
    const key = thresholdsMm.join(' ');
    const figures = known.get(key) ?? figuresAt(thresholdsMm);
    if (known.size >= REMEMBERED) known.clear();
    known.set(key, figures);
    return figures;
  };
}

/** Boundaries by natural breaks or equal shares. */
export function plainWay(
  method: 'naturalBreaks' | 'equalShares',
  bins: ThicknessBins,
  piles: number,
  figuresAt: FiguresAt
): GradeWay {
  if (bins.counts.length === 0) return noWay(method, 'nothing-gauged');
  const cut = method === 'naturalBreaks' ? naturalBreaks(bins, piles) : equalShares(bins, piles);
  if (!cut.ok) return noWay(method, 'too-few-thicknesses', cut.distinct);
  return wayAt(method, cut.thresholdsMm, figuresAt);
}

/** Boundaries that suit the roof, from what the search came to. */
export function suitedWay(suited: Suited | NoWay, figuresAt: FiguresAt): GradeWay {
  if (typeof suited === 'string') return noWay('suitTheRoof', suited);
  if (suited.ok) return wayAt('suitTheRoof', suited.thresholdsMm, figuresAt, suited.missingSlates);
  return suited.reason === 'no-courses'
    ? noWay('suitTheRoof', 'no-roof')
    : noWay('suitTheRoof', 'too-few-thicknesses', suited.distinct);
}

/** Boundaries as given, with their figures. */
export function wayAt(
  method: BoundaryMethod,
  thresholdsMm: readonly number[],
  figuresAt: FiguresAt,
  missingSlates = 0
): GradeWay {
  return { ok: true, method, thresholdsMm, figures: figuresAt(thresholdsMm), missingSlates };
}

export function noWay(method: BoundaryMethod, reason: NoWay, distinct = 0): GradeWay {
  return { ok: false, method, reason, distinct };
}
