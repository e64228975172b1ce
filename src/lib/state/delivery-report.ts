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

/** What the message says of the job beside the findings. */
export interface MessageJob {
  readonly name: string;
  readonly arrivedOn?: string;
  readonly sha256?: string;
  /** Photos that the sheet shows. */
  readonly photos: number;
}

/** The weights of the reasons that speak for an answer: what speaks for refusing also queries. */
const SPEAKS_FOR: Readonly<Record<Verdict, readonly VerdictReason['weight'][]>> = {
  take: [],
  query: ['refuse', 'query'],
  refuse: ['refuse']
};

/**
 * A short message for the supplier; sums and names of the job only. Its grounds are the verdict's
 * own reasons that speak for the answer, in the same words. What the sample found is told beside
 * them as a fact, with what the plan says of it.
 */
export function sayMessage(
  judged: Judged,
  answer: Verdict,
  { name, arrivedOn, sha256, photos }: MessageJob,
  text: Catalogue,
  numbers: NumberWords
): string {
  const { messageText } = text.delivery.sheet;
  const { findings, verdict } = judged;
  const { outside, judged: sampled, countInterval, attributes } = findings.outsideOrder;
  const range = text.delivery.findings.between(
    numbers.whole(countInterval.low),
    numbers.whole(countInterval.high),
    text.common.slates(findings.delivered)
  );
  const planSays = messageText.planSays[attributes.state](attributes.acceptAtMost);
  const grounds = verdict.reasons
    .filter(({ weight }) => SPEAKS_FOR[answer].includes(weight))
    .map((reason) => messageText.ground(sayReason(reason, text, numbers)));
  return [
    messageText.start(name, arrivedOn ? numbers.day(arrivedOn) : ''),
    messageText.sample(sampled),
    messageText.outside(outside, planSays, range),
    messageText[answer],
    ...(grounds.length > 0 ? [messageText.grounds(grounds.length), ...grounds] : []),
    photos > 0 ? messageText.endWithPhotos : messageText.end,
    ...(sha256 ? [messageText.hash(sha256)] : [])
  ].join('\n');
}
