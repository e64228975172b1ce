import { type DeviceNumbers, sha256Hex } from '$lib/storage';
import { utf8 } from './bytes.ts';

/** No 0, 1, I, L, O or U: read out or typed, none is taken for another. */
const SIGNS = '23456789ABCDEFGHJKMNPQRSTVWXYZ';
/** Devices of the longest code; with more, the whole job is sent. */
const MOST_DEVICES = 6;
const TAG_SIGNS = 3;
const CHECK_SIGNS = 2;

/**
 * What a device has of a job, as a code to read out: for each device a tag of three signs and how
 * many of its events are here, then two signs that notice a slip. Devices that clash in their tags
 * are left out, which only makes more be sent.
 */
export function writeLacksCode(jobId: string, have: DeviceNumbers): string {
  const tags = Object.keys(have).map((device) => tagOf(jobId, device));
  const isAlone = (tag: string) => tags.indexOf(tag) === tags.lastIndexOf(tag);
  const devices = Object.entries(have)
    .filter(([device, last]) => last > 0 && isAlone(tagOf(jobId, device)))
    .sort(([one, hers], [other, his]) => his - hers || (one < other ? -1 : 1))
    .slice(0, MOST_DEVICES);
  const body = devices
    .map(([device, last]) => {
      const number = inSigns(last);
      return tagOf(jobId, device) + SIGNS[number.length] + number;
    })
    .join('');
  return grouped(body + checkOf(jobId, body));
}

/**
 * Reads a code beside the numbers of the sender's own journal: what the receiver has of it.
 * Signs that are not used, spaces and dashes do not matter; small letters are as good as large.
 *
 * @returns undefined for a code with a slip, or of another job
 */
export function readLacksCode(
  jobId: string,
  own: DeviceNumbers,
  code: string
): DeviceNumbers | undefined {
  const signs = code.toUpperCase().replace(/[^0-9A-Z]/g, '');
  if (signs.length < CHECK_SIGNS || [...signs].some((sign) => !SIGNS.includes(sign)))
    return undefined;
  const body = signs.slice(0, -CHECK_SIGNS);
  if (checkOf(jobId, body) !== signs.slice(-CHECK_SIGNS)) return undefined;
  const tags = new Map<string, string[]>();
  for (const device of Object.keys(own)) {
    const tag = tagOf(jobId, device);
    tags.set(tag, [...(tags.get(tag) ?? []), device]);
  }
  const have: DeviceNumbers = {};
  for (let at = 0; at < body.length;) {
    const tag = body.slice(at, at + TAG_SIGNS);
    const length = SIGNS.indexOf(body[at + TAG_SIGNS] ?? '');
    const number = body.slice(at + TAG_SIGNS + 1, at + TAG_SIGNS + 1 + length);
    if (length < 1 || number.length !== length) return undefined;
    const devices = tags.get(tag) ?? [];
    // Two devices of one tag: nobody knows which is meant, so both are sent whole.
    if (devices.length === 1) have[devices[0]] = Math.min(fromSigns(number), own[devices[0]]);
    at += TAG_SIGNS + 1 + length;
  }
  return have;
}

function tagOf(jobId: string, device: string): string {
  return signsOfHash(`${jobId} ${device}`, TAG_SIGNS);
}

function checkOf(jobId: string, body: string): string {
  return signsOfHash(`${jobId} ${body} check`, CHECK_SIGNS);
}

function signsOfHash(text: string, count: number): string {
  let number = parseInt(sha256Hex(utf8(text)).slice(0, 12), 16);
  let signs = '';
  for (let at = 0; at < count; at++) {
    signs += SIGNS[number % SIGNS.length];
    number = Math.floor(number / SIGNS.length);
  }
  return signs;
}

function inSigns(number: number): string {
  let text = '';
  for (let left = number; left > 0; left = Math.floor(left / SIGNS.length))
    text = SIGNS[left % SIGNS.length] + text;
  return text;
}

function fromSigns(text: string): number {
  return [...text].reduce((sum, sign) => sum * SIGNS.length + SIGNS.indexOf(sign), 0);
}

function grouped(signs: string): string {
  return signs.replace(/(.{3})(?=.)/g, '$1-');
}
