import type { RoofLayout } from '$lib/engine/roof';

/** The slope that another meets by one of its edges. */
export interface EdgeMeeting {
  readonly name: string;
  /** The most by which their courses miss each other, mm; Infinity where none of them meet. */
  readonly apartMm: number;
}

/** Whom a slope meets by each of its hips and valleys; left out where nobody. */
export type EdgeMeetings = Partial<Record<'left' | 'right', EdgeMeeting>>;

/** Whom a slope of the roof meets round its hips and valleys, and how far their courses miss each other. */
export function edgeMeetings({ slopes, meetings }: RoofLayout, slopeId: string): EdgeMeetings {
  const found: EdgeMeetings = {};
  for (const { join, apartMm } of meetings) {
    const isOne = join.one === slopeId;
    if (!isOne && join.other !== slopeId) continue;
    const side = isOne ? join.oneSide : join.otherSide;
    const across = isOne ? join.other : join.one;
    const name = slopes.find(({ slope }) => slope.id === across)?.slope.name;
    if (side !== 'ridge' && name !== undefined) found[side] = { name, apartMm };
  }
  return found;
}
