import { type AcceptedReading, type CaptureField, parseReading } from '$lib/gauge';
import {
  GaugeInput,
  type InputRefusal,
  type InputSource,
  SIDES_EVERY,
  journalStore
} from '$lib/app';
import type { JobState, Preferences } from '$lib/app';
import type { NewEvent, SetAsideReason, SetAsideUse, StoredEvent } from '$lib/journal';
import { heldReadings, likelyRangeOf, listStep, sampleStep, undoableActs } from '$lib/job';
import { words } from '$lib/text';
import { sayUndo } from '$lib/ui';
import { BenchVoice } from './bench-voice.svelte.ts';
import { GaugeSetup } from './gauge-setup.svelte.ts';
import { Gauging } from './gauging.svelte.ts';
import { HandKeys } from './hand-keys.svelte.ts';
import { PalletState } from './pallet.svelte.ts';
import { SpotChecks } from './spot-checks.svelte.ts';

/** A second tap on the same pile so soon is the finger bouncing, ms: no slate comes that fast. */
const BOUNCE_MS = 150;
/** Slates sorted by key that a gauge's number can give back: it has no more digits. */
const MOST_TAKEN_BACK = 16;

/**
 * The sorting bench: a reading or a tap becomes one event of the journal, and the screen says on
 * which pile the slate goes.
 */
export class SortState {
  readonly #job: () => JobState;
  readonly #preferences: Preferences;
  readonly desk: PalletState;
  readonly input: GaugeInput;
  readonly voice: BenchVoice;
  readonly setup: GaugeSetup;
  readonly gauging: Gauging;
  readonly checks: SpotChecks;
  readonly keys: HandKeys;
  /** Whether a number is typed while sorting by hand, as for a spot check. */
  isTyping = $state(false);
  #deviceId = $state('');
  #tappedAt = { pile: 0, at: -Infinity };
  /** Saves of the slates sorted by key, newest last: a gauge may turn out to have typed them. */
  #byKey: Promise<StoredEvent[] | undefined>[] = [];

  /** Whether each slate is put on its pile by a tap or a key. */
  readonly isByHand = $derived.by(() => this.#preferences.values.way === 'hand' && !this.isTyping);
  /**
   * What is asked or recalled in the place of the verdict: the unit where reading after reading is
   * refused, the rest only while there is no verdict.
   */
  readonly asks = $derived.by(() => {
    const { told, prompt, refusal } = this.voice;
    if (this.input.isUnitInDoubt) return 'unit';
    if (this.#preferences.values.way === 'hand') return undefined;
    if (prompt || refusal) return undefined;
    if (!this.setup.isUnitKnown) return 'unit';
    if (told) return undefined;
    return this.#preferences.values.hasSeenTail ? undefined : 'tail';
  });
  /** Whether to ask for left and right of the next slate. */
  readonly asksSides = $derived.by(() => {
    const { grades, settings } = this.#job();
    if (grades || this.isByHand || settings.pointsPerSlate > 1) return false;
    if (this.gauging.sides.isOn || this.voice.prompt || this.voice.refusal) return false;
    const measured = this.desk.all.reduce((sum, pallet) => sum + pallet.measured, 0);
    return measured % SIDES_EVERY === SIDES_EVERY - 1;
  });
  /** How far the sample before grades is. */
  readonly sample = $derived.by(() =>
    this.#job().grades ? undefined : sampleStep(this.desk.all, this.desk.current?.palletId)
  );
  /** The delivery's sample list, while nothing else was taken from the current pallet. */
  readonly list = $derived.by(() => {
    const pallet = this.desk.current;
    return pallet && listStep(this.#job().view, pallet.palletId);
  });
  /** Readings of this device that wait for an answer: two people must not keep the same slate. */
  readonly held = $derived.by(() =>
    heldReadings(this.#job().view).filter(({ deviceId }) => deviceId === this.#deviceId)
  );
  /** Whether it is asked what the slate told last is or where it goes, or one before it. */
  get isAsked(): boolean {
    const { told } = this.voice;
    if (told?.kind === 'checked') return told.felt !== told.gauged;
    return this.held.length > 0 || (told?.kind === 'gauged' && told.judgement.rogue !== null);
  }
  readonly undoable: StoredEvent[] = $derived.by(() =>
    undoableActs(this.#job().newest, this.#job().view, this.#deviceId)
  );

  constructor(job: () => JobState, preferences: Preferences, random: () => number = Math.random) {
    this.#job = job;
    this.#preferences = preferences;
    this.desk = new PalletState(job, preferences);
    this.voice = new BenchVoice(job, preferences);
    this.checks = new SpotChecks(job, () => preferences.values.nickname, random);
    this.keys = new HandKeys(preferences, {
      piles: () => job().pileNumbers,
      isByHand: () => this.isByHand,
      onSort: (pile) => this.#sortByKey(pile),
      onUndo: () => void this.#undoLast(),
      onTakeBack: (slates) => this.#takeBackKeys(slates),
      onDropTyped: () => this.input.clear()
    });
    const { wedgeEnding } = preferences.values;
    const audience = {
      onReading: (reading: AcceptedReading, source: InputSource) => this.#take(reading, source),
      onRefused: (refusal: InputRefusal) => this.voice.refuse(refusal),
      onReopened: () => void this.gauging.takeBackLast(),
      onCleared: () => (this.voice.refusal = undefined),
      onEndingLearnt: (ending: typeof wedgeEnding) => this.setup.learnEnding(ending),
      likely: () => likelyRangeOf(job().view),
      onKey: (...key: Parameters<HandKeys['press']>) => this.keys.press(...key),
      onKeyUp: (...up: Parameters<HandKeys['release']>) => this.keys.release(...up)
    };
    this.input = new GaugeInput(audience, wedgeEnding);
    const { desk, input, voice, checks } = this;
    this.gauging = new Gauging({ job, preferences, desk, input, voice, checks });
    const restart = (): void => this.gauging.restart();
    this.setup = new GaugeSetup({ job, preferences, input, voice, restart });
  }

  /** Begins to listen for readings; the function returned ends it. */
  start(page: EventTarget, field: CaptureField & { focus?: () => void }): () => void {
    void journalStore()
      .deviceId()
      .then((deviceId) => (this.#deviceId = deviceId))
      .catch(() => undefined); // a database that fails shows itself at the next act
    this.setup.start();
    this.gauging.resume();
    const stop = this.input.listen(page, field);
    return () => {
      this.keys.flush();
      stop();
      this.voice.close();
      this.setup.close();
    };
  }

  /** A tap of a finger: the sorter felt that the slate goes on the pile at this place. */
  tap(pile: number): void {
    const at = performance.now();
    const isBounce = this.#tappedAt.pile === pile && at - this.#tappedAt.at < BOUNCE_MS;
    if (isBounce) return;
    this.#tappedAt = { pile, at };
    this.#sort(pile);
  }

  /** Sets a slate aside: a new one, or the last one, whose entry is then taken back. */
  async setAside(reason: SetAsideReason, use: SetAsideUse, isLast: boolean): Promise<void> {
    const pallet = this.desk.current;
    if (!pallet) return;
    const { palletId, label } = pallet;
    const last = isLast ? this.voice.lastOnPile : undefined;
    const voided = last && (await this.voice.lastSaved)?.at(-1);
    const points = last?.kind === 'gauged' ? { points: last.points } : {};
    const aside: NewEvent = { type: 'slateSetAside', body: { palletId, reason, use, ...points } };
    const act: NewEvent[] = voided
      ? [{ type: 'entryVoided', body: { voids: voided.id } }, aside]
      : [aside];
    this.gauging.beginOther();
    this.voice.feedback.tellSetAside(
      `${words.text.sort.told.setAside}: ${words.text.sort.setAside.reasons[reason]}`
    );
    await this.voice.tell({ kind: 'setAside', act, palletLabel: label, reason });
  }

  /** Takes one of the last entries back. */
  async undo(eventId: string): Promise<void> {
    const undone = this.undoable.find(({ id }) => id === eventId);
    if (!undone) return;
    const what = this.sayUndo(undone);
    const act: NewEvent = { type: 'entryVoided', body: { voids: eventId } };
    this.gauging.forgetEntry();
    this.input.drop();
    this.voice.feedback.tellUndone(`${words.text.sort.told.undone}: ${what}`);
    if (undone.type === 'slateTapped') this.checks.forgetLast();
    await this.voice.tell({ kind: 'undone', act, palletLabel: '', what });
  }

  /** Name of the pallet that an entry is of; empty where it is of none. */
  palletOf({ body }: StoredEvent): string {
    const { palletId } = body as { palletId?: unknown };
    return this.desk.all.find((each) => each.palletId === palletId)?.label ?? '';
  }

  /** What Undo would take back, in words. */
  sayUndo(event: StoredEvent): string {
    const { pileNumbers } = this.#job();
    return sayUndo(event, pileNumbers, this.palletOf(event), words.text, words.numbers);
  }

  /** Takes what a refused number may have meant. */
  choose(valueMm: number): void {
    this.input.takeReading(parseReading(`${valueMm} mm`, 'mm'), 'choice');
  }

  /** The reminder of the tail third was seen: this device needs it no more. */
  closeTail(): void {
    this.#preferences.set({ hasSeenTail: true });
  }

  #take(reading: AcceptedReading, source: InputSource): void {
    this.voice.feedback.prime();
    this.setup.answerUnit();
    this.gauging.take(reading, source);
  }

  #sort(pile: number): void {
    const pallet = this.desk.current;
    if (!pallet) return;
    const { grades, pileNumbers: piles } = this.#job();
    const { palletId, label } = pallet;
    const gradesId = grades?.gradesId ?? null;
    this.gauging.beginOther();
    const act: NewEvent = {
      type: 'slateTapped',
      body: { palletId, pile: piles[pile - 1], gradesId }
    };
    const { feedback } = this.voice;
    void this.voice.tell({ kind: 'tapped', act, palletLabel: label, pile, piles });
    feedback.tellPile(pile, piles, words.text.common.pile(pile, piles));
    if (grades && this.checks.tapped({ pile, palletId, gradesId: grades.gradesId }))
      feedback.tellMind('');
  }

  /** A key takes back the last entry, also one that is still being saved. */
  async #undoLast(): Promise<void> {
    await this.voice.lastSaved;
    const [last] = this.undoable;
    if (last) await this.undo(last.id);
  }

  #sortByKey(pile: number): void {
    this.voice.feedback.prime();
    this.#sort(pile);
    const { lastSaved } = this.voice;
    if (lastSaved) this.#byKey = [...this.#byKey, lastSaved].slice(-MOST_TAKEN_BACK);
  }

  /** The last piles sorted by key were the head of a gauge's number: they are taken back. */
  #takeBackKeys(count: number): void {
    const taken = this.#byKey.splice(-count);
    this.voice.told = undefined;
    this.checks.forgetLast();
    for (const saved of taken)
      void saved.then((events) => events && this.#job().undo(events[0].id));
  }
}
