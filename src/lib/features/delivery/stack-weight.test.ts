import { describe, expect, it } from 'vitest';
import { TestJournal } from '../../../../tests/support/test-journal.ts';
import { stackWeight } from './stack-weight.ts';

const ordered = (body: object) =>
  new TestJournal().add({
    type: 'deliveryDeclared',
    body: { supplier: '', ...body }
  }).view;
const SIZE = { lengthMm: 500, widthMm: 250 };

describe('stackWeight', () => {
  it('weighs a hundred slates, 500 × 250 × 6 mm at 2800 kg/m³, at 210 kg', () => {
    const weight = stackWeight(ordered({ ...SIZE, nominalThicknessMm: 6 }), 100);
    expect(weight?.massKg).toBeCloseTo(210, 9);
    // 2.1 kg each: 11 are 23.1 kg, below the 25 kg that one person lifts
    expect(weight).toMatchObject({ slates: 100, carried: 11 });
  });

  it('knows nothing without a size or a thickness', () => {
    expect(stackWeight(ordered(SIZE), 100)).toBeUndefined();
    expect(stackWeight(ordered({ nominalThicknessMm: 6 }), 100)).toBeUndefined();
  });
});
