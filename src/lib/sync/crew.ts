import type { AccessEntry, InviteEntry, Role } from '../../hub/protocol.ts';
import { fromBase64Url, randomBytes, toBase64Url, utf8 } from './bytes.ts';
import { type CrewLink, type CrewRecord, newCrewState } from './crew-state.ts';
import { type Fetch, HubClient, HubRefused, HubSilent } from './hub-client.ts';
import { type Invitation, writeInvitation } from './invitation.ts';
import { deriveKeys, hashText, newJobKey, seal, unseal } from './keys.ts';

/** What a device tells the rest of the crew of itself; the hub cannot read it. */
export interface Signature {
  /** What the others call whoever works on it. */
  readonly name: string;
  readonly jobId: string;
}

/** Somebody of the crew, as its devices know him. */
export interface Mate extends Omit<AccessEntry, 'label'> {
  /** Empty where the name cannot be read. */
  readonly name: string;
  /** Whether it is this device. */
  readonly isOwn: boolean;
}

/** The device that a crew is started on, or joined from. */
export interface Joiner {
  readonly device: string;
  readonly name: string;
}

/** Letters of a name that a label has room for. */
const NAME_LENGTH = 40;

/**
 * Opens a space for a job at a hub, with this device as its keeper.
 *
 * @param hubKey the key that only those have who may start crews there
 * @throws HubSilent, HubRefused
 */
export async function startCrew(
  fetch: Fetch,
  { origin, hubKey }: { readonly origin: string; readonly hubKey: string },
  jobId: string,
  { device, name }: Joiner
): Promise<CrewRecord> {
  const space = toBase64Url(randomBytes(16));
  const [jobKey, token] = [newJobKey(), newToken()];
  const label = await sealSignature(jobKey, device, { name, jobId });
  const entry = { tokenHash: await hashText(token), device, label };
  await new HubClient(fetch, { origin, space, token: hubKey }).openSpace(entry);
  return newCrewState({ origin, space, token, jobKey, jobId, device, role: 'keeper' });
}

/** A token for a device to be let in; kept until the join is answered, so that it can be repeated. */
export function newToken(): string {
  return toBase64Url(randomBytes(32));
}

/**
 * Uses an invitation up. With the same token it may be done again when the answer was lost.
 *
 * @returns the link's state, or undefined where nobody of the crew says which job it is
 * @throws HubSilent, HubRefused
 */
export async function joinCrew(
  fetch: Fetch,
  { origin, invite, secret, jobKey }: Invitation,
  token: string,
  { device, name }: Joiner
): Promise<CrewRecord | undefined> {
  const label = await sealSignature(jobKey, device, { name, jobId: '' });
  const entry = { tokenHash: await hashText(token), device, label };
  const anyone = new HubClient(fetch, { origin, space: '', token: '' });
  const { space, role } = await anyone.join({ invite, secret, ...entry });
  const link = { origin, space, token, jobKey, jobId: '', device, role };
  const { accesses } = await new HubClient(fetch, link).accesses();
  for (const access of accesses) {
    const jobId = (await openSignature(jobKey, access))?.jobId;
    if (jobId) return newCrewState({ ...link, jobId });
  }
  return undefined;
}

/**
 * Makes an invitation for one person: a link to be sent or shown, good once and for seven days.
 *
 * @throws HubSilent, HubRefused
 */
export async function inviteMate(
  fetch: Fetch,
  link: CrewLink,
  role: Role
): Promise<{ readonly id: string; readonly url: string }> {
  const [invite, secret] = [toBase64Url(randomBytes(12)), toBase64Url(randomBytes(14))];
  const secretHash = await hashText(secret);
  await new HubClient(fetch, link).invites({ invite, secretHash, role });
  const { origin, jobKey } = link;
  return { id: invite, url: await writeInvitation({ origin, invite, secret, jobKey }) };
}

/**
 * Who is in the crew, the removed ones too, in the order in which they came.
 *
 * @param change such as `{ remove: id }`, done first
 * @throws HubSilent, HubRefused
 */
export async function crewOf(
  fetch: Fetch,
  link: CrewLink,
  change: Record<string, unknown> = {}
): Promise<Mate[]> {
  const { own, accesses } = await new HubClient(fetch, link).accesses(change);
  return Promise.all(
    accesses.map(async (access) => {
      const { id, device, role, since, lastSeen, removed } = access;
      const name = (await openSignature(link.jobKey, access))?.name ?? '';
      return { id, device, role, since, lastSeen, removed, name, isOwn: id === own };
    })
  );
}

/**
 * Lets this device in once more under a new id, as after it was copied or put back.
 *
 * @throws HubSilent, HubRefused
 */
export async function moveIn(
  fetch: Fetch,
  state: CrewRecord,
  { device, name }: Joiner
): Promise<CrewRecord> {
  const { link } = state;
  const token = newToken();
  const label = await sealSignature(link.jobKey, device, { name, jobId: link.jobId });
  const entry = { tokenHash: await hashText(token), device, label };
  await new HubClient(fetch, link).accesses(entry);
  return { ...state, held: {}, link: { ...link, device, token } };
}

/**
 * Takes this device's own access back. Without signal, or where it is the last that may invite, it
 * stays, unused: whoever may invite can remove it.
 */
export async function leaveCrew(fetch: Fetch, link: CrewLink): Promise<void> {
  const hub = new HubClient(fetch, link);
  try {
    const { own } = await hub.accesses();
    await hub.accesses({ remove: own });
  } catch (error) {
    if (!(error instanceof HubSilent || error instanceof HubRefused)) throw error;
  }
}

/**
 * The invitations that may still be used.
 *
 * @param change such as `{ revoke: id }`, done first
 * @throws HubSilent, HubRefused
 */
export async function openInvites(
  fetch: Fetch,
  link: CrewLink,
  change: Record<string, unknown> = {}
): Promise<InviteEntry[]> {
  const invites = await new HubClient(fetch, link).invites(change);
  return invites.filter(({ state }) => state === 'open');
}

/** The key of a hub out of its link, `…/join#hub1.…`; undefined for any other text. */
export function readHubKey(text: string): string | undefined {
  const key = /#hub1\.([A-Za-z0-9_-]{43})$/.exec(text.trim())?.[1];
  return key && fromBase64Url(key) ? key : undefined;
}

async function sealSignature(
  jobKey: string,
  device: string,
  { name, jobId }: Signature
): Promise<string> {
  const { parcel } = await deriveKeys(jobKey, NAMES);
  const text = JSON.stringify([[...name].slice(0, NAME_LENGTH).join(''), jobId]);
  return toBase64Url(await seal(parcel, utf8(text), [NAMES, device]));
}

/** The names are sealed before the space is known: under a key of their own, of the job alone. */
const NAMES = 'names';

async function openSignature(
  jobKey: string,
  { device, label }: Pick<AccessEntry, 'device' | 'label'>
): Promise<Signature | undefined> {
  const sealed = fromBase64Url(label);
  if (!sealed) return undefined;
  const { parcel } = await deriveKeys(jobKey, NAMES);
  const bytes = await unseal(parcel, sealed, [NAMES, device]);
  if (!bytes) return undefined;
  try {
    const [name, jobId] = JSON.parse(new TextDecoder().decode(bytes)) as unknown[];
    return typeof name === 'string' && typeof jobId === 'string' ? { name, jobId } : undefined;
  } catch {
    return undefined;
  }
}
