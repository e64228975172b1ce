import { fromBase64Url, joinBytes, toBase64Url, utf8 } from './bytes.ts';
import { JOB_KEY_BYTES } from './keys.ts';

/** What an invitation holds; the job key never reaches the hub. */
export interface Invitation {
  /** Where the hub is, such as https://slates.example.org. */
  readonly origin: string;
  readonly invite: string;
  readonly secret: string;
  readonly jobKey: string;
}

export type InvitationFault =
  /** Not a link to join a job at all. */
  | 'not-an-invitation'
  /** Some of it is missing or wrong: copy it whole. */
  | 'cut'
  /** Made by a newer release. */
  | 'too-new';

const INVITE_BYTES = 12;
const SECRET_BYTES = 14;
const CHECK_BYTES = 4;
const ALL_BYTES = INVITE_BYTES + SECRET_BYTES + JOB_KEY_BYTES + CHECK_BYTES;

/**
 * The link of an invitation: everything stands in the fragment, which a browser never sends. With
 * the check, a link that was cut or mistyped is noticed before the invitation is used up.
 *
 * @throws RangeError for parts of another length
 */
export async function writeInvitation(invitation: Invitation): Promise<string> {
  const { origin, invite, secret, jobKey } = invitation;
  const parts = [invite, secret, jobKey].map(fromBase64Url);
  const lengths = [INVITE_BYTES, SECRET_BYTES, JOB_KEY_BYTES];
  if (parts.some((part, at) => part?.length !== lengths[at]))
    throw new RangeError('not the parts of an invitation');
  const held = joinBytes(...(parts as Uint8Array[]));
  return `${origin}/join#1.${toBase64Url(joinBytes(held, await checkOf(origin, held)))}`;
}

/** Reads a link, also from among other words, as a message brings it. Never throws. */
export async function readInvitation(
  text: string
): Promise<
  | { readonly ok: true; readonly invitation: Invitation }
  | { readonly ok: false; readonly fault: InvitationFault }
> {
  const found = /(https?:\/\/[^\s/#?]+(?:\/[^\s#?]*?)?)\/join#(\d{1,4})\.([A-Za-z0-9_-]*)/i.exec(
    text
  );
  if (!found) return { ok: false, fault: /join#/.test(text) ? 'cut' : 'not-an-invitation' };
  const [, origin, version, body] = found;
  if (version !== '1') return { ok: false, fault: 'too-new' };
  const bytes = fromBase64Url(body);
  if (bytes?.length !== ALL_BYTES) return { ok: false, fault: 'cut' };
  const held = bytes.slice(0, -CHECK_BYTES);
  const check = await checkOf(origin, held);
  if (check.some((byte, at) => byte !== bytes[held.length + at]))
    return { ok: false, fault: 'cut' };
  const part = (from: number, length: number) => toBase64Url(held.subarray(from, from + length));
  return {
    ok: true,
    invitation: {
      origin,
      invite: part(0, INVITE_BYTES),
      secret: part(INVITE_BYTES, SECRET_BYTES),
      jobKey: part(INVITE_BYTES + SECRET_BYTES, JOB_KEY_BYTES)
    }
  };
}

/** The first bytes of SHA-256 over the address and all that the link holds. */
async function checkOf(origin: string, held: Uint8Array): Promise<Uint8Array> {
  const all = joinBytes(utf8(origin), held);
  return new Uint8Array(await crypto.subtle.digest('SHA-256', all)).slice(0, CHECK_BYTES);
}
