import { type JournalEvent, type StoredEvent, meanHundredths, own } from '$lib/journal';
import type { Catalogue, NumberWords } from '$lib/text';

/** What an entry was, in words, for the list of entries that can be taken back. */
export function sayAct(
  stored: StoredEvent,
  piles: number,
  { sort, common }: Catalogue,
  numbers: NumberWords
): string {
  const event = stored as JournalEvent;
  const mm = (points: readonly number[]) => numbers.mm(meanHundredths(points) / 100, 2);
  switch (event.type) {
    case 'slateTapped':
      return sort.undo.tapped(common.pile(event.body.pile, piles));
    case 'slateGauged': {
      const { points, pile } = event.body;
      return pile === null
        ? sort.undo.sample(mm(points))
        : sort.undo.gauged(mm(points), common.pile(pile, piles));
    }
    case 'slateSetAside':
      return sort.undo.setAside(sort.setAside.reasons[event.body.reason]);
    case 'slateChecked':
      return sort.undo.checked(mm(event.body.points));
    case 'palletAdded':
      return sort.undo.pallet(event.body.label);
    default:
      return own(common.events, event.type) ?? event.type;
  }
}

/**
 * What Undo takes back, in few words: the slate and its pallet, as "6.3 mm, A".
 *
 * @param pallet name of the pallet it came from; empty where it is not known
 */
export function sayUndo(
  stored: StoredEvent,
  piles: number,
  pallet: string,
  text: Catalogue,
  numbers: NumberWords
): string {
  const event = stored as JournalEvent;
  let what = sayAct(stored, piles, text, numbers);
  if (event.type === 'slateGauged') {
    const hundredths = Math.round(meanHundredths(event.body.points));
    what = numbers.mm(hundredths / 100, hundredths % 10 === 0 ? 1 : 2);
  } else if (event.type === 'slateTapped') what = text.common.pile(event.body.pile, piles);
  return pallet === '' ? what : `${what}, ${pallet}`;
}
