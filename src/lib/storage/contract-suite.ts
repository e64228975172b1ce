import { COPIES } from './contract-copies.ts';
import { EXCHANGE } from './contract-exchange.ts';
import { KEEPING } from './contract-keeping.ts';
import type { ContractCase } from './contract-kit.ts';

export type { ContractCase, ContractDevice } from './contract-kit.ts';

/** What every store promises; the numbers are those of the journal's SPEC. */
export const CONTRACT: readonly ContractCase[] = [...KEEPING, ...EXCHANGE, ...COPIES];
