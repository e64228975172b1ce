import {
  type CaptureField,
  type GaugedSlate,
  type AcceptedReading,
  addPoint,
  parseReading,
  readPoints,
  startPoints
} from '$lib/gauge';
import { type NewEvent, type SetAsideReason, partOf } from '$lib/journal';
import {
  type ListProgress,
  type OfferedSlate,
  type Place,
  listProgress,
  offeredSlates,
  placeKey,
  sortingBegan
} from '$lib/job';
import {
  FIELDS,
  emptyFields,
  lacksSizes,
  typedFields,
  wrongFields
} from './delivery-slate-fields.ts';
import { slateAct } from './delivery-slate-act.ts';
import { type KeptSlate, keepSlate, keptSlate } from './delivery-measure-kept.ts';
import { GaugeInput, type InputRefusal } from '$lib/app';
import type { JobState } from '$lib/app';
import type { Preferences } from '$lib/app';
import { BothSides, SIDES_EVERY, SlateInHand } from '$lib/app';
import type { Prompt } from '$lib/app';

/** A place of the list with the name of its pallet. */
export type ListedPlace = ListProgress['places'][number];

/** A slate of all its points. */
const slateOf = (pointsMm: readonly number[]): GaugedSlate => {
  const [last] = pointsMm.slice(-1);
  return addPoint({ ...startPoints(pointsMm.length), pointsMm: pointsMm.slice(0, -1) }, last)
    .slate as GaugedSlate;
};

/**
 * Measuring the sample: one place of the list after the other. What is gauged and seen of the slate
 * in hand is one event once it is saved. A slate without marks is saved by Enter or by the next
 * reading; one with marks waits for its button, and the next reading with it.
 */
export class MeasureWizard {
  readonly #job: () => JobState;
  readonly #preferences: Preferences;
  readonly #slate = new SlateInHand();
  readonly input: GaugeInput;
  /** Every fifth place of the list may be measured left and right. */
  readonly sides = new BothSides();
  /** Places put off for later, in that order. */
  #later = $state.raw<readonly string[]>([]);
  #chosen = $state<string>();
  gauged = $state.raw<GaugedSlate>();
  prompt = $state.raw<Prompt>();
  refusal = $state.raw<InputRefusal>();
  fields = $state(typedFields());
  ring = $state<'clear' | 'dull'>();
  /** Defects seen; undefined: not looked over. */
  defects = $state.raw<readonly SetAsideReason[]>();
  /** Whether a save was tried while sizes of the full check were empty. */
  areSizesAsked = $state(false);
  /** Whether it was said that sizes come later: it holds until the page is left. */
  areSizesLater = $state(false);
  /** The slate that is on the list already and gets its sizes now. */
  #again = $state.raw<{ readonly id: string; readonly place: string }>();
  /** Whether a save was tried with nothing to save. */
  isEmptyTried = $state(false);
  /**
   * Readings of the next slates, which wait until the slate in hand is saved: one number, or all
   * points of a slate, mm.
   */
  #waiting = $state.raw<readonly (readonly number[])[]>([]);
  /** Whether Enter was pressed on a slate with marks, which is saved by its button alone. */
  isButtonAsked = $state(false);
  isSaving = $state(false);
  /** The slate saved last, to be taken back; with what it was. */
  last = $state.raw<{ readonly id: string; readonly place: ListedPlace }>();

  readonly offered: readonly OfferedSlate[] = $derived.by(() => offeredSlates(this.#job().view));
  readonly progress: ListProgress | undefined = $derived.by(() =>
    listProgress(this.#job().view, this.offered)
  );
  /** The place to measure now; undefined when all are measured. */
  readonly place: ListedPlace | undefined = $derived.by(() => {
    const { places = [] } = this.progress ?? {};
    if (this.#again) return places.find((place) => placeKey(place) === this.#again?.place);
    const open = places.filter(({ isMeasured }) => !isMeasured);
    const chosen = open.find((place) => placeKey(place) === this.#chosen);
    const waiting = (place: Place): number => this.#later.indexOf(placeKey(place));
    return chosen ?? [...open].sort((one, other) => waiting(one) - waiting(other))[0];
  });
  /** Whether sorting has begun on the pallet: the slate would be listed apart. */
  readonly isLate = $derived.by(
    () => !!this.place && sortingBegan(this.#job().view, this.place.palletId) !== undefined
  );
  /** Whether to ask for left and right of the slate in hand. */
  readonly asksSides = $derived.by(() => {
    const { place, gauged, sides, prompt } = this;
    if (!place || gauged || prompt || sides.isOn) return false;
    const at = this.progress?.places.findIndex((other) => placeKey(other) === placeKey(place)) ?? 0;
    const isFifth = at % SIDES_EVERY === SIDES_EVERY - 1;
    return isFifth && this.#job().settings.pointsPerSlate === 1;
  });
  /** Thickness of the next slate, read before this one was saved, mm; undefined where none was. */
  readonly waitingMm = $derived.by(() => {
    const last = this.gauged && this.#waiting.at(-1);
    return last && slateOf(last).thicknessMm;
  });
  /** Whether more than its thickness is known of the slate in hand. */
  readonly hasMarks = $derived(
    this.ring !== undefined ||
      this.defects !== undefined ||
      FIELDS.some((field) => this.fields[field].trim() !== '')
  );
  readonly wrongFields = $derived(wrongFields(this.fields));
  /** Whether the slate in hand gets the full check and a size is still empty. */
  readonly lacksSizes = $derived.by(
    () => !!this.gauged && !!this.place?.isFull && emptyFields(this.fields).length > 0
  );
  /** Slates measured for the full check that lack a size, where sorting has not begun. */
  readonly withoutSizes: readonly ListedPlace[] = $derived.by(() => {
    const lacking = this.offered.filter(lacksSizes).map(placeKey);
    return (this.progress?.places ?? []).filter(
      (place) =>
        lacking.includes(placeKey(place)) &&
        sortingBegan(this.#job().view, place.palletId) === undefined
    );
  });

  constructor(job: () => JobState, preferences: Preferences) {
    this.#job = job;
    this.#preferences = preferences;
    this.input = new GaugeInput(
      {
        onReading: (reading) => this.#take(reading),
        onRefused: (refusal) => this.#refuse(refusal),
        onReopened: () => this.gaugeAgain(),
        onCleared: () => (this.refusal = undefined),
        onEndingLearnt: (wedgeEnding) => preferences.set({ wedgeEnding })
      },
      preferences.values.wedgeEnding
    );
    this.#restore(keptSlate(job().jobId));
  }

  /** Keeps the slate in hand on this device until it is saved. */
  keep(): void {
    const { place, gauged, ring, defects, sides } = this;
    const fields = { ...this.fields };
    // Points are asked for one after the other: what is read of them changes with the prompt.
    const begun = this.prompt && this.#slate.begun;
    const slate: KeptSlate | undefined =
      place && (gauged || begun || this.hasMarks)
        ? {
            place: placeKey(place),
            fields,
            ...(gauged && { gauged }),
            ...(begun && { begun }),
            ...(ring && { ring }),
            ...(defects && { defects }),
            ...(this.#again && { isAgain: true }),
            ...(sides.isOn && { isSides: true }),
            ...sides.body
          }
        : undefined;
    keepSlate(this.#job().jobId, slate);
  }

  /** Begins to listen for readings; the function returned ends it. */
  start(page: EventTarget, field: CaptureField & { focus?: () => void }): () => void {
    this.input.setUnit(this.#job().settings.readingUnit === 'in' ? 'inch' : 'mm');
    return this.input.listen(page, field);
  }

  /** Takes what a refused number may have meant. */
  choose(valueMm: number): void {
    this.input.takeReading(parseReading(`${valueMm} mm`, 'mm'), 'choice');
  }

  /** Goes to a place out of turn. */
  goTo(place: Place): void {
    this.#chosen = placeKey(place);
    this.#waiting = [];
    this.#clear();
  }

  /** Leaves the place for later. */
  putOff(): void {
    if (!this.place) return;
    const key = placeKey(this.place);
    this.#later = [...this.#later.filter((other) => other !== key), key];
    this.#chosen = undefined;
    this.#waiting = [];
    this.#clear();
  }

  /** Drops the thickness of the slate in hand, and what was read after it. */
  gaugeAgain(): void {
    this.#waiting = [];
    this.#dropThickness();
  }

  toggleDefect(defect: SetAsideReason): void {
    const seen = this.defects ?? [];
    this.defects = seen.includes(defect)
      ? seen.filter((other) => other !== defect)
      : [...seen, defect];
  }

  /** Keeps the slate in hand; false when there is nothing to keep or it was not saved. */
  async save(): Promise<boolean> {
    const place = this.place;
    const act = place && slateAct(place, this.progress?.draw.id ?? '', this);
    this.isEmptyTried = act === undefined;
    this.areSizesAsked = this.lacksSizes && !this.areSizesLater;
    if (!place || !act || this.isSaving || this.areSizesAsked || this.wrongFields.length > 0)
      return false;
    this.isSaving = true;
    const again = this.#again;
    const before: NewEvent[] = again ? [{ type: 'entryVoided', body: { voids: again.id } }] : [];
    try {
      const events = await this.#job().act([...before, act], this.#preferences.values.nickname);
      if (!events) return false;
      // To take back a slate that got its sizes would leave it on no list at all.
      this.last = again ? undefined : { id: events[0].id, place };
      this.#chosen = undefined;
      this.#clear();
      return true;
    } finally {
      this.isSaving = false;
      this.#goOn();
    }
  }

  /** Keeps the slate in hand without its sizes; those after it may lack theirs too. */
  saveSizesLater(): Promise<boolean> {
    this.areSizesLater = true;
    return this.save();
  }

  /** Takes a slate that lacks sizes in hand again, as it was saved. */
  addSizes(place: Place): void {
    const key = placeKey(place);
    const { id } = this.offered.find((slate) => lacksSizes(slate) && placeKey(slate) === key) ?? {};
    const slate = partOf(this.#job().view, 'sample').slates.find((setting) => setting.id === id);
    if (!id || !slate) return;
    this.goTo(place);
    this.#again = { id, place: key };
    const { points, sample, rocks } = slate.value;
    this.gauged = slateOf(points.map((point) => point / 100));
    this.fields = typedFields(sample);
    this.ring = sample.ring;
    this.defects = sample.defects;
    if (rocks !== undefined) this.#startSides(rocks);
    this.areSizesAsked = true;
  }

  /** Takes the slate saved last back, and goes to its place. */
  async undo(): Promise<void> {
    const last = this.last;
    if (!last || !(await this.#job().undo(last.id))) return;
    this.last = undefined;
    this.goTo(last.place);
  }

  /** Keeps a slate that was looked over: its ring is clear and it has no fault. */
  async saveSound(): Promise<boolean> {
    this.ring = 'clear';
    this.defects = [];
    return this.save();
  }

  async setPoints(pointsPerSlate: number): Promise<void> {
    this.gaugeAgain();
    await this.#job().act({ type: 'jobSettingsSet', body: { pointsPerSlate } });
  }

  #take(reading: AcceptedReading): void {
    this.#takePoints([reading.valueMm]);
  }

  #takePoints(pointsMm: readonly number[]): void {
    this.refusal = undefined;
    this.isEmptyTried = false;
    if (!this.place) return;
    this.#waiting = [...this.#waiting, pointsMm];
    this.#goOn();
  }

  /** Enter with nothing typed saves a slate that is gauged and has no marks. */
  #refuse(refusal: InputRefusal): void {
    const pointsMm = readPoints(refusal.text, this.input.unit);
    if (pointsMm) {
      this.input.drop();
      this.#takePoints(pointsMm);
    } else if (refusal.reason !== 'empty' || !this.gauged) this.refusal = refusal;
    else if (this.hasMarks) this.isButtonAsked = true;
    else void this.save();
  }

  /** Gauges with what waits; a slate without marks is saved for it. */
  #goOn(): void {
    while (this.place && !this.gauged && this.#waiting.length > 0) {
      const [pointsMm, ...others] = this.#waiting;
      this.#waiting = others;
      this.#gauge(pointsMm);
    }
    const isPlain = this.gauged && !this.hasMarks;
    if (this.#waiting.length > 0 && isPlain && !this.isSaving && !this.areSizesAsked)
      void this.save();
  }

  #gauge(pointsMm: readonly number[]): void {
    if (pointsMm.length > 1) {
      this.#slate.restart();
      this.prompt = undefined;
      this.gauged = slateOf(pointsMm);
      return;
    }
    const wanted = this.sides.wanted(this.#job().settings.pointsPerSlate);
    const step = this.#slate.take(pointsMm[0], wanted, this.#preferences.values.holdsStill);
    this.prompt = step.kind === 'asked' ? this.sides.promptOf(step.prompt) : undefined;
    this.gauged = step.kind === 'slate' ? step.slate : undefined;
  }

  /** The slate in hand is measured left and right. */
  startSides(): void {
    this.#dropThickness();
    this.#startSides();
    this.prompt = { kind: 'side', side: 'left' };
  }

  /** Left out, `rocks` is not tried: of a claim only what was answered counts. */
  #startSides(rocks?: boolean): void {
    this.sides.start();
    this.sides.rocks = rocks;
  }

  /** It is measured on one side only: what is read of it counts. */
  skipSides(): void {
    const slate = this.#slate.endWithOne();
    this.#dropThickness();
    this.gauged = slate;
  }

  #dropThickness(): void {
    this.#slate.restart();
    this.sides.stop();
    this.gauged = undefined;
    this.isButtonAsked = false;
    this.prompt = undefined;
    this.refusal = undefined;
  }

  /** Takes up the slate that was in hand when the page was left, if its place is still open. */
  #restore(kept: KeptSlate | undefined): void {
    const place = this.progress?.places.find((listed) => placeKey(listed) === kept?.place);
    if (!kept || !place) return;
    if (place.isMeasured) {
      if (!kept.isAgain || !this.withoutSizes.some((each) => placeKey(each) === kept.place)) return;
      this.addSizes(place);
    }
    this.#chosen = kept.place;
    this.gauged = kept.gauged;
    if (kept.isSides ?? kept.rocks !== undefined) this.#startSides(kept.rocks);
    const wanted = this.sides.wanted(this.#job().settings.pointsPerSlate);
    const asked = kept.begun && this.#slate.resume(kept.begun, wanted);
    this.prompt = asked && this.sides.promptOf(asked);
    for (const field of FIELDS) this.fields[field] = kept.fields[field] ?? '';
    this.ring = kept.ring;
    this.defects = kept.defects;
  }

  #clear(): void {
    this.#dropThickness();
    this.input.clear();
    this.fields = typedFields();
    this.ring = undefined;
    this.defects = undefined;
    this.isEmptyTried = this.areSizesAsked = false;
    this.#again = undefined;
  }
}
