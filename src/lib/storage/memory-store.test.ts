import { describe, it } from 'vitest';
import { CONTRACT, type ContractDevice } from './contract-suite.ts';
import { MemoryDatabase, MemoryStore } from './memory-store.ts';
import { testSurroundings } from './test-surroundings.ts';

let seed = 1;

function newDevice(): ContractDevice {
  const database = new MemoryDatabase();
  return {
    open: (surroundings) =>
      new MemoryStore({ ...testSurroundings(seed++), ...surroundings }, database),
    clear: async () => {
      for (const table of [database.jobs, database.photos, database.device]) table.clear();
    }
  };
}

describe('the contract, in memory', () => {
  for (const { title, run } of CONTRACT) it(title, () => run(newDevice));
});
