import { describe, it } from 'vitest';
import { CONTRACT, type ContractDevice } from '../../../tests/support/store-contract/suite.ts';
import { MemoryDatabase, MemoryStore } from '../../../tests/support/memory-store.ts';
import { testSurroundings } from '../../../tests/support/store-contract/test-surroundings.ts';
import { damageToMemory } from '../../../tests/support/store-contract/test-damage.ts';
import { copyMemory } from '../../../tests/support/store-contract/test-copy.ts';

let seed = 1;

function newDevice(database = new MemoryDatabase()): ContractDevice {
  return {
    open: (surroundings) =>
      new MemoryStore({ ...testSurroundings(seed++), ...surroundings }, database),
    clear: async () => {
      for (const table of [database.jobs, database.photos, database.device]) table.clear();
    },
    copy: async () => newDevice(copyMemory(database)),
    damage: damageToMemory(database)
  };
}

describe('the contract, in memory', () => {
  for (const { title, run } of CONTRACT) it(title, () => run(() => newDevice()));
});
