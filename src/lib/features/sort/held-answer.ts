import { type HeldAnswer, type HeldReading, answerHeld } from '$lib/job';
import { meanHundredths } from '$lib/journal';
import { placeOfPile, words } from '$lib/text';
import type { SortState } from './sort.svelte.ts';

/** A reading that waits, in few words: "12.70 mm, pallet A". */
export function sayHeld(bench: SortState, { body }: HeldReading): string {
  const label = bench.desk.all.find(({ palletId }) => palletId === body.palletId)?.label;
  const read = words.numbers.mm(meanHundredths(body.points) / 100, 2);
  return label === undefined ? read : `${read}, ${words.text.sort.pallet.named(label)}`;
}

/** Takes the sorter's answer to a reading that waits, and says what became of the slate. */
export async function takeAnswer(
  bench: SortState,
  held: HeldReading,
  answer: HeldAnswer,
  piles: readonly number[]
): Promise<void> {
  const { gauging, input, voice, desk } = bench;
  const { palletId, points, pile } = held.body;
  const { sort, common } = words.text;
  const act = answerHeld(held, answer);
  const palletLabel = desk.all.find((each) => each.palletId === palletId)?.label ?? '';
  gauging.beginOther();
  input.drop();
  if (answer === 'again') {
    const what = sayHeld(bench, held);
    voice.feedback.tellUndone(`${sort.told.undone}: ${what}`);
    await voice.tell({ kind: 'undone', act, palletLabel: '', what });
  } else if (answer === 'aside') {
    voice.feedback.tellSetAside(`${sort.told.setAside}: ${sort.setAside.reasons.other}`);
    await voice.tell({ kind: 'setAside', act, palletLabel, reason: 'other' });
  } else {
    const place = pile === null ? 0 : placeOfPile(pile, piles);
    const onPile = place > 0 ? place : null;
    if (onPile === null) voice.feedback.tellMeasured(sort.told.sample);
    else voice.feedback.tellPile(onPile, piles, common.pile(onPile, piles));
    await voice.tell({
      kind: 'gauged',
      ...{ act, palletLabel, piles, points },
      thicknessMm: meanHundredths(points) / 100,
      taperMm: (Math.max(...points) - Math.min(...points)) / 100,
      judgement: { pile: onPile, borderlineMm: null, rogue: null }
    });
  }
}

/** Takes the sorter's answer to the slate told last, which counts already. */
export async function answerCounted(bench: SortState, answer: HeldAnswer): Promise<void> {
  const { told, lastSaved } = bench.voice;
  if (told?.kind !== 'gauged') return;
  if (answer === 'aside') return bench.setAside('other', 'return', true);
  if (answer === 'keep') {
    bench.voice.told = { ...told, judgement: { ...told.judgement, rogue: null } };
    return;
  }
  const events = await lastSaved;
  if (events) await bench.undo(events[0].id);
}
