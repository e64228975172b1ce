import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { Sha256, sha256Hex } from './sha256.ts';

const bytesOf = (text: string) => new TextEncoder().encode(text);

describe('Sha256', () => {
  // The examples of FIPS 180-2, appendix B (from memory), each confirmed by the platform's own hash.
  it.each([
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1'
    ],
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855']
  ])('of %j', (text, hash) => {
    expect(sha256Hex(bytesOf(text))).toBe(hash);
    expect(createHash('sha256').update(text).digest('hex')).toBe(hash);
  });

  it('of a million times a, piece by piece', () => {
    const hash = new Sha256();
    for (let piece = 0; piece < 1000; piece++) hash.update(bytesOf('a'.repeat(1000)));
    expect(hash.hex()).toBe('cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0');
  });

  it('agrees with the platform at every length around a block, however it is cut', () => {
    for (let length = 0; length < 200; length++) {
      const bytes = Uint8Array.from({ length }, (_, at) => (at * 37 + length) & 0xff);
      const cut = Math.floor(length / 3);
      const hash = new Sha256().update(bytes.subarray(0, cut)).update(bytes.subarray(cut)).hex();
      expect(hash).toBe(createHash('sha256').update(bytes).digest('hex'));
    }
  });
});
