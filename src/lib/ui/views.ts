import type { Catalogue, Piles } from '$lib/text';

/** What the top of the sort screen says. */
export interface VerdictView {
  tone: 'idle' | 'pile' | 'plain' | 'bad';
  /** The pile to put the slate on, or null. */
  pile: number | null;
  piles: Piles;
  /** Thickness of the slate, mm, for its drawing. */
  thicknessMm?: number;
  title: string;
  detail: string;
  marks: readonly { kind: 'borderline' | 'rogue' | 'differs'; title: string; why: string }[];
  /** Readings, mm, that a refused number may have meant. */
  choicesMm: readonly number[];
  /** Whether what is shown is saved, in words. */
  status: string;
  isUnsaved: boolean;
}

/** A pallet as the sort screen counts it. */
export interface PalletView {
  palletId: string;
  label: string;
  slates: number;
  onPile: readonly number[];
  measured: number;
  setAside: number;
  sorted: number;
  left: number;
}

/** What is known of a pallet, in a few words; slates on no pile are told while there are no others. */
export function sayPallet(pallet: PalletView, text: Catalogue['sort']['pallet']): string {
  const { slates, measured, setAside, sorted, left } = pallet;
  const isOver = slates > 0 && sorted > slates;
  const count = isOver ? text.over(sorted - slates) : text.left(left, slates);
  return measured > 0 && sorted === setAside ? `${count}, ${text.measured(measured)}` : count;
}
