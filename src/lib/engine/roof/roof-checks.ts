import { headlapHint } from './headlap-hints.ts';
import { NAIL_EDGE_MM } from './nail-room.ts';
import { largestHeadlapMm, type SlateSpec } from './slate-spec.ts';

/** What a check found. */
export type RoofCheckCode =
  | 'headlap-above-third'
  | 'headlap-below-least'
  | 'headlap-below-hint'
  | 'pitch-below-least'
  | 'side-lap-below-headlap'
  | 'cuts-without-nail'
  | 'narrow-cuts'
  | 'bond-not-whole';

/** Where a check's limit comes from; a screen turns the key into the source's name. */
export type CheckStanding =
  'nhbc-7-2-19' | 'bs-5534-as-reported' | 'trade-guides-moderate-exposure' | 'common-practice';

/** One thing to look at. Values in mm, degrees for a pitch, pieces for a count. */
export interface RoofCheck {
  readonly code: RoofCheckCode;
  /** `warning`: outside a published or customary limit. `note`: worth knowing, nothing wrong. */
  readonly severity: 'warning' | 'note';
  readonly standing: CheckStanding;
  readonly value: number;
  readonly limit: number;
  /** How many pieces it concerns, for cuts. */
  readonly pieces?: number;
}

/** Least headlap and least pitch. Source: NHBC Standards 7.2.19, table 12. */
const LEAST_HEADLAP_MM = 54;
const LEAST_PITCH_DEGREES = 20;

/** Warnings that belong beside every roof: a screen shows them where the work is described. */
export const ROOF_CAUTIONS = [
  'local-code-decides',
  'work-at-height',
  'lifting',
  'silica-dust'
] as const;

/** What the checks look at. */
export interface CheckedRoof {
  readonly spec: SlateSpec;
  readonly pitchDegrees: number;
  /** The headlap that the equal courses give. */
  readonly headlapMm: number;
  /** The least side lap between the bonds, edge to edge; where two courses have joints. */
  readonly sideLapMm?: number;
  /** Cut pieces with no room for a nail hole, the undereave's too. */
  readonly cutsWithoutNail: number;
  /** Cut pieces below the slate's limit, and the narrowest of them. */
  readonly narrowCuts: number;
  readonly narrowestCutMm: number;
  /** Change of width that would let both bonds finish whole, and the width; where it applies. */
  readonly wholeWidth?: { readonly slatedMm: number; readonly nearestMm: number };
}

/**
 * Checks one slope against published and customary limits, each with its standing.
 *
 * A check informs; it never stops a layout, because the local code and licensed practice decide. The
 * least headlap for a pitch is only ever a note.
 *
 * @returns the checks that found something, gravest kind first as listed in the code
 * Source: with each check.
 */
export function checkRoof(roof: CheckedRoof): RoofCheck[] {
  const { spec, pitchDegrees, headlapMm, sideLapMm } = roof;
  const checks: RoofCheck[] = [];
  const warn = (code: RoofCheckCode, standing: CheckStanding, value: number, limit: number) =>
    checks.push({ code, severity: 'warning', standing, value, limit });

  const mostHeadlap = largestHeadlapMm(spec.lengthMm);
  if (headlapMm > mostHeadlap) warn('headlap-above-third', 'nhbc-7-2-19', headlapMm, mostHeadlap);
  if (headlapMm < LEAST_HEADLAP_MM)
    warn('headlap-below-least', 'nhbc-7-2-19', headlapMm, LEAST_HEADLAP_MM);
  if (pitchDegrees < LEAST_PITCH_DEGREES)
    warn('pitch-below-least', 'nhbc-7-2-19', pitchDegrees, LEAST_PITCH_DEGREES);
  if (sideLapMm !== undefined && sideLapMm < headlapMm)
    warn('side-lap-below-headlap', 'common-practice', sideLapMm, headlapMm);
  if (roof.cutsWithoutNail > 0)
    checks.push({
      code: 'cuts-without-nail',
      severity: 'warning',
      standing: 'common-practice',
      value: 0,
      limit: NAIL_EDGE_MM,
      pieces: roof.cutsWithoutNail
    });
  if (roof.narrowCuts > 0)
    checks.push({
      code: 'narrow-cuts',
      severity: 'warning',
      standing: 'bs-5534-as-reported',
      value: roof.narrowestCutMm,
      limit: spec.narrowestCutMm,
      pieces: roof.narrowCuts
    });
  const hint = headlapHint(spec.lengthMm, spec.widthMm, pitchDegrees);
  if (hint && headlapMm < hint.headlapMm)
    checks.push({
      code: 'headlap-below-hint',
      severity: 'note',
      standing: 'trade-guides-moderate-exposure',
      value: headlapMm,
      limit: hint.headlapMm
    });
  if (roof.wholeWidth)
    checks.push({
      code: 'bond-not-whole',
      severity: 'note',
      standing: 'common-practice',
      value: roof.wholeWidth.slatedMm,
      limit: roof.wholeWidth.nearestMm
    });
  return checks;
}
