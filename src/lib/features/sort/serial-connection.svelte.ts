import {
  LINES_TO_LEARN,
  type ReadingUnit,
  type LineCandidate,
  type LinePattern,
  type Reading,
  type SerialEvent,
  SerialGauge,
  learnLinePattern
} from '$lib/gauge';
import { pageTimer } from '$lib/app';
import type { LearntSerialGauge } from '$lib/app';
import { serialPorts } from './serial-ports.ts';

export type SerialStatus =
  'off' | 'choosing' | 'learning' | 'choice' | 'reading' | 'unplugged' | 'closed' | 'failed';

/** Raw lines shown in the set-up, newest last. */
const LINES_SHOWN = 8;

/** A gauge on a cable: connecting it, learning where in its lines the thickness stands, reading. */
export class SerialConnection {
  status = $state<SerialStatus>('off');
  lines = $state.raw<readonly string[]>([]);
  candidates = $state.raw<readonly LineCandidate[]>([]);
  /** The last line that was left out, or empty. */
  noise = $state('');
  hasLostBytes = $state(false);
  detail = $state('');
  baudRate = $state(9600);
  ending = $state<'line' | 'pause'>('line');
  #lessonLines = $state.raw<readonly string[]>([]);
  #isTrial = false;
  #gauge: SerialGauge | undefined;
  #pattern: LinePattern | null = null;
  #unit: ReadingUnit = 'mm';
  readonly #onReading: (reading: Reading) => void;
  readonly #onLearnt: (learnt: LearntSerialGauge | null) => void;

  readonly isConnected = $derived(['learning', 'choice', 'reading'].includes(this.status));
  readonly linesMissing = $derived(Math.max(0, LINES_TO_LEARN - this.#lessonLines.length));

  constructor(
    known: LearntSerialGauge | null,
    onReading: (reading: Reading) => void,
    onLearnt: (learnt: LearntSerialGauge | null) => void
  ) {
    this.#onReading = onReading;
    this.#onLearnt = onLearnt;
    if (!known) return;
    this.baudRate = known.baudRate;
    this.ending = known.ending;
    this.#pattern = known.pattern;
  }

  setUnit(unit: ReadingUnit): void {
    this.#unit = unit;
    this.#learn();
  }

  /** Lets the person choose a port and reads it. Call inside a tap. */
  async connect(): Promise<void> {
    const ports = serialPorts();
    if (!ports || this.isConnected || this.status === 'choosing') return;
    this.status = 'choosing';
    try {
      const port = await ports.requestPort();
      this.lines = [];
      this.noise = '';
      this.hasLostBytes = false;
      this.#gauge = new SerialGauge(port, this.#settings(), pageTimer, (event) =>
        this.#hear(event)
      );
      await this.#gauge.open({ baudRate: this.baudRate });
      this.status = this.#pattern ? 'reading' : 'learning';
    } catch (error) {
      this.#gauge = undefined;
      const isCalledOff = (error as { name?: string }).name === 'NotFoundError';
      this.status = isCalledOff ? 'off' : 'failed';
      this.detail = String(error);
    }
  }

  async disconnect(): Promise<void> {
    await this.#gauge?.close();
    this.#gauge = undefined;
  }

  /** Takes the place that the person chose for the thickness. */
  choose(pattern: LinePattern): void {
    this.#pattern = pattern;
    this.candidates = [];
    this.status = 'reading';
    this.#learn();
    this.#onLearnt({ baudRate: this.baudRate, ending: this.ending, pattern });
  }

  /** Forgets what was learnt and begins again. */
  forget(): void {
    this.#pattern = null;
    this.#lessonLines = [];
    this.candidates = [];
    this.#onLearnt(null);
    this.#learn();
    if (this.isConnected) this.status = 'learning';
  }

  #settings() {
    return { unit: this.#unit, pattern: this.#pattern, ending: this.ending };
  }

  #learn(): void {
    this.#gauge?.learn(this.#settings());
  }

  #hear(event: SerialEvent): void {
    switch (event.kind) {
      case 'line':
        this.#isTrial = false;
        this.lines = [...this.lines, event.text].slice(-LINES_SHOWN);
        if (this.status === 'learning' && event.isWhole) this.#study(event.text);
        return;
      case 'reading':
        this.noise = '';
        if (!this.#isTrial) this.#onReading(event.reading);
        return;
      case 'noise':
        this.noise = event.text;
        return;
      case 'bytes-lost':
        this.hasLostBytes = true;
        return;
      default:
        this.#gauge = undefined;
        this.status = event.kind;
    }
  }

  #study(line: string): void {
    this.#lessonLines = [...this.#lessonLines, line].slice(-LINES_SHOWN);
    const lesson = learnLinePattern(this.#lessonLines);
    // Trial readings are not counted: not the last of them either, which the pattern now fits.
    this.#isTrial = true;
    if (lesson.ok) return this.choose(lesson.pattern);
    if (lesson.reason !== 'ambiguous') return;
    this.candidates = lesson.candidates;
    this.status = 'choice';
  }
}
