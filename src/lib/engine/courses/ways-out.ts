import { EngineError } from '../errors.ts';
import { momentsOfBins, type ThicknessBins } from '../thickness/index.ts';
import { toHundredths } from '../units.ts';
import { type CourseDemand, toBuy } from '../roof/index.ts';
import { layingOrder, piecesOfCourse } from './laying-order.ts';
import { least, leastPair } from './least.ts';
import { moveThresholds, sortAgain } from './move-threshold.ts';
import { planIfAny } from './planner.ts';
import type { PileCount, PileStock, PlanRequest, Shortage } from './plan-types.ts';
import type {
  LayPart,
  LetSlopesDiffer,
  LetThicknessRise,
  NarrowReserve,
  OrderSlates,
  StockKnowledge,
  WayOut
} from './way-out-types.ts';

/**
 * The ways out of a shortage, each priced by the plan that it makes possible: its expected kickers,
 * changeovers and spares, beside what it costs in slates kept, looked at again or bought.
 *
 * - narrow the reserve: of each single pile that can mend it alone, by the fewest slates; where
 *   none can, of all piles in the same proportion;
 * - move a threshold: each by the least whole 0.05 mm, up to 1 mm either way;
 * - sort into another number of piles, at thresholds that the caller proposes;
 * - order slates: for the pile that needs fewest, then gives fewest kickers; of what comes, the
 *   request's share is kept back too, so more are bought than are lacking;
 * - where courses laid already stand in the way: let slopes change pile at different heights, or if
 *   that is not enough, let thickness rise once beside what is laid;
 * - lay as many courses as the stock allows; at the last height those of fewest pieces.
 *
 * @param request the request that came back short
 * @param short what the planner said
 * @param knowledge opens moving thresholds and other piles, and puts thickness to an order
 * @returns every way that leads to an optimal plan, in the order above; perhaps none. What a
 * shortage needs is exact; that slates bought or moved are spread as the pile's are is assumed.
 * @throws EngineError `wrong-length` if knowledge and piles do not match
 *
 * Cost: some dozens of plans for each pile; run it in a worker for a large roof.
 */
export function waysOut(
  request: PlanRequest,
  short: Shortage,
  knowledge?: StockKnowledge
): WayOut[] {
  if (
    knowledge &&
    (knowledge.pileBins.length !== request.piles.length ||
      knowledge.thresholdsMm.length !== request.piles.length - 1)
  )
    throw new EngineError('wrong-length', `knowledge is not about ${request.piles.length} piles`);
  return [
    ...narrowReserve(request, short),
    ...(knowledge ? moveThresholds(request, knowledge) : []),
    ...(knowledge ? sortAgain(request, knowledge) : []),
    ...orderSlates(request, short, knowledge?.pileBins),
    ...unbindLaid(request),
    ...layPart(request)
  ];
}

function narrowReserve(request: PlanRequest, short: Shortage): NarrowReserve[] {
  const { common } = request;
  const releaseCommon = common ? short.missingSlateAndAHalves + short.missingCommonReserve : 0;
  const fromCommon = Math.min(releaseCommon, common?.reservedSlateAndAHalves ?? 0);
  const open: PlanRequest = {
    ...request,
    ...(common && {
      common: {
        ...common,
        reservedSlateAndAHalves: common.reservedSlateAndAHalves - fromCommon
      }
    })
  };
  const narrowed = (release: readonly PileCount[]): PlanRequest => ({
    ...open,
    piles: open.piles.map((pile, index) => {
      const own = release.find((count) => count.pile === index + 1);
      return own ? released(pile, own) : pile;
    })
  });
  const priced = (release: readonly PileCount[]): NarrowReserve[] => {
    const plan = planIfAny(narrowed(release));
    if (!plan) return [];
    return [{ way: 'narrow-reserve', plan, release, releaseCommonSlateAndAHalves: fromCommon }];
  };

  if (fromCommon > 0 && planIfAny(open)) return priced([]);
  const alone = request.piles.flatMap((pile, index): NarrowReserve[] => {
    const release = leastPair(
      { slates: 0, slateAndAHalves: 0 },
      { slates: pile.reservedSlates, slateAndAHalves: pile.reservedSlateAndAHalves },
      (slates, slateAndAHalves) =>
        planIfAny(narrowed([{ pile: index + 1, slates, slateAndAHalves }])) !== undefined
    );
    return release ? priced([{ pile: index + 1, ...release }]) : [];
  });
  if (alone.length > 0) return alone;
  if (shareOfReserves(request.piles, 1).length === 0) return [];
  const share = least(1, 1000, (thousandths) =>
    Boolean(planIfAny(narrowed(shareOfReserves(request.piles, thousandths))))
  );
  return share === undefined ? [] : priced(shareOfReserves(request.piles, share));
}

function shareOfReserves(piles: readonly PileStock[], thousandths: number): PileCount[] {
  return piles
    .map((pile, index) => ({
      pile: index + 1,
      slates: Math.ceil((pile.reservedSlates * thousandths) / 1000),
      slateAndAHalves: Math.ceil((pile.reservedSlateAndAHalves * thousandths) / 1000)
    }))
    .filter(({ slates, slateAndAHalves }) => slates + slateAndAHalves > 0);
}

function released(pile: PileStock, release: PileCount): PileStock {
  return {
    ...pile,
    reservedSlates: pile.reservedSlates - release.slates,
    reservedSlateAndAHalves: pile.reservedSlateAndAHalves - release.slateAndAHalves
  };
}

function orderSlates(
  request: PlanRequest,
  short: Shortage,
  pileBins: readonly ThicknessBins[] = []
): OrderSlates[] {
  const { common } = request;
  const orderCommon = common ? short.missingSlateAndAHalves + short.missingCommonReserve : 0;
  const choices = short.mendedBy.length > 0 ? short.mendedBy : [undefined];
  let best: OrderSlates | undefined;
  for (const choice of choices) {
    const gains = request.piles.map((_pile, index): PileCount => {
      const parts = [...short.missingReserve, ...(choice ? [choice] : [])].filter(
        (part) => part.pile === index + 1
      );
      return {
        pile: index + 1,
        slates: parts.reduce((sum, part) => sum + part.slates, 0),
        slateAndAHalves: parts.reduce((sum, part) => sum + part.slateAndAHalves, 0)
      };
    });
    const plan = planIfAny({
      ...request,
      piles: request.piles.map((pile, index) => ({
        ...pile,
        slates: pile.slates + gains[index].slates,
        slateAndAHalves: pile.slateAndAHalves + gains[index].slateAndAHalves
      })),
      ...(common && {
        common: { ...common, slateAndAHalves: common.slateAndAHalves + orderCommon }
      })
    });
    if (!plan) continue;
    const order = gains
      .filter((gain) => gain.slates + gain.slateAndAHalves > 0)
      .map(({ pile, ...gain }) => ({
        pile,
        slates: toBuy(gain.slates, request.reserveShare),
        slateAndAHalves: toBuy(gain.slateAndAHalves, request.reserveShare),
        ...aboutMm(pileBins[pile - 1])
      }));
    const way: OrderSlates = {
      way: 'order-slates',
      plan,
      order,
      orderCommonSlateAndAHalves: orderCommon
    };
    if (!best || isCheaper(way, best)) best = way;
  }
  return best ? [best] : [];
}

function isCheaper(one: OrderSlates, other: OrderSlates): boolean {
  const bought = ({ order }: OrderSlates) =>
    order.reduce((sum, { slates, slateAndAHalves }) => sum + slates + slateAndAHalves, 0);
  return (bought(one) - bought(other) || one.plan.objective - other.plan.objective) < 0;
}

function aboutMm(bins: ThicknessBins | undefined): { aboutMm?: number } {
  if (!bins || bins.counts.length === 0) return {};
  const moments = momentsOfBins(bins);
  return moments.ok ? { aboutMm: moments.meanMm } : {};
}

function unbindLaid(request: PlanRequest): (LetSlopesDiffer | LetThicknessRise)[] {
  if (!request.laid?.length) return [];
  const differing = planIfAny({ ...request, laidBinds: 'own-slope' });
  if (differing) return [{ way: 'let-slopes-differ', plan: differing }];
  const rising = planIfAny({ ...request, laid: [] });
  return rising ? [{ way: 'let-thickness-rise', plan: rising }] : [];
}

/** Courses by height, at one height those of fewest pieces first, so that most of them are laid. */
function smallestFirst(courses: readonly CourseDemand[]): CourseDemand[] {
  return courses.toSorted(
    (one, other) =>
      toHundredths(one.heightMm) - toHundredths(other.heightMm) ||
      piecesOfCourse(one) - piecesOfCourse(other)
  );
}

function layPart(request: PlanRequest): LayPart[] {
  const ordered = smallestFirst(layingOrder(request.courses));
  if (ordered.length < 2) return [];
  const lower = (left: number) => ({
    ...request,
    courses: ordered.slice(0, ordered.length - left)
  });
  const left = least(1, ordered.length - 1, (courses) => Boolean(planIfAny(lower(courses))));
  const plan = left === undefined ? undefined : planIfAny(lower(left));
  if (!plan) return [];
  return [{ way: 'lay-part', plan, courses: plan.courses.length, ofCourses: ordered.length }];
}
