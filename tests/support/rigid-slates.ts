import { type Random, randomNormal, shuffled } from '$lib/engine';

/** 500 mm slates with a headlap of 70 mm: (215 + 70) ÷ 500. */
export const LEVERAGE = 0.57;
export const COURSES = 40;
export const ACROSS = 60;

/** A slate of the simulated roof. */
export interface RigidSlate {
  readonly thicknessMm: number;
  /** Thickness at the right edge less that at the left, at the line the next course bears on. */
  readonly taperMm: number;
}

/**
 * Kickers in 100 joints of rigid slates laid in double lap, half bond, course by course; shares no code
 * with the rule. A slate's tail lies on the two below it as a rigid line must: on the higher of the two
 * edges that meet under its middle, or across their middles where those stand higher; its head lies on
 * the batten. Where the next course bears, its face stands its own thickness and a share (the leverage)
 * of what lies under its tail above the batten's plane, half its taper more or less at either edge. A
 * joint kicks where the two edges that meet there differ by more than the allowance: the slate above
 * cannot lie on both.
 *
 * @param rows courses of slates, eave first; each as long as the others
 */
export function kicksOfRows(rows: readonly (readonly RigidSlate[])[], allowanceMm: number): number {
  let below: { left: number; middle: number; right: number }[] | undefined;
  let kicks = 0;
  let joints = 0;
  for (const [course, row] of rows.entries()) {
    const faces = row.map(({ thicknessMm, taperMm }, place) => {
      // every other course is shifted by half a slate
      const left = below?.[course % 2 ? place : place - 1];
      const right = below?.[course % 2 ? place + 1 : place];
      const under =
        left && right ? Math.max(left.right, right.left, (left.middle + right.middle) / 2) : 0;
      const middle = thicknessMm + LEVERAGE * under;
      return { left: middle - taperMm / 2, middle, right: middle + taperMm / 2 };
    });
    // the first courses have no two courses below them
    if (course >= 4)
      for (let place = 3; place < row.length - 3; place++) {
        joints++;
        if (Math.abs(faces[place].left - faces[place - 1].right) > allowanceMm) kicks++;
      }
    below = faces;
  }
  return (100 * kicks) / joints;
}

/** A deck of slates shuffled and cut into courses. */
export function rowsOf(slates: readonly RigidSlate[], random: Random): RigidSlate[][] {
  const deck = shuffled(slates, random);
  return Array.from({ length: Math.floor(deck.length / ACROSS) }, (_, course) =>
    deck.slice(course * ACROSS, (course + 1) * ACROSS)
  );
}

/** A stock as it is gauged: to 0.01 mm, without a gauge error, 6.2 mm thick on average. */
export function rigidStock(
  count: number,
  sdMm: number,
  taperSdMm: number,
  random: Random
): RigidSlate[] {
  return Array.from({ length: count }, () => ({
    thicknessMm: Math.round(100 * Math.max(3, 6.2 + sdMm * randomNormal(random))) / 100,
    taperMm: taperSdMm * randomNormal(random)
  }));
}
