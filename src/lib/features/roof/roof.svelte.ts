import { untrack } from 'svelte';
import { type ShapeSlope, type SlopeLayout, layOutRoof, slopeRound } from '$lib/engine/roof';
import { type NewEvent, type SlateSpecBody, type SlopeBody, own } from '$lib/journal';
import { type RoofOfJob, roofLayoutOf, slateForEngine, slopeBody, slopeForEngine } from '$lib/job';
import type { JobState } from '$lib/app';
import type { ShownUnit } from '$lib/ui';
import { type EdgeMeetings, edgeMeetings } from './edge-meetings.ts';
import { FormDraft } from './roof-draft.svelte.ts';
import { keepDrafts, keptDrafts } from './roof-drafts-kept.ts';
import {
  type SlateForm,
  type SlopeForm,
  blankSlopeForm,
  retypeSlate,
  retypeSlope,
  slateFormOf,
  slopeFormOf
} from './roof-forms.ts';
import { type FieldTrouble, readSlateForm, readSlopeForm } from './roof-reading.ts';
import { randomHex } from '$lib/app';

/** A slope in the list: stored, or so far only typed. */
export interface ListedSlope {
  readonly slopeId: string;
  readonly name: string;
  readonly isStored: boolean;
  readonly isChanged: boolean;
}

/**
 * The roof screen: the slate and the slopes as they are being typed, what is wrong with them, and
 * the roof that they make. What is typed is kept on the device until it is saved or discarded.
 */
export class RoofState {
  readonly #job: () => JobState;
  /** The unit that the forms are written in; follows the job's together with their texts. */
  #unit = $state<ShownUnit>('mm');
  /** Name of a slope that nobody named: "Slope 3". */
  readonly #nameOf: (number: number) => string;
  /** Slopes that were stored when the desk last followed the job. */
  #lastStored: readonly string[] = [];

  slate = $state.raw() as FormDraft<SlateForm>;
  /** Forms opened so far, by slope. */
  #slopes = $state.raw<Readonly<Record<string, FormDraft<SlopeForm>>>>({});
  openId = $state<string>();
  /** The slope just removed, so that it can be brought back. */
  removed = $state.raw<{ readonly name: string; readonly eventId: string }>();

  /** Whether the roof takes several sizes; the one in hand is then shown. */
  readonly #hasSizes = $derived.by(() => this.#job().sizes.length > 0);
  readonly slateRead = $derived.by(() =>
    readSlateForm(this.slate.form, this.unit, this.#job().slopes)
  );
  /** The slate to work with: as typed where that can stand, else as stored. */
  readonly slateInUse: SlateSpecBody | undefined = $derived.by(
    () => this.slateRead.body ?? this.#job().spec
  );
  readonly slateTroubles: readonly FieldTrouble[] = $derived(
    this.slate.told(this.slateRead.troubles)
  );

  readonly open = $derived(this.openId === undefined ? undefined : own(this.#slopes, this.openId));
  readonly openRead = $derived(
    this.open && readSlopeForm(this.open.form, this.unit, this.slateInUse)
  );
  readonly openTroubles: readonly FieldTrouble[] = $derived(
    this.open && this.openRead ? this.open.told(this.openRead.troubles) : []
  );
  /** The open slope laid out as typed; undefined while something is wrong with it. */
  readonly openLayout: SlopeLayout | undefined = $derived.by(() => {
    if (!this.openRead?.body || !this.slateInUse) return undefined;
    // One of several sizes takes some courses only: those of the slope as it is stored.
    if (this.#hasSizes) return this.layouts[this.openRead.body.slopeId];
    return layoutOf(this.openRead.body, this.slateInUse, this.#job().slopes);
  });

  /** Whom the open slope meets by its hips and valleys, as typed; undefined while it cannot be laid out. */
  readonly openMeetings: EdgeMeetings | undefined = $derived.by(() => {
    const body = this.openRead?.body;
    const slate = this.slateInUse;
    if (!body || !slate) return undefined;
    const others = this.#job().slopes.filter(({ slopeId }) => slopeId !== body.slopeId);
    const slopes = [body, ...others].map((slope) => slopeForEngine(slope, slate));
    const roof = layOutRoof(slopes, slateForEngine(slate));
    return roof.ok ? edgeMeetings(roof, body.slopeId) : undefined;
  });

  readonly list: readonly ListedSlope[] = $derived.by(() => {
    const stored = this.#job().slopes.map(({ slopeId, name }) => ({
      slopeId,
      name,
      isStored: true,
      isChanged: own(this.#slopes, slopeId)?.isChanged ?? false
    }));
    const typedOnly = Object.values(this.#slopes)
      .filter(({ form }) => !stored.some(({ slopeId }) => slopeId === form.slopeId))
      .map(({ form }) => ({
        slopeId: form.slopeId,
        name: form.name,
        isStored: false,
        isChanged: true
      }));
    return [...stored, ...typedOnly];
  });

  /** Every stored slope with the slate in use, one by one, so that one bad slope hides no other. */
  readonly layouts: Readonly<Record<string, SlopeLayout | undefined>> = $derived.by(() => {
    const slate = this.slateInUse;
    if (this.#hasSizes)
      return this.roof.ok
        ? Object.fromEntries(this.roof.slopes.map((laid) => [laid.slope.id, laid]))
        : {};
    return Object.fromEntries(
      this.#job().slopes.map((slope) => [
        slope.slopeId,
        slate && layoutOf(slope, slate, this.#job().slopes)
      ])
    );
  });

  /** The roof as stored, with the slate in use. */
  readonly roof: RoofOfJob = $derived.by(() => {
    const slate = this.slateInUse;
    if (this.#hasSizes) return roofLayoutOf(this.#job().view);
    if (!slate) return { ok: false, reason: 'no-slate' };
    const slopes = this.#job().slopes.map((slope) => slopeForEngine(slope, slate));
    if (slopes.length === 0) return { ok: false, reason: 'no-slopes' };
    return layOutRoof(slopes, slateForEngine(slate));
  });

  constructor(job: () => JobState, nameOf: (number: number) => string) {
    this.#job = job;
    this.#nameOf = nameOf;
    this.#unit = job().settings.lengthUnit;
    this.slate = new FormDraft(slateFormOf(job().spec, this.#unit));
    this.#restore();
    if (this.openId === undefined) this.openId = job().slopes[0]?.slopeId;
    if (this.openId !== undefined) this.openSlope(this.openId);
  }

  get unit(): ShownUnit {
    return this.#unit;
  }

  /** Follows the job: a change of unit, a slate or slope saved, undone or come from another tab. */
  follow(): void {
    const { spec, slopes } = this.#job();
    const unit = this.#job().settings.lengthUnit;
    untrack(() => {
      if (unit !== this.#unit) this.#retype(unit);
      this.slate.follow(slateFormOf(spec, unit));
      for (const body of slopes) own(this.#slopes, body.slopeId)?.follow(slopeFormOf(body, unit));
      this.#closeLost(slopes);
    });
  }

  /** Keeps what is typed and not saved on this device. */
  keep(): void {
    const changed = Object.values(this.#slopes).filter(
      (draft) => draft.isChanged || !this.#isStored(draft.form.slopeId)
    );
    keepDrafts(this.#job().jobId, {
      unit: this.unit,
      ...(this.slate.isChanged && { slate: $state.snapshot(this.slate.form) }),
      slopes: changed.map(({ form }) => $state.snapshot(form)),
      openId: this.openId
    });
  }

  async setUnit(lengthUnit: ShownUnit): Promise<void> {
    await this.#job().act({ type: 'jobSettingsSet', body: { lengthUnit } });
  }

  /** Stores the slate as typed. Gives the first field that cannot stand, if one cannot. */
  async saveSlate(): Promise<string | undefined> {
    this.slate.ask();
    const { body, troubles } = this.slateRead;
    if (!body) return troubles[0].field;
    if (await this.#job().act({ type: 'slateSpecSet', body }))
      this.slate.stored(slateFormOf(this.#job().spec, this.#unit));
    return undefined;
  }

  openSlope(slopeId: string): void {
    if (!own(this.#slopes, slopeId)) {
      const body = this.#job().slopes.find((slope) => slope.slopeId === slopeId);
      if (!body) return;
      this.#hold(slopeId, new FormDraft(slopeFormOf(body, this.#unit)));
    }
    this.openId = slopeId;
  }

  addSlope(): void {
    const slopeId = `slope-${randomHex()}`;
    const blank = blankSlopeForm(slopeId, this.#nameOf(this.list.length + 1), this.#unit);
    this.#hold(slopeId, new FormDraft(blank));
    this.openId = slopeId;
  }

  /** The slope entered last, whose measures a new one may take while none of its own is typed. */
  get before(): SlopeBody | undefined {
    const form = this.open?.form;
    if (!form || this.#isStored(form.slopeId)) return undefined;
    const isBlank = form.rafterLengthMm === '' && form.eaveWidthMm === '';
    return isBlank ? this.#job().slopes.at(-1) : undefined;
  }

  /** Fills the new slope with the measures of the one before; its name and openings stay its own. */
  takeBefore(): void {
    const { before, open } = this;
    if (!before || !open) return;
    const { slopeId, name, openings } = open.form;
    Object.assign(open.form, { ...slopeFormOf(before, this.#unit), slopeId, name, openings });
  }

  /** Opens a form for the slope round a hip or valley, its rafter, pitch and gauge line copied. */
  addRound(slopeId: string, side: 'left' | 'right'): void {
    const from = this.#job().slopes.find((slope) => slope.slopeId === slopeId);
    const round =
      from && this.slateInUse && slopeRound(slopeForEngine(from, this.slateInUse), side);
    if (!round) return;
    const id = `slope-${randomHex()}`;
    const name = this.#nameOf(this.list.length + 1);
    const form = slopeFormOf(slopeBody({ ...round, id, name }, id), this.#unit);
    this.#hold(id, new FormDraft(form));
    this.openId = id;
  }

  /** Raises a slope's eave above the lowest, so that its courses meet those of another. */
  async raise(slopeId: string, byMm: number): Promise<void> {
    const slope = this.#job().slopes.find((one) => one.slopeId === slopeId);
    if (!slope) return;
    const eaveHeightMm = Number((slope.eaveHeightMm + byMm).toFixed(1));
    await this.#job().act({ type: 'slopeSet', body: { ...slope, eaveHeightMm } });
  }

  /** Enters the slopes of a roof to start from, in one act. */
  async enterShape(
    slopes: readonly ShapeSlope[],
    nameOf: (part: ShapeSlope['part']) => string
  ): Promise<void> {
    const acts = slopes.map(({ part, ...slope }): NewEvent => {
      const id = `slope-${randomHex()}`;
      return { type: 'slopeSet', body: slopeBody({ ...slope, id, name: nameOf(part) }, id) };
    });
    if (!(await this.#job().act(acts))) return;
    const first = this.#job().slopes[0]?.slopeId;
    if (first !== undefined) this.openSlope(first);
  }

  /** Stores the open slope as typed. Gives the first field that cannot stand, if one cannot. */
  async saveSlope(): Promise<string | undefined> {
    if (!this.open || !this.openRead) return undefined;
    this.open.ask();
    const { body, troubles } = this.openRead;
    if (!body) return troubles[0].field;
    if (await this.#job().act({ type: 'slopeSet', body }))
      own(this.#slopes, body.slopeId)?.stored(slopeFormOf(body, this.#unit));
    return undefined;
  }

  /** Goes back to the stored slope; a slope that was never stored goes away. */
  discardSlope(slopeId: string): void {
    if (this.#isStored(slopeId)) own(this.#slopes, slopeId)?.discard();
    else this.#drop(slopeId);
  }

  async removeSlope(slopeId: string): Promise<void> {
    const name = this.list.find((slope) => slope.slopeId === slopeId)?.name ?? '';
    const events = await this.#job().act({ type: 'slopeRemoved', body: { slopeId } });
    if (!events) return;
    this.#drop(slopeId);
    this.removed = { name, eventId: events[0].id };
  }

  async bringBack(): Promise<void> {
    if (this.removed && (await this.#job().undo(this.removed.eventId))) this.removed = undefined;
  }

  /** Enters one of the invented roofs, slate and slopes, in one act. */
  async enterExample(roofId: string): Promise<void> {
    const { exampleRoof } = await import('$lib/example/roofs');
    const acts: NewEvent[] = exampleRoof(roofId, () => `slope-${randomHex()}`);
    const events = await this.#job().act(acts);
    if (!events) return;
    this.slate.discard();
    const first = this.#job().slopes[0]?.slopeId;
    if (first !== undefined) this.openSlope(first);
  }

  #restore(): void {
    const kept = keptDrafts(this.#job().jobId);
    if (!kept) return;
    const unit = this.#unit;
    if (kept.slate) this.slate.form = retypeSlate(kept.slate, kept.unit, unit);
    for (const form of kept.slopes) {
      const stored = this.#job().slopes.find(({ slopeId }) => slopeId === form.slopeId);
      const base = stored ? slopeFormOf(stored, unit) : blankSlopeForm(form.slopeId, '', unit);
      this.#hold(form.slopeId, new FormDraft(base, retypeSlope(form, kept.unit, unit)));
    }
    this.openId = kept.openId;
  }

  #retype(unit: ShownUnit): void {
    const from = this.#unit;
    this.#unit = unit;
    const { spec, slopes } = this.#job();
    const typed = (form: SlateForm) => retypeSlate($state.snapshot(form), from, unit);
    const isSlateChanged = this.slate.isChanged;
    const slateBase = slateFormOf(spec, unit);
    this.slate.rewrite(slateBase, isSlateChanged ? typed(this.slate.form) : slateBase);
    for (const draft of Object.values(this.#slopes)) {
      const form = retypeSlope($state.snapshot(draft.form), from, unit);
      const stored = slopes.find(({ slopeId }) => slopeId === form.slopeId);
      if (!stored) draft.rewrite(blankSlopeForm(form.slopeId, '', unit), form);
      else {
        const base = slopeFormOf(stored, unit);
        draft.rewrite(base, draft.isChanged ? form : base);
      }
    }
  }

  /** Closes forms of slopes that were stored and are no longer, unless they hold changes. */
  #closeLost(slopes: readonly SlopeBody[]): void {
    const stored = slopes.map(({ slopeId }) => slopeId);
    const lost = this.#lastStored.filter((slopeId) => !stored.includes(slopeId));
    this.#lastStored = stored;
    for (const slopeId of lost) if (!own(this.#slopes, slopeId)?.isChanged) this.#drop(slopeId);
    if (this.openId === undefined && stored.length > 0) this.openSlope(stored[0]);
  }

  #isStored(slopeId: string): boolean {
    return this.#job().slopes.some((slope) => slope.slopeId === slopeId);
  }

  #hold(slopeId: string, draft: FormDraft<SlopeForm>): void {
    this.#slopes = { ...this.#slopes, [slopeId]: draft };
  }

  #drop(slopeId: string): void {
    this.#slopes = Object.fromEntries(
      Object.entries(this.#slopes).filter(([id]) => id !== slopeId)
    );
    if (this.openId !== slopeId) return;
    this.openId = undefined;
    const next = this.list.find((slope) => slope.slopeId !== slopeId);
    if (next) this.openSlope(next.slopeId);
  }
}

/** A slope laid out with the others of the roof, which it may meet; alone where one of them is wrong. */
function layoutOf(
  slope: SlopeBody,
  slate: SlateSpecBody,
  all: readonly SlopeBody[]
): SlopeLayout | undefined {
  const spec = slateForEngine(slate);
  const others = all.filter(({ slopeId }) => slopeId !== slope.slopeId);
  for (const beside of [others, []]) {
    const roof = layOutRoof(
      [slope, ...beside].map((body) => slopeForEngine(body, slate)),
      spec
    );
    if (roof.ok) return roof.slopes[0];
  }
  return undefined;
}
