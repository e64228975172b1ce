import {
  type DefectFinding,
  type ProductLimits,
  type SlateCheckName,
  type ToleranceLimit,
  checkSlate,
  isCertain
} from '$lib/engine/delivery';
import type { OfferedSlate } from '$lib/job';
import type { BodyOf } from '$lib/journal';
import type { Catalogue, NumberWords } from '$lib/text';
import type { Judged, SoFar } from './delivery-judge.ts';

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
  if (name === 'flatness') return claim.below(numbers.mm(highMm, 1));
  return lowMm > 0
    ? claim.range(
        numbers.mm(lowMm, name === 'thickness' ? 2 : 0),
        numbers.mm(highMm, name === 'thickness' ? 2 : 0)
      )
    : claim.most(numbers.mm(highMm, 1));
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
        numbers.whole(failed),
        numbers.whole(measured),
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
