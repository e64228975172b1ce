/**
 * A door of its own: only what is behind it needs a distribution library, so screens that grade
 * without misgrading do not load one.
 */
export { combinedSdMm, normalMisgrading } from './normal-misgrading.ts';
