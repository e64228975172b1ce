import { expect, it } from 'vitest';
import type { JobView, NewEvent } from '$lib/journal';
import { isSameList, pilesRestOn, planRequestOf, stockOf, takeWorkedOut } from '$lib/job';
import { largeJob } from '../../../../tests/faults/large-job.ts';
import { TestJournal } from '../../../../tests/support/test-journal.ts';
import { createPilesAsSorted } from './piles-as-sorted.ts';
import { workOutPiles } from './work-out-piles.ts';

/** A job of six pallets and eight piles, part sorted by hand; each call gives a view of its own. */
function journal(): TestJournal {
  const journal = new TestJournal();
  let gradesId: string | null = null;
  for (const act of largeJob({ pallets: 6, slopes: 2, sorted: 40 })) {
    const isUnder = act.body.gradesId === 'in force';
    const body = isUnder ? { ...act.body, gradesId } : act.body;
    if (act.type === 'gradesSet') gradesId = TestJournal.id(journal.length);
    journal.add({ type: act.type, body } as NewEvent);
  }
  return journal;
}

const groundHere = (view: JobView) =>
  planRequestOf(view, (stock) => createPilesAsSorted()(view, stock).bins);

it('a plan rests on the same whether a worker worked it out or the page', () => {
  const view = journal().view;
  const worked = structuredClone(workOutPiles(structuredClone(view)));
  takeWorkedOut(view, worked);
  expect(stockOf(view)).toBe(worked.stock);
  const ground = planRequestOf(view, () => worked.sorted.bins);
  expect(ground.ok && ground.roof).toBe(worked.roof);
  expect(ground).toEqual(groundHere(journal().view));
});

it('a course laid changes nothing that the piles rest on; a slate sorted and a count do', () => {
  const acts = journal();
  const before = acts.view;
  const piles = [{ pile: 1, pieces: 48 }];
  acts.add({ type: 'courseLaid', body: { slopeId: 's1', course: 1, piles } });
  const count = { pile: 1, gradesId: null, slates: 5, tallied: 5, taken: 0 };
  const counted = new TestJournal().add({ type: 'pileCounted', body: count });
  const worked = workOutPiles(before);
  takeWorkedOut(before, worked);
  // A view folded anew has parts of its own: only what was laid is put beside the same parts.
  const laid: JobView = new Map(before);
  for (const [key, part] of acts.view)
    if (key === 'laying') (laid as Map<string, unknown>).set(key, part);
  expect(isSameList(pilesRestOn(laid), pilesRestOn(before))).toBe(true);
  expect(stockOf(laid)).toBe(worked.stock);
  const recounted: JobView = new Map(before);
  for (const [key, part] of counted.view)
    if (key === 'laying') (recounted as Map<string, unknown>).set(key, part);
  expect(isSameList(pilesRestOn(recounted), pilesRestOn(before))).toBe(false);
  const sorted: JobView = new Map(before);
  for (const [key, part] of before)
    if (key === 'pallet:p01') (sorted as Map<string, unknown>).set(key, { ...part });
  expect(isSameList(pilesRestOn(sorted), pilesRestOn(before))).toBe(false);
});
