import type { Told } from '$lib/app';
import type { JournalEvent, StoredEvent } from '$lib/journal';
import { numberOfPile, words } from '$lib/text';
import type { SortState } from './sort.svelte.ts';

/**
 * Puts a slate on the pile that its spot check found. Its tap is taken back and made anew there, so that
 * it counts on one pile, of its pallet too; the check keeps what the hand felt, and so does the hand.
 */
export async function moveChecked(
  bench: SortState,
  { felt, gauged, piles, palletLabel, act }: Extract<Told, { kind: 'checked' }>
): Promise<void> {
  const check = act as Extract<JournalEvent, { type: 'slateChecked' }>;
  const { palletId, gradesId } = check.body;
  const isTap = (stored: StoredEvent): boolean => {
    const event = stored as JournalEvent;
    return (
      event.type === 'slateTapped' &&
      event.body.palletId === palletId &&
      event.body.pile === numberOfPile(felt, piles)
    );
  };
  const tap = bench.undoable.find(isTap);
  if (!tap || palletId === null) return;
  const { voice, gauging } = bench;
  gauging.forgetEntry();
  voice.feedback.tellPile(gauged, piles, words.text.common.pile(gauged, piles));
  await voice.tell({
    kind: 'tapped',
    act: [
      { type: 'entryVoided', body: { voids: tap.id } },
      { type: 'slateTapped', body: { palletId, pile: numberOfPile(gauged, piles), gradesId } }
    ],
    ...{ palletLabel, pile: gauged, piles }
  });
}
