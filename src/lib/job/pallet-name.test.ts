import { expect, it } from 'vitest';
import { TestJournal } from '../../../tests/support/test-journal.ts';
import { PalletCounter } from './pallet-count.ts';
import { palletName } from './pallet-name.ts';
import { tallyPallets } from './queries.ts';

it.each([
  ['Pallet 1', '1'],
  [' pallet: North 2 ', 'North 2'],
  ['PALÉ 3', '3'],
  ['Palette B', 'B'],
  ['paleta 4', '4'],
  ['Palet C', 'C'],
  ['Pallet', 'Pallet'],
  ['Palermo 1', 'Palermo 1'],
  ['A', 'A']
])('a pallet entered as "%s" is called "%s"', (entered, called) => {
  expect(palletName(entered)).toBe(called);
});

it('pallets of older jobs are called so too, and stand in that order', () => {
  const labels = ['Pallet 10', 'Pallet 9', '2'];
  const { view } = new TestJournal().add(
    ...labels.map((label, at) => ({
      type: 'palletAdded' as const,
      body: { palletId: `p${at}`, label, slates: 400 }
    }))
  );
  const called = ['2', '9', '10'];
  expect(tallyPallets(view).map(({ label }) => label)).toEqual(called);
  expect(new PalletCounter().all(view, [1, 2]).map(({ label }) => label)).toEqual(called);
});
