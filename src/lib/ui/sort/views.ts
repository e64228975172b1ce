/** What the top of the sort screen says. */
export interface VerdictView {
  tone: 'idle' | 'pile' | 'plain' | 'bad';
  /** The pile to put the slate on, or null. */
  pile: number | null;
  piles: number;
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
