import {
  type KeyClaim,
  type KeyPress,
  type TapKeyAct,
  type TapKeyPress,
  TapKeys,
  type TypedSoFar,
  nameOfKey
} from '$lib/gauge';
import { type Preferences, pageTimer } from '$lib/app';

/** What keys do to the bench. */
export interface KeyBench {
  /** The numbers of the piles, thickest first: the key of a pile is its number. */
  readonly piles: () => readonly number[];
  /** Whether slates are put on piles by tap or key now. */
  readonly isByHand: () => boolean;
  /** Puts a slate on the pile at a place. */
  readonly onSort: (pile: number) => void;
  readonly onUndo: () => void;
  /** A gauge had typed the last slates sorted by key: so many are to be taken back. */
  readonly onTakeBack: (slates: number) => void;
  readonly onDropTyped: () => void;
}

const MODIFIERS = ['Shift', 'Control', 'Alt', 'AltGraph', 'Meta', 'CapsLock', 'NumLock'];

/** Keys that sort by hand, and those that a clicker is learnt to send. */
export class HandKeys {
  /** What the next key is learnt to do; undefined while none is learnt. */
  learning = $state<TapKeyAct>();
  readonly #preferences: Preferences;
  readonly #bench: KeyBench;
  readonly #keys: TapKeys;

  constructor(preferences: Preferences, bench: KeyBench) {
    this.#preferences = preferences;
    this.#bench = bench;
    this.#keys = new TapKeys(pageTimer, {
      onAct: (does) => {
        if (does === 'undo') bench.onUndo();
        else if (bench.piles().includes(does)) bench.onSort(bench.piles().indexOf(does) + 1);
      },
      onDropTyped: bench.onDropTyped
    });
  }

  press(press: TapKeyPress, typed: TypedSoFar): KeyClaim {
    if (this.learning !== undefined) {
      this.#learn(press, this.learning);
      return { kind: 'claimed' };
    }
    if (!this.#bench.isByHand()) return { kind: 'leave' };
    this.#keys.learn({
      piles: Math.min(9, Math.max(...this.#bench.piles())),
      learnt: this.#preferences.values.clickerKeys
    });
    const effect = this.#keys.press(press, typed);
    if (effect.kind !== 'reading') return effect;
    if (effect.sorted > 0) this.#bench.onTakeBack(effect.sorted);
    return { kind: 'with', text: effect.text };
  }

  release(press: KeyPress, at: number): void {
    this.#keys.release(press, at);
  }

  /** Sorts what waits, as when the page is left. */
  flush(): void {
    this.#keys.flush();
  }

  forget(name: string): void {
    const { clickerKeys } = this.#preferences.values;
    this.#preferences.set({ clickerKeys: clickerKeys.filter((known) => known.name !== name) });
  }

  /** A key has one meaning, and a meaning one key: the last learnt. */
  #learn(press: TapKeyPress, does: TapKeyAct): void {
    if (MODIFIERS.includes(press.key) || press.repeat) return;
    const name = nameOfKey(press);
    const others = this.#preferences.values.clickerKeys.filter(
      (known) => known.name !== name && known.does !== does
    );
    this.#preferences.set({ clickerKeys: [...others, { name, does }] });
    this.learning = undefined;
  }
}
