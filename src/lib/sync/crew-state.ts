import type { StoredEvent } from '$lib/journal';
import type { DeviceNumbers, ImportResult, StoredPhoto } from '$lib/storage';
import type { Role } from '../../hub/protocol.ts';
import type { ParcelFault } from './parcel.ts';

/** What ties a job on this device to a hub. Kept on the device, in no job file. */
export interface CrewLink {
  readonly origin: string;
  readonly space: string;
  readonly token: string;
  readonly jobKey: string;
  readonly jobId: string;
  /** The device whose acts this link sends. */
  readonly device: string;
  readonly role: Role;
}

/** How far hub and journal are known to hold the same of a device, and the mark of that event. */
export interface Tip {
  readonly last: number;
  readonly mark: string;
}

/**
 * Why a device's run is held, and from which number. `same-number`: the hub holds other events
 * under numbers that are here already, as after a phone was copied or an old profile restored.
 */
export interface Held {
  readonly why: ParcelFault | 'gap' | 'same-number' | 'circular' | 'refused';
  readonly first: number;
  readonly detail: string;
}

/**
 * A run that stands under other numbers here than at the hub, since a phone was copied and both of
 * its histories were kept: what follows a number here follows another number there.
 */
export interface Renamed {
  readonly here: { readonly device: string; readonly after: number };
  readonly hub: { readonly device: string; readonly after: number };
}

/** What is remembered between one exchange and the next. Losing it costs time, never data. */
export interface CrewRecord {
  readonly link: CrewLink;
  readonly tips: Record<string, Tip>;
  readonly held: Record<string, Held>;
  /** How far others say that they saw each device at the hub. */
  readonly claims: DeviceNumbers;
  /** By device, when a parcel of it last came, milliseconds since 1970. */
  readonly heard: Record<string, number>;
  /** Acts whose photos the hub does not have yet, and that are not here yet. */
  readonly photosToGive: readonly StoredEvent[];
  readonly photosWanted: readonly StoredEvent[];
  /** Runs that stand under other numbers here than at the hub. */
  readonly renamed?: readonly Renamed[];
  /** Whether the hub said last that this device is no longer of the crew. */
  readonly isRemoved?: boolean;
}

export function newCrewState(link: CrewLink): CrewRecord {
  return {
    link,
    tips: {},
    held: {},
    claims: {},
    heard: {},
    photosToGive: [],
    photosWanted: []
  };
}

/** The part of a journal store that an exchange needs. */
export interface SyncJournal {
  numbers(jobId: string): Promise<DeviceNumbers>;
  newest(jobId: string, limit: number): Promise<StoredEvent[]>;
  events(jobId: string): AsyncGenerator<readonly StoredEvent[]>;
  merge(events: Iterable<StoredEvent>, photos?: readonly StoredPhoto[]): Promise<ImportResult>;
  photo(photoId: string): Promise<StoredPhoto | undefined>;
}

/** Something to tell whoever works on the job. */
export type CrewWarning =
  | ({ readonly kind: 'held'; readonly device: string } & Held)
  /** The hub lost what it had acknowledged: it was put back from an old copy. */
  | {
      readonly kind: 'put-back';
      readonly device: string;
      readonly had: number;
      readonly has: number;
    }
  /** Others saw more at the hub than it gives now. */
  | {
      readonly kind: 'withheld';
      readonly device: string;
      readonly seen: number;
      readonly given: number;
    }
  /** The clock of this device goes wrong, by that of the hub. Nothing is refused for it. */
  | { readonly kind: 'clock'; readonly aheadMs: number };

/** How an exchange ended. */
export type CrewOutcome =
  | 'shared'
  /** No signal, or the hub is down. */
  | 'no-answer'
  | 'removed'
  | 'hub-full'
  | 'device-full'
  /** The hub asks to wait. */
  | 'wait'
  /** The hub does not know the app's protocol yet. */
  | 'old-hub'
  | 'refused';

export interface CrewReport {
  readonly outcome: CrewOutcome;
  /** Own acts that the hub does not have yet. */
  readonly notShared: number;
  /** Events of others that came in. */
  readonly received: number;
  readonly warnings: readonly CrewWarning[];
}
