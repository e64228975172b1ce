import { describe, expect, it } from 'vitest';
import { fromBase64Url, toBase64Url } from './bytes.ts';
import { readInvitation, writeInvitation } from './invitation.ts';
import { hashText } from './keys.ts';

const part = (length: number, fill: number) => toBase64Url(new Uint8Array(length).fill(fill));
const invitation = {
  origin: 'https://slates.example.org',
  invite: part(12, 0xff),
  secret: part(14, 7),
  jobKey: part(32, 0xa5)
};

describe('an invitation', () => {
  it('is a link of 117 characters, and is read back from among other words', async () => {
    const link = await writeInvitation(invitation);
    expect(link.length).toBe(117);
    expect(link).toMatch(/^https:\/\/slates\.example\.org\/join#1\.[\w-]{83}$/);
    for (const text of [link, `Come in: ${link}\nSee you`, `<${link}>`])
      expect(await readInvitation(text)).toEqual({ ok: true, invitation });
  });

  it('keeps the path of an app that lies below a site', async () => {
    const below = { ...invitation, origin: 'https://example.org/slates' };
    expect(await readInvitation(await writeInvitation(below))).toEqual({
      ok: true,
      invitation: below
    });
  });

  it('cut by any length, or with any one sign changed, is noticed before it is used', async () => {
    const link = await writeInvitation(invitation);
    const body = link.indexOf('#1.') + 3;
    for (let length = body; length < link.length; length++)
      expect(await readInvitation(link.slice(0, length)), String(length)).toEqual({
        ok: false,
        fault: 'cut'
      });
    for (let at = body; at < link.length; at++) {
      const changed = link.slice(0, at) + (link[at] === 'A' ? 'B' : 'A') + link.slice(at + 1);
      expect((await readInvitation(changed)).ok, String(at)).toBe(false);
    }
    expect((await readInvitation(link.replace('slates', 'states'))).ok, 'another host').toBe(false);
  });

  it.each([
    ['', 'not-an-invitation'],
    ['https://slates.example.org/', 'not-an-invitation'],
    ['1.AAAA', 'not-an-invitation'],
    ['https://slates.example.org/join#', 'cut'],
    ['https://slates.example.org/join#2.AAAA', 'too-new'],
    ['javascript:/join#1.AAAA', 'cut']
  ])('%j: %s', async (text, fault) => {
    expect(await readInvitation(text)).toEqual({ ok: false, fault });
  });

  it('of other parts is not written', async () => {
    await expect(writeInvitation({ ...invitation, secret: part(13, 1) })).rejects.toThrow(
      RangeError
    );
  });
});

describe('base64url', () => {
  // RFC 4648, section 10, without padding.
  it.each([
    ['', ''],
    ['f', 'Zg'],
    ['fo', 'Zm8'],
    ['foo', 'Zm9v'],
    ['foobar', 'Zm9vYmFy']
  ])('of %j', (text, encoded) => {
    expect(toBase64Url(new TextEncoder().encode(text))).toBe(encoded);
    expect(fromBase64Url(encoded)).toEqual(new TextEncoder().encode(text));
  });

  it('refuses what is none, and a second text for the same bytes', () => {
    for (const wrong of ['Zg==', 'A', 'Zh', 'Z g', '+A', 'Zm9vA'])
      expect(fromBase64Url(wrong), wrong).toBeUndefined();
  });
});

it('the hash of a token is SHA-256 (FIPS 180-4, "abc") in base64url', async () => {
  expect(await hashText('abc')).toBe('ungWv48Bz-pBQUDeXa4iI7ADYaOWF3qctBD_YfIAFa0');
});
