/** Id of the part of a mixed pallet that holds one size. */
export function palletOfSize(palletId: string, sizeId: string): string {
  return `${palletId}.${sizeId}`;
}

/** The same mixed pallet's part for another size; undefined for a pallet of one size. */
export function siblingPallet(palletId: string, sizeId: string): string | undefined {
  const at = palletId.indexOf('.');
  return at < 0 ? undefined : palletOfSize(palletId.slice(0, at), sizeId);
}
