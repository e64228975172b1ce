import { FULL_CHECKS } from '$lib/engine';

/** Why a slate goes on no pile. */
export const SET_ASIDE_REASONS = [
  'broken',
  'dullRing',
  'twisted',
  'tapered',
  'wrongSize',
  'inclusion',
  'colour',
  'other'
] as const;

export type SetAsideReason = (typeof SET_ASIDE_REASONS)[number];

/** What is seen on a slate: every reason but the ring, which is heard and has its own question. */
export type Defect = Exclude<SetAsideReason, 'dullRing'>;

/** Every defect, in the order of the reasons. */
export const DEFECTS: readonly Defect[] = SET_ASIDE_REASONS.filter(
  (reason) => reason !== 'dullRing'
);

/** Limits that a buyer can confirm from the order or contract. */
export const AGREED_LIMITS = [...FULL_CHECKS, 'ring', ...DEFECTS] as const;

export type AgreedLimitName = (typeof AGREED_LIMITS)[number];
