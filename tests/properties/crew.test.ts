import fc from 'fast-check';
import { afterAll, expect, it } from 'vitest';
import { JOB, TestDevice, TestHub, type Weather, gauged, opened } from '../support/crew-kit.ts';
import { report, rounds } from '../support/rounds.ts';

const RUNS = rounds(12, 200);
const DEVICES = 3;

/** What may happen in a morning; devices and weather are drawn as numbers. */
type Step =
  | { readonly what: 'act'; readonly who: number; readonly events: number }
  | { readonly what: 'undo'; readonly who: number }
  | {
      readonly what: 'exchange';
      readonly who: number;
      readonly weather: readonly number[];
      /** Whether the device has no room for what comes. */
      readonly isFull: boolean;
    }
  | { readonly what: 'clock'; readonly who: number; readonly hours: number }
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
      weather: fc.array(fc.nat(8), { minLength: 1, maxLength: 6 }),
      isFull: fc.nat(7).map((drawn) => drawn === 0)
    })
  },
  {
    weight: 1,
    arbitrary: fc.record({
      what: fc.constant('clock' as const),
      who,
      hours: fc.integer({ min: -9000, max: 9000 })
    })
  },
  { weight: 1, arbitrary: fc.constant({ what: 'copy' as const }) },
  { weight: 1, arbitrary: fc.constant({ what: 'put-back' as const }) }
);

const met = {
  acts: 0,
  lost: 0,
  doubled: 0,
  offline: 0,
  hubFull: 0,
  deviceFull: 0,
  clockWrong: 0,
  putBack: 0
};
afterAll(() => {
  report('a crew in all weathers', { runs: RUNS, ...met, 'diverged, lost or doubled': 0 });
  // A run in which nothing went wrong would prove nothing.
  for (const [fault, count] of Object.entries(met)) expect(count, fault).toBeGreaterThan(RUNS / 4);
});

/** Weather that runs through a list and is fair afterwards. */
function weatherOf(list: readonly number[]): Weather {
  let at = 0;
  return {
    next() {
      const drawn = list[at++] ?? 8;
      if (drawn === 0) met.offline++;
      else if (drawn === 1 || drawn === 2) met.lost++;
      else if (drawn === 3) met.doubled++;
      else if (drawn === 4) met.hubFull++;
      return (
        (['offline', 'lost-answer', 'lost-answer', 'doubled', 'hub-full'] as const)[drawn] ?? 'fair'
      );
    }
  };
}

it(
  'J14, J32 to J34: a crew comes to the same journal and view, whatever was lost, doubled, cut off, full, put back or wrong by the clock',
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
  const exchange = async (device: TestDevice, { weather, isFull }: Step & { what: 'exchange' }) => {
    const { merge } = device.store;
    if (isFull)
      device.store.merge = () => {
        met.deviceFull++;
        return Promise.reject(new DOMException('no room', 'QuotaExceededError'));
      };
    await device.exchange(hub.through(weatherOf(weather))).finally(() => {
      device.store.merge = merge;
    });
  };
  for (const one of steps)
    if (one.what === 'act') {
      const acts = Array.from({ length: one.events }, () => gauged(400 + (reading++ % 500)));
      await act(crew[one.who], ...acts);
    } else if (one.what === 'undo') {
      const [last] = await crew[one.who].store.newest(JOB, 1);
      if (last?.type === 'slateGauged')
        await act(crew[one.who], { type: 'entryVoided', body: { voids: last.id } });
    } else if (one.what === 'exchange') await exchange(crew[one.who], one);
    else if (one.what === 'clock') {
      met.clockWrong++;
      crew[one.who].clockAheadMs = one.hours * 3_600_000;
    } else if (one.what === 'copy') putBack = await hub.copy();
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
