import type { StoredEvent } from '$lib/journal';
import { type DeviceNumbers, isQuotaExceeded } from '$lib/storage';
import { type Heads, LIMITS, type SealedParcel } from '../../hub/protocol.ts';
import type {
  CrewOutcome,
  CrewReport,
  CrewRecord,
  CrewWarning,
  Held,
  SyncJournal,
  Tip
} from './crew-state.ts';
import { type HubClient, HubRefused, HubSilent } from './hub-client.ts';
import type { SpaceKeys } from './keys.ts';
import { type OpenedParcel, markOf, openParcel, sealParcel } from './parcel.ts';
import { fetchPhotos, givePhotos } from './photos.ts';
import { asAtHub } from './renamed.ts';
import { eventsOf } from './runs.ts';

const NO_TIP: Tip = { last: 0, mark: '' };
/** Events of one parcel at most; fewer where they are large. */
const PARCEL_EVENTS = 4000;
/** Rounds of pull and push in one exchange; each one more means that somebody else was writing. */
const ROUNDS = 12;
/** A clock that is off by more is told; ours, well above what an answer takes on its way. */
const CLOCK_OFF_MS = 5 * 60_000;

export interface ExchangeParts {
  readonly journal: SyncJournal;
  readonly hub: HubClient;
  readonly keys: SpaceKeys;
  readonly now: () => number;
  /** Keeps the state; called whenever hub and journal agree on more. */
  readonly save: (state: CrewRecord) => Promise<void>;
}

/** Events that are to be merged, and how far they bring a device. */
interface Arrival {
  readonly device: string;
  readonly first: number;
  readonly events: readonly StoredEvent[];
  readonly tip: Tip;
}

/**
 * One device's exchange of one job with its hub: pull, push, pull. Every step may fail anywhere and
 * be done again: the hub compares and appends, the journal merges by union, and a tip moves only
 * after both have it.
 */
export class Exchange {
  readonly #parts: ExchangeParts;
  #state: CrewRecord;
  #heads: Heads = {};
  #received = 0;
  #putBack = new Map<string, CrewWarning>();

  constructor(state: CrewRecord, parts: ExchangeParts) {
    this.#parts = { ...parts, journal: asAtHub(parts.journal, state.renamed ?? []) };
    // What was held is tried once more by whoever starts anew: the app may be newer.
    this.#state = { ...state, held: {} };
  }

  get state(): CrewRecord {
    return this.#state;
  }

  /** Gives and takes what there is. Never throws for what a network, a hub or a disk may do. */
  async run(): Promise<CrewReport> {
    this.#received = 0;
    let outcome: CrewOutcome = 'shared';
    try {
      await this.#lowerTips(await this.#numbers());
      for (let round = 0; round < ROUNDS; round++) {
        await this.#pull();
        if (await this.#push()) break;
      }
      this.#state = await givePhotos(this.#state, this.#parts);
      this.#state = await fetchPhotos(this.#state, this.#parts);
    } catch (error) {
      outcome = outcomeOf(error);
    }
    if (outcome === 'removed' || outcome === 'shared')
      this.#state = { ...this.#state, isRemoved: outcome === 'removed' };
    await this.#save().catch(() => undefined); // a state that is older only costs a comparison
    return {
      outcome,
      notShared: await this.notShared(),
      received: this.#received,
      warnings: this.#warnings()
    };
  }

  /** Own acts that the hub is not known to have. */
  async notShared(): Promise<number> {
    const { device } = this.#state.link;
    return ((await this.#numbers())[device] ?? 0) - this.#tip(device).last;
  }

  async #pull(): Promise<void> {
    for (;;) {
      const have: Heads = {};
      for (const [device, { last }] of Object.entries(this.#state.tips))
        if (last > 0) have[device] = last;
      for (const device of Object.keys(this.#state.held)) have[device] = Number.MAX_SAFE_INTEGER;
      const { heads, parcels } = await this.#parts.hub.pull(have);
      this.#heads = heads;
      if (await this.#noticePutBack()) continue;
      if (parcels.length === 0) return;
      const before = JSON.stringify([this.#state.tips, this.#state.held]);
      await this.#takeIn(parcels);
      await this.#save();
      // A hub that repeats itself for ever is asked no further.
      if (JSON.stringify([this.#state.tips, this.#state.held]) === before) return;
    }
  }

  /** Where the hub has less than it had acknowledged, both begin again from what it has. */
  async #noticePutBack(): Promise<boolean> {
    let isPutBack = false;
    for (const [device, { last }] of Object.entries(this.#state.tips)) {
      const has = this.#heads[device] ?? 0;
      if (has >= last) continue;
      this.#putBack.set(device, { kind: 'put-back', device, had: last, has });
      await this.#setTipAt(device, has);
      isPutBack = true;
    }
    for (const [device, { first }] of Object.entries(this.#state.held))
      if ((this.#heads[device] ?? 0) < first) this.#release(device);
    return isPutBack;
  }

  async #takeIn(sealed: readonly SealedParcel[]): Promise<void> {
    const arrivals: Arrival[] = [];
    const reached = new Map<string, Tip>();
    for (const parcel of sealed) {
      const { device, last } = parcel;
      const tip = reached.get(device) ?? this.#tip(device);
      if (this.#state.held[device] || last <= tip.last) continue;
      const arrival = await this.#check(parcel, tip);
      if ('why' in arrival) this.#hold(device, arrival);
      else {
        arrivals.push(arrival);
        reached.set(device, arrival.tip);
      }
    }
    await this.#merge(arrivals.filter(({ device, first }) => !this.#isHeldBelow(device, first)));
  }

  /** Opens a parcel that must follow a tip. */
  async #check(sealed: SealedParcel, tip: Tip): Promise<Arrival | Held> {
    const { device, first, last } = sealed;
    if (first > tip.last + 1)
      return { why: 'gap', first, detail: `${tip.last + 1} to ${first - 1} are missing` };
    const { keys } = this.#parts;
    const { space, jobId } = this.#state.link;
    const opened = await openParcel(keys, space, jobId, sealed);
    if (!opened.ok) return { why: opened.fault, first, detail: opened.detail };
    const { parcel } = opened;
    if ((await markBefore(parcel, tip)) !== tip.mark)
      return { why: 'same-number', first: tip.last, detail: `${device} ${tip.last}` };
    this.#noteClaims(parcel.seen);
    const events = parcel.events.slice(tip.last + 1 - first);
    return { device, first, events, tip: { last, mark: await markOf(events[events.length - 1]) } };
  }

  /** Merges all at once, and one by one when something among them is refused. */
  async #merge(arrivals: readonly Arrival[]): Promise<void> {
    if (arrivals.length === 0) return;
    const { journal, now } = this.#parts;
    const all = await journal.merge(arrivals.flatMap(({ events }) => events));
    for (const { device, first, events, tip } of arrivals) {
      if (this.#state.held[device]) continue;
      const result = all.ok ? all : await journal.merge(events);
      if (!result.ok) {
        const why =
          result.reason === 'conflict'
            ? 'same-number'
            : result.reason === 'undo-circle'
              ? 'circular'
              : 'refused';
        this.#hold(device, { why, first, detail: result.detail ?? result.reason });
        continue;
      }
      if (!all.ok) this.#received += result.added;
      const photos = events.filter(({ type }) => type === 'photoAdded');
      this.#state = {
        ...this.#state,
        tips: { ...this.#state.tips, [device]: tip },
        heard: { ...this.#state.heard, [device]: now() },
        photosWanted: [...this.#state.photosWanted, ...photos]
      };
    }
    if (all.ok) this.#received += all.added;
  }

  /** @returns whether all that this device may give is given */
  async #push(): Promise<boolean> {
    const { link } = this.#state;
    const numbers = await this.#numbers();
    for (const [device, last] of Object.entries(numbers)) {
      const mayGive = device === link.device || link.role === 'keeper';
      if (!mayGive || this.#state.held[device] || last <= this.#tip(device).last) continue;
      if (!(await this.#give(device, last))) return false;
    }
    return true;
  }

  async #give(device: string, upTo: number): Promise<boolean> {
    const { journal, hub, keys } = this.#parts;
    const { space, jobId } = this.#state.link;
    let events = await eventsOf(journal, jobId, device, this.#tip(device).last, upTo);
    let size = PARCEL_EVENTS;
    while (events.length > 0) {
      const run = events.slice(0, size);
      const note = { seen: this.#seen(), after: this.#tip(device).mark };
      const parcel = await sealParcel(keys, space, { device, events: run }, note);
      if (!parcel || parcel.bytes.length > LIMITS.parcelBytes) {
        if (run.length === 1) {
          const detail = `${device} ${run[0].deviceSeq}`;
          this.#hold(device, { why: 'too-large', first: run[0].deviceSeq, detail });
          return true;
        }
        size = Math.ceil(run.length / 2);
        continue;
      }
      try {
        await hub.append(parcel);
      } catch (error) {
        // Somebody was faster, or the answer to an earlier try was lost: look, then cut again.
        if (error instanceof HubRefused && error.reason === 'behind') return false;
        throw error;
      }
      events = events.slice(run.length);
      const tip = { last: parcel.last, mark: await markOf(run[run.length - 1]) };
      const photos = run.filter(({ type }) => type === 'photoAdded');
      this.#heads = { ...this.#heads, [device]: parcel.last };
      this.#state = {
        ...this.#state,
        tips: { ...this.#state.tips, [device]: tip },
        photosToGive: [...this.#state.photosToGive, ...photos]
      };
      await this.#save();
    }
    return true;
  }

  /** A journal that was put back behind its tips begins again from what it has. */
  async #lowerTips(numbers: DeviceNumbers): Promise<void> {
    for (const [device, { last }] of Object.entries(this.#state.tips))
      if ((numbers[device] ?? 0) < last) await this.#setTipAt(device, numbers[device] ?? 0);
  }

  async #setTipAt(device: string, number: number): Promise<void> {
    const { journal } = this.#parts;
    const { jobId } = this.#state.link;
    const [event] =
      number > 0 ? await eventsOf(journal, jobId, device, number - 1, number) : [undefined];
    const tip = { last: number, mark: await markOf(event) };
    this.#state = { ...this.#state, tips: { ...this.#state.tips, [device]: tip } };
  }

  #tip(device: string): Tip {
    return this.#state.tips[device] ?? NO_TIP;
  }

  #seen(): DeviceNumbers {
    const tips = Object.entries(this.#state.tips);
    return Object.fromEntries(tips.map(([device, { last }]) => [device, last]));
  }

  #noteClaims(seen: DeviceNumbers): void {
    const claims = { ...this.#state.claims };
    for (const [device, last] of Object.entries(seen))
      claims[device] = Math.max(claims[device] ?? 0, last);
    this.#state = { ...this.#state, claims };
  }

  #hold(device: string, held: Held): void {
    this.#state = { ...this.#state, held: { ...this.#state.held, [device]: held } };
  }

  #release(device: string): void {
    const held = { ...this.#state.held };
    delete held[device];
    this.#state = { ...this.#state, held };
  }

  #isHeldBelow(device: string, first: number): boolean {
    const held = this.#state.held[device];
    return held !== undefined && held.first <= first;
  }

  #warnings(): CrewWarning[] {
    const { held, claims } = this.#state;
    const withheld = Object.entries(claims)
      .map(([device, seen]) => ({ device, seen, given: this.#heads[device] ?? 0 }))
      .filter(({ device, seen, given }) => seen > given && !this.#putBack.has(device))
      .map((warning): CrewWarning => ({ kind: 'withheld', ...warning }));
    const putBack = [...this.#putBack.values()];
    this.#putBack = new Map();
    return [
      ...Object.entries(held).map(([device, one]): CrewWarning => ({
        kind: 'held',
        device,
        ...one
      })),
      ...putBack,
      ...withheld,
      ...this.#clockWarning()
    ];
  }

  #clockWarning(): CrewWarning[] {
    const aheadMs = this.#parts.hub.clockAheadMs ?? 0;
    return Math.abs(aheadMs) > CLOCK_OFF_MS ? [{ kind: 'clock', aheadMs }] : [];
  }

  #numbers(): Promise<DeviceNumbers> {
    return this.#parts.journal.numbers(this.#state.link.jobId);
  }

  #save(): Promise<void> {
    return this.#parts.save(this.#state);
  }
}

/** The mark that a parcel has for the event at a tip: told in front, or of that event itself. */
async function markBefore(parcel: OpenedParcel, tip: Tip): Promise<string> {
  return parcel.first === tip.last + 1
    ? parcel.after
    : markOf(parcel.events[tip.last - parcel.first]);
}

function outcomeOf(error: unknown): CrewOutcome {
  if (isQuotaExceeded(error)) return 'device-full';
  if (error instanceof HubSilent) return 'no-answer';
  if (!(error instanceof HubRefused)) throw error;
  if (error.status === 507) return 'hub-full';
  if (error.status === 429) return 'wait';
  if (error.reason === 'removed' || error.status === 401) return 'removed';
  if (error.reason === 'other-version' && error.isOlder) return 'old-hub';
  return error.status >= 500 ? 'no-answer' : 'refused';
}
