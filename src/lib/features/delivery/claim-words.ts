import {
  type DefectFinding,
  type ProductLimits,
  type SlateCheckName,
  type ToleranceLimit,
  type VerdictReasonCode,
  checkSlate,
  isCertain
} from '$lib/engine/delivery';
import type { OfferedSlate } from '$lib/job';
import type { BodyOf } from '$lib/journal';
import type { Catalogue, NumberWords } from '$lib/text';
import type { Judged, SoFar } from './delivery-judge.ts';
import { TAKER_ASKS } from './taker-asks.ts';
import { sayCount, sayLeftOut, sayLimitMm, sayReason } from './delivery-report.ts';
import { sayCoverage, sayPlanSoFar } from './delivery-so-far.ts';
import { sayOutside, sayOutsideSoFar } from './outside-words.ts';

/** A limit as the claim names it: what it holds, its figure, and where it is written. */
export interface SaidLimit {
  readonly name: string;
  readonly figure: string;
  readonly where: string;
}

const MEASURED = ['length', 'width', 'squareness', 'edge', 'flatness'] as const;

/** A limit in millimetres, as a number. */
function sayFigure(
  name: string,
  { lowMm, highMm }: ToleranceLimit,
  { delivery }: Catalogue,
  numbers: NumberWords
): string {
  const { claim } = delivery;
  const least = name === 'thickness' ? 2 : 0;
  if (name === 'flatness') return claim.below(sayLimitMm(highMm, 1, numbers));
  return lowMm > 0
    ? claim.range(sayLimitMm(lowMm, least, numbers), sayLimitMm(highMm, least, numbers))
    : claim.most(sayLimitMm(highMm, 1, numbers));
}

/** The limits that were agreed, each as a number, and those that can only be queried. */
export function sayLimits(
  { limits, order }: Pick<Judged, 'limits' | 'order'>,
  text: Catalogue,
  numbers: NumberWords
): { readonly agreed: readonly SaidLimit[]; readonly queried: readonly SaidLimit[] } {
  const { delivery } = text;
  const { thickness } = limits;
  const measured = MEASURED.map((name) => ({
    isAgreed: isCertain(limits[name].basis),
    name: delivery.checks[name],
    figure: sayFigure(name, limits[name], text, numbers),
    where: limits[name].basis.source
  }));
  const marks = Object.entries(order.agreed ?? {}).flatMap(([name, limit]) =>
    limit && name in delivery.order.agreed.marks
      ? [{ name: delivery.order.agreed.marks[name], figure: '', where: limit.where }]
      : []
  );
  return {
    agreed: [
      thickness
        ? {
            name: delivery.checks.thickness,
            figure: sayFigure('thickness', thickness, text, numbers),
            where: thickness.basis.source
          }
        : { name: delivery.checks.thickness, figure: delivery.standing['not agreed'], where: '' },
      ...measured.filter(({ isAgreed }) => isAgreed),
      ...marks
    ],
    queried: measured.filter(({ isAgreed }) => !isAgreed)
  };
}

/** Faults one by one: those on limits of the order, and those that are only asked about. */
export function sayFaults(
  said: Judged | SoFar,
  text: Catalogue,
  numbers: NumberWords
): { readonly certain: readonly string[]; readonly queried: readonly string[] } {
  const { delivery } = text;
  const { claim } = delivery;
  const { byCheck, byDefect } = 'coverage' in said ? said.found : said.findings.outsideOrder;
  const faults = byCheck
    .filter(({ check, failed }) => failed > 0 && check !== 'defects')
    .map(({ check, failed, measured, basis }) => ({
      isCertain: isCertain(basis),
      line: claim.fault(
        delivery.checks[check],
        failed,
        measured,
        limitOf(check, said.limits, text, numbers),
        delivery.basis(basis.source, delivery.standing[basis.standing])
      )
    }));
  const defects = byDefect.map(({ defect, slates, basis }: DefectFinding) => ({
    isCertain: isCertain(basis),
    line: claim.defect(
      text.sort.setAside.reasons[defect as keyof typeof text.sort.setAside.reasons] ?? defect,
      slates,
      delivery.basis(basis.source, delivery.standing[basis.standing])
    )
  }));
  const all = [...faults, ...defects];
  return {
    certain: all.filter((fault) => fault.isCertain).map(({ line }) => line),
    queried: all.filter((fault) => !fault.isCertain).map(({ line }) => line)
  };
}

function limitOf(
  check: SlateCheckName,
  limits: ProductLimits,
  text: Catalogue,
  numbers: NumberWords
): string {
  if (check === 'ring' || check === 'defects') return '';
  const limit = limits[check];
  return limit ? sayFigure(check, limit, text, numbers) : '';
}

/** Faults under their sentence, and what they come to. */
export interface SaidPart {
  readonly head: string;
  readonly lines: readonly string[];
  /** What the count says of the delivery, and what the plan says of it. */
  readonly whole: string;
}

/** What was found, as claim and message tell it alike. */
export interface SaidFound {
  /** What was looked at. */
  readonly looked: string;
  /** Faults on limits of the order, then those asked about, each with its own count. */
  readonly parts: readonly SaidPart[];
  /** Which checks were not made on every slate; empty where all were. */
  readonly leftOut: string;
  readonly count: ReturnType<typeof sayCount>;
  /** What else the supplier is asked. */
  readonly questions: readonly string[];
}

/** Reasons that are the supplier's business and that no fault, count or plan tells already. */
const QUESTIONS: readonly VerdictReasonCode[] = [
  'thickness-by-variables',
  'stack-off-label',
  'label-missing',
  'tolerance-not-agreed'
];

/** What was found: certain faults, those asked about, what each comes to, and the count. */
export function sayFound(said: Judged | SoFar, text: Catalogue, numbers: NumberWords): SaidFound {
  const { claim, findings } = text.delivery;
  const isSoFar = 'coverage' in said;
  const found = isSoFar ? said.found : said.findings.outsideOrder;
  const { certain, queried } = sayFaults(said, text, numbers);
  const { outsideForCertain, judged, attributesForCertain } = found;
  const outside = isSoFar
    ? sayOutsideSoFar(said.found, text)
    : sayOutside(said.findings.outsideOrder, said.findings.delivered, text, numbers);
  const { state, acceptAtMost } = attributesForCertain;
  const plan = isSoFar ? sayPlanSoFar(said, text) : findings.byPlan[state](acceptAtMost, judged);
  return {
    looked: isSoFar
      ? sayCoverage(said.coverage, text, numbers)
      : text.delivery.sheet.messageText.sample(judged),
    parts: [
      {
        head:
          outsideForCertain > 0
            ? claim.certain(outsideForCertain, judged)
            : claim.certainNone(judged),
        lines: certain,
        whole: [outside.whole, plan].filter(Boolean).join(' ')
      },
      ...(queried.length > 0
        ? [{ head: claim.queried, lines: queried, whole: outside.withAsked || claim.queriedWithin }]
        : [])
    ],
    leftOut: isSoFar ? '' : sayLeftOut(said.findings.outsideOrder, text),
    count: sayCount(isSoFar ? said.found.count : said.findings.count, text, numbers),
    questions: said.verdict.reasons
      .filter(({ code }) => QUESTIONS.includes(code))
      .map((reason) =>
        reason.code === 'tolerance-not-agreed'
          ? claim.whichTolerance
          : sayReason(reason, text, numbers)
      )
  };
}

/**
 * What the buyer asks for and by when, and that the slates are kept meanwhile. Whoever takes the
 * delivery keeps nothing back, and asks for what was chosen with the signature alone; empty where
 * that is nothing.
 *
 * @param answer what was signed, or else what the findings say
 * @param coursesLaid courses begun with slates of the delivery
 */
export function sayAsks(
  order: BodyOf<'deliveryDeclared'> | undefined,
  { verdict: answer, asks: asksOfTaker = [] }: AnswerWithAsks,
  coursesLaid: number,
  { delivery: { claim } }: Catalogue,
  numbers: NumberWords
): string {
  const by = order?.answerBy ? numbers.day(order.answerBy) : '';
  if (answer === 'take') {
    const asks = TAKER_ASKS.filter((ask) => asksOfTaker.includes(ask)).map(
      (ask) => claim.askOfTaker[ask]
    );
    return asks.length > 0 ? claim.takesAndAsks(asks, by) : '';
  }
  const asks = (order?.asks ?? []).map((ask) => claim.ask[ask]);
  const asked = asks.length > 0 ? claim.asksBy(asks, by) : claim.asksNothing(by);
  return `${asked} ${coursesLaid > 0 ? claim.holdLaid(coursesLaid) : claim.hold}`;
}

/** An answer, with what a buyer who takes asks for all the same. */
type AnswerWithAsks = Pick<BodyOf<'verdictSigned'>, 'verdict' | 'asks'>;

/** Why each slate that is outside is: its failed checks and defects; slates inside are left out. */
export function whyOutside(
  judging: readonly OfferedSlate[],
  limits: ProductLimits,
  { delivery, sort }: Catalogue
): ReadonlyMap<string, string> {
  return new Map(
    judging.flatMap(({ id, measured }): [string, string][] => {
      const failed = checkSlate(measured, limits).filter(({ outcome }) => outcome === 'fail');
      const reasons = failed.map(({ check, basis }) => {
        const name =
          check === 'defects'
            ? (measured.defects ?? [])
                .map(
                  (defect) => sort.setAside.reasons[defect as keyof typeof sort.setAside.reasons]
                )
                .join(', ')
            : delivery.checks[check];
        return isCertain(basis) ? name : delivery.claim.asked(name);
      });
      return failed.length > 0 ? [[id, reasons.join('; ')]] : [];
    })
  );
}

/** The parties and papers that the claim begins with; what was not entered is left out. */
export function sayPapers(
  order: BodyOf<'deliveryDeclared'> | undefined,
  { delivery }: Catalogue,
  numbers: NumberWords
): { readonly name: string; readonly value: string }[] {
  const { claim } = delivery;
  const day = (on: string | undefined): string => (on ? numbers.day(on) : '');
  return [
    { name: claim.buyer, value: order?.buyer ?? '' },
    { name: claim.supplier, value: order?.supplier ?? '' },
    {
      name: claim.order,
      value: [order?.orderNumber, day(order?.orderedOn)].filter(Boolean).join(', ')
    },
    { name: claim.product, value: order?.product ?? '' },
    { name: claim.deliveryNote, value: order?.deliveryNote ?? '' },
    { name: claim.batches, value: order?.batches ?? '' },
    { name: claim.arrived, value: day(order?.arrivedOn) }
  ].filter(({ value }) => value !== '');
}
