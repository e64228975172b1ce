import type { Verdict, VerdictReason, WouldChange } from '$lib/engine/delivery';
import type { Catalogue, NumberWords } from '$lib/text';
import type { Judged } from './delivery-judge.ts';

/** Why the verdict, in one sentence, with the figures as a reader sees them. */
export function sayReason(
  { code, figures }: VerdictReason,
  { delivery, common }: Catalogue,
  numbers: NumberWords
): string {
  const shown = Object.fromEntries(
    Object.entries(figures).map(([name, value]) => [name, sayFigure(name, value, common, numbers)])
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
  if (name.includes('MmPer100')) return numbers.mm(value, 0);
  if (name.endsWith('Mm')) return numbers.mm(value, 2);
  return name.includes('Kickers') ? numbers.decimal(value, 1) : numbers.whole(value);
}

/** The reasons and what would change the answer, as a reader sees them. */
export function sayVerdict(judged: Judged, text: Catalogue, numbers: NumberWords) {
  const { verdict, reasons, wouldChange } = judged.verdict;
  return {
    verdict,
    reasons: reasons.map((reason) => ({
      weight: reason.weight,
      sentence: sayReason(reason, text, numbers)
    })),
    changes: wouldChange
      .filter(({ code }) => judged.hasRoof || code !== 'unusable-in-sample-at-most')
      .map((change) => sayChange(change, text, numbers))
  };
}

/** A short message for the supplier; sums and names of the job only. */
export function sayMessage(
  judged: Judged,
  answer: Verdict,
  job: { name: string; arrivedOn?: string; sha256?: string },
  text: Catalogue,
  numbers: NumberWords
): string {
  const { messageText } = text.delivery.sheet;
  const { findings, verdict } = judged;
  const { outside, judged: sampled, countInterval } = findings.outsideOrder;
  const range = text.delivery.findings.between(
    numbers.whole(countInterval.low),
    numbers.whole(countInterval.high),
    text.common.slates(findings.delivered)
  );
  const reasons = verdict.reasons
    .filter(({ weight, code }) => weight !== 'note' && !code.startsWith('roof'))
    .map((reason) => sayReason(reason, text, numbers));
  return [
    messageText.start(job.name, job.arrivedOn ? numbers.day(job.arrivedOn) : ''),
    messageText.sample(sampled),
    messageText.outside(outside, range),
    ...reasons,
    messageText[answer],
    messageText.end,
    ...(job.sha256 ? [messageText.hash(job.sha256)] : [])
  ].join('\n');
}
