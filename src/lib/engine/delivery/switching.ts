import type { Severity } from './attributes-plan.ts';
import type { Basis } from './basis.ts';
import { requireShare } from './requirements.ts';

/** Where a supplier stands under the switching rules after the deliveries judged so far. */
export interface SwitchingState {
  readonly severity: Severity;
  /** Deliveries in a row judged at this severity, newest last; at most five are kept. */
  readonly recent: readonly boolean[];
  /** Deliveries in a row judged tightened. */
  readonly tightenedInARow: number;
  /** The tightened plan has gone on too long: stop taking deliveries until the cause is found. */
  readonly discontinued: boolean;
}

/** The state before the first delivery: normal inspection, nothing judged yet. */
export const FIRST_DELIVERY: SwitchingState = {
  severity: 'normal',
  recent: [],
  tightenedInARow: 0,
  discontinued: false
};

/** What each switching rule rests on. */
export const SWITCHING_BASIS = {
  toTightened: { standing: 'quoted', source: 'MIL-STD-105, 2 of 5 consecutive lots refused' },
  toNormal: { standing: 'quoted', source: 'MIL-STD-105, 5 consecutive lots accepted' },
  discontinue: { standing: 'from memory', source: 'MIL-STD-105E, 10 consecutive lots tightened' }
} as const satisfies Record<string, Basis>;

const WINDOW = 5;
const REFUSED_TO_TIGHTEN = 2;
const TIGHTENED_TO_STOP = 10;

/**
 * The state after one more delivery has been judged.
 *
 * Two of five consecutive deliveries refused leads to tightened inspection; five accepted in a row
 * lead back to normal; ten in a row on tightened inspection lead to a stop. The count of
 * consecutive deliveries starts anew with each change. A stop lasts until the caller begins again
 * with `FIRST_DELIVERY`. Reduced inspection is left out.
 *
 * Source: see `SWITCHING_BASIS`.
 * @example
 * [false, true, false].reduce(afterDelivery, FIRST_DELIVERY).severity // 'tightened'
 */
export function afterDelivery(state: SwitchingState, accepted: boolean): SwitchingState {
  if (state.discontinued) return state;
  const recent = [...state.recent, accepted].slice(-WINDOW);

  if (state.severity === 'normal') {
    const refused = recent.filter((each) => !each).length;
    return refused >= REFUSED_TO_TIGHTEN
      ? { ...FIRST_DELIVERY, severity: 'tightened' }
      : { ...state, recent };
  }
  if (recent.length === WINDOW && recent.every(Boolean)) return FIRST_DELIVERY;
  const tightenedInARow = state.tightenedInARow + 1;
  return {
    severity: 'tightened',
    recent,
    tightenedInARow,
    discontinued: tightenedInARow >= TIGHTENED_TO_STOP
  };
}

/**
 * Probability in the long run that a delivery is accepted when the switching rules between normal
 * and tightened are followed without end.
 *
 * @param acceptedNormal chance of acceptance under the normal plan, 0 to 1
 * @param acceptedTightened chance under the tightened plan, 0 to 1
 * @returns 0 to 1, between the two
 * @throws EngineError `not-finite`, `out-of-range`
 *
 * Definition: the two chances weighted by the mean stay in each state. No stop and no reduced
 * inspection. At 1 under normal the stay there has no end; at 0 under tightened likewise.
 * Source: Stephens and Larson (1967).
 * @example schemeAcceptance(0.95, 0.8) // 0.938856
 */
export function schemeAcceptance(acceptedNormal: number, acceptedTightened: number): number {
  requireShare(acceptedNormal, 'chance under normal');
  requireShare(acceptedTightened, 'chance under tightened');
  if (acceptedNormal === 1) return 1;
  if (acceptedTightened === 0) return 0;
  const fourth = acceptedNormal ** 4;
  const stayNormal = (2 - fourth) / ((1 - acceptedNormal) * (1 - fourth));
  const fifth = acceptedTightened ** 5;
  if (fifth === 0) return acceptedTightened;
  const stayTightened =
    acceptedTightened === 1 ? WINDOW : (1 - fifth) / ((1 - acceptedTightened) * fifth);
  return (
    (stayNormal * acceptedNormal + stayTightened * acceptedTightened) / (stayNormal + stayTightened)
  );
}

/** Where a whole history of deliveries leads, oldest first; `true` is accepted. */
export function afterDeliveries(history: readonly boolean[]): SwitchingState {
  return history.reduce(afterDelivery, FIRST_DELIVERY);
}
