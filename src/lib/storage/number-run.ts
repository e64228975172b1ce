/**
 * The numbers of one device's events, which must run without a gap and each come once. In the order
 * of ids they nearly always rise one by one, so only the last of the run is kept, and the few that
 * came ahead of it.
 */
export class NumberRun {
  #last: number;
  readonly #ahead = new Set<number>();
  /** Numbers noted so far. */
  noted = 0;

  /** @param last the number after which the run goes on; 0 for a run from 1 */
  constructor(last = 0) {
    this.#last = last;
  }

  /** Notes a number; false when the run has it already. */
  note(number: number): boolean {
    if (number <= this.#last || this.#ahead.has(number)) return false;
    this.#ahead.add(number);
    this.noted++;
    while (this.#ahead.delete(this.#last + 1)) this.#last++;
    return true;
  }

  /** The number up to which the run has all. */
  get upTo(): number {
    return this.#last;
  }

  /** The runs of numbers that are missing up to a last one, each as its first and last. */
  gaps(last: number): (readonly [from: number, to: number])[] {
    const gaps: [number, number][] = [];
    let from = this.#last + 1;
    for (const number of [...this.#ahead].sort((one, other) => one - other)) {
      if (number > last) break;
      if (number > from) gaps.push([from, number - 1]);
      from = number + 1;
    }
    if (from <= last) gaps.push([from, last]);
    return gaps;
  }

  /** The highest number noted, or the one after which the run began. */
  get highest(): number {
    let highest = this.#last;
    for (const number of this.#ahead) if (number > highest) highest = number;
    return highest;
  }

  /** The first number missing below the highest, or undefined when there is no gap. */
  get missing(): number | undefined {
    return this.#ahead.size > 0 ? this.#last + 1 : undefined;
  }
}
