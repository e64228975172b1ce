/** What rounding of a decimal step may add. */
const ROUNDING = 1e-9;

/** A straight scale: `low` is drawn at `from`, `high` at `to`, in the units of the drawing. */
export function linearScale(
  low: number,
  high: number,
  from: number,
  to: number
): (value: number) => number {
  return (value) => from + ((value - low) / (high - low)) * (to - from);
}

/** The first step that parts a span into at most `most` pieces; else `last`. */
export function stepFor(
  span: number,
  most: number,
  steps: readonly number[],
  last: number
): number {
  return steps.find((step) => span / step <= most) ?? last;
}

/** The multiples of a step from `low` to `high`, both included, rising. */
export function ticksBetween(low: number, high: number, step: number): number[] {
  const first = Math.ceil(low / step - ROUNDING);
  const last = Math.floor(high / step + ROUNDING);
  return Array.from({ length: last - first + 1 }, (_, index) => (first + index) * step);
}
