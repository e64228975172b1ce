import {
  type GaugedSlate,
  type PointsState,
  type RepeatState,
  addPoint,
  dropPoint,
  repeatReading,
  startPoints,
  startRepeatCheck
} from '$lib/gauge';
import { fromHundredths, toHundredths } from '$lib/engine';
import type { KeptPoints } from './kept-points.ts';
import type { Prompt } from './told.ts';

/** What one reading made of the slate in hand: the slate is complete, or something is still asked. */
export type SlateStep =
  | { readonly kind: 'slate'; readonly slate: GaugedSlate }
  | { readonly kind: 'asked'; readonly prompt: Prompt };

/** The slate being gauged: its points so far, each held still if that is wished. */
export class SlateInHand {
  #points: PointsState = startPoints(1);
  #repeat: RepeatState = startRepeatCheck();

  /**
   * Takes one accepted reading.
   *
   * @param wanted points per slate, 1 to 4; a change begins the slate anew
   * @param holdsStill whether a point counts only once two readings of it agree
   */
  take(readMm: number, wanted: number, holdsStill: boolean): SlateStep {
    let valueMm = readMm;
    if (holdsStill) {
      const { state, effect } = repeatReading(this.#repeat, readMm);
      this.#repeat = state;
      if (effect.kind !== 'agreed') return { kind: 'asked', prompt: effect };
      valueMm = effect.valueMm;
    }
    if (this.#points.wanted !== wanted) this.#points = startPoints(wanted);
    const { state, slate } = addPoint(this.#points, valueMm);
    this.#points = state;
    if (slate) return { kind: 'slate', slate };
    return { kind: 'asked', prompt: { kind: 'point', done: state.pointsMm.length, wanted } };
  }

  /** What is measured of the slate so far; undefined before its first reading. */
  get begun(): KeptPoints | undefined {
    const { pointsMm } = this.#points;
    const { waiting } = this.#repeat;
    if (pointsMm.length === 0 && waiting === null) return undefined;
    return { pointsMm, waitingMm: waiting === null ? null : fromHundredths(waiting) };
  }

  /**
   * Goes on with a slate that was begun before.
   *
   * @param wanted points per slate now; where it changed so that they are no beginning, nothing is
   * taken up
   */
  resume({ pointsMm, waitingMm }: KeptPoints, wanted: number): Prompt | undefined {
    if (pointsMm.length >= wanted) return undefined;
    this.#points = { wanted, pointsMm };
    const waiting = waitingMm === null ? null : toHundredths(waitingMm);
    this.#repeat = { ...startRepeatCheck(), waiting };
    if (waitingMm !== null) return { kind: 'again', firstMm: waitingMm };
    return pointsMm.length > 0 ? { kind: 'point', done: pointsMm.length, wanted } : undefined;
  }

  /** Takes the last reading back, which asked for more. */
  takeBack(): void {
    if (this.#repeat.waiting !== null) this.#repeat = startRepeatCheck();
    else this.#points = dropPoint(this.#points);
  }

  /** Ends the slate with the first of its points alone; undefined where there is none. */
  endWithOne(): GaugedSlate | undefined {
    const [mm] = this.#points.pointsMm;
    this.restart();
    return mm === undefined ? undefined : (addPoint(startPoints(1), mm).slate ?? undefined);
  }

  /** Begins anew: the points so far are dropped. */
  restart(): void {
    this.#points = startPoints(this.#points.wanted);
    this.#repeat = startRepeatCheck();
  }
}
