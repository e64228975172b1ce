import { type GaugeInput, type InputSource, type JobState, type Preferences } from '$lib/app';
import { BothSides, SlateInHand, keepPoints, keptPoints, sayTold } from '$lib/app';
import { toHundredths } from '$lib/engine';
import { pileOf } from '$lib/engine/grading';
import type { AcceptedReading, GaugedSlate } from '$lib/gauge';
import {
  type JudgingGround,
  UsualRange,
  isWildReading,
  judgeSlate,
  likelyRangeOf,
  orderBand
} from '$lib/job';
import type { NewEvent, StoredEvent } from '$lib/journal';
import { words } from '$lib/text';
import type { BenchVoice } from './bench-voice.svelte.ts';
import type { PalletState } from './pallet.svelte.ts';
import type { SpotChecks, TappedSlate } from './spot-checks.svelte.ts';

/** What readings touch of the bench. */
interface ReadBench {
  readonly job: () => JobState;
  readonly preferences: Preferences;
  readonly desk: PalletState;
  readonly input: GaugeInput;
  readonly voice: BenchVoice;
  readonly checks: SpotChecks;
}

type LastEntry =
  | { readonly kind: 'act'; readonly saved: Promise<StoredEvent[] | undefined> }
  | { readonly kind: 'asked' };

/** From readings to slates: held still, point by point, judged and told its pile. */
export class Gauging {
  readonly #bench: ReadBench;
  /** Every fifth slate of the sample may be measured left and right. */
  readonly sides = new BothSides();
  readonly #slate = new SlateInHand();
  readonly #usualRange = new UsualRange();
  /** What the last number of the keypad made. */
  #lastEntry: LastEntry | undefined;

  constructor(bench: ReadBench) {
    this.#bench = bench;
  }

  /** Goes on with a slate that was begun before the page was left. */
  resume(): void {
    const { job, voice } = this.#bench;
    const { jobId, settings } = job();
    const kept = keptPoints(jobId);
    // one point of one: a slate that was to be measured left and right
    if (kept?.pointsMm.length === 1 && settings.pointsPerSlate === 1) this.sides.start();
    const prompt = kept && this.#slate.resume(kept, this.sides.wanted(settings.pointsPerSlate));
    voice.prompt = prompt && this.sides.promptOf(prompt);
  }

  /** One accepted number on its way to a slate: held still, then point by point. */
  take(reading: AcceptedReading, source: InputSource): void {
    const { job, preferences, desk, input, voice } = this.#bench;
    voice.refusal = undefined;
    if (!desk.current) {
      input.hold(reading.text);
      return voice.refuse({ ok: false, reason: 'no-pallet', text: reading.text });
    }
    const wanted = this.sides.wanted(job().settings.pointsPerSlate);
    const step = this.#slate.take(reading.valueMm, wanted, preferences.values.holdsStill);
    this.#keep();
    const isTyped = source === 'keypad';
    if (step.kind === 'slate') {
      const saved = this.#takeSlate(step.slate);
      this.#lastEntry = isTyped ? { kind: 'act', saved } : undefined;
    } else {
      this.#lastEntry = isTyped ? { kind: 'asked' } : undefined;
      voice.ask(this.sides.promptOf(step.prompt));
    }
  }

  /** The next slate is measured left and right. */
  startSides(): void {
    this.beginOther();
    this.sides.start();
    this.#bench.voice.ask({ kind: 'side', side: 'left' });
  }

  /** The slate in hand is measured on one side only: what is read of it counts. */
  skipSides(): void {
    const slate = this.#slate.endWithOne();
    this.restart();
    if (slate) void this.#takeSlate(slate);
  }

  /** Back on the keypad: what the number just taken made is unmade. */
  async takeBackLast(): Promise<void> {
    const { job, voice } = this.#bench;
    const last = this.#lastEntry;
    this.#lastEntry = undefined;
    voice.told = undefined;
    voice.prompt = undefined;
    if (last?.kind === 'asked') {
      this.#slate.takeBack();
      this.#keep();
      const side = this.#slate.begun ? 'right' : 'left';
      if (this.sides.isOn) voice.prompt = { kind: 'side', side };
    } else if (last?.kind === 'act') {
      const events = await last.saved;
      if (events) await job().undo(events[0].id);
    }
  }

  /** Begins the slate in hand anew: what was read or refused of it is dropped. */
  restart(): void {
    const { job, input, voice } = this.#bench;
    this.#slate.restart();
    this.sides.stop();
    keepPoints(job().jobId, undefined);
    input.drop();
    voice.prompt = undefined;
  }

  /** Something else was done with a slate: the number before it can no longer be corrected. */
  beginOther(): void {
    this.restart();
    this.forgetEntry();
  }

  /** What the last number made stays as it is. */
  forgetEntry(): void {
    this.#lastEntry = undefined;
  }

  #takeSlate(slate: GaugedSlate): Promise<StoredEvent[] | undefined> {
    const { job, desk, voice, checks } = this.#bench;
    const { thicknessMm, taperMm } = slate;
    const points = slate.pointsMm.map(toHundredths);
    const { palletId = '', label: palletLabel = '' } = desk.current ?? {};
    const { grades, pileNumbers: piles } = job();
    voice.prompt = undefined;
    if (grades && checks.asked)
      return this.#takeCheck(thicknessMm, points, checks.asked, grades.thresholdsMm);
    const judgement = judgeSlate(thicknessMm, this.#ground());
    const { pile } = judgement;
    const gradesId = grades?.gradesId ?? null;
    const number = pile && piles[pile - 1];
    const body = { palletId, points, gradesId, pile: number, ...this.sides.body };
    this.sides.stop();
    // What may be misread counts nowhere before the sorter says what it is.
    const isWild =
      judgement.rogue !== null && isWildReading(thicknessMm, likelyRangeOf(job().view));
    const act: NewEvent = { type: isWild ? 'readingHeld' : 'slateGauged', body };
    const told = {
      ...{ kind: 'gauged' as const, piles, thicknessMm, taperMm, points, judgement },
      ...{ act, palletLabel }
    };
    const saved = voice.tell(told);
    const { feedback } = voice;
    const { tooThick, tooThin } = words.text.sort.told;
    if (judgement.rogue) feedback.tellMind(judgement.rogue.isTooThick ? tooThick : tooThin);
    else if (pile === null) feedback.tellMeasured(sayTold(told, words.text, words.numbers));
    else feedback.tellPile(pile, piles, words.text.common.pile(pile, piles));
    return saved;
  }

  #takeCheck(
    thicknessMm: number,
    points: number[],
    tap: TappedSlate,
    thresholdsMm: readonly number[]
  ): Promise<StoredEvent[] | undefined> {
    const { job, desk, voice, checks } = this.#bench;
    const { pile, palletId, gradesId } = tap;
    const gauged = pileOf(thicknessMm, thresholdsMm);
    const number = job().pileNumbers[pile - 1];
    const body = { palletId, of: 'tap' as const, pile: number, gradesId, points };
    checks.putOff();
    const { checkAgrees, checkDiffers } = words.text.sort.told;
    if (gauged === pile) voice.feedback.tellMeasured(checkAgrees);
    else voice.feedback.tellMind(checkDiffers);
    const saved = voice.tell({
      kind: 'checked',
      act: { type: 'slateChecked', body },
      palletLabel: desk.all.find((pallet) => pallet.palletId === palletId)?.label ?? '',
      piles: job().pileNumbers,
      thicknessMm,
      felt: pile,
      gauged
    });
    void saved.then(() => checks.learn());
    return saved;
  }

  #ground(): JudgingGround {
    const { grades, settings, delivery, view, summary } = this.#bench.job();
    return {
      thresholdsMm: grades?.thresholdsMm,
      gaugeSdMm: settings.gaugeSdMm,
      kickAllowanceMm: settings.kickAllowanceMm,
      orderBand: orderBand(delivery),
      usualRange: this.#usualRange.at(view, summary?.events ?? 0)
    };
  }

  /** What is read of the slate so far lasts beyond the page. */
  #keep(): void {
    keepPoints(this.#bench.job().jobId, this.#slate.begun);
  }
}
