import type { SharingState } from '$lib/app/crew';
import type { Catalogue } from '$lib/text';

type CrewText = Catalogue['crew'];

/** How the sharing stands, in one sentence. */
export function sayCrewState(sharing: SharingState, text: CrewText): string {
  const { outcome, notShared } = sharing;
  if (outcome === undefined) return text.state.first;
  if (outcome !== 'shared' && outcome !== 'no-answer') return text.state[outcome];
  if (notShared > 0) return text.state.waiting(notShared);
  return text.state[outcome];
}

/** A warning, in one or two sentences. */
export function sayWarning(
  warning: SharingState['warnings'][number],
  own: string | undefined,
  nameOf: (device: string) => string,
  text: CrewText
): string {
  if (warning.kind === 'clock') return text.warnings.clock(warning.aheadMs);
  if (warning.kind === 'put-back') return text.warnings['put-back'];
  if (warning.kind === 'withheld') return text.warnings.withheld(nameOf(warning.device));
  if (warning.why === 'same-number')
    return warning.device === own
      ? text.warnings.copied
      : text.warnings.copiedMate(nameOf(warning.device));
  return text.warnings.held(nameOf(warning.device));
}
