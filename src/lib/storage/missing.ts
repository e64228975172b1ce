import { type StoredEvent, readEvent } from '$lib/journal';
import { NumberRun } from './number-run.ts';
import type { DeviceNumbers, Missing, MissingEntries, MissingReason } from './store.ts';

export function isEntries(missing: Missing): missing is MissingEntries {
  return 'device' in missing;
}

/** How many events are missing. */
export function countMissing(missing: readonly Missing[]): number {
  return missing.reduce((sum, one) => sum + (isEntries(one) ? one.to - one.from + 1 : 0), 0);
}

/** Whether what is stored as an event can be read as one. */
export function isReadable(event: unknown): boolean {
  return readEvent(event).kind !== 'broken';
}

/** Finds out which of a job's events are missing; is shown all that are there, in any order. */
export class EventsAudit {
  readonly #runs = new Map<string, NumberRun>();
  readonly #damaged = new Map<string, Set<number>>();

  /** Notes an event that can be read. */
  note({ deviceId, deviceSeq }: StoredEvent): void {
    const run = this.#runs.get(deviceId) ?? new NumberRun();
    this.#runs.set(deviceId, run);
    run.note(deviceSeq);
  }

  /** Notes what stands in an event's place and cannot be read. */
  noteDamaged(row: unknown): void {
    if (typeof row !== 'object' || row === null) return;
    const { deviceId, deviceSeq } = row as Partial<StoredEvent>;
    if (typeof deviceId !== 'string' || typeof deviceSeq !== 'number') return;
    const numbers = this.#damaged.get(deviceId) ?? new Set<number>();
    this.#damaged.set(deviceId, numbers);
    numbers.add(deviceSeq);
  }

  /** By device, the last of the numbers that are here or were given. */
  lastNumbers(given: DeviceNumbers): DeviceNumbers {
    const last: DeviceNumbers = { ...given };
    for (const [device, run] of this.#runs) last[device] = Math.max(last[device] ?? 0, run.highest);
    return last;
  }

  /**
   * The events that are missing, by device and number.
   *
   * @param given by device, the last number that the job's row says was given
   */
  missing(given: DeviceNumbers): MissingEntries[] {
    const missing: MissingEntries[] = [];
    for (const [device, last] of Object.entries(this.lastNumbers(given)).sort()) {
      const damaged = this.#damaged.get(device);
      const reasonOf = (number: number): MissingReason =>
        damaged?.has(number) ? 'damaged' : 'gone';
      for (const [first, end] of (this.#runs.get(device) ?? new NumberRun()).gaps(last))
        for (let from = first, to = first; from <= end; from = ++to) {
          const reason = reasonOf(from);
          while (to < end && reasonOf(to + 1) === reason) to++;
          missing.push({ device, from, to, reason });
        }
    }
    return missing;
  }
}
