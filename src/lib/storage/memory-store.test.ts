import { describe, it } from 'vitest';
import { CONTRACT, type ContractDevice } from './contract-suite.ts';
import { MemoryDatabase, MemoryStore } from './memory-store.ts';
import { copyMemory } from './test-copy.ts';
import { testSurroundings } from './test-surroundings.ts';

let seed = 1;

function newDevice(database = new MemoryDatabase()): ContractDevice {
  return {
    open: (surroundings) =>
      new MemoryStore({ ...testSurroundings(seed++), ...surroundings }, database),
    clear: async () => {
      for (const table of [database.jobs, database.photos, database.device]) table.clear();
    },
    copy: async () => newDevice(copyMemory(database))
  };
}

describe('the contract, in memory', () => {
  for (const { title, run } of CONTRACT) it(title, () => run(() => newDevice()));
});
