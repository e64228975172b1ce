import { type GaugeInput, type JobState, type Preferences, SessionMark } from '$lib/app';
import type { ReadingUnit } from '$lib/gauge';
import { partOf } from '$lib/journal';
import type { BenchVoice } from './bench-voice.svelte.ts';
import type { SerialConnection } from './serial-connection.svelte.ts';

/** What a gauge's set-up touches of the bench. */
interface GaugedBench {
  readonly job: () => JobState;
  readonly preferences: Preferences;
  readonly input: GaugeInput;
  readonly voice: BenchVoice;
  /** The slate in hand begins again: what was read of it was read otherwise. */
  readonly restart: () => void;
}

/** How the gauge reads: its unit, its points on a slate, how its readings end, its cable. */
export class GaugeSetup {
  readonly #bench: GaugedBench;
  /** The gauge on a cable, once its set-up was opened: see `openSerial`. */
  serial = $state.raw<SerialConnection>();
  /** Whether the gauge was just learnt to send no end. */
  hasLearntEnding = $state(false);
  #unit: ReadingUnit = 'mm';
  /** Whether the unit of the gauge was answered in this session. */
  #isUnitAnswered = $state(false);
  readonly #unitMark = new SessionMark('evencourse.unit');

  /** Whether the unit of the gauge was answered, here or in the job, or slates were measured in it. */
  readonly isUnitKnown = $derived.by(
    () => this.#isUnitAnswered || this.#isUnitSaid || this.#hasGauged
  );

  constructor(bench: GaugedBench) {
    this.#bench = bench;
  }

  /** Takes up the unit of the job, and what this session answered. */
  start(): void {
    this.#useUnit(this.#bench.job().settings.readingUnit === 'in' ? 'inch' : 'mm');
    this.#isUnitAnswered = this.#unitMark.isSet;
  }

  /** A reading was taken, or the unit said: it is not asked again. */
  answerUnit(): void {
    this.#isUnitAnswered = true;
    this.#unitMark.set();
  }

  /** Answers in which unit the gauge reads; kept for the job when it changed. */
  async setUnit(unit: ReadingUnit): Promise<void> {
    const { job, voice, restart } = this.#bench;
    this.answerUnit();
    voice.refusal = undefined;
    restart();
    this.#useUnit(unit);
    const readingUnit = unit === 'mm' ? 'mm' : 'in';
    if (!this.#isUnitSaid || readingUnit !== job().settings.readingUnit)
      await job().act({ type: 'jobSettingsSet', body: { readingUnit } });
  }

  /** How many points are gauged on each slate of the job. */
  async setPoints(pointsPerSlate: number): Promise<void> {
    this.#bench.restart();
    await this.#bench.job().act({ type: 'jobSettingsSet', body: { pointsPerSlate } });
  }

  /** The gauge that types was learnt to end its readings so. */
  learnEnding(wedgeEnding: Preferences['values']['wedgeEnding']): void {
    this.hasLearntEnding = true;
    this.#bench.preferences.set({ wedgeEnding });
  }

  /** Forgets how the gauge that types ends its readings. */
  forgetEnding(): void {
    this.hasLearntEnding = false;
    this.#bench.preferences.set({ wedgeEnding: { kind: 'key' } });
    this.#bench.input.setEnding({ kind: 'key' });
  }

  /** Fetches what a gauge on a cable needs; few have one, and every start would carry it. */
  async openSerial(): Promise<void> {
    const { preferences, input } = this.#bench;
    const { SerialConnection: Connection } = await import('./serial-connection.svelte.ts');
    this.serial ??= new Connection(
      preferences.values.serialGauge,
      (reading) => input.takeReading(reading, 'serial'),
      (learnt) => preferences.set({ serialGauge: learnt })
    );
    this.serial.setUnit(this.#unit);
  }

  close(): void {
    void this.serial?.disconnect();
  }

  get #isUnitSaid(): boolean {
    const { settings } = partOf(this.#bench.job().view, 'job');
    return settings.some(({ value }) => value.readingUnit !== undefined);
  }

  get #hasGauged(): boolean {
    return this.#bench.job().pallets.some(({ gauged }) => gauged > 0);
  }

  #useUnit(unit: ReadingUnit): void {
    this.#unit = unit;
    this.#bench.input.setUnit(unit);
    this.serial?.setUnit(unit);
  }
}
