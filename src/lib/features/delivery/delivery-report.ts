import type {
  CountComparison,
  OutsideOrderFinding,
  Verdict,
  VerdictReason,
  WouldChange
} from '$lib/engine/delivery';
import type { BodyOf } from '$lib/journal';
import type { Catalogue, NumberWords } from '$lib/text';
import type { Judged, SoFar } from './delivery-judge.ts';

/** Why the verdict, in one sentence, with the figures as a reader sees them. */
export function sayReason(
  { code, figures }: VerdictReason,
  { delivery, common }: Catalogue,
  numbers: NumberWords
): string {
  const shown = Object.fromEntries(
    Object.entries(figures).map(([name, value]) => [
      name,
      name.includes('Kickers')
        ? delivery.findings.jointsOf100(value)
        : sayFigure(name, value, common, numbers)
    ])
  );
  return delivery.verdict.reasons[code](shown);
}

/** What would have to be another figure for the answer to turn. */
export function sayChange(
  { code, now, limit }: WouldChange,
  { delivery }: Catalogue,
  numbers: NumberWords
): string {
  const say = (value: number): string => {
    if (code === 'thickness-sd-mm-at-most') return numbers.mm(value, 2);
    if (code === 'thickness-tolerance-percent-at-least')
      return numbers.decimal(
        Math.ceil(value * 10 - 1e-9) / 10,
        value === Math.round(value) ? 0 : 1
      );
    return numbers.whole(value);
  };
  return delivery.verdict.changes[code](say(now), say(limit));
}

function sayFigure(
  name: string,
  value: number,
  common: Catalogue['common'],
  numbers: NumberWords
): string {
  if (name === 'piles') return common.piles(value);
  if (/^share|Share$/.test(name)) return numbers.percent(value, 1);
  if (name.endsWith('Percent')) return sayPercent(value, numbers);
  if (name.includes('MmPer100')) return numbers.mm(value, 0);
  return name.endsWith('Mm') ? numbers.mm(value, 2) : numbers.whole(value);
}

/** Per cent as they were entered: with a decimal only where they have one. */
export function sayPercent(percent: number, numbers: NumberWords): string {
  const decimals = [0, 1].find((some) => Math.abs(percent - Number(percent.toFixed(some))) < 1e-9);
  return `${numbers.decimal(percent, decimals ?? 2)}\u00a0%`;
}

/** The reasons and what would change the answer, as a reader sees them. */
export function sayVerdict(
  judged: Pick<Judged, 'verdict' | 'hasRoof'>,
  text: Catalogue,
  numbers: NumberWords
) {
  const { verdict, reasons, wouldChange } = judged.verdict;
  return {
    verdict,
    reasons: reasons.map((reason) => ({
      weight: reason.weight,
      sentence: sayReason(reason, text, numbers),
      short: text.delivery.verdict.reasonsShort[reason.code] ?? sayReason(reason, text, numbers)
    })),
    changes: wouldChange
      .filter(({ code }) => judged.hasRoof || code !== 'unusable-in-sample-at-most')
      .map((change) => sayChange(change, text, numbers))
  };
}

/** What the buyer signed: the answer, and the reason where it is not the one of the findings. */
export type SignedAnswer = Pick<BodyOf<'verdictSigned'>, 'verdict' | 'note'>;

/**
 * That the buyer answers otherwise than the findings alone would, and why; undefined before it is
 * signed and where the two agree.
 */
export function sayDecision(
  found: Verdict,
  signed: SignedAnswer | undefined,
  { delivery: { verdict } }: Catalogue
): string | undefined {
  if (!signed || signed.verdict === found) return undefined;
  const { byFindings, byBuyer, decided } = verdict;
  return decided(byFindings[found], byBuyer[signed.verdict], asSentence(signed.note));
}

/** Words as the end of a sentence. */
export function asSentence(words: string): string {
  return words === '' || /[.!?]$/.test(words) ? words : `${words}.`;
}

/**
 * What the findings alone say, as it is told to the supplier.
 *
 * @param coursesLaid courses begun with slates of the delivery: those are fixed
 */
export function sayAnswer(
  judged: Judged | SoFar,
  coursesLaid: number,
  { delivery }: Catalogue
): string {
  const { messageText } = delivery.sheet;
  const { verdict } = judged.verdict;
  const say = coursesLaid > 0 ? { ...messageText, ...messageText.laid } : messageText;
  return 'coverage' in judged && verdict === 'query' ? say.queryUnfinished : say[verdict];
}

/** Slates ordered and delivered, and what that comes to. */
export function sayCount(
  { ordered, delivered, short, over }: CountComparison,
  { delivery: { findings } }: Catalogue,
  numbers: NumberWords
): { readonly counted: string; readonly state: string } {
  const { countShort, countOver, countRight } = findings;
  return {
    counted: findings.count(numbers.whole(ordered), numbers.whole(delivered)),
    state: short > 0 ? countShort(short) : over > 0 ? countOver(over) : countRight
  };
}

/**
 * That some checks were not made on every slate that judges: a slate counts as inside there, so that
 * more may be outside than is told. Empty where all were made.
 */
export function sayLeftOut(
  { byCheck, judged }: Pick<OutsideOrderFinding, 'byCheck' | 'judged'>,
  { delivery }: Catalogue
): string {
  const partly = byCheck.filter(({ measured }) => measured < judged);
  const names = partly.map(({ check }) => delivery.checks[check].toLocaleLowerCase());
  return names.length > 0 ? delivery.findings.leftOut(names) : '';
}

/** A limit as it is held to: with as many decimals as it has, at least so many and at most two. */
export function sayLimitMm(limitMm: number, least: number, numbers: NumberWords): string {
  const isExact = (decimals: number): boolean =>
    Math.abs(limitMm - Number(limitMm.toFixed(decimals))) < 1e-9;
  const decimals = [0, 1].find((some) => some >= least && isExact(some)) ?? 2;
  return numbers.mm(limitMm, decimals);
}
