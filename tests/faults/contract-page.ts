import { Dexie } from 'dexie';
import { CONTRACT, type ContractDevice } from '../support/store-contract/suite.ts';
import { DexieStore } from '../../src/lib/storage/dexie-store.ts';
import { damageTo } from '../support/store-contract/test-damage.ts';
import { copyDatabase } from '../support/store-contract/test-copy.ts';
import { testSurroundings } from '../support/store-contract/test-surroundings.ts';

/** Runs the storage contract on the page's own IndexedDB; the test reaches it by `window`. */
let seed = 1;

function newDevice(name = `contract-${seed++}`): ContractDevice {
  return {
    open: (surroundings) => new DexieStore({ ...testSurroundings(seed++), ...surroundings }, name),
    clear: () => Dexie.delete(name),
    copy: async () => {
      const copyName = `contract-${seed++}`;
      await copyDatabase(name, copyName);
      return newDevice(copyName);
    },
    damage: damageTo(name)
  };
}

declare global {
  interface Window {
    contractTitles: () => string[];
    keepPromise: (index: number) => Promise<void>;
  }
}

window.contractTitles = () => CONTRACT.map(({ title }) => title);
window.keepPromise = (index) => CONTRACT[index].run(() => newDevice());
