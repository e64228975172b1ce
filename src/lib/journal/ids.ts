/** Sixteen hexadecimal digits of randomness, from the caller: the journal draws none itself. */
export type RandomHex = () => string;

/**
 * A source of event ids: UUIDv7 (RFC 9562), made on the device, strictly rising on it even when its
 * clock is set back, so that the order of ids is the order of acts.
 *
 * The first 48 bits are the clock in milliseconds, never below that of the last id; the 12 bits of
 * rand_a count ids within a millisecond; the last 62 bits are random.
 *
 * @param now the device's clock, milliseconds since 1970
 * @param randomHex sixteen random hexadecimal digits a call
 * @param lastId the last id made on this device, or undefined on its first day
 */
export function createIdSource(
  now: () => number,
  randomHex: RandomHex,
  lastId?: string
): () => string {
  let lastTime = lastId ? clockOfId(lastId) : -1;
  let counter = lastId ? parseInt(lastId.slice(15, 18), 16) : 0;
  return () => {
    const time = now();
    if (time > lastTime) {
      lastTime = time;
      counter = 0;
    } else if (++counter > 0xfff) {
      lastTime++;
      counter = 0;
    }
    const clock = lastTime.toString(16).padStart(12, '0');
    const random = randomHex();
    const variant = ((parseInt(random[0], 16) & 0x3) | 0x8).toString(16);
    return [
      clock.slice(0, 8),
      clock.slice(8, 12),
      `7${counter.toString(16).padStart(3, '0')}`,
      variant + random.slice(1, 4),
      random.slice(4, 16)
    ].join('-');
  };
}

/** The last millisecond of the year 9999. */
const LAST_CLOCK = 253_402_300_799_999;

/** The clock in an id, milliseconds since 1970. */
export function clockOfId(id: string): number {
  return parseInt(id.slice(0, 8) + id.slice(9, 13), 16);
}

/**
 * Whether a text can be an event's id: a UUID whose clock is not beyond the year 9999. The ids that
 * follow on a device must be larger still, so a hostile id at the end of the scale would leave none.
 */
export function isEventId(text: string): boolean {
  return isUuid(text) && clockOfId(text) <= LAST_CLOCK;
}

/** Whether a text has the shape of a UUID (any version), in lower case. */
export function isUuid(text: string): boolean {
  return /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/.test(text);
}
