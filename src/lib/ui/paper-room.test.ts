import { describe, expect, it } from 'vitest';
import { paperLines } from './paper-room.ts';

describe('lines that words take on paper', () => {
  it('are one for few or none', () => {
    expect(paperLines('', 50)).toBe(1);
    expect(paperLines('Pallet A1', 50)).toBe(1);
  });

  it('tell figures and signs narrower than words, and capitals wider', () => {
    const figures = 'A1: 4 · A2: 7 · B1: 10 · B2: 7 · C1: 10 · C2: 6'; // 62 mm as printed
    expect(paperLines(figures, 100)).toBe(1);
    expect(paperLines('m'.repeat(figures.length), 80)).toBe(2);
    expect(paperLines('N'.repeat(100), 150)).toBe(2);
  });
});
