import type { Verdict, VerdictReason, WouldChange } from '$lib/engine/delivery';
import type { BodyOf } from '$lib/journal';
import type { Catalogue, NumberWords } from '$lib/text';
import type { Judged, SoFar } from './delivery-judge.ts';
import { sayPlan } from './delivery-plan-words.ts';
import { sayCoverage, sayPlanSoFar } from './delivery-so-far.ts';

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
  if (name.includes('MmPer100')) return numbers.mm(value, 0);
  return name.endsWith('Mm') ? numbers.mm(value, 2) : numbers.whole(value);
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
function asSentence(words: string): string {
  return words === '' || /[.!?]$/.test(words) ? words : `${words}.`;
}

/** What the message says of the job beside the findings. */
export interface MessageJob {
  readonly name: string;
  readonly arrivedOn?: string;
  /** Photos that the sheet shows. */
  readonly photos: number;
  /** Undefined before an answer is signed: then the message gives the one of the findings. */
  readonly signed?: SignedAnswer & Pick<BodyOf<'verdictSigned'>, 'journalSha256'>;
}

/** What the findings alone say, as it is told to the supplier. */
export function sayAnswer(judged: Judged | SoFar, { delivery }: Catalogue): string {
  const { messageText } = delivery.sheet;
  const { verdict } = judged.verdict;
  return 'coverage' in judged && verdict === 'query'
    ? messageText.queryUnfinished
    : messageText[verdict];
}

/** The weights of the reasons that speak for an answer: what speaks for refusing also queries. */
const SPEAKS_FOR: Readonly<Record<Verdict, readonly VerdictReason['weight'][]>> = {
  take: [],
  query: ['refuse', 'query'],
  refuse: ['refuse']
};

/**
 * A short message for the supplier; sums and names of the job only. Its grounds are the verdict's
 * own reasons that speak for what the findings alone say, in the same words; a buyer who answers
 * otherwise is told apart from them, with the reason signed. What the sample found is told beside
 * them as a fact, with what the plan says of it.
 */
export function sayMessage(
  judged: Judged | SoFar,
  { name, arrivedOn, photos, signed }: MessageJob,
  text: Catalogue,
  numbers: NumberWords
): string {
  const { messageText } = text.delivery.sheet;
  const { verdict } = judged;
  const found = verdict.verdict;
  const answer = signed?.verdict ?? found;
  const isSoFar = 'coverage' in judged;
  const reasons = verdict.reasons
    .filter(({ weight }) => SPEAKS_FOR[found].includes(weight))
    .map((reason) => messageText.ground(sayReason(reason, text, numbers)));
  const grounds = reasons.length > 0 ? [messageText.grounds(reasons.length), ...reasons] : [];
  return [
    messageText.start(name, arrivedOn ? numbers.day(arrivedOn) : ''),
    ...(isSoFar ? sayFoundSoFar(judged, text, numbers) : sayFound(judged, text, numbers)),
    ...(answer === found
      ? [sayAnswer(judged, text), ...grounds]
      : [
          `${text.delivery.verdict.byFindings[found]}.`,
          ...grounds,
          messageText.because(messageText.otherwise[answer], asSentence(signed?.note ?? ''))
        ]),
    photos > 0 ? messageText.endWithPhotos : messageText.end,
    ...(signed ? [messageText.hash(signed.journalSha256)] : [])
  ].join('\n');
}

/** What the finished sample found, and what that says of the whole delivery. */
function sayFound({ findings }: Judged, text: Catalogue, numbers: NumberWords): string[] {
  const { messageText } = text.delivery.sheet;
  const { outside, judged, countInterval, attributes } = findings.outsideOrder;
  const range = text.delivery.findings.between(
    numbers.whole(countInterval.low),
    numbers.whole(countInterval.high),
    text.common.slates(findings.delivered)
  );
  const planSays = messageText.planSays[attributes.state](attributes.acceptAtMost);
  const { rule, risks } = sayPlan(findings.plan, text, numbers);
  return [
    messageText.sample(judged),
    messageText.outside(outside, planSays, range),
    `${rule} ${risks}`
  ];
}

/** What was found before the list is finished: nothing of the whole delivery. */
function sayFoundSoFar(soFar: SoFar, text: Catalogue, numbers: NumberWords): string[] {
  const { outside, judged } = soFar.found;
  return [
    sayCoverage(soFar.coverage, text, numbers),
    `${text.delivery.findings.soFar.outside(outside, judged)} ${sayPlanSoFar(soFar, text)}`
  ];
}
