import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '$lib/job';
import {
  type OrderField,
  type OrderForm,
  foldsToMend,
  orderFormOf,
  readOrder
} from './delivery-order.svelte.ts';

const blank = orderFormOf(undefined, DEFAULT_SETTINGS);
const typed = (fields: Partial<OrderForm>): OrderForm => ({ ...blank, ...fields });

describe('an order as typed', () => {
  it.each<[OrderField, string, string]>([
    ['slatesOrdered', '0', 'count-zero'],
    ['slatesOrdered', '2.5', 'not-whole'],
    ['slatesOrdered', '4.200', 'separators'],
    ['slatesOrdered', '4,20', 'not-whole'],
    ['pricePerThousand', '4,200', 'separators'],
    ['slatesOrdered', '2000000', 'too-large'],
    ['tolerancePercent', '100.5', 'tolerance-over-100'],
    ['tolerancePercent', '-3', 'negative'],
    ['tolerancePercent', 'some', 'not-a-number'],
    ['nominalThicknessMm', '1.4', 'thickness-range'],
    ['nominalThicknessMm', '60', 'thickness-range'],
    ['lengthMm', '50', 'size-range'],
    ['pricePerThousand', '1.250', 'separators'],
    ['acceptableKickersPer100', '101', 'over-100'],
    ['daysToClaim', '4000', 'too-large'],
    ['arrivedOn', '2026-02-30', 'date']
  ])('refuses %s “%s”: %s', (field, text, problem) => {
    expect(readOrder(typed({ [field]: text })).problems).toEqual({ [field]: problem });
  });

  it('an empty form has no problem and says nothing that was not typed', () => {
    expect(readOrder(blank)).toEqual({
      problems: {},
      acts: [{ type: 'deliveryDeclared', body: { supplier: '', texture: 'normal' } }]
    });
  });

  it.each(['5000', '5,000', '5 000', "5'000", '5\u00a0000', ' 5,000 '])(
    'takes %j as five thousand slates',
    (text) => {
      const { acts, problems } = readOrder(typed({ slatesOrdered: text }));
      expect(problems).toEqual({});
      expect(acts[0].body).toMatchObject({ slatesOrdered: 5000 });
    }
  );

  it('a delivery comes after its order, and the answer after the delivery', () => {
    const days = typed({
      orderedOn: '2026-03-09',
      arrivedOn: '2026-03-02',
      answerBy: '2026-03-01'
    });
    expect(readOrder(days).problems).toEqual({
      arrivedOn: 'arrived-before-order',
      answerBy: 'answer-before-arrival'
    });
    const right = typed({ orderedOn: '2026-02-09', arrivedOn: '2026-03-02' });
    const asks = { ...right.asks, credit: true };
    expect(readOrder({ ...right, asks, buyer: ' Wren ' }).acts[0].body).toMatchObject({
      buyer: 'Wren',
      orderedOn: '2026-02-09',
      asks: ['credit']
    });
  });

  it('100 % is a tolerance, 0 and 200 % are none; a decimal comma is understood', () => {
    for (const [text, problem] of [
      ['0', 'tolerance-zero'],
      ['200', 'tolerance-over-100']
    ])
      expect(readOrder(typed({ tolerancePercent: text })).problems.tolerancePercent).toBe(problem);
    for (const [text, value] of [
      ['100', 100],
      ['12,5 %', 12.5]
    ] as const)
      expect(readOrder(typed({ tolerancePercent: text })).acts[0].body).toMatchObject({
        tolerancePercent: value
      });
  });

  it('a limit is agreed only with where it is written, one by one', () => {
    const form = typed({});
    const agreed = {
      ...form.agreed,
      length: { isAgreed: true, limitMm: '2,5', where: ' order, line 1 ' },
      ring: { isAgreed: true, limitMm: '', where: '' },
      width: { isAgreed: false, limitMm: '9', where: 'nowhere' }
    };
    const { problems, acts } = readOrder({ ...form, agreed });
    expect(problems).toEqual({ 'agreed.ring.where': 'where-missing' });
    expect(acts[0].body).toMatchObject({
      agreed: [
        { limit: 'length', limitMm: 2.5, where: 'order, line 1' },
        { limit: 'ring', where: '' }
      ]
    });
  });

  it('a label of 0 is a missing label', () => {
    expect(readOrder(typed({ stackOf100Mm: '0' })).acts[0].body).not.toHaveProperty('stackOf100Mm');
  });

  it('what sorting costs goes into the settings of the job', () => {
    const { acts } = readOrder(typed({ sortingRatePerHour: '30', sortingPacePerHour: '200' }));
    expect(acts[1]).toEqual({
      type: 'jobSettingsSet',
      body: { sortingRatePerHour: 30, sortingPacePerHour: 200 }
    });
  });

  it('names the folds that hold a field to mend, each once', () => {
    expect(foldsToMend({ lengthMm: 'size-range', arrivedOn: 'date' })).toEqual([]);
    const { problems } = readOrder(
      typed({ pricePerThousand: '1,250', queryDays: '-1', orderedOn: '2026-02-30' })
    );
    expect(foldsToMend(problems)).toEqual(['costs', 'papers']);
    expect(foldsToMend({ 'agreed.ring.where': 'where-missing' })).toEqual(['limits']);
  });

  it('comes back into the form as it was kept', () => {
    const form = typed({ supplier: 'Heron', lengthMm: '500', arrivedOn: '2026-03-02' });
    const [act] = readOrder(form).acts;
    if (act.type !== 'deliveryDeclared') throw new Error(act.type);
    expect(orderFormOf(act.body, DEFAULT_SETTINGS)).toEqual(form);
  });
});
