/** Why a hub did not do what it was asked. */
export type HubFault =
  | 'no-answer'
  | 'not-let-in'
  | 'removed'
  | 'keeper-only'
  | 'last-keeper'
  | 'too-many'
  | 'full'
  | 'used'
  | 'expired'
  | 'revoked'
  | 'unknown-invitation'
  | 'other-version'
  | 'old-hub'
  | 'failed';

const BY_REASON: Record<string, HubFault> = {
  'not-let-in': 'not-let-in',
  removed: 'removed',
  'keeper-only': 'keeper-only',
  'last-keeper': 'last-keeper',
  'too-many': 'too-many',
  'space-full': 'full',
  'hub-full': 'full',
  'invite-used': 'used',
  'invite-expired': 'expired',
  'invite-revoked': 'revoked',
  'invite-unknown': 'unknown-invitation',
  'other-version': 'other-version'
};

/** @throws what is none of a hub's answers: a fault of our own */
export function faultOf(error: unknown): HubFault {
  if (!(error instanceof Error)) throw error;
  if (error.name === 'HubSilent') return 'no-answer';
  if (error.name !== 'HubRefused') throw error;
  const { reason, isOlder } = error as Error & { reason: string; isOlder: boolean };
  if (reason === 'other-version' && isOlder) return 'old-hub';
  return BY_REASON[reason] ?? 'failed';
}
