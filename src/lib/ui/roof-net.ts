import { type Slope, insetAtTopMm } from '$lib/engine/roof';

/** A place on the drawing of the whole roof, mm; y runs down, as on a screen. */
export interface NetPoint {
  readonly x: number;
  readonly y: number;
}

/** Where a slope lies on the drawing of the whole roof. */
export interface PlacedSlope {
  readonly slopeId: string;
  /** Turn of the slope about its eave's left corner, degrees, clockwise on the screen. */
  readonly turnDegrees: number;
  /** Where that corner lies. */
  readonly at: NetPoint;
  /** Eave left, eave right, ridge right, ridge left. */
  readonly corners: readonly [NetPoint, NetPoint, NetPoint, NetPoint];
}

/** The corner at which each side of a slope begins and ends, seen from outside, as numbered above. */
const SIDES = { left: [0, 3], right: [1, 2], ridge: [3, 2] } as const;
type Side = keyof typeof SIDES;

/** Edges that differ by less than this share of their length are taken to be one: tape error. Ours. */
const SAME_LENGTH = 0.01;
/** An edge shorter than this joins nothing, mm. */
const SHORTEST_MM = 300;
/** Room between parts that do not join, as a share of the longest slope. */
const APART = 0.06;

/**
 * The slopes of a roof laid flat and joined where they meet: ridge to ridge, hip to hip and valley to
 * valley, seen from outside and true to size. Which slopes meet was never asked, so edges of one kind
 * and length join, ridges first, then as the slopes are listed. A slope that fits nowhere without
 * lying on another one stands beside the rest.
 *
 * Cost: cubic in the slopes; 40 of them take a few milliseconds.
 */
export function roofNet(slopes: readonly Slope[]): PlacedSlope[] {
  const placed = new Map<number, PlacedSlope>();
  const widest = Math.max(0, ...slopes.map(({ eaveWidthMm }) => eaveWidthMm));
  for (const [start, slope] of slopes.entries()) {
    if (placed.has(start)) continue;
    const all = [...placed.values()].flatMap(({ corners }) => corners);
    const from = all.length > 0 ? Math.max(...all.map(({ x }) => x)) + APART * widest : 0;
    placed.set(start, placedAt(slope, 0, { x: from, y: 0 }));
    for (const [index] of placed) joinTo(index, slopes, placed);
    if (start > 0) shiftRight(placed, start, from);
  }
  return slopes.map((_, index) => placed.get(index) as PlacedSlope);
}

/** Steeper than this a slope is drawn laid flat: from above there would be nothing to see. Ours. */
const STEEPEST_DEGREES = 75;

/** How much of a slope's rafter is seen from above: the cosine of its pitch. */
export function shareFromAbove({ pitchDegrees }: Pick<Slope, 'pitchDegrees'>): number {
  return pitchDegrees > STEEPEST_DEGREES ? 1 : Math.cos((pitchDegrees * Math.PI) / 180);
}

/** The slopes of a roof from above: as `roofNet` joins them, each as long as its rafter is on plan. */
export function roofFromAbove(slopes: readonly Slope[]): PlacedSlope[] {
  return roofNet(
    slopes.map((slope) => ({
      ...slope,
      rafterLengthMm: slope.rafterLengthMm * shareFromAbove(slope),
      left: { kind: slope.left.kind, insetAtTopMm: insetAtTopMm(slope, slope.left) },
      right: { kind: slope.right.kind, insetAtTopMm: insetAtTopMm(slope, slope.right) }
    }))
  );
}

/** The box that placed slopes take up with a border round them, mm. */
export function frameOfNet(net: readonly PlacedSlope[], borderMm: number) {
  const corners = net.flatMap((slope) => slope.corners);
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  const [left, top] = [Math.min(...xs) - borderMm, Math.min(...ys) - borderMm];
  return {
    left,
    top,
    width: Math.max(...xs) + borderMm - left,
    height: Math.max(...ys) + borderMm - top
  };
}

/** Joins to a placed slope whatever fits: the map grows while it is walked. */
function joinTo(index: number, slopes: readonly Slope[], placed: Map<number, PlacedSlope>): void {
  const base = placed.get(index) as PlacedSlope;
  const joins: readonly [Side, Side][] = [
    ['ridge', 'ridge'],
    ['right', 'left'],
    ['left', 'right']
  ];
  for (const [own, others] of joins) {
    const order = own === 'left' ? backFrom(index, slopes.length) : onFrom(index, slopes.length);
    for (const other of order) {
      if (placed.has(other) || !fits(slopes[index], own, slopes[other], others)) continue;
      const joined = joinedAt(base, own, slopes[other], others);
      if ([...placed.values()].some(({ corners }) => overlap(corners, joined.corners))) continue;
      placed.set(other, joined);
      break;
    }
  }
}

/** The other slopes in the order of the list from one on, round and round. */
function onFrom(index: number, count: number): number[] {
  return Array.from({ length: count - 1 }, (_, step) => (index + step + 1) % count);
}

function backFrom(index: number, count: number): number[] {
  return onFrom(index, count).reverse();
}

function fits(one: Slope, own: Side, other: Slope, others: Side): boolean {
  if (own !== 'ridge') {
    const [kind, otherKind] = [one[own as 'left' | 'right'].kind, other[others as 'left'].kind];
    if (kind !== otherKind || (kind !== 'hip' && kind !== 'valley')) return false;
  }
  const [length, otherLength] = [lengthOf(one, own), lengthOf(other, others)];
  return length > SHORTEST_MM && Math.abs(length - otherLength) <= SAME_LENGTH * length;
}

function lengthOf(slope: Slope, side: Side): number {
  const [from, to] = SIDES[side];
  const corners = cornersOf(slope);
  return Math.hypot(corners[to].x - corners[from].x, corners[to].y - corners[from].y);
}

/** Eave left, eave right, ridge right, ridge left, about the eave's left corner. */
function cornersOf(slope: Slope): [NetPoint, NetPoint, NetPoint, NetPoint] {
  const left = insetAtTopMm(slope, slope.left);
  const right = Math.max(left, slope.eaveWidthMm - insetAtTopMm(slope, slope.right));
  const y = -slope.rafterLengthMm;
  return [
    { x: 0, y: 0 },
    { x: slope.eaveWidthMm, y: 0 },
    { x: right, y },
    { x: left, y }
  ];
}

function placedAt(slope: Slope, turnDegrees: number, at: NetPoint): PlacedSlope {
  const turn = (turnDegrees * Math.PI) / 180;
  const moved = ({ x, y }: NetPoint): NetPoint => ({
    x: at.x + x * Math.cos(turn) - y * Math.sin(turn),
    y: at.y + x * Math.sin(turn) + y * Math.cos(turn)
  });
  const [a, b, c, d] = cornersOf(slope);
  const corners = [moved(a), moved(b), moved(c), moved(d)] as const;
  return { slopeId: slope.id, turnDegrees, at, corners };
}

/** A slope turned and moved so that one of its sides lies along a side of a placed one. */
function joinedAt(base: PlacedSlope, own: Side, slope: Slope, others: Side): PlacedSlope {
  const [from, to] = SIDES[own].map((corner) => base.corners[corner]);
  // Along a ridge the two run against each other; along a hip or valley both run up the roof.
  const ends = others === 'ridge' ? [...SIDES[others]].reverse() : SIDES[others];
  const [start, end] = ends.map((corner) => cornersOf(slope)[corner]);
  const turn =
    Math.atan2(to.y - from.y, to.x - from.x) - Math.atan2(end.y - start.y, end.x - start.x);
  const turnDegrees = (turn * 180) / Math.PI;
  const startTurned = placedAt(slope, turnDegrees, { x: 0, y: 0 }).corners[ends[0]];
  return placedAt(slope, turnDegrees, { x: from.x - startTurned.x, y: from.y - startTurned.y });
}

/** Moves the parts placed since a slope, so that the leftmost of them begins at a place. */
function shiftRight(placed: Map<number, PlacedSlope>, since: number, from: number): void {
  const start = placed.get(since) as PlacedSlope;
  const keys = [...placed.keys()];
  const later = keys.slice(keys.indexOf(since));
  const left = Math.min(
    ...later.flatMap((key) => (placed.get(key) ?? start).corners.map(({ x }) => x))
  );
  const by = Math.max(0, from - left);
  for (const key of later) {
    const part = placed.get(key) as PlacedSlope;
    const move = ({ x, y }: NetPoint): NetPoint => ({ x: x + by, y });
    const [a, b, c, d] = part.corners;
    placed.set(key, {
      ...part,
      at: move(part.at),
      corners: [move(a), move(b), move(c), move(d)]
    });
  }
}

/** How far two outlines may lie on each other before that shows, mm. */
const TOUCHING_MM = 60;

/** Whether two outlines, none of them hollow, lie on each other: some line keeps apart any that do not. */
function overlap(one: readonly NetPoint[], other: readonly NetPoint[]): boolean {
  return ![one, other].some((outline) =>
    outline.some((corner, index) => {
      const next = outline[(index + 1) % outline.length];
      const [x, y] = [next.y - corner.y, corner.x - next.x];
      const size = Math.hypot(x, y);
      if (size < 1) return false;
      const along = (points: readonly NetPoint[]): number[] =>
        points.map((point) => (point.x * x + point.y * y) / size);
      const [mine, theirs] = [along(one), along(other)];
      return (
        Math.min(...theirs) > Math.max(...mine) - TOUCHING_MM ||
        Math.min(...mine) > Math.max(...theirs) - TOUCHING_MM
      );
    })
  );
}
