import type { CourseDemand } from '../roof/index.ts';

/** What stands on one pile, counted or estimated, and what of it must not be laid. */
export interface PileStock {
  /** Full slates on the pile, whole. */
  readonly slates: number;
  /** Slate-and-a-halves on the pile, whole. Not looked at when they come from a common stock. */
  readonly slateAndAHalves: number;
  /** Full slates kept back: breakage allowance plus spares for repairs. */
  readonly reservedSlates: number;
  /** Slate-and-a-halves kept back. */
  readonly reservedSlateAndAHalves: number;
}

/** Slate-and-a-halves that were not graded: one stock for all piles. */
export interface CommonStock {
  readonly slateAndAHalves: number;
  readonly reservedSlateAndAHalves: number;
}

/** Chances that two neighbours kick. Piles in order, thickest first, so index 0 is pile 1. */
export interface KickChances {
  /** Both neighbours from the same pile. */
  readonly within: readonly number[];
  /** Neighbours from two piles: row the one, column the other; the diagonal is not looked at. */
  readonly between: readonly (readonly number[])[];
  /** A slate-and-a-half from the common stock beside a slate of each pile, and beside its like. */
  readonly common?: { readonly withPile: readonly number[]; readonly within: number };
}

/** A course that is laid, and the piles it was laid from. */
export interface LaidCourse {
  readonly slopeId: string;
  readonly course: number;
  readonly heightMm: number;
  /** The least pile number in the course. */
  readonly thickestPile: number;
  /** The greatest pile number in the course. */
  readonly thinnestPile: number;
}

/** Everything the planner needs to know. Never modified. */
export interface PlanRequest {
  /** Courses still to lay, all slopes, in any order. */
  readonly courses: readonly CourseDemand[];
  /** Piles, thickest first. */
  readonly piles: readonly PileStock[];
  readonly kicks: KickChances;
  /** Given when slate-and-a-halves are drawn from one ungraded stock instead of from the piles. */
  readonly common?: CommonStock;
  /** Courses that are laid already: nothing thicker goes above them, nothing thinner below. */
  readonly laid?: readonly LaidCourse[];
  /**
   * Whether laid courses bind the courses of all slopes, so that slopes that meet still change pile
   * at the same height (if left out), or only those of their own slope.
   */
  readonly laidBinds?: 'all-slopes' | 'own-slope';
  /** Share of slates that come later which is kept back as well; 0 if left out. No plan needs it. */
  readonly reserveShare?: number;
}

/** The pieces that one pile gives to one course. */
export interface CoursePart {
  /** 1 for the thickest pile. */
  readonly pile: number;
  readonly slates: number;
  /** 0 when slate-and-a-halves come from the common stock. */
  readonly slateAndAHalves: number;
}

/** Joints, and how many of them are expected to kick. */
export interface Evenness {
  readonly joints: number;
  /** Expected kickers. */
  readonly kickers: number;
  /** Expected kickers per 100 joints, lower is better; 0 where there is no joint. */
  readonly per100Joints: number;
}

/** One course of the plan. */
export interface PlannedCourse extends Evenness {
  readonly slopeId: string;
  readonly course: number;
  readonly heightMm: number;
  /**
   * The piles of the course from its left end to its right end: one part; two in a changeover
   * course, the thicker first; none for a course without pieces.
   */
  readonly parts: readonly CoursePart[];
  /** Slate-and-a-halves from the common stock. */
  readonly commonSlateAndAHalves: number;
}

/** What the plan takes from a pile and what stays beyond the reserve. */
export interface PileUse {
  readonly pile: number;
  readonly slates: number;
  readonly slateAndAHalves: number;
  /** Slates left over when the roof is laid, beyond the reserve. */
  readonly spareSlates: number;
  readonly spareSlateAndAHalves: number;
}

/** A plan proved to be the best of its kind that the stock allows: most even, or by the rule. */
export interface Plan extends Evenness {
  readonly status: 'optimal';
  /** Set where not every order within a height was tried: the best of those tried, no proof. */
  readonly notEveryOrder?: true;
  /** Set where the stock is too tight to change pile together at every hip and valley. */
  readonly changesApart?: true;
  /**
   * Set on a plan by the rule: by how many courses the change farthest from its proportion is off, one
   * or less being 1.
   */
  readonly rule?: { readonly offCourses: number };
  /** Expected kickers in whole billionths: the exact figure that was made least. */
  readonly objective: number;
  /** Courses in laying order; within a height in the order that the plan lays them. */
  readonly courses: readonly PlannedCourse[];
  /** Courses in which one pile gives way to the next. */
  readonly changeovers: number;
  /** Evenness of each slope, by slope id in order of first appearance in the plan. */
  readonly slopes: ReadonlyMap<string, Evenness>;
  readonly piles: readonly PileUse[];
  /** Slate-and-a-halves of the common stock left over beyond its reserve; 0 without such a stock. */
  readonly spareCommonSlateAndAHalves: number;
}

/** Slates and slate-and-a-halves of one pile. */
export interface PileCount {
  readonly pile: number;
  readonly slates: number;
  readonly slateAndAHalves: number;
}

/** No plan fits: how much is missing. */
export interface Shortage {
  readonly status: 'short';
  /** Set where not every order within a height was tried: another might still fit. */
  readonly notEveryOrder?: true;
  /** Slates by which the roof's need exceeds all stock less reserve; 0 if only the order fails. */
  readonly missingSlates: number;
  readonly missingSlateAndAHalves: number;
  /** Piles whose reserve exceeds their stock, and by how many. */
  readonly missingReserve: readonly PileCount[];
  /** The same for the common stock. */
  readonly missingCommonReserve: number;
  /**
   * The least that one pile alone would have to gain for a plan to fit, once every missing reserve
   * is made good; a pile that cannot mend the shortage alone is not named.
   */
  readonly mendedBy: readonly PileCount[];
}

export type PlanResult = Plan | Shortage;
