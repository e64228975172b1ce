import { describe, expect, it } from 'vitest';
import { FIRST_DELIVERY, SWITCHING_BASIS, afterDeliveries, schemeAcceptance } from './switching.ts';

const history = (text: string): boolean[] => [...text].map((letter) => letter === 'a');

describe('switching: a accepted, r refused', () => {
  it.each([
    ['', 'normal'],
    ['r', 'normal'],
    ['rr', 'tightened'],
    ['raaar', 'tightened'],
    ['raaaar', 'normal'],
    ['rraaaa', 'tightened'],
    ['rraaaaa', 'normal'],
    ['rraaaraaaa', 'tightened'],
    ['rraaaaar', 'normal'],
    ['rraaaaarar', 'tightened']
  ])("'%s' leads to %s", (text, severity) => {
    expect(afterDeliveries(history(text)).severity).toBe(severity);
  });

  it('stops after ten in a row on tightened, and only a new start ends the stop', () => {
    expect(afterDeliveries(history('rr' + 'aaaarrrrr')).discontinued).toBe(false);
    const stopped = afterDeliveries(history('rr' + 'aaaarrrrrr'));
    expect(stopped.discontinued).toBe(true);
    expect(afterDeliveries(history('rr' + 'aaaarrrrrraaaaaa'))).toEqual(stopped);
    expect(SWITCHING_BASIS.discontinue.standing).toBe('from memory');
  });

  it('begins at normal with nothing judged', () => {
    expect(afterDeliveries([])).toEqual(FIRST_DELIVERY);
  });
});

describe('schemeAcceptance at the ends', () => {
  it.each([
    [1, 1, 1],
    [1, 0.5, 1],
    [0.5, 0, 0],
    [0, 0, 0],
    [0, 1e-80, 1e-80]
  ])('normal %f, tightened %f: %f', (normal, tightened, expected) => {
    expect(schemeAcceptance(normal, tightened)).toBe(expected);
  });

  it('lies between the two', () => {
    // Computed apart from the formula of Stephens and Larson (1967).
    expect(schemeAcceptance(0.95, 0.8)).toBeCloseTo(0.938855532901, 12);
  });
});
