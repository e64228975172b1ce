import * as v from 'valibot';
import { finite, gradesId, key, longText, pile, sizeId, whole } from './body-fields.ts';
import { allDiffer } from './lists.ts';

const piecesOfPile = v.object({ pile, pieces: whole });

const pilesOfCourse = v.pipe(v.array(piecesOfPile), v.minLength(1), v.maxLength(2));

/** From left to right; a course begun under one plan and ended under another has more than two. */
const pilesAsLaid = v.pipe(v.array(piecesOfPile), v.maxLength(8));

/**
 * The undereave row under the first course of a slope, which lies before it: slates that were set
 * aside for it, and what the piles gave. It counts once, however many entries of that course say it.
 */
const undereave = v.optional(
  v.object({
    setAside: whole,
    piles: v.pipe(
      v.array(v.object({ pile, slates: whole, slateAndAHalves: whole })),
      v.maxLength(8)
    )
  })
);

/** The plan of courses and its laying. */
export const COURSES_BODIES = {
  planAdopted: v.object({
    gradesId,
    kickAllowanceMm: finite,
    expectedKickers: finite,
    joints: whole,
    courses: v.pipe(
      v.array(v.object({ slopeId: key, course: whole, piles: pilesOfCourse })),
      v.maxLength(5000),
      v.check(
        (courses) => allDiffer(courses, ({ slopeId, course }) => `${slopeId}|${course}`),
        'a course twice'
      )
    ),
    heldUnder: v.optional(v.pipe(v.number(), v.gtValue(0), v.ltValue(1))),
    way: v.optional(v.picklist(['byRule', 'mostEven', 'own'])),
    sizeId
  }),
  courseLaid: v.object({
    slopeId: key,
    course: whole,
    piles: v.pipe(pilesAsLaid, v.minLength(1)),
    undereave
  }),
  /** So much of a course lies, counted from one end; no pieces: none of it after all. */
  coursePartLaid: v.object({
    slopeId: key,
    course: whole,
    from: v.picklist(['left', 'right']),
    piles: pilesAsLaid,
    /** For whoever goes on with it. */
    note: v.optional(longText),
    undereave
  })
} as const;
