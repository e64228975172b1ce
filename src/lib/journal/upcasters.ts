/** Lifts a body from one version to the next. Pure; gets and gives plain data. */
export type Upcaster = (body: Record<string, unknown>) => Record<string, unknown>;

/**
 * By event type, the upcasters in order: the first lifts version 1 to 2, the next 2 to 3, and so on
 * without a gap, up to the present version.
 */
export type UpcasterTable = Readonly<Record<string, readonly Upcaster[]>>;

export const UPCASTERS: UpcasterTable = {
  // 2: may say the chance of running out that the plan was held under; a plan of before held none.
  planAdopted: [(body) => body],
  // 2: may say what was laid and lost of the pile by then; a count of before said nothing of it.
  pileCounted: [(body) => body],
  // 2: a course may lie from more than two piles; one of before has one or two.
  courseLaid: [(body) => body]
};

/** Lifts a body of the given version to the wanted one, step by step. */
export function liftBody(
  type: string,
  body: Record<string, unknown>,
  version: number,
  wanted: number,
  table: UpcasterTable = UPCASTERS
): Record<string, unknown> {
  let lifted = body;
  for (let step = version; step < wanted; step++) lifted = table[type][step - 1](lifted);
  return lifted;
}
