/**
 * First 32 bits of the fractional parts of the cube roots of the first 64 primes (FIPS 180-4,
 * section 4.2.2), and of the square roots of the first 8 (section 5.3.3), worked out here rather
 * than copied. No root comes nearer than 0.005 of a unit to where its 32nd bit would turn, a
 * thousand times the error of a double.
 */
const PRIMES = firstPrimes(64);
const ROUND = Int32Array.from(PRIMES, (prime) => fraction32(Math.cbrt(prime)));
const START = Int32Array.from(PRIMES.slice(0, 8), (prime) => fraction32(Math.sqrt(prime)));

/**
 * SHA-256 (FIPS 180-4) of bytes that come piece by piece, so that a large job is hashed without
 * ever being in memory whole. The browser's own hash takes only whole messages, and is missing
 * where the app is opened over plain HTTP on a local network.
 *
 * @example new Sha256().update(new TextEncoder().encode('abc')).hex() // 'ba7816bf…f20015ad'
 */
export class Sha256 {
  // Signed words, since a browser works on them many times as fast as on unsigned ones.
  readonly #state = Int32Array.from(START);
  readonly #block = new Uint8Array(64);
  readonly #words = new Int32Array(64);
  #filled = 0;
  #bytes = 0;

  update(bytes: Uint8Array): this {
    this.#bytes += bytes.length;
    let at = 0;
    while (at < bytes.length) {
      const taken = Math.min(64 - this.#filled, bytes.length - at);
      this.#block.set(bytes.subarray(at, at + taken), this.#filled);
      this.#filled += taken;
      at += taken;
      if (this.#filled === 64) this.#mix();
    }
    return this;
  }

  /** The hash in lower-case hexadecimal. Ends the message: nothing may be added after it. */
  hex(): string {
    const bits = this.#bytes * 8;
    const padding = new Uint8Array((this.#filled < 56 ? 56 : 120) - this.#filled + 8);
    padding[0] = 0x80;
    const tail = new DataView(padding.buffer, padding.length - 8);
    tail.setUint32(0, Math.floor(bits / 2 ** 32));
    tail.setUint32(4, bits >>> 0);
    this.update(padding);
    return [...this.#state].map((word) => (word >>> 0).toString(16).padStart(8, '0')).join('');
  }

  /** Mixes a full block into the state (section 6.2.2). */
  #mix(): void {
    const words = this.#words;
    const block = this.#block;
    for (let at = 0; at < 16; at++) {
      const byte = at * 4;
      words[at] =
        (block[byte] << 24) | (block[byte + 1] << 16) | (block[byte + 2] << 8) | block[byte + 3];
    }
    for (let at = 16; at < 64; at++) {
      const early = words[at - 15];
      const late = words[at - 2];
      const small = turn(early, 7) ^ turn(early, 18) ^ (early >>> 3);
      const large = turn(late, 17) ^ turn(late, 19) ^ (late >>> 10);
      words[at] = (words[at - 16] + small + words[at - 7] + large) | 0;
    }
    const state = this.#state;
    let a = state[0];
    let b = state[1];
    let c = state[2];
    let d = state[3];
    let e = state[4];
    let f = state[5];
    let g = state[6];
    let h = state[7];
    for (let at = 0; at < 64; at++) {
      const rise = turn(e, 6) ^ turn(e, 11) ^ turn(e, 25);
      const chosen = (e & f) ^ (~e & g);
      const first = (h + rise + chosen + ROUND[at] + words[at]) | 0;
      const fall = turn(a, 2) ^ turn(a, 13) ^ turn(a, 22);
      const second = (fall + ((a & b) ^ (a & c) ^ (b & c))) | 0;
      h = g;
      g = f;
      f = e;
      e = (d + first) | 0;
      d = c;
      c = b;
      b = a;
      a = (first + second) | 0;
    }
    state[0] += a;
    state[1] += b;
    state[2] += c;
    state[3] += d;
    state[4] += e;
    state[5] += f;
    state[6] += g;
    state[7] += h;
    this.#filled = 0;
  }
}

/** The SHA-256 of bytes at hand. */
export function sha256Hex(bytes: Uint8Array): string {
  return new Sha256().update(bytes).hex();
}

function turn(word: number, bits: number): number {
  return (word >>> bits) | (word << (32 - bits));
}

function fraction32(root: number): number {
  return Math.floor((root - Math.floor(root)) * 2 ** 32);
}

function firstPrimes(count: number): number[] {
  const primes: number[] = [];
  for (let number = 2; primes.length < count; number++)
    if (primes.every((prime) => number % prime !== 0)) primes.push(number);
  return primes;
}
