/**
 * Measured checks of a slate other than thickness, in the order they are shown. Only some slates of
 * a sample get them: those that chance picked for the full check.
 */
export const FULL_CHECKS = ['length', 'width', 'squareness', 'edge', 'flatness'] as const;

export type FullCheck = (typeof FULL_CHECKS)[number];
