import type { SetAsideReason } from '$lib/journal';
import type { Catalogue, NumberWords, Piles } from '$lib/text';
import type { Act } from './job.svelte.ts';
import type { SlateJudgement } from '$lib/job';

/** What the screen says of the slate in hand, and the act that says it in the journal. */
export type Told = { readonly act: Act; readonly palletLabel: string } & (
  | { readonly kind: 'tapped'; readonly pile: number; readonly piles: Piles }
  | {
      readonly kind: 'gauged';
      readonly piles: Piles;
      readonly thicknessMm: number;
      readonly taperMm: number;
      readonly points: number[];
      readonly judgement: SlateJudgement;
    }
  | { readonly kind: 'setAside'; readonly reason: SetAsideReason }
  | {
      readonly kind: 'checked';
      readonly piles: Piles;
      readonly thicknessMm: number;
      readonly felt: number;
      readonly gauged: number;
    }
  /** What was taken back, in words. */
  | { readonly kind: 'undone'; readonly what: string }
);

/** What the slate being gauged still needs. */
export type Prompt =
  | { readonly kind: 'point'; readonly done: number; readonly wanted: number }
  | { readonly kind: 'side'; readonly side: 'left' | 'right' }
  | { readonly kind: 'again'; readonly firstMm: number }
  | { readonly kind: 'moved'; readonly firstMm: number; readonly secondMm: number };

/** What was told in one short phrase: for a screen reader and for the voice. */
export function sayTold(told: Told, text: Catalogue, numbers: NumberWords): string {
  const { sort, common } = text;
  switch (told.kind) {
    case 'tapped':
      return common.pile(told.pile, told.piles);
    case 'gauged': {
      const { pile, borderlineMm, rogue } = told.judgement;
      const where = pile === null ? sort.told.sample : common.pile(pile, told.piles);
      const outOfLine = rogue && (rogue.isTooThick ? sort.told.tooThick : sort.told.tooThin);
      const minds = [outOfLine, borderlineMm !== null && sort.told.borderline];
      return [numbers.mm(told.thicknessMm, 2), where, ...minds.filter(Boolean)].join(', ');
    }
    case 'setAside':
      return `${sort.told.setAside}: ${sort.setAside.reasons[told.reason]}`;
    case 'checked':
      return told.felt === told.gauged ? sort.told.checkAgrees : sort.told.checkDiffers;
    case 'undone':
      return `${sort.told.undone}: ${told.what}`;
  }
}
