import { describe, expect, it } from 'vitest';
import { createRandom } from '$lib/engine';
import { gradeIntervals } from '$lib/engine/thickness';
import { KEPT_WITHIN_MM, gradesOf, pileMeanings, planRequestOf, stockOf } from '$lib/job';
import { pilesLeft } from '$lib/job/piles-left.ts';
import type { JobView } from '$lib/journal';
import { PileYard } from '../support/pile-yard.ts';
import { report, rounds } from '../support/rounds.ts';

/**
 * A pile is what lies on it: over any sequence of grades, sorting, piles put together or sorted again, laying and undo,
 * what the app says of the pile with a number (how many slates, how thick, what for) is true of the
 * slates that a person put there. What is true is kept beside the app, slate by slate.
 */

const sorted = (list: readonly number[]): number[] => [...list].sort((one, other) => one - other);

/** What the app says of the piles, held against the slates that lie there. */
function check(yard: PileYard): void {
  const { view } = yard;
  const { piles } = stockOf(view);
  const said = new Map(piles.map((pile) => [pile.number, pile]));
  expect(said.size, 'a number twice').toBe(piles.length);
  const meanings = new Map(pileMeanings(view).map((pile) => [pile.number, pile.range]));
  for (const number of yard.numbers) {
    const lies = sorted(yard.on(number).map(({ hundredths }) => hundredths));
    const pile = said.get(number);
    if (pile?.slates !== lies.length)
      expect(pile?.slates, `slates of pile ${number}`).toBe(lies.length);
    const thick = [...(pile?.bins.hundredths ?? [])].flatMap((at, bin) =>
      new Array<number>(Math.round(pile?.bins.counts[bin] ?? 0)).fill(at)
    );
    if (String(thick) !== String(lies)) expect(thick, `thickness of pile ${number}`).toEqual(lies);
    const range = meanings.get(number);
    if (!range) continue;
    expect(lies[0], `thinnest of pile ${number}`).toBeGreaterThanOrEqual(range.fromMm * 100 - 1e-6);
    expect(lies.at(-1), `thickest of pile ${number}`).toBeLessThan(range.toMm * 100 + 1e-6);
  }
  for (const { number, slates } of piles)
    if (!yard.numbers.includes(number)) expect(slates, `pile ${number}`).toBe(0);
  checkOrder(view);
}

/** Piles beside the grades stand between those of the grades in the order of their mean. */
function checkOrder(view: JobView): void {
  const means = stockOf(view).piles.flatMap(({ grade, bins }) => {
    const total = bins.counts.reduce((sum, n) => sum + n, 0);
    if (total === 0) return [];
    return [
      { grade, mm: bins.counts.reduce((sum, n, at) => sum + n * bins.hundredths[at], 0) / total }
    ];
  });
  for (const [at, { grade, mm }] of means.entries())
    if (grade === undefined && at > 0) {
      const above = means.slice(0, at).filter((pile) => pile.grade === undefined);
      for (const pile of above) expect(pile.mm).toBeGreaterThanOrEqual(mm - 1e-9);
    }
}

/**
 * New grades name a pile only as near as they may to what its number was opened for, as far as that is
 * known then: the slates that opened it may be taken back later.
 */
function checkNames(view: JobView): void {
  const grades = gradesOf(view);
  if (!grades) return;
  const bands = gradeIntervals(grades.thresholdsMm);
  for (const { number, opened, knownFirst } of pileMeanings(view)) {
    const [first, band] = [opened ?? knownFirst, bands[grades.numbers.indexOf(number)]];
    if (!first || !band) continue;
    for (const [was, is] of [
      [first.fromMm, band.fromMm],
      [first.toMm, band.toMm]
    ])
      if (was !== is) expect(Math.abs(was - is)).toBeLessThanOrEqual(KEPT_WITHIN_MM + 1e-9);
  }
}

/** What is left of each pile, as Lay tells it. */
function checkLeft(yard: PileYard): boolean {
  const ground = planRequestOf(yard.view);
  if (!ground.ok) return false;
  for (const [at, { left, laid }] of pilesLeft(ground).entries()) {
    const number = ground.numbers[at];
    const parts = ground.laid
      .flatMap((course) => course.parts)
      .filter(({ pile }) => pile === at + 1);
    const pieces = parts.reduce((sum, part) => sum + part.slates + part.slateAndAHalves, 0);
    expect(pieces, `laid of pile ${number}`).toBe(yard.laid.get(number) ?? 0);
    // Slate-and-a-halves stand beside their pile, so a course takes a few slates less than it has pieces.
    expect(left, `left of pile ${number}`).toBe(yard.on(number).length - laid);
  }
  return true;
}

const ACTS = [
  'grades',
  'sort',
  'sort',
  'sort',
  'sort',
  'sort',
  'lay',
  'merge',
  'again',
  'undo',
  'undoOld'
];

/** A sequence takes up to half a second on a slow machine; twice that is allowed for each. */
const MOST_MS_A_SEQUENCE = 1000;

describe('J62, J63: a pile keeps its name', () => {
  const sequences = rounds(60, 10_000);
  it(
    `over ${sequences} sequences of grades, sorting, laying, piles put together or sorted again, and undo`,
    () => {
      const seen = {
        opened: 0,
        kept: 0,
        beside: 0,
        merged: 0,
        again: 0,
        laid: 0,
        undone: 0,
        left: 0
      };
      for (let seed = 1; seed <= sequences; seed++) {
        const random = createRandom(seed);
        const yard = new PileYard(random);
        const acts = 10 + Math.floor(random() * 40);
        try {
          for (let act = 0; act < acts; act++) {
            const what = act === 0 ? 'grades' : ACTS[Math.floor(random() * ACTS.length)];
            yard.act(what);
            check(yard);
            if (what === 'grades') checkNames(yard.view);
          }
          seen.left += Number(checkLeft(yard));
        } catch (error) {
          throw new Error(`sequence ${seed}: ${error instanceof Error ? error.message : error}`, {
            cause: error
          });
        }
        const counts = yard.seen;
        for (const key of Object.keys(counts) as (keyof typeof counts)[]) seen[key] += counts[key];
      }
      report('pile identity', { sequences, ...seen });
      // Not vacuous: every kind of act was there.
      for (const [what, times] of Object.entries(seen))
        expect(times, what).toBeGreaterThan(sequences / 10);
    },
    sequences * MOST_MS_A_SEQUENCE
  );
});
