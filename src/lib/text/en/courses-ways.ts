import { pluralizer } from '../plural.ts';
import { common } from './common.ts';
import { pieces, wides } from './pieces.ts';

const many = pluralizer('en');

/** Words for a stock that is short, and the ways out. */
export const short = {
  title: 'The stock is short',
  missing: (slates: number) =>
    `The roof needs ${common.slates(slates)} more than all piles hold beyond their reserve.`,
  missingWide: (n: number) =>
    `The roof needs ${wides(n)} more than all piles hold beyond their reserve.`,
  reserve: (pile: string, slates: number) =>
    `${pile} lacks ${common.slates(slates)} for its own reserve.`,
  reserveWide: (pile: string, n: number) => `${pile} lacks ${wides(n)} for its own reserve.`,
  enoughBy: (parts: readonly string[], isAfterReserve: boolean) =>
    `${isAfterReserve ? 'Once the reserves are whole, this' : 'This'} would be enough: ${parts.join(', or ')}.`,
  enoughPart: (pile: string, slates: number, wide: number) =>
    `${pieces(slates, wide)} more on ${pile}`,
  order:
    'There are enough slates in all, but not in the right order. A course takes two piles at most, and nothing thicker goes above.',
  ways: 'Ways out',
  searching: 'Looking for ways out…',
  noWay: 'No single step fixes this. Sort more slates, order slates, or enter the roof again.',
  price: (plan: { kickers: string; per100: string; changeovers: number; spare: number }) =>
    `Then ${plan.kickers} joints will show (${plan.per100} in 100), ${many(plan.changeovers, { one: 'change of pile', other: 'changes of pile' })}, ${common.slates(plan.spare)} left over.`,
  priceCounts: (plan: { changeovers: number; spare: number }) =>
    `Then ${many(plan.changeovers, { one: 'change of pile', other: 'changes of pile' })}, ${common.slates(plan.spare)} left over.`,
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
  changed: (n: number) => `Stock or settings changed: in the new plan ${common.courses(n)} differ.`,
  roof: (n: number) =>
    `The roof or the slate changed: the plan in use does not fit ${common.courses(n)}.`,
  roofWhere: (parts: readonly string[]) => `These are ${parts.join(' and ')}.`,
  roofPart: (slope: string, courseCount: number) => `${common.courses(courseCount)} of ${slope}`,
  planning: 'A new plan is being made…',
  noNew: 'There is no new plan: the stock is short for the roof as it is now.',
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
