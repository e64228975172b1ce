import type { ThicknessBins } from '../thickness/index.ts';

/** One pallet of the delivery and what was gauged of it. */
export interface PalletSample {
  readonly palletId: string;
  /** Slates on the pallet as declared or counted, whole, at least 1. */
  readonly slates: number;
  /** Slates gauged of it, a random sample of the pallet; empty for a pallet not opened. */
  readonly bins: ThicknessBins;
}
