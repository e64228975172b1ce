/** A slot of the card, mm from its left edge. */
export interface CardSlot {
  readonly thresholdMm: number;
  readonly leftMm: number;
}

/** The card, drawn to scale: all in mm. */
export interface CardDrawing {
  readonly widthMm: number;
  readonly slots: readonly CardSlot[];
}

const EDGE_MM = 14;
const BETWEEN_MM = 16;
/** Least width: the check line of 100 mm must fit, with room at its ends. */
const LEAST_WIDTH_MM = 120;

/**
 * Lays out a go/no-go card: one slot for each threshold, exactly as wide as it, thickest first, cut
 * into the upper edge. A slate that enters a slot is thinner than its threshold; one of just that
 * thickness is stopped, and so goes to the thicker pile like everywhere else.
 *
 * @param thresholdsMm falling; not modified
 * @example [6, 5] → slots of 6 mm at 14 mm and of 5 mm at 36 mm, card 120 mm wide
 */
export function layOutCard(thresholdsMm: readonly number[]): CardDrawing {
  let leftMm = EDGE_MM;
  const slots = thresholdsMm.map((thresholdMm) => {
    const slot = { thresholdMm, leftMm };
    leftMm += thresholdMm + BETWEEN_MM;
    return slot;
  });
  return { widthMm: Math.max(LEAST_WIDTH_MM, leftMm - BETWEEN_MM + EDGE_MM), slots };
}
