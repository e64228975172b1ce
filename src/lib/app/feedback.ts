import { type Piles, countPiles, numberOfPile } from '$lib/text';
import type { DevicePreferences } from './preferences.svelte.ts';

/** Pitch of the thickest and of the thinnest pile, hertz: two octaves apart, well above wind. */
const LOWEST_HZ = 262;
const OCTAVES = 2;
const LONG_MS = 220;
const SHORT_MS = 70;
const GAP_MS = 80;

/** The pitch that stands for a pile: lower is thicker, even steps to the ear. */
export function pitchOfPile(pile: number, piles: Piles): number {
  return LOWEST_HZ * 2 ** ((OCTAVES * (pile - 1)) / Math.max(1, countPiles(piles) - 1));
}

/**
 * The vibration that stands for a pile, in ms of on, off, on…: as many pulses as the pile's number;
 * from five on, a long one stands for four.
 */
export function pulsesOfPile(pile: number): number[] {
  const pulses = [
    ...new Array<number>(pile > 4 ? 1 : 0).fill(LONG_MS),
    ...new Array<number>(pile > 4 ? pile - 4 : pile).fill(SHORT_MS)
  ];
  return pulses.flatMap((pulse, index) => (index === 0 ? [pulse] : [GAP_MS, pulse]));
}

/** What the ear and the hand are told. */
export interface SenseSign {
  /** Tones one after the other, hertz, and how long each lasts. */
  readonly tonesHz: readonly number[];
  readonly seconds: number;
  /** Vibration, ms of on, off, on…. */
  readonly pulses: readonly number[];
}

/** The sign of a pile: one tone, and as many pulses as its number. */
export function signOfPile(pile: number, piles: Piles): SenseSign {
  return {
    tonesHz: [pitchOfPile(pile, piles)],
    seconds: 0.18,
    pulses: pulsesOfPile(numberOfPile(pile, piles))
  };
}

/** What is no pile: each differs from the others and from every pile, to the ear and to the hand. */
export const SIGNS = {
  measured: { tonesHz: [1568], seconds: 0.06, pulses: [30] },
  setAside: { tonesHz: [392, 392], seconds: 0.12, pulses: [LONG_MS, GAP_MS, LONG_MS] },
  undone: { tonesHz: [784, 622, 494], seconds: 0.07, pulses: [30, 40, 30, 40, 30, 40, 30] },
  mind: { tonesHz: [880, 660], seconds: 0.09, pulses: [SHORT_MS, 40, SHORT_MS, 40, LONG_MS] },
  refused: { tonesHz: [220, 147], seconds: 0.2, pulses: [500] }
} as const satisfies Readonly<Record<string, SenseSign>>;

/**
 * Tone, vibration and spoken word. They repeat what the screen says and are never the only sign, so
 * a device that lacks one simply stays quiet.
 */
export class Feedback {
  readonly #preferences: () => DevicePreferences;
  #audio: AudioContext | undefined;

  constructor(preferences: () => DevicePreferences) {
    this.#preferences = preferences;
  }

  /** Wakes the sound. Call inside a tap or key press: browsers allow sound only from there. */
  prime(): void {
    if (!this.#preferences().hasSound || typeof AudioContext === 'undefined') return;
    if (!navigator.userActivation?.isActive) return;
    this.#audio ??= new AudioContext();
    // A phone call or the lock screen interrupts the sound; the next tap brings it back.
    if (this.#audio.state !== 'running') void this.#audio.resume().catch(() => undefined);
  }

  /** A slate was told its pile. */
  tellPile(pile: number, piles: Piles, word: string): void {
    this.#tell(signOfPile(pile, piles), word);
  }

  /** Something to look at: borderline, rogue, spot check. */
  tellMind(word: string): void {
    this.#tell(SIGNS.mind, word);
  }

  /** A point of several, or a slate measured and put on no pile: one high tick. */
  tellMeasured(word = ''): void {
    this.#tell(SIGNS.measured, word);
  }

  /** A slate set aside: two steady tones. */
  tellSetAside(word: string): void {
    this.#tell(SIGNS.setAside, word);
  }

  /** An entry taken back: three falling tones. */
  tellUndone(word: string): void {
    this.#tell(SIGNS.undone, word);
  }

  /** Not taken or not saved: two low tones, one long pulse. */
  tellRefused(word = ''): void {
    this.#tell(SIGNS.refused, word);
  }

  /** Gives the sound back to the device. */
  close(): void {
    void this.#audio?.close().catch(() => undefined);
    this.#audio = undefined;
  }

  /** Not in the same task as the slate: these calls are slow on some phones, and the save goes first. */
  #tell({ tonesHz, seconds, pulses }: SenseSign, word: string): void {
    setTimeout(() => {
      this.#tone(tonesHz, seconds);
      this.#vibrate([...pulses]);
      this.#say(word);
    });
  }

  #tone(pitches: readonly number[], seconds: number): void {
    const audio = this.#audio;
    if (!this.#preferences().hasSound || audio?.state !== 'running') return;
    for (const [index, pitch] of pitches.entries()) {
      const start = audio.currentTime + index * (seconds + 0.03);
      const tone = audio.createOscillator();
      const loudness = audio.createGain();
      tone.type = 'triangle';
      tone.frequency.value = pitch;
      loudness.gain.setValueAtTime(0.0001, start);
      loudness.gain.exponentialRampToValueAtTime(0.7, start + 0.01);
      loudness.gain.exponentialRampToValueAtTime(0.0001, start + seconds);
      tone.connect(loudness).connect(audio.destination);
      tone.start(start);
      tone.stop(start + seconds);
    }
  }

  #vibrate(pattern: number[]): void {
    const isAllowed = navigator.userActivation?.hasBeenActive ?? false;
    if (this.#preferences().hasVibration && isAllowed) navigator.vibrate?.(pattern);
  }

  #say(word: string): void {
    if (!this.#preferences().hasSpeech || word === '') return;
    const voice = localVoice(this.#preferences().locale);
    if (!voice) return;
    const utterance = new SpeechSynthesisUtterance(word);
    utterance.voice = voice;
    utterance.lang = voice.lang;
    utterance.rate = 1.2;
    speechSynthesis.cancel();
    speechSynthesis.speak(utterance);
  }
}

/** A voice for the language that speaks without a network, or undefined. */
export function localVoice(locale: string): SpeechSynthesisVoice | undefined {
  if (typeof speechSynthesis === 'undefined') return undefined;
  return speechSynthesis
    .getVoices()
    .find((voice) => voice.localService && voice.lang.toLowerCase().startsWith(locale));
}
