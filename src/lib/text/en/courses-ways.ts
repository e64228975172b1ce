import { band } from './band.ts';
import { pluralizer } from '../plural.ts';
import { common } from './common.ts';
import { pieces, wides } from './pieces.ts';

const many = pluralizer('en');

/** Courses that begin with one pile and end with the next. */
const fromTwo = (courses: number): string =>
  courses === 0
    ? 'no course from two piles'
    : `${many(courses, { one: 'course', other: 'courses' })} from two piles`;

/** Words for a stock that is short, and the ways out. */
export const short = {
  title: 'The stock is short',
  missing: (slates: number, kept: number) =>
    `The roof needs ${common.slates(slates)} more than the piles have, once ${kept} are kept back for breakage and spares.`,
  missingWide: (n: number) =>
    `The roof needs ${wides(n)} more than the piles have, once the reserve is kept back.`,
  reserve: (pile: string, slates: number) =>
    `${pile} is ${common.slates(slates)} short of its own reserve.`,
  reserveWide: (pile: string, n: number) => `${pile} is ${wides(n)} short of its own reserve.`,
  enoughBy: (parts: readonly string[], isAfterReserve: boolean) =>
    `${isAfterReserve ? 'Once every reserve is full, this' : 'This'} would be enough: ${parts.join(', or ')}.`,
  enoughPart: (pile: string, slates: number, wide: number) =>
    `${pieces(slates, wide)} more on ${pile}`,
  order:
    'There are enough slates in all, but not in the right order. A course takes two piles at most, and nothing thicker goes above.',
  ways: 'Ways out',
  searching: 'Looking for ways out…',
  noWay: 'No single step fixes this. Sort more slates, order slates, or enter the roof again.',
  price: (plan: { kickers: string; per100: string; changeovers: number; spare: number }) =>
    `Then ${plan.kickers} joints will show (${plan.per100} in 100), ${fromTwo(plan.changeovers)}, ${common.slates(plan.spare)} left over.`,
  priceCounts: (plan: { changeovers: number; spare: number }) =>
    `Then ${fromTwo(plan.changeovers)}, ${common.slates(plan.spare)} left over.`,
  narrow: (parts: string) => `Keep fewer slates back: ${parts}.`,
  narrowPart: (slates: number, wide: number, pile: string) =>
    `${pieces(slates, wide)} fewer of ${pile}`,
  narrowGo: (percent: string) => `Set the reserve to ${percent}`,
  narrowFor: (breakage: string, spares: string) =>
    `One reserve holds for all piles: ${breakage} for breakage, ${spares} for repairs.`,
  move: (threshold: string, from: string, to: string, look: number, pile: string, moved: number) =>
    `Move the boundary ${threshold} from ${from} to ${to}. Look again at ${common.slates(look)} of ${pile}; about ${moved.toLocaleString('en')} change pile.`,
  otherPiles: (piles: number, bounds: string, look: number) =>
    `Sort into ${common.piles(piles)} instead, at ${bounds}: ${common.slates(look)} to sort again.`,
  toGrades: 'Go to Grades',
  noOwn:
    'You cannot set your own plan yet, since no height of the roof has slates enough. Sort or order slates first.',
  toOrder: 'Order list, with breakage and spares',
  buy: (parts: string) => `Order ${parts}.`,
  buyPart: (slates: number, wide: number, pile: string, about: string) =>
    `${pieces(slates, wide)} for ${pile}${about ? `, about ${about} thick` : ''}`,
  differ: 'Let each slope change pile at its own height.',
  rise: 'Let a thicker pile go above a thinner one once, next to what is laid already.',
  part: (courseCount: number, of: number) =>
    `Lay the lowest ${courseCount} of ${common.courses(of)} now, and the rest when more slates have come.`,
  useThis: 'Use this plan'
};

/** Words for a plan in use that no longer fits, and the new plan beside it. */
export const older = {
  changed: (n: number) =>
    `Stock or settings changed: ${many(n, { one: 'course differs', other: 'courses differ' })} in the new plan.`,
  roof: (n: number) =>
    `The plan in use leaves out ${common.courses(n)}: they had no slates, or the roof, the slate or the piles changed.`,
  roofWhere: (parts: readonly string[]) => `These are ${parts.join(' and ')}.`,
  roofPart: (slope: string, courseCount: number) => `${common.courses(courseCount)} of ${slope}`,
  /** A plan made under other grades beside the new one. */
  renewed: {
    title: 'Old plan → new plan',
    lead: 'The plan in use was made under other grades. It stays until you use the new one.',
    courses: (slope: string, from: number, to: number) =>
      `${slope}, ${from === to ? `course ${from}` : `courses ${from} to ${to}`}`,
    none: 'not planned',
    band
  },
  planning: 'A new plan is being made…',
  noNew: 'There is no plan for all: the stock is short of slates for the whole roof.',
  kickers: (fewer: string, isFewer: boolean) =>
    `On the rest of the roof ${fewer} ${isFewer ? 'fewer' : 'more'} joints will show.`,
  asEven: 'The rest of the roof stays as even as it was.',
  cannot: (pile: string, toLay: number, withReserve: number) =>
    toLay > 0
      ? `${pile} will run short: ${common.slates(toLay)} short to lay the plan, ${withReserve.toLocaleString('en')} with the reserve.`
      : `${pile} will not keep its reserve: enough to lay the plan, but ${common.slates(withReserve)} too few to keep back.`,
  show: 'Show the new plan',
  showOld: 'Show the plan in use',
  difference: 'What changes',
  place: (slope: string, course: number) => `${slope}, course ${course}`,
  part: (pile: string, slates: number, wide: number) =>
    `${pile} × ${[...(slates > 0 || wide === 0 ? [slates.toLocaleString('en')] : []), ...(wide > 0 ? [wides(wide)] : [])].join(' + ')}`,
  was: 'Was',
  now: 'Now',
  gain: 'Joints that show'
};
