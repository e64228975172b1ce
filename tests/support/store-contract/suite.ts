import { COPIES } from './copies.ts';
import { DAMAGE } from './damage.ts';
import { EXCHANGE } from './exchange.ts';
import { KEEPING } from './keeping.ts';
import { REMOVAL } from './removal.ts';
import type { ContractCase } from './kit.ts';

export type { ContractCase, ContractDevice } from './kit.ts';

/** What every store promises; the numbers are those of the journal's SPEC. */
export const CONTRACT: readonly ContractCase[] = [
  ...KEEPING,
  ...EXCHANGE,
  ...COPIES,
  ...DAMAGE,
  ...REMOVAL
];
