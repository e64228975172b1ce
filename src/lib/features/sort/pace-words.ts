import type { Catalogue, NumberWords } from '$lib/text';

/** How long the job was sorted today, how fast it is sorted, and what is left. */
export interface PaceSoFar {
  readonly minutes: number;
  /** Slates an hour of sorting; null before there is enough to tell. */
  readonly perHour: number | null;
  /** Slates left on the pallets; undefined where the count of one is unknown. */
  readonly left: number | undefined;
}

/** The pace, and the time to the last slate, in words. */
export interface PaceWords {
  readonly worked: string;
  readonly pace: string;
  /** Empty before there is a pace, and when nothing is left or nobody knows what is. */
  readonly toFinish: string;
  /** Empty where nobody knows what is left. */
  readonly left: string;
}

/** The words of a day's pace. Times are told in whole minutes. */
export function sayPace(
  { minutes, perHour, left }: PaceSoFar,
  { tally }: Catalogue['sort'],
  numbers: NumberWords
): PaceWords {
  const time = (of: number): string => {
    const whole = Math.round(of);
    return tally.hours(Math.floor(whole / 60), whole % 60);
  };
  return {
    worked: time(minutes),
    pace: perHour === null ? tally.noPace : tally.pace(numbers.whole(perHour)),
    toFinish: perHour && left ? tally.toFinish(time((left * 60) / perHour)) : '',
    left: left === undefined ? '' : tally.left(left)
  };
}
