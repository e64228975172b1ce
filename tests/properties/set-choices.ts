import type { SlateSpec, Slope } from '$lib/engine/roof';
import type { SetStock } from '$lib/engine/sizes';

/** Everything of a choice, worked out without the chooser's code. */
interface Tried {
  readonly courses: readonly number[];
  readonly objective: number;
}

/** Slated width between two straight sides at a line, mm; the roofs tried here have no openings. */
function widthAt(slope: Slope, fromEaveMm: number): number {
  const at = Math.min(Math.max(fromEaveMm, 0), slope.rafterLengthMm);
  const inset = (edge: Slope['left']) => ('insetAtTopMm' in edge ? edge.insetAtTopMm : 0);
  const left = (inset(slope.left) * at) / slope.rafterLengthMm;
  const right = (inset(slope.right) * at) / slope.rafterLengthMm;
  const verges = [slope.left, slope.right].filter(({ kind }) => kind === 'verge').length;
  return slope.eaveWidthMm - left - right + verges * slope.vergeOverhangMm;
}

/** What a list of courses takes of each set, or undefined where it does not just fill the roof. */
function usedBy(
  slopes: readonly Slope[],
  base: SlateSpec,
  stocks: readonly SetStock[],
  counts: readonly number[],
  hasUndereave: boolean
): number[] | undefined {
  const order = counts.flatMap((courses, set) => new Array<number>(courses).fill(set));
  const used = counts.map(() => 0);
  const joint = base.jointMinMm;
  const take = (slope: Slope, set: number, fromFirstTailMm: number) => {
    const { widths } = stocks[set].set;
    const width = widthAt(slope, fromFirstTailMm - slope.eaveOverhangMm);
    if (widths.kind === 'one')
      used[set] += Math.ceil((width + joint) / (widths.widthMm + joint) - 1e-9);
    else {
      const mean = widths.meanMm ?? (widths.fromMm + widths.toMm) / 2;
      used[set] += Math.ceil((width * mean) / (mean + joint) - 1e-6);
    }
  };
  let longest = 0;
  for (const slope of slopes) {
    const top = slope.rafterLengthMm - slope.ridgeGapMm + slope.eaveOverhangMm;
    let [tail, isFull] = [0, false];
    // The undereave is a row at the eave, cut from the lowest set.
    if (hasUndereave && order.length > 0) take(slope, order[0], 0);
    for (const [index, set] of order.entries()) {
      const { lengthMm } = stocks[set].set;
      const gauge = (lengthMm - base.headlapMm) / 2;
      take(slope, set, tail);
      tail += gauge;
      if (tail - gauge + lengthMm >= top - 1e-6) {
        take(slope, set, tail);
        isFull = true;
        longest = Math.max(longest, index + 1);
        break;
      }
    }
    if (!isFull) return undefined;
  }
  return longest === order.length ? used : undefined;
}

/** The best of all lists of courses, by trying every one. */
export function bestByTrying(
  slopes: readonly Slope[],
  base: SlateSpec,
  stocks: readonly SetStock[],
  mostCourses: number,
  hasUndereave = false
): Tried | undefined {
  let best: Tried | undefined;
  const consider = (counts: readonly number[]) => {
    const laid = stocks.filter((_stock, set) => counts[set] > 0).map(({ set }) => set.lengthMm);
    const isSteep = laid.some(
      (length, index) =>
        index > 0 && (laid[index - 1] - base.headlapMm) / 2 - (laid[index - 1] - length) < 50
    );
    const used = isSteep ? undefined : usedBy(slopes, base, stocks, counts, hasUndereave);
    if (!used || used.some((value, set) => value > stocks[set].stock)) return;
    if (
      stocks.some(
        ({ least = 0, most = Infinity }, set) => counts[set] < least || counts[set] > most
      )
    )
      return;
    const objective = stocks.reduce((sum, { set, stock }, index) => {
      const width = set.widths.kind === 'one' ? set.widths.widthMm : 1;
      return sum + (set.lengthMm * width * used[index] ** 2) / Math.max(stock, 1) / 1e6;
    }, 0);
    if (!best || objective < best.objective - 1e-12) best = { courses: [...counts], objective };
  };
  const fill = (counts: number[], left: number) => {
    if (counts.length === stocks.length) return consider(counts);
    for (let courses = 0; courses <= left; courses++) fill([...counts, courses], left - courses);
  };
  fill([], mostCourses);
  return best;
}

/** Whether a set ends the roof, and whether it is the lowest. */
const ENDS = [
  [0, 0],
  [1, 0]
] as const;
const ENDS_AND_LOWEST = [...ENDS, [0, 1], [1, 1]] as const;

/**
 * The choice for one slope with square sides as a mixed-integer programme in LP format, for a
 * general solver: `z` is 1 where a set takes so many courses, `y` where a set ends the roof. The lowest
 * set has variables of its own where it gives the undereave as well.
 */
export function setsMilp(
  slope: Slope,
  base: SlateSpec,
  stocks: readonly SetStock[],
  hasUndereave = false
): string {
  const width = widthAt(slope, 0);
  const top = slope.rafterLengthMm - slope.ridgeGapMm + slope.eaveOverhangMm;
  const joint = base.jointMinMm;
  const [objective, rows, binaries, fill]: [string[], string[], string[], string[]] = [
    [],
    [],
    [],
    []
  ];
  const used = stocks.map((): string[] => []);
  for (const [i, { set, stock }] of stocks.entries()) {
    const gauge = (set.lengthMm - base.headlapMm) / 2;
    const slateMm = set.widths.kind === 'one' ? set.widths.widthMm : 1;
    if (set.widths.kind !== 'one') throw new Error('one width a set, in this model');
    const each = Math.ceil((width + joint) / (slateMm + joint) - 1e-9);
    const most = Math.ceil(top / gauge) + 1;
    binaries.push(`y_${i}`);
    fill.push(`+ ${set.lengthMm - gauge} y_${i}`);
    for (let n = 1; n <= most; n++)
      for (const [ends, lowest] of hasUndereave ? ENDS_AND_LOWEST : ENDS) {
        // The set that ends the roof takes one course more, the short one at the top.
        const slates = (n + ends + lowest) * each;
        const name = `z_${i}_${n}_${ends}${lowest}`;
        if (slates > stock) continue;
        const below = used.slice(0, i).flat();
        if (lowest) for (const other of below) rows.push(`${name} ${other} <= 1`);
        else if (hasUndereave)
          rows.push(`${name}${below.map((other) => ` ${other.replace('+', '-')}`).join('')} <= 0`);
        binaries.push(name);
        objective.push(`+ ${(set.lengthMm * slateMm * slates ** 2) / stock / 1e6} ${name}`);
        fill.push(`+ ${n * gauge} ${name}`);
        used[i].push(`+ ${name}`);
        rows.push(ends ? `${name} - y_${i} <= 0` : `${name} + y_${i} <= 1`);
      }
    if (used[i].length > 0) rows.push(`${used[i].join(' ')} <= 1`);
    rows.push(`y_${i} ${used[i].join(' ').replaceAll('+', '-')} <= 0`);
  }
  rows.push(`${stocks.map((_stock, i) => `+ y_${i}`).join(' ')} = 1`);
  for (const [i] of stocks.entries())
    for (let later = i + 1; later < stocks.length; later++)
      if (used[later].length > 0) rows.push(`${used[later].join(' ')} + y_${i} <= 1`);
  rows.push(`${fill.join(' ')} >= ${top - 1e-6}`);
  return `Minimize\n obj: ${objective.join(' ')}\nSubject To\n${rows
    .map((row, index) => ` c${index}: ${row}`)
    .join('\n')}\nBinary\n ${binaries.join(' ')}\nEnd\n`;
}
