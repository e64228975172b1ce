import type { Lift, LoadStack } from '$lib/engine/courses';
import { words } from '$lib/text';

/** A mass as lifts tell it: whole kilograms. */
export const sayKg = (mass: number): string => `${words.numbers.decimal(mass, 0)} kg`;

/** The sum of the lifts as they are listed, so that whoever adds them up finds the same. */
export const totalKgOf = (lifts: readonly Lift[]): number =>
  lifts.reduce((sum, { massKg }) => sum + Math.round(massKg), 0);

/** How many slates, or slate-and-a-halves, a stack is of. */
export const sayStack = ({ size, count }: LoadStack): string =>
  size === 'slate' ? words.text.common.slates(count) : words.text.courses.slateAndAHalves(count);

/** For which slope and courses a stack is; course 0 is the undereave row. */
export const sayPlace = (
  { slopeId, fromCourse, toCourse }: LoadStack,
  nameOf: (slopeId: string) => string
): string => {
  const text = words.text.courses.load;
  if (toCourse === 0) return text.under(nameOf(slopeId));
  return text.where(nameOf(slopeId), fromCourse, toCourse);
};
