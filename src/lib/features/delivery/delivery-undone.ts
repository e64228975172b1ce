import { sayAct } from '$lib/ui';
import { labelsOf } from '$lib/job';
import {
  type JobView,
  type JournalEvent,
  ViewDraft,
  type StoredEvent,
  isVoided,
  partOf,
  readEvent
} from '$lib/journal';
import type { JournalStore } from '$lib/storage';
import type { Catalogue, NumberWords } from '$lib/text';

/** Entries that were taken back: those about the delivery one by one, oldest first. */
export interface UndoneEntries {
  readonly ofDelivery: readonly JournalEvent[];
  /** How many others, of sorting, roof and laying. */
  readonly others: number;
}

/** What a claim rests on, beside the slates of its sample. */
const OF_DELIVERY: readonly JournalEvent['type'][] = [
  'deliveryDeclared',
  'palletAdded',
  'sampleDrawn',
  'stackMeasured',
  'defectNoted',
  'photoAdded',
  'verdictSigned'
];

/**
 * The entries of a job that were taken back and not brought back. One pass over its events, where
 * anything was ever taken back.
 */
export async function undoneEntries(
  store: Pick<JournalStore, 'events'>,
  jobId: string,
  view: JobView
): Promise<UndoneEntries> {
  const ofDelivery: JournalEvent[] = [];
  let others = 0;
  const { voidedBy } = partOf(view, 'voids');
  if (Object.keys(voidedBy).length === 0) return { ofDelivery, others };
  const voids = new ViewDraft(view);
  for await (const batch of store.events(jobId))
    for (const stored of batch.filter(({ id }) => Object.hasOwn(voidedBy, id))) {
      const read = readEvent(stored);
      if (read.kind !== 'known' || read.event.type === 'entryVoided') continue;
      if (!isVoided(voids, stored.id)) continue;
      if (isOfDelivery(read.event)) ofDelivery.push(read.event);
      else others++;
    }
  return { ofDelivery, others };
}

function isOfDelivery(event: JournalEvent): boolean {
  const isSlate = event.type === 'slateGauged' || event.type === 'slateSetAside';
  return isSlate ? event.body.sample !== undefined : OF_DELIVERY.includes(event.type);
}

/** An entry taken back: when it was made, what it was, and of a slate where it was drawn. */
export function sayUndone(
  event: JournalEvent,
  view: JobView,
  text: Catalogue,
  numbers: NumberWords
): string {
  const { claim, sample } = text.delivery;
  const what = sayAct(event as StoredEvent, 0, text, numbers);
  const isSlate = event.type === 'slateGauged' || event.type === 'slateSetAside';
  if (!isSlate || !event.body.sample) return claim.undoneLine(numbers.moment(event.at), what);
  const { palletId } = event.body;
  const { layer, place } = event.body.sample;
  const label = labelsOf(view).get(palletId) ?? palletId;
  const where =
    layer === undefined || place === undefined ? label : sample.place(label, layer, place);
  return claim.undoneLine(numbers.moment(event.at), `${what}. ${where}`);
}
