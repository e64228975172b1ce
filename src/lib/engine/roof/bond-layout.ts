/** The two ways a course may start; courses take them in turn. */
export type BondName = 'A' | 'B';

/** What a place in a bond is filled with. */
export type PieceKind = 'full' | 'slate-and-a-half' | 'cut';

/** A place along a course, from the end the bonds are set out from, mm. */
export interface BondPiece {
  readonly kind: PieceKind;
  readonly leftMm: number;
  readonly widthMm: number;
}

/** One bond across a width. */
export interface BondLayout {
  readonly jointMm: number;
  readonly pieces: readonly BondPiece[];
}
