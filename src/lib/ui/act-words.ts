import { type JournalEvent, type StoredEvent, meanHundredths, own } from '$lib/journal';
import { type Catalogue, type NumberWords, type Piles, placeOfPile } from '$lib/text';

/** A pile by the number that stands on it, whether or not it is among the piles shown. */
export function sayPile(number: number, piles: Piles, { pile }: Pick<Catalogue['common'], 'pile'>) {
  const place = placeOfPile(number, piles);
  return place > 0 ? pile(place, piles) : pile(1, [number]);
}

/** What an entry was, in words, for the list of entries that can be taken back. */
export function sayAct(
  stored: StoredEvent,
  piles: Piles,
  { sort, common }: Catalogue,
  numbers: NumberWords
): string {
  const event = stored as JournalEvent;
  const mm = (points: readonly number[]) => numbers.mm(meanHundredths(points) / 100, 2);
  switch (event.type) {
    case 'slateTapped':
      return sort.undo.tapped(sayPile(event.body.pile, piles, common));
    case 'slateGauged':
    case 'readingHeld': {
      const { points, pile } = event.body;
      return pile === null
        ? sort.undo.sample(mm(points))
        : sort.undo.gauged(mm(points), sayPile(pile, piles, common));
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
 * What Undo takes back, in few words: the slate and its pallet, as "6.3 mm, pallet A".
 *
 * @param pallet name of the pallet it came from; empty where it is not known
 */
export function sayUndo(
  stored: StoredEvent,
  piles: Piles,
  pallet: string,
  text: Catalogue,
  numbers: NumberWords
): string {
  const event = stored as JournalEvent;
  let what = sayAct(stored, piles, text, numbers);
  if (event.type === 'slateGauged' || event.type === 'readingHeld') {
    const hundredths = Math.round(meanHundredths(event.body.points));
    what = numbers.mm(hundredths / 100, hundredths % 10 === 0 ? 1 : 2);
  } else if (event.type === 'slateTapped') what = sayPile(event.body.pile, piles, text.common);
  return pallet === '' ? what : `${what}, ${text.sort.pallet.named(pallet)}`;
}
