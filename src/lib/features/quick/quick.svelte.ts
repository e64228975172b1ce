import {
  GaugeInput,
  type InputRefusal,
  type Preferences,
  journalStore,
  newJobId,
  today
} from '$lib/app';
import {
  type AcceptedReading,
  type CaptureField,
  type LikelyRange,
  parseReading
} from '$lib/gauge';
import type { NewEvent, SlateSpecBody, SlopeBody } from '$lib/journal';
import { slateSpec } from '$lib/engine/roof';
import { CUSTOMARY_OVERHANGS } from '$lib/job';
import { words } from '$lib/text';
import { readLength } from '$lib/ui';
import { readPasted, type PastedReadings } from './pasted-readings.ts';
import {
  type QuickDraft,
  type QuickField,
  EMPTY_DRAFT,
  keepDraft,
  keptDraft
} from './quick-draft.ts';
import { type QuickNumbers, READINGS_ASKED, quickSplit } from './quick-split.ts';

/** Room beyond the readings so far in which a number without a point is likely. Ours. */
const ROOM = 1.5;
const ENOUGH_READINGS = 5;

/** What was typed, as numbers; or the fields that are wrong. */
export type TypedNumbers =
  | { readonly ok: true; readonly numbers: QuickNumbers }
  | { readonly ok: false; readonly wrong: readonly QuickField[] };

/** A quick split: the numbers, the readings, and what comes of them. */
export class QuickState {
  draft = $state.raw<QuickDraft>(EMPTY_DRAFT);
  refusal = $state.raw<InputRefusal>();
  pasted = $state('');
  pasteProblem = $state.raw<Extract<PastedReadings, { ok: false }>>();
  /** Whether the numbers were tried, so that what is wrong may be said. */
  isTried = $state(false);
  problem = $state('');
  readonly input: GaugeInput;

  readonly typed: TypedNumbers = $derived.by(() => readNumbers(this.draft));
  readonly split = $derived.by(() =>
    this.typed.ok ? quickSplit(this.typed.numbers, this.draft.readingsMm) : undefined
  );

  constructor(preferences: Preferences) {
    this.input = new GaugeInput(
      {
        onReading: (reading) => this.#take(reading),
        onRefused: (refusal) => (this.refusal = refusal),
        onReopened: () => this.takeBack(),
        onCleared: () => (this.refusal = undefined),
        onEndingLearnt: (wedgeEnding) => preferences.set({ wedgeEnding }),
        likely: () => likelyOf(this.draft.readingsMm)
      },
      preferences.values.wedgeEnding
    );
  }

  /** Takes up what this device keeps. */
  open(): void {
    this.draft = keptDraft();
  }

  start(page: EventTarget, field: CaptureField & { focus?: () => void }): () => void {
    this.input.setUnit('mm');
    return this.input.listen(page, field);
  }

  type(field: QuickField, text: string): void {
    this.#change({ fields: { ...this.draft.fields, [field]: text } });
  }

  know(knows: QuickDraft['knows']): void {
    this.#change({ knows });
  }

  /** From the numbers to the gauge, if they stand. */
  measure(): void {
    this.isTried = true;
    if (!this.typed.ok) return;
    const first = quickSplit(this.typed.numbers, [4, 5, 6, 7, 8, 9]);
    if (!first.ok) return;
    const isEnough = this.draft.readingsMm.length >= READINGS_ASKED;
    this.#change({ stage: isEnough ? 'answer' : 'measure' });
  }

  go(stage: QuickDraft['stage']): void {
    this.refusal = undefined;
    this.#change({ stage });
  }

  /** Takes what a refused number may have meant. */
  choose(valueMm: number): void {
    this.input.takeReading(parseReading(`${valueMm} mm`, 'mm'), 'choice');
  }

  takeBack(): void {
    this.refusal = undefined;
    this.#change({ readingsMm: this.draft.readingsMm.slice(0, -1) });
  }

  /** Takes the pasted list, whole or not at all. */
  takePasted(): void {
    const read = readPasted(this.pasted, likelyOf(this.draft.readingsMm));
    this.pasteProblem = read.ok ? undefined : read;
    if (!read.ok) return;
    this.pasted = '';
    this.refusal = undefined;
    this.#add(read.readingsMm);
  }

  startOver(): void {
    this.#change({ ...EMPTY_DRAFT });
    this.isTried = false;
  }

  /** Makes a job of the split: its numbers, its readings and its grades. Gives the job's id. */
  async keep(): Promise<string | undefined> {
    const { typed, split, draft } = this;
    if (!typed.ok || !split?.ok) return undefined;
    const jobId = newJobId();
    const palletId = newJobId();
    const { slates, roof } = typed.numbers;
    const text = words.text.quick;
    const acts: NewEvent[] = [
      {
        type: 'jobOpened',
        body: { name: text.jobName(words.numbers.day(today())) }
      },
      { type: 'palletAdded', body: { palletId, label: text.pallet, slates } },
      ...(roof.kind === 'size'
        ? ([
            { type: 'slateSpecSet', body: roof.spec },
            { type: 'slopeSet', body: roof.slope }
          ] as const)
        : []),
      ...draft.readingsMm.map((mm): NewEvent => ({
        type: 'slateGauged',
        body: { palletId, points: [Math.round(mm * 100)], gradesId: null, pile: null }
      })),
      {
        type: 'gradesSet',
        body: {
          method: split.method,
          thresholdsMm: [...split.thresholdsMm],
          sampleSlates: draft.readingsMm.length
        }
      }
    ];
    try {
      await journalStore().append(jobId, acts);
    } catch (error) {
      this.problem = words.text.common.saveFailed(String(error));
      return undefined;
    }
    this.startOver();
    return jobId;
  }

  #take(reading: AcceptedReading): void {
    this.refusal = undefined;
    this.#add([reading.valueMm]);
  }

  /** At twenty the answer shows by itself. */
  #add(readingsMm: readonly number[]): void {
    const before = this.draft.readingsMm.length;
    const all = [...this.draft.readingsMm, ...readingsMm];
    const isDone = before < READINGS_ASKED && all.length >= READINGS_ASKED;
    this.#change({ readingsMm: all, ...(isDone && { stage: 'answer' }) });
  }

  #change(change: Partial<QuickDraft>): void {
    this.draft = { ...this.draft, ...change };
    keepDraft(this.draft);
  }
}

function readNumbers({ knows, fields }: QuickDraft): TypedNumbers {
  const wrong: QuickField[] = [];
  const whole = (field: QuickField, most: number): number => {
    const text = fields[field].trim().replace(/[\s,](?=\d{3}$)/, '');
    const value = /^\d{1,6}$/.test(text) ? Number(text) : 0;
    if (value < 1 || value > most) wrong.push(field);
    return value;
  };
  const length = (field: QuickField): number => {
    const read = readLength(fields[field], 'mm');
    if (!read.ok || read.value <= 0) wrong.push(field);
    return read.ok ? read.value : 0;
  };
  const slates = whole('slates', 100_000);
  if (knows === 'courses') {
    const courses = whole('courses', 300);
    if (wrong.length > 0) return { ok: false, wrong };
    return { ok: true, numbers: { slates, roof: { kind: 'courses', courses } } };
  }
  const rafterLengthMm = length('rafterMm');
  const eaveWidthMm = length('widthMm');
  const lengthMm = length('slateLengthMm');
  const widthMm = length('slateWidthMm');
  const headlapMm = length('headlapMm');
  if (wrong.length > 0) return { ok: false, wrong };
  const { nailing, jointMinMm, jointMaxMm } = slateSpec({ lengthMm, widthMm, headlapMm });
  const spec: SlateSpecBody = {
    ...{ lengthMm, widthMm, headlapMm, nailing, jointMinMm, jointMaxMm },
    ...CUSTOMARY_OVERHANGS
  };
  const slope: SlopeBody = {
    slopeId: 'quick',
    name: words.text.quick.slope,
    ...{ rafterLengthMm, eaveWidthMm, pitchDegrees: null, eaveHeightMm: 0 },
    left: { kind: 'verge' },
    right: { kind: 'verge' },
    openings: []
  };
  return { ok: true, numbers: { slates, roof: { kind: 'size', spec, slope } } };
}

function likelyOf(readingsMm: readonly number[]): LikelyRange | undefined {
  if (readingsMm.length < ENOUGH_READINGS) return undefined;
  return { lowMm: Math.min(...readingsMm) / ROOM, highMm: Math.max(...readingsMm) * ROOM };
}
