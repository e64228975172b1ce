import type { BodyOf } from '$lib/journal';
import type { Catalogue, NumberWords } from '$lib/text';
import { sayAsks, sayFound } from './claim-words.ts';
import type { Judged, SoFar } from './delivery-judge.ts';
import { sayPlan } from './delivery-plan-words.ts';
import { type SignedAnswer, asSentence, sayAnswer } from './delivery-report.ts';

/** What the message says of the job beside the findings. */
export interface MessageJob {
  readonly name: string;
  readonly order?: BodyOf<'deliveryDeclared'>;
  /** Courses begun with slates of the delivery. */
  readonly coursesLaid: number;
  /** Photos that the sheet shows. */
  readonly photos: number;
  /** Undefined before an answer is signed: then the message gives the one of the findings. */
  readonly signed?: SignedAnswer & Pick<BodyOf<'verdictSigned'>, 'asks' | 'journalSha256'>;
}

/**
 * A short message for the supplier: what the claim finds and asks for, in its words and figures.
 * Roof, sorting and costs are the buyer's own and are left out. A buyer who answers otherwise than
 * the findings alone would says so, with the reason signed.
 */
export function sayMessage(
  said: Judged | SoFar,
  { name, order, coursesLaid, photos, signed }: MessageJob,
  text: Catalogue,
  numbers: NumberWords
): string {
  const { messageText } = text.delivery.sheet;
  const advised = said.verdict.verdict;
  const answer = signed?.verdict ?? advised;
  const found = sayFound(said, text, numbers);
  const { rule, risks } = sayPlan(
    ('coverage' in said ? said.found : said.findings).plan,
    text,
    numbers
  );
  const otherwise = {
    ...messageText.otherwise,
    ...(coursesLaid > 0 && messageText.laid.otherwise)
  };
  return [
    messageText.start(name, [
      ...(order?.orderNumber ? [messageText.order(order.orderNumber)] : []),
      ...(order?.deliveryNote ? [messageText.deliveryNote(order.deliveryNote)] : []),
      ...(order?.arrivedOn ? [messageText.arrived(numbers.day(order.arrivedOn))] : [])
    ]),
    found.looked,
    ...found.parts.flatMap(({ head, lines, whole }) => [
      head,
      ...lines.map(messageText.line),
      whole
    ]),
    found.leftOut,
    `${rule} ${risks}`,
    `${found.count.counted} ${found.count.state}`,
    ...found.questions,
    ...(answer === advised
      ? [sayAnswer(said, coursesLaid, text)]
      : [
          `${text.delivery.verdict.byFindings[advised]}.`,
          messageText.because(otherwise[answer], asSentence(signed?.note ?? ''))
        ]),
    sayAsks(order, signed ?? { verdict: advised }, coursesLaid, text, numbers),
    photos > 0 ? messageText.endWithPhotos : messageText.end,
    signed ? messageText.hash(signed.journalSha256) : ''
  ]
    .filter((line) => line !== '')
    .join('\n');
}
