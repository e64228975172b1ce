import { canonicalJson } from './canonical.ts';
import type { StoredEvent } from './events.ts';

/**
 * A phone that was copied, or put back to an earlier state, gives the numbers that it used before
 * once more: from there on its journal has two branches under one device id. One of them is kept
 * under an id of its own. An act keeps its id on every device; which device number it stands under
 * may differ from one to the next.
 */

/** Where a branch was found and how it was kept: a note of whence its events came. */
export interface KeptBranch {
  /** The device id that two phones used at once. */
  readonly deviceId: string;
  /** The last number that they have in common. */
  readonly after: number;
  /** The device id under which the branch stands now. */
  readonly keptAs: string;
  readonly events: number;
}

/**
 * The device id for a branch: the id of its first event as a UUID of version 8 (RFC 9562, left to
 * the application). Every device gives the same branch the same id, and can tell that it is one.
 */
export function branchDeviceId(firstEventId: string): string {
  return `${firstEventId.slice(0, 14)}8${firstEventId.slice(15)}`;
}

/**
 * A branch as new events of a device of their own: the same acts with the same ids, numbered from 1
 * in the order given. Nothing is modified.
 *
 * @param branch the events of one device after the last that both phones have, in order of number
 */
export function branchAsDevice(branch: readonly StoredEvent[], newDeviceId: string): StoredEvent[] {
  return branch.map((event, at) => withStamp(event, { deviceId: newDeviceId, deviceSeq: at + 1 }));
}

/** Under which device id and number an event stands in a journal. */
export type EventStamp = Pick<StoredEvent, 'deviceId' | 'deviceSeq'>;

/** Whether two events are the same act, whatever number each stands under. */
export function isSameAct(one: StoredEvent, other: StoredEvent): boolean {
  return canonicalJson(one) === canonicalJson(withStamp(other, one));
}

function withStamp(event: StoredEvent, { deviceId, deviceSeq }: EventStamp): StoredEvent {
  if (event.deviceId === deviceId && event.deviceSeq === deviceSeq) return event;
  return { ...event, deviceId, deviceSeq };
}

/** How the numbers of one device in the other journal stand here: the number here is `seq + plus`. */
interface Run {
  readonly deviceId: string;
  readonly plus: number;
  readonly isMet: boolean;
}

interface OpenBranch extends KeptBranch {
  /** The place here that two acts claim. */
  readonly claimed: string;
  readonly line: number;
}

/**
 * Carries the events of another journal over into this one, in order of id. An event that is here
 * tells under which number the events after it belong; a new one goes to the next number of its
 * run. Where that number is taken by another act, a branch begins.
 */
export class BranchMap {
  readonly #sequences: Readonly<Record<string, number>>;
  readonly #runs = new Map<string, Run>();
  /** Places here at which a run of the other journal was met. */
  readonly #met = new Set<string>();
  readonly #branches: OpenBranch[] = [];
  readonly #isFree: (place: EventStamp) => boolean;

  /**
   * @param sequences by device, the last number of this journal
   * @param isFree whether a number up to the last is missing here, as after damage
   */
  constructor(
    sequences: Readonly<Record<string, number>>,
    isFree: (place: EventStamp) => boolean = () => false
  ) {
    this.#sequences = sequences;
    this.#isFree = isFree;
  }

  /**
   * Notes an event of the other journal that is here too.
   *
   * @returns false when it stands here under a number that no branch explains
   */
  meet(other: StoredEvent, here: StoredEvent): boolean {
    const run = this.#runOf(other.deviceId);
    const plus = here.deviceSeq - other.deviceSeq;
    const isAsBefore = run.deviceId === here.deviceId && run.plus === plus;
    if (!isAsBefore && !isBranchStart(other) && !isBranchStart(here)) return false;
    if (!isAsBefore || !run.isMet) this.#met.add(placeOf(here));
    this.#runs.set(other.deviceId, { deviceId: here.deviceId, plus, isMet: true });
    return true;
  }

  /** Gives a new event its number here; begins a branch where that is taken. */
  place(event: StoredEvent, line: number): StoredEvent {
    const run = this.#runOf(event.deviceId);
    const stamp = { deviceId: run.deviceId, deviceSeq: event.deviceSeq + run.plus };
    const last = lastOf(this.#sequences, stamp.deviceId);
    if (stamp.deviceSeq > last || this.#isFree(stamp)) return this.#count(withStamp(event, stamp));
    const keptAs = branchDeviceId(event.id);
    this.#branches.push({
      deviceId: stamp.deviceId,
      after: stamp.deviceSeq - 1,
      keptAs,
      events: 0,
      claimed: placeOf(stamp),
      line
    });
    this.#runs.set(event.deviceId, { deviceId: keptAs, plus: 1 - event.deviceSeq, isMet: true });
    return this.#count(withStamp(event, { deviceId: keptAs, deviceSeq: 1 }));
  }

  /** The branches that began here. */
  get branches(): readonly KeptBranch[] {
    return this.#branches.map(({ deviceId, after, keptAs, events }) => ({
      deviceId,
      after,
      keptAs,
      events
    }));
  }

  /**
   * The first branch that nobody has decided to keep: the other journal does not hold both acts
   * that claim its first number. Ask when all events were met or placed.
   */
  get undecided(): (KeptBranch & { readonly line: number }) | undefined {
    return this.#branches.find(({ claimed }) => !this.#met.has(claimed));
  }

  #runOf(deviceId: string): Run {
    return this.#runs.get(deviceId) ?? { deviceId, plus: 0, isMet: false };
  }

  #count(event: StoredEvent): StoredEvent {
    const at = this.#branches.findIndex(({ keptAs }) => keptAs === event.deviceId);
    if (at >= 0) {
      const branch = this.#branches[at];
      this.#branches[at] = { ...branch, events: branch.events + 1 };
    }
    return event;
  }
}

/** Whether an event is the first of a branch that was given an id of its own. */
function isBranchStart({ id, deviceId, deviceSeq }: StoredEvent): boolean {
  return deviceSeq === 1 && deviceId === branchDeviceId(id);
}

function placeOf({ deviceId, deviceSeq }: EventStamp): string {
  return `${deviceId} ${deviceSeq}`;
}

function lastOf(sequences: Readonly<Record<string, number>>, deviceId: string): number {
  return Object.hasOwn(sequences, deviceId) ? sequences[deviceId] : 0;
}
