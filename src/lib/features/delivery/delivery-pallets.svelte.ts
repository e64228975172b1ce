import { readCount } from './delivery-fields.ts';
import type { PalletTally } from '$lib/job';
import type { JobState } from '$lib/app';
import { newJobId } from '$lib/app';

export type PalletProblem = 'name' | 'taken' | 'slates' | 'layers' | 'holds';

interface PalletForm {
  label: string;
  slates: string;
  layers: string;
  perLayer: string;
}

const BLANK: PalletForm = { label: '', slates: '', layers: '', perLayer: '' };

/** Entering pallets as they are packed, and changing what was entered. */
export class PalletEntry {
  readonly #job: () => JobState;
  form = $state<PalletForm>({ ...BLANK });
  /** The pallet being changed; undefined while a new one is entered. */
  editing = $state.raw<PalletTally>();
  problems = $state.raw<Partial<Record<keyof PalletForm, PalletProblem>>>({});
  isBusy = $state(false);

  constructor(job: () => JobState) {
    this.#job = job;
  }

  edit(pallet: PalletTally): void {
    this.editing = pallet;
    this.problems = {};
    this.form = {
      label: pallet.label,
      slates: pallet.slates ? String(pallet.slates) : '',
      layers: pallet.layers ? String(pallet.layers) : '',
      perLayer: pallet.perLayer ? String(pallet.perLayer) : ''
    };
  }

  cancel(): void {
    this.editing = undefined;
    this.problems = {};
    this.form = { ...BLANK };
  }

  /** Keeps the pallet; false when a field cannot stand or it was not saved. */
  async save(): Promise<boolean> {
    const { label, ...counts } = this.form;
    const name = label.trim();
    const slates = wholeOf(counts.slates, 100_000);
    const layers = wholeOf(counts.layers, 1000);
    const perLayer = wholeOf(counts.perLayer, 1000);
    const isTaken = this.#job().pallets.some(
      (pallet) => pallet.label === name && pallet.palletId !== this.editing?.palletId
    );
    const isTight = !!slates && !!layers && !!perLayer && layers * perLayer < slates;
    this.problems = {
      ...(isTaken && { label: 'taken' }),
      ...(name === '' && { label: 'name' }),
      ...(!slates && { slates: 'slates' }),
      ...(isTight && { perLayer: 'holds' }),
      ...(layers === null && { layers: 'layers' }),
      ...(perLayer === null && { perLayer: 'layers' }),
      ...(!!layers !== !!perLayer && (layers ? { perLayer: 'layers' } : { layers: 'layers' }))
    };
    if (Object.keys(this.problems).length > 0 || this.isBusy) return false;
    this.isBusy = true;
    const { palletId = newJobId(), stackOf100Mm } = this.editing ?? {};
    const saved = await this.#job().act({
      type: 'palletAdded',
      body: {
        palletId,
        label: name,
        slates: slates ?? 0,
        ...(layers && { layers }),
        ...(perLayer && { perLayer }),
        ...(stackOf100Mm !== undefined && { stackOf100Mm })
      }
    });
    this.isBusy = false;
    if (saved) this.cancel();
    return saved !== undefined;
  }
}

/** A whole number from 1 to a limit; undefined for an empty field, null for anything else. */
function wholeOf(text: string, limit: number): number | undefined | null {
  const plain = text.trim();
  if (plain === '') return undefined;
  const read = readCount(plain, limit);
  return read.ok && read.value !== undefined && read.value >= 1 ? read.value : null;
}
