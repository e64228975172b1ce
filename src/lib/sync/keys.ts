import { fromBase64Url, joinBytes, randomBytes, toBase64Url, utf8 } from './bytes.ts';

/** Bytes of the key of a job, from which all others come. */
export const JOB_KEY_BYTES = 32;
const NONCE_BYTES = 12;

/** The keys of a job in a space. None can be worked out from another. */
export interface SpaceKeys {
  readonly parcel: CryptoKey;
  readonly photo: CryptoKey;
  readonly id: CryptoKey;
}

/** A new job key, as text. */
export function newJobKey(): string {
  return toBase64Url(randomBytes(JOB_KEY_BYTES));
}

/**
 * The keys by HKDF-SHA-256 (RFC 5869): the job key is the input, the space the salt, and what a key
 * is for the info.
 *
 * @throws RangeError for a text that is no job key
 */
export async function deriveKeys(jobKey: string, space: string): Promise<SpaceKeys> {
  const bytes = fromBase64Url(jobKey);
  if (bytes?.length !== JOB_KEY_BYTES) throw new RangeError('not a job key');
  const base = await crypto.subtle.importKey('raw', bytes, 'HKDF', false, ['deriveKey']);
  const derive = (
    purpose: string,
    kind: AesKeyGenParams | HmacKeyGenParams,
    uses: KeyUsage[]
  ): Promise<CryptoKey> =>
    crypto.subtle.deriveKey(
      { name: 'HKDF', hash: 'SHA-256', salt: utf8(space), info: utf8(`evencourse 1 ${purpose}`) },
      base,
      kind,
      false,
      uses
    );
  const aes = { name: 'AES-GCM', length: 256 };
  const [parcel, photo, id] = await Promise.all([
    derive('parcel', aes, ['encrypt', 'decrypt']),
    derive('photo', aes, ['encrypt', 'decrypt']),
    derive('id', { name: 'HMAC', hash: 'SHA-256', length: 256 }, ['sign'])
  ]);
  return { parcel, photo, id };
}

/**
 * Seals bytes by AES-256-GCM (NIST SP 800-38D) under a random nonce, which stands in front. What
 * is sealed opens only beside the same `beside`.
 */
export async function seal(
  key: CryptoKey,
  bytes: Uint8Array<ArrayBuffer>,
  beside: readonly unknown[]
): Promise<Uint8Array<ArrayBuffer>> {
  const iv = randomBytes(NONCE_BYTES);
  const additionalData = utf8(JSON.stringify(beside));
  const sealed = await crypto.subtle.encrypt({ name: 'AES-GCM', iv, additionalData }, key, bytes);
  return joinBytes(iv, new Uint8Array(sealed));
}

/** Opens what {@link seal} made; undefined for anything that was not, or was changed or moved. */
export async function unseal(
  key: CryptoKey,
  sealed: Uint8Array<ArrayBuffer>,
  beside: readonly unknown[]
): Promise<Uint8Array<ArrayBuffer> | undefined> {
  const iv = sealed.slice(0, NONCE_BYTES);
  const additionalData = utf8(JSON.stringify(beside));
  try {
    const algorithm = { name: 'AES-GCM', iv, additionalData };
    const bytes = await crypto.subtle.decrypt(algorithm, key, sealed.slice(NONCE_BYTES));
    return new Uint8Array(bytes);
  } catch {
    return undefined;
  }
}

/** SHA-256 of a text in base64url: what the hub knows of a token or secret. */
export async function hashText(text: string): Promise<string> {
  return toBase64Url(new Uint8Array(await crypto.subtle.digest('SHA-256', utf8(text))));
}

/** The name of a photo at the hub: HMAC of its hash, so that the hub cannot tell which it is. */
export async function photoName(keys: SpaceKeys, sha256: string): Promise<string> {
  return toBase64Url(new Uint8Array(await crypto.subtle.sign('HMAC', keys.id, utf8(sha256))));
}
