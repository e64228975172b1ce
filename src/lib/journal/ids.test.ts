import { describe, expect, it } from 'vitest';
import { clockOfId, createIdSource, isEventId, isUuid } from './ids.ts';

const zeros = () => '0000000000000000';
const random = () => 'fedcba9876543210';

describe('createIdSource', () => {
  it('J5: makes UUIDs of version 7 (RFC 9562): clock, version, counter, variant, chance', () => {
    // The clock of the example in RFC 9562, appendix A.6 (from memory).
    const id = createIdSource(() => 0x017f22e279b0, random)();
    expect(id).toBe('017f22e2-79b0-7000-bedc-ba9876543210');
    expect(clockOfId(id)).toBe(Date.UTC(2022, 1, 22, 19, 22, 22));
  });

  it('J5: counts within a millisecond', () => {
    const next = createIdSource(() => 5, zeros);
    expect([next(), next()]).toEqual([
      '00000000-0005-7000-8000-000000000000',
      '00000000-0005-7001-8000-000000000000'
    ]);
  });

  it('J5: goes on from the last id when the clock is set back', () => {
    const next = createIdSource(() => 1, zeros, '00000000-0005-7fff-8000-000000000000');
    expect(next()).toBe('00000000-0006-7000-8000-000000000000');
  });
});

describe('isEventId', () => {
  it.each([
    ['00000000-0005-7001-8000-000000000000', true],
    ['e677d21f-dbff-7000-8000-000000000000', true],
    ['e677d21f-dc00-7000-8000-000000000000', false],
    ['ffffffff-ffff-7fff-bfff-ffffffffffff', false],
    ['00000000-0005-7001-8000-00000000000', false],
    ['00000000-0005-7001-8000-00000000000G', false],
    ['', false]
  ])('J5: %s: %s, the year 9999 being the last', (text, is) => {
    expect(isEventId(text)).toBe(is);
  });

  it('takes capitals for no UUID, so that one id has one form', () => {
    expect(isUuid('ABCDEF00-0005-7001-8000-000000000000')).toBe(false);
  });
});
