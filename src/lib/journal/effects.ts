import type { JournalEvent } from './events.ts';
import type { ViewDraft } from './draft.ts';
import { clockOfId } from './ids.ts';
import { type Register, addSetting, removeSetting } from './register.ts';
import { type Counts, type PilePart, hourKey } from './view.ts';

/** 1 to count an event in, −1 to take it out again. */
export type Sign = 1 | -1;

/**
 * Counts an event into a view, or out of it. In and out cancel exactly and the order of events does
 * not matter, so a view depends only on the set of events in force: devices can merge by union, and
 * an undo needs no replay. All sums are of whole numbers.
 */
export function count(draft: ViewDraft, event: JournalEvent, sign: Sign): void {
  switch (event.type) {
    case 'jobOpened':
    case 'jobRenamed':
      return set(draft.part('job').opened, event, event.body, sign);
    case 'jobSettingsSet':
      return set(draft.part('job').settings, event, event.body, sign);
    case 'slateSpecSet':
      return set(draft.part('job').spec, event, event.body, sign);
    case 'slateSizesSet':
      return set(draft.part('job').sizes, event, event.body, sign);
    case 'setCoursesChosen':
      return set(draft.part('job').setCourses, event, event.body, sign);
    case 'deliveryDeclared':
      return set(draft.part('job').delivery, event, event.body, sign);
    case 'gradesSet':
      return set(draft.part('job').grades, event, event.body, sign);
    case 'slopeSet':
      return setIn(draft.part('job').slopes, event.body.slopeId, event, event.body, sign);
    case 'slopeRemoved':
      return setIn(draft.part('job').slopes, event.body.slopeId, event, null, sign);
    case 'sampleDrawn':
      return set(draft.part('job').draws, event, event.body, sign);
    case 'gaugeStudied':
      return set(draft.part('job').studies, event, event.body, sign);
    case 'defectNoted':
      return set(draft.part('job').defects, event, event.body, sign);
    case 'photoAdded':
      return set(draft.part('job').photos, event, event.body, sign);
    case 'verdictSigned':
      return set(draft.part('job').verdicts, event, event.body, sign);
    case 'copyKept':
      return set(draft.part('job').copies, event, event.body, sign);
    case 'jobRescued':
      return set(draft.part('job').rescues, event, event.body, sign);
    case 'stackMeasured': {
      const { stacks, packed } = draft.part('job');
      return set(event.body.pile === undefined ? stacks : packed, event, event.body, sign);
    }
    case 'planAdopted':
      return set(draft.part('plans').plans, event, event.body, sign);
    case 'courseLaid': {
      const place = `${event.body.slopeId}|${event.body.course}`;
      return setIn(draft.part('laying').laid, place, event, event.body, sign);
    }
    case 'coursePartLaid': {
      const place = `${event.body.slopeId}|${event.body.course}`;
      return setIn(draft.part('laying').partLaid, place, event, event.body, sign);
    }
    case 'slatesLost':
      return set(draft.part('laying').lost, event, event.body, sign);
    case 'slatesMoved':
      return set(draft.part('laying').moved, event, event.body, sign);
    case 'pileCounted': {
      const { gradesId, sizeId, pile } = event.body;
      const place = `${gradesId ?? sizeId ?? ''}|${pile}`;
      return setIn(draft.part('laying').counted, place, event, event.body, sign);
    }
    case 'palletAdded':
      return set(draft.part(`pallet:${event.body.palletId}`).declared, event, event.body, sign);
    case 'slateGauged':
      return countGauged(draft, event, sign);
    case 'readingHeld': {
      const { held } = draft.part(`pallet:${event.body.palletId}`);
      return set(held, event, { ...event.body, deviceId: event.deviceId }, sign);
    }
    case 'slateTapped': {
      const pallet = draft.part(`pallet:${event.body.palletId}`);
      const pile = `${event.body.gradesId ?? ''}|${event.body.pile}`;
      addToPile(pallet.piles, pile, 'tapped', event.sorter, sign);
      return addMinute(draft, event, event.body.palletId, sign);
    }
    case 'slateSetAside':
      return countSetAside(draft, event, sign);
    case 'slateChecked': {
      const { of, gradesId, pile, points, palletId } = event.body;
      if (of !== 'tap') return;
      const key = `${gradesId ?? ''}|${pile}|${meanHundredths(points)}|${palletId ?? ''}`;
      return add(draft.part(`sorter:${event.sorter}`).checks, key, sign);
    }
    case 'entryVoided':
      return; // has no count of its own; the fold turns it into a count of what it names
    default:
      return event satisfies never;
  }
}

/** Mean of a slate's points in whole hundredths of a millimetre; halves round up. */
export function meanHundredths(points: readonly number[]): number {
  return Math.round(points.reduce((sum, point) => sum + point, 0) / points.length);
}

type Of<T extends JournalEvent['type']> = Extract<JournalEvent, { type: T }>;

function countGauged(draft: ViewDraft, event: Of<'slateGauged'>, sign: Sign): void {
  const { palletId, points, gradesId, pile, sample, rocks } = event.body;
  const pallet = draft.part(`pallet:${palletId}`);
  const thickness = String(meanHundredths(points));
  if (sample) {
    add(pallet.sampled, thickness, sign);
    const slate = { palletId, points, sample, ...(rocks !== undefined && { rocks }) };
    set(draft.part('sample').slates, event, slate, sign);
  } else {
    addToPile(pallet.piles, `${gradesId ?? ''}|${pile ?? 0}`, 'gauged', thickness, sign);
    addMinute(draft, event, palletId, sign, pile === null);
  }
  if (rocks !== undefined) add(pallet.onBoard, rocks ? 'rocks' : 'flat', sign);
  if (points.length > 1) add(pallet.taper, String(Math.max(...points) - Math.min(...points)), sign);
}

function countSetAside(draft: ViewDraft, event: Of<'slateSetAside'>, sign: Sign): void {
  const { palletId, reason, use, points, sample } = event.body;
  const pallet = draft.part(`pallet:${palletId}`);
  add(pallet.setAside, `${reason}|${use}`, sign);
  if (sample) {
    const slate = { palletId, points: points ?? [], sample, setAside: reason };
    set(draft.part('sample').slates, event, slate, sign);
  } else addMinute(draft, event, palletId, sign);
}

function set<T>(register: Register<T>, event: JournalEvent, value: T, sign: Sign): void {
  if (sign > 0) addSetting(register, { id: event.id, at: event.at, value });
  else removeSetting(register, event.id);
}

function setIn<T>(
  registers: Record<string, Register<T>>,
  key: string,
  event: JournalEvent,
  value: T,
  sign: Sign
): void {
  const register = Object.hasOwn(registers, key) ? registers[key] : [];
  set(register, event, value, sign);
  if (register.length > 0) registers[key] = register;
  else delete registers[key];
}

/** Adds to a count; one that comes to nothing is dropped, so that in and out leave the same bytes. */
function add(counts: Counts, key: string, sign: Sign): void {
  const next = (Object.hasOwn(counts, key) ? counts[key] : 0) + sign;
  if (next === 0) delete counts[key];
  else counts[key] = next;
}

/** Adds to a count of a pile; the pile is dropped with its last count. */
function addToPile(
  piles: Record<string, PilePart>,
  pile: string,
  way: keyof PilePart,
  key: string,
  sign: Sign
): void {
  if (!Object.hasOwn(piles, pile)) piles[pile] = { gauged: {}, tapped: {} };
  const { gauged, tapped } = piles[pile];
  const counts = piles[pile][way];
  add(counts, key, sign);
  // Looked at only when a count was dropped: to look into many counts takes longer than to count.
  if (!Object.hasOwn(counts, key) && isEmpty(gauged) && isEmpty(tapped)) delete piles[pile];
}

function isEmpty(counts: Counts): boolean {
  for (const _key in counts) return false;
  return true;
}

/**
 * Counts a slate by the minute of its event: the clock in its id, which never runs back. One that
 * was gauged, but put on no pile, is noted as such: it tells nothing of the pace of sorting.
 */
function addMinute(
  draft: ViewDraft,
  event: JournalEvent,
  palletId: string,
  sign: Sign,
  isUnpiled = false
): void {
  const minute = Math.floor(clockOfId(event.id) / 60_000);
  const hour = draft.part(hourKey(palletId, minute));
  add(hour.minutes, String(minute), sign);
  if (isUnpiled) add(hour.unpiled, String(minute), sign);
}
