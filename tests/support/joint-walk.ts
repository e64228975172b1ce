/** The ends of a piece along its course. */
interface Laid {
  readonly leftMm: number;
  readonly widthMm: number;
}

/**
 * The least distance between a joint of any course and a joint of the next, edge to edge, mm;
 * every joint against every joint, with no code of the layout. Infinity where there is none. Only
 * joints between two pieces that count are walked; all do unless told otherwise.
 */
export function closestJoints<Piece extends Laid>(
  courses: readonly { readonly runs: readonly { readonly pieces: readonly Piece[] }[] }[],
  counts: (piece: Piece) => boolean = () => true
): number {
  const joints = courses.map(({ runs }) =>
    runs.flatMap(({ pieces }) =>
      pieces
        .slice(1)
        .map((piece, index) => [pieces[index], piece] as const)
        .filter(([left, right]) => counts(left) && counts(right))
        .map(([left, right]) => [left.leftMm + left.widthMm, right.leftMm] as const)
    )
  );
  let least = Infinity;
  for (let course = 1; course < joints.length; course++)
    for (const [from, to] of joints[course - 1])
      for (const [otherFrom, otherTo] of joints[course])
        least = Math.min(least, Math.max(0, otherFrom - to, from - otherTo));
  return least;
}
