import type { BondName, MarkingSheet } from '$lib/engine/roof';

/** A stretch of the marking stick, as long as its paper: from and to are distances from the datum. */
export interface StickPart {
  readonly fromMm: number;
  readonly toMm: number;
  /** Marks of both bonds on it, rising; the place as a share of the stretch. */
  readonly marks: Readonly<
    Record<BondName, readonly { readonly exactMm: number; readonly share: number }[]>
  >;
}

const BONDS = ['A', 'B'] as const;

/**
 * The perp marks of both bonds on one stick, cut into stretches of one length for paper.
 *
 * @param parts how many stretches
 * @returns every mark once, on the stretch it lies on; the last stretch runs on by one slate, which is
 * what is sawn off or stands over
 */
export function stickParts(
  { perps, slate }: Pick<MarkingSheet, 'perps' | 'slate'>,
  parts: number
): StickPart[] {
  const reachMm = Math.max(
    ...BONDS.flatMap((bond) => perps.marks[bond].map(({ exactMm }) => exactMm)),
    0
  );
  const partMm = (reachMm + slate.widthMm) / parts;
  return Array.from({ length: parts }, (_, index) => {
    const fromMm = index * partMm;
    const toMm = fromMm + partMm;
    const on = (bond: BondName) =>
      perps.marks[bond]
        .filter(
          ({ exactMm }) =>
            exactMm < (index === parts - 1 ? Infinity : toMm) &&
            exactMm >= (index === 0 ? -Infinity : fromMm)
        )
        .map(({ exactMm }) => ({ exactMm, share: (exactMm - fromMm) / partMm }));
    return { fromMm, toMm, marks: { A: on('A'), B: on('B') } };
  });
}
