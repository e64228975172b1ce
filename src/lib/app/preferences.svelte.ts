import { createSubscriber } from 'svelte/reactivity';
import type { LearntKey, LinePattern, WedgeEnding } from '$lib/gauge';
import type { Locale } from '$lib/text';

/** What a serial gauge was learnt to be. */
export interface LearntSerialGauge {
  readonly baudRate: number;
  readonly ending: 'line' | 'pause';
  readonly pattern: LinePattern;
}

/** How this device is set up. Nothing of a job: a job's settings are in its journal. */
export interface DevicePreferences {
  readonly locale: Locale;
  readonly hasSound: boolean;
  readonly hasVibration: boolean;
  readonly hasSpeech: boolean;
  readonly isLeftHanded: boolean;
  readonly keepsAwake: boolean;
  /** Whether every point is gauged twice. */
  readonly holdsStill: boolean;
  /** Whether it was seen where on a slate to measure. */
  readonly hasSeenTail: boolean;
  readonly way: 'hand' | 'gauge';
  readonly nickname: string;
  readonly wedgeEnding: WedgeEnding;
  readonly serialGauge: LearntSerialGauge | null;
  /** Keys of a clicker, and what each does by hand. */
  readonly clickerKeys: readonly LearntKey[];
  /** Pallets open side by side, by job; the first is the one slates come from. */
  readonly openPallets: Readonly<Record<string, readonly string[]>>;
  /** The size of slate in hand, by job; jobs of one size have none. */
  readonly sizeInHand: Readonly<Record<string, string>>;
}

export const STARTING_PREFERENCES: DevicePreferences = {
  locale: 'en',
  hasSound: true,
  hasVibration: true,
  hasSpeech: false,
  isLeftHanded: false,
  keepsAwake: true,
  holdsStill: false,
  hasSeenTail: false,
  way: 'hand',
  nickname: '',
  wedgeEnding: { kind: 'key' },
  serialGauge: null,
  clickerKeys: [],
  openPallets: {},
  sizeInHand: {}
};

const KEY = 'evencourse.preferences';

/**
 * This device's preferences, kept in the browser's local storage where it allows that (a private
 * window may not: they then last as long as the page). Anything unreadable counts as never set.
 */
export class Preferences {
  #values: DevicePreferences | undefined;
  #changed: () => void = () => undefined;
  readonly #subscribe = createSubscriber((update) => {
    const fromOtherTab = (event: StorageEvent): void => {
      if (event.key !== KEY) return;
      this.#values = undefined;
      update();
    };
    this.#changed = update;
    addEventListener('storage', fromOtherTab);
    return () => removeEventListener('storage', fromOtherTab);
  });

  get values(): DevicePreferences {
    this.#subscribe();
    return (this.#values ??= read());
  }

  /** Changes some preferences and keeps them. */
  set(change: Partial<DevicePreferences>): void {
    const next = { ...(this.#values ?? read()), ...change };
    this.#values = next;
    write(next);
    this.#changed();
  }
}

export const preferences = new Preferences();

function read(): DevicePreferences {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    return { ...STARTING_PREFERENCES, ...ofSameKind(kept) };
  } catch {
    return STARTING_PREFERENCES;
  }
}

function write(values: DevicePreferences): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(values));
  } catch {
    // A private window keeps nothing: the preferences last as long as the page.
  }
}

/** The kept values that are of the kind of the starting ones; others are left out. */
function ofSameKind(kept: unknown): Partial<DevicePreferences> {
  if (typeof kept !== 'object' || kept === null) return {};
  const same = Object.entries(kept).filter(([name, value]) => {
    if (!Object.hasOwn(STARTING_PREFERENCES, name)) return false;
    const usual = STARTING_PREFERENCES[name as keyof DevicePreferences];
    if (usual === null) return value === null || typeof value === 'object';
    if (Array.isArray(usual)) return Array.isArray(value);
    return typeof value === typeof usual && value !== null;
  });
  return Object.fromEntries(same);
}
