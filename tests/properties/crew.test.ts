import fc from 'fast-check';
import { afterAll, expect, it } from 'vitest';
import { JOB, TestDevice, TestHub, type Weather, gauged, opened } from '../support/crew-kit.ts';

const RUNS = process.env.FAULTS === 'full' ? 200 : 12;
const DEVICES = 3;

/** What may happen in a morning; devices and weather are drawn as numbers. */
type Step =
  | { readonly what: 'act'; readonly who: number; readonly events: number }
  | { readonly what: 'undo'; readonly who: number }
  | { readonly what: 'exchange'; readonly who: number; readonly weather: readonly number[] }
  | { readonly what: 'copy' }
  | { readonly what: 'put-back' };

const who = fc.nat(DEVICES - 1);
const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.record({
      what: fc.constant('act' as const),
      who,
      events: fc.integer({ min: 1, max: 6 })
    })
  },
  { weight: 2, arbitrary: fc.record({ what: fc.constant('undo' as const), who }) },
  {
    weight: 6,
    arbitrary: fc.record({
      what: fc.constant('exchange' as const),
      who,
      weather: fc.array(fc.nat(7), { minLength: 1, maxLength: 6 })
    })
  },
  { weight: 1, arbitrary: fc.constant({ what: 'copy' as const }) },
  { weight: 1, arbitrary: fc.constant({ what: 'put-back' as const }) }
);

const met = { acts: 0, lost: 0, doubled: 0, offline: 0, putBack: 0 };
afterAll(() => {
  process.stdout.write(
    `faults: crew ${RUNS} runs, ${JSON.stringify(met)}, 0 diverged, lost or doubled\n`
  );
  // A run in which nothing went wrong would prove nothing.
  for (const [fault, count] of Object.entries(met)) expect(count, fault).toBeGreaterThan(RUNS / 4);
});

/** Weather that runs through a list and is fair afterwards. */
function weatherOf(list: readonly number[]): Weather {
  let at = 0;
  return {
    next() {
      const drawn = list[at++] ?? 7;
      if (drawn === 0) met.offline++;
      else if (drawn === 1 || drawn === 2) met.lost++;
      else if (drawn === 3) met.doubled++;
      return drawn === 0 ? 'offline' : drawn < 3 ? 'lost-answer' : drawn === 3 ? 'doubled' : 'fair';
    }
  };
}

it(
  'J14: a crew comes to the same journal and view, whatever was lost, doubled, cut off or put back',
  async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 12, maxLength: 40 }), async (steps) => {
        const hub = await new TestHub().start();
        try {
          await morning(hub, steps);
        } finally {
          await hub.end();
        }
      }),
      { numRuns: RUNS, seed: 20 }
    );
  },
  60_000 + RUNS * 10_000
);

async function morning(hub: TestHub, steps: readonly Step[]): Promise<void> {
  const crew: TestDevice[] = [];
  for (let seed = 1; seed <= DEVICES; seed++) crew.push(await new TestDevice(hub, seed).join());
  const done: string[] = [];
  const act = async (device: TestDevice, ...acts: Parameters<TestDevice['act']>) => {
    const events = await device.act(...acts);
    done.push(...events.map(({ id }) => id));
    met.acts += events.length;
    return events;
  };
  await act(crew[0], opened);
  await crew[0].exchange();
  let putBack = await hub.copy();
  let reading = 400;
  for (const one of steps)
    if (one.what === 'act') {
      const acts = Array.from({ length: one.events }, () => gauged(400 + (reading++ % 500)));
      await act(crew[one.who], ...acts);
    } else if (one.what === 'undo') {
      const [last] = await crew[one.who].store.newest(JOB, 1);
      if (last?.type === 'slateGauged')
        await act(crew[one.who], { type: 'entryVoided', body: { voids: last.id } });
    } else if (one.what === 'exchange')
      await crew[one.who].exchange(hub.through(weatherOf(one.weather)));
    else if (one.what === 'copy') putBack = await hub.copy();
    else {
      met.putBack++;
      await putBack();
    }
  // Signal for all: two rounds bring each one's acts to the hub and then to everybody.
  for (let round = 0; round < 2; round++)
    for (const device of crew) {
      const report = await device.exchange();
      expect(report).toMatchObject({ outcome: 'shared', notShared: 0 });
      expect(report.warnings.filter(({ kind }) => kind === 'held')).toEqual([]);
    }
  const pictures = await Promise.all(crew.map((device) => device.picture()));
  expect(new Set(pictures).size).toBe(1);
  const ids = (await crew[0].all()).map(({ id }) => id);
  expect(ids).toEqual([...done].sort());
  // Whoever comes new gets all of it from the hub alone.
  const late = await new TestDevice(hub, 9).join();
  await late.exchange();
  expect(await late.picture()).toBe(pictures[0]);
}
