import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, expect, it } from 'vitest';
import { buildHub } from '../../scripts/build-hub.js';
import { ROOT } from '../../scripts/tools.js';
import { SqliteHubStore } from './sqlite-store.ts';
import { deviceOf } from '../../tests/support/hub-store-contract.ts';
import { report, rounds } from '../../tests/support/rounds.ts';

const ROUNDS = rounds(4, 200);
/** Built inside the project, so that it finds the packages. */
const built = mkdtempSync(join(ROOT, 'node_modules', '.hub-killed-'));
const folder = mkdtempSync(join(tmpdir(), 'hub-killed-'));
afterAll(() => {
  rmSync(built, { recursive: true, force: true });
  rmSync(folder, { recursive: true, force: true });
});

it(
  `a hub killed ${ROUNDS} times in the middle of its work loses nothing that it answered`,
  async () => {
    const program = pathToFileURL(await buildHub(built)).href;
    const file = join(folder, 'hub.db');
    const answered = new Map<number, number>();
    for (let round = 0; round < ROUNDS; round++) {
      const wanted = 20 + ((round * 37) % 60);
      await runAndKill(program, file, wanted, answered);
      const store = new SqliteHubStore(file);
      const heads = await store.heads('AAAAAAAAAAAAAAAAAAAAAA');
      const parcels = await store.above('AAAAAAAAAAAAAAAAAAAAAA', {}, 2 ** 31);
      await store.close();
      for (const [writer, last] of answered) {
        const device = deviceOf(writer);
        expect(heads[device], `round ${round}, writer ${writer}`).toBeGreaterThanOrEqual(last);
        const his = parcels.filter((parcel) => parcel.device === device);
        expect(his.map(({ first }) => first)).toEqual(his.map((_, at) => at + 1));
        expect(his.length).toBe(heads[device]);
        expect(
          his.every(
            ({ first, bytes }) =>
              bytes.length === 600 && bytes.every((byte) => byte === (first & 0xff))
          )
        ).toBe(true);
      }
    }
    const total = [...answered.values()].reduce((sum, last) => sum + last, 0);
    report('hub killed', { rounds: ROUNDS, 'parcels answered': total, lost: 0 });
    expect(total).toBeGreaterThan(ROUNDS * 20);
  },
  30_000 + ROUNDS * 10_000
);

/** Runs a hub until it has answered so many parcels, then kills it. */
async function runAndKill(
  program: string,
  file: string,
  wanted: number,
  answered: Map<number, number>
): Promise<void> {
  const hub = spawn(process.execPath, [join(ROOT, 'tests/faults/hub-killed.js'), program, file], {
    stdio: ['ignore', 'pipe', 'pipe']
  });
  let count = 0;
  let text = '';
  let fault = '';
  hub.stderr.setEncoding('utf8').on('data', (piece: string) => (fault += piece));
  hub.stdout.setEncoding('utf8').on('data', (piece: string) => {
    const lines = (text + piece).split('\n');
    text = lines.pop() ?? '';
    for (const line of lines) {
      const [writer, number] = line.split(' ').map(Number);
      answered.set(writer, number);
      if (++count === wanted) hub.kill('SIGKILL');
    }
  });
  await new Promise<void>((resolve) => hub.once('close', () => resolve()));
  if (count < wanted) throw new Error(`the hub ended by itself: ${fault}`);
}
