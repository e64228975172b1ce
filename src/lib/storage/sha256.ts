import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';

/**
 * SHA-256 (FIPS 180-4) of bytes that come piece by piece, so that a large job is hashed without
 * ever being in memory whole. The browser's own hash takes only whole messages, and is missing
 * where the app is opened over plain HTTP on a local network.
 *
 * @example new Sha256().update(new TextEncoder().encode('abc')).hex() // 'ba7816bf…f20015ad'
 */
export class Sha256 {
  readonly #hash = sha256.create();

  update(bytes: Uint8Array): this {
    this.#hash.update(bytes);
    return this;
  }

  /** The hash in lower-case hexadecimal. Ends the message: nothing may be added after it. */
  hex(): string {
    return bytesToHex(this.#hash.digest());
  }
}

/** The SHA-256 of a whole message, in lower-case hexadecimal. */
export function sha256Hex(bytes: Uint8Array): string {
  return bytesToHex(sha256(bytes));
}
