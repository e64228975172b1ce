import { holeFromTailMm } from '$lib/engine/roof';
import { type OldHoles, meanWidthMm, oldHolesUnder } from '$lib/engine/sizes';
import {
  type SizedSlate,
  type SizesInLot,
  sizesOfLot,
  soundStock
} from '$lib/engine/sizes/reclaimed';
import { type SizesLaidOut, type SizesNotLaidOut, setOfSize } from '$lib/job/sizes';
import { type JobState, newJobId, palletOfSize } from '$lib/app';
import { slateForEngine } from '$lib/job';
import { readNumber } from '$lib/ui';

/** Slates of random widths whose widths must be known before their mean counts: ours. */
const FEWEST_FOR_MEAN = 8;

/** A reclaimed lot: the sound share of it, and where its old holes come to lie. */
export class ReclaimedState {
  readonly #job: () => JobState;
  readonly #laid: () => SizesLaidOut | SizesNotLaidOut | undefined;
  #tried = $state<string>();
  #sound = $state<string>();
  #lot = $state<string>();
  holes = $state('');
  measured = $state('');
  name = $state('');
  entered = $state('');

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

  /** Sound slates of each size of the job, by those measured; why not, where it cannot be told. */
  readonly bySize: SizesInLot | 'wrong' | 'too-many' | undefined = $derived.by(() => {
    const { stock } = this;
    if (
      this.measured.trim() === '' ||
      stock === undefined ||
      stock === 'too-many-sound' ||
      !stock.ok
    )
      return undefined;
    const measured = slatesIn(this.measured);
    if (!measured) return 'wrong';
    const [found, sampled, lotSize] = [this.sound, this.tried, this.lot].map(
      (text) => wholeIn(text) ?? 0
    );
    if (measured.length > found) return 'too-many';
    return sizesOfLot(measured, this.#job().sizes.map(setOfSize), { found, sampled, lotSize });
  });

  /** Enters what is sound of each size as stock: a pallet of several lengths, and the widths measured. */
  async enter(): Promise<void> {
    const { bySize } = this;
    const label = this.name.trim();
    if (!bySize || typeof bySize === 'string' || label === '') return;
    const id = newJobId();
    const slatesOf = (sizeId: string) => bySize.sizes.find(({ setId }) => setId === sizeId);
    const pallets = this.#job().sizes.map(({ sizeId }) => ({
      type: 'palletAdded' as const,
      body: {
        palletId: palletOfSize(id, sizeId),
        label,
        slates: slatesOf(sizeId)?.slates ?? 0,
        sizeId
      }
    }));
    const sizes = this.#job().sizes.map((size) => {
      const own = slatesOf(size.sizeId);
      const isKnown = size.widthMm === undefined && own && own.found >= FEWEST_FOR_MEAN;
      return isKnown
        ? { ...size, meanWidthMm: Math.round(10 * own.meanWidthMm) / 10 }
        : { ...size };
    });
    const isChanged = sizes.some(
      ({ meanWidthMm }, at) => meanWidthMm !== this.#job().sizes[at].meanWidthMm
    );
    const acts = [
      ...pallets,
      ...(isChanged ? [{ type: 'slateSizesSet' as const, body: { sizes } }] : [])
    ];
    // A second tap enters nothing more.
    this.name = '';
    if (await this.#job().act(acts)) this.entered = label;
    else this.name = label;
  }

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

/** Slates as typed, 502 x 248, 405 × 200; undefined where one is not length and width, above 0. */
export function slatesIn(text: string): SizedSlate[] | undefined {
  const read = text
    .split(/[,;\n]+/)
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .map((part) => /^(\d+(?:\.\d+)?)\s*(?:mm)?\s*[x×*]\s*(\d+(?:\.\d+)?)\s*(?:mm)?$/i.exec(part))
    .map((found) => found && { lengthMm: Number(found[1]), widthMm: Number(found[2]) });
  const slates = read.flatMap((slate) =>
    slate && slate.lengthMm > 0 && slate.widthMm > 0 ? [slate] : []
  );
  return slates.length === read.length && slates.length > 0 ? slates : undefined;
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
