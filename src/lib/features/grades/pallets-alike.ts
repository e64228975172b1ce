/** Share of the variance between pallets below which they may be much alike. Ours. */
const MUCH_ALIKE = 0.1;
/** Means further apart than this are not alike, however much the slates of each vary, mm. Ours. */
const FAR_APART_MM = 0.5;

/**
 * Whether a few slates of any pallet show the rest. One reading far out swells the variance within its
 * pallet and makes the share between them small: so their means are looked at too.
 *
 * @param share intraclass correlation, 0 to 1
 * @param meansMm mean thickness of each pallet that was measured
 * @example a share of 0.02 with means 6.93, 6.88 and 6.11 → false
 */
export function arePalletsAlike(share: number, meansMm: readonly number[]): boolean {
  const apartMm = meansMm.length > 0 ? Math.max(...meansMm) - Math.min(...meansMm) : 0;
  return share < MUCH_ALIKE && apartMm <= FAR_APART_MM + 1e-9;
}
