import { holeFromTailMm } from '$lib/engine/roof';
import { type OldHoles, meanWidthMm, oldHolesUnder } from '$lib/engine/sizes';
import { soundStock } from '$lib/engine/sizes/reclaimed';
import type { SizesLaidOut, SizesNotLaidOut } from '$lib/job/sizes';
import type { JobState } from '$lib/app';
import { slateForEngine } from '$lib/job';
import { readNumber } from '$lib/ui';

/** A reclaimed lot: the sound share of it, and where its old holes come to lie. */
export class ReclaimedState {
  readonly #job: () => JobState;
  readonly #laid: () => SizesLaidOut | SizesNotLaidOut | undefined;
  #tried = $state<string>();
  #sound = $state<string>();
  #lot = $state<string>();
  holes = $state('');

  constructor(job: () => JobState, laid: () => SizesLaidOut | SizesNotLaidOut | undefined) {
    this.#job = job;
    this.#laid = laid;
  }

  /** What sorting found so far: each slate sorted was tried, those on piles are sound. */
  readonly #sorted = $derived.by(() => {
    const { pallets } = this.#job();
    const tried = pallets.reduce((sum, { sorted }) => sum + sorted, 0);
    const setAside = pallets.reduce((sum, pallet) => sum + pallet.setAside, 0);
    const lot = pallets.reduce((sum, { slates }) => sum + slates, 0);
    return { tried, sound: tried - setAside, lot };
  });

  get tried(): string {
    return this.#tried ?? String(this.#sorted.tried);
  }
  set tried(text: string) {
    this.#tried = text;
  }
  get sound(): string {
    return this.#sound ?? String(this.#sorted.sound);
  }
  set sound(text: string) {
    this.#sound = text;
  }
  get lot(): string {
    return this.#lot ?? String(this.#sorted.lot);
  }
  set lot(text: string) {
    this.#lot = text;
  }

  /** Slates of the size in hand that the roof takes; undefined before it is laid out. */
  readonly needed: number | undefined = $derived.by(() => {
    const laid = this.#laid();
    const use = laid?.ok && laid.sets.find(({ set }) => set.id === this.#job().sizeId);
    if (!use || use.used === 0) return undefined;
    const { widths } = use.set;
    return Math.ceil(widths.kind === 'one' ? use.used : use.used / meanWidthMm(widths));
  });

  readonly stock = $derived.by(() => {
    const [found, sampled, lotSize] = [this.sound, this.tried, this.lot].map(wholeIn);
    if (found === undefined || sampled === undefined || lotSize === undefined) return undefined;
    if (found > sampled) return 'too-many-sound' as const;
    return soundStock({ found, sampled, lotSize }, this.needed ?? 1);
  });

  /** The gauge of the size in hand, least margin first met, and its new hole. */
  readonly place = $derived.by(() => {
    const laid = this.#laid();
    const slope = laid?.ok ? laid.roofs[this.#job().sizeId ?? '']?.slopes[0] : undefined;
    return slope && { marginMm: slope.gaugeMm, newHoleMm: slope.holeFromTailMm };
  });

  readonly oldHoles: OldHoles | 'off-slate' | undefined = $derived.by(() => {
    const { spec } = this.#job();
    if (this.holes.trim() === '' || !spec) return undefined;
    const { lengthMm, headlapMm } = slateForEngine(spec);
    const gaugeMm = this.place?.marginMm ?? (lengthMm - headlapMm) / 2;
    const newHoleMm = this.place?.newHoleMm ?? holeFromTailMm(slateForEngine(spec), gaugeMm);
    const holes = holesIn(this.holes);
    if (!holes || holes.some((hole) => hole < 0 || hole > lengthMm)) return 'off-slate';
    return oldHolesUnder(lengthMm, holes, gaugeMm, newHoleMm);
  });
}

/** Old holes as typed, mm; undefined where one is no number. */
export function holesIn(text: string): number[] | undefined {
  const holes = text
    .split(/[,;\s]+/)
    .filter((part) => part !== '')
    .map(Number);
  return holes.every(Number.isFinite) ? holes : undefined;
}

function wholeIn(text: string): number | undefined {
  const read = text.trim() === '' ? undefined : readNumber(text);
  return read?.ok && Number.isInteger(read.value) && read.value >= 0 ? read.value : undefined;
}
