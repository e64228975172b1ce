import { describe, expect, it } from 'vitest';
import { looksUnended, wedgeStep } from './wedge.ts';
import {
  IDLE_WEDGE,
  type WedgeEvent,
  type WedgeOutcome,
  type WedgeSettings
} from './wedge-state.ts';

const BY_KEY: WedgeSettings = { unit: 'mm', ending: { kind: 'key' } };
const BY_PAUSE: WedgeSettings = { unit: 'mm', ending: { kind: 'pause', decimals: 2 } };

/** Key events for a text; ⏎ is Enter, ⇥ Tab. */
function keys(text: string, startAt: number, gapMs = 20): WedgeEvent[] {
  return [...text].map((sign, index) => {
    const key = sign === '⏎' ? 'Enter' : sign === '⇥' ? 'Tab' : sign;
    const code = /\d/.test(sign) ? `Digit${sign}` : key;
    return { kind: 'key', key, code, at: startAt + index * gapMs };
  });
}

function run(events: readonly WedgeEvent[], settings = BY_KEY) {
  let state = IDLE_WEDGE;
  let wakeAt: number | null = null;
  const outcomes: WedgeOutcome[] = [];
  const swallowed: boolean[] = [];
  for (const event of events) {
    const step = wedgeStep(state, event, settings);
    ({ state, wakeAt } = step);
    outcomes.push(...step.outcomes);
    swallowed.push(step.isSwallowed);
  }
  const told = outcomes.map(({ reading }) => (reading.ok ? reading.valueMm : reading.reason));
  return { state, wakeAt, outcomes, told, swallowed };
}

describe('a gauge that ends with a key', () => {
  it.each(['6.4⏎', '6,4⇥', '6.40⏎⇥', '6.40⇥⏎', ' 6.4⏎⏎', '+6.4mm⏎'])('reads %s once', (text) => {
    const { told, swallowed } = run(keys(text, 1000));
    expect(told).toEqual([6.4]);
    expect(swallowed).not.toContain(false);
  });

  it('takes two equal readings in a row as two', () => {
    expect(run([...keys('6.4⏎', 0), ...keys('6.4⏎', 1000)]).told).toEqual([6.4, 6.4]);
  });

  it('puts a burst torn for two seconds together', () => {
    expect(run([...keys('16', 0), ...keys('.42⏎', 2000)]).told).toEqual([16.42]);
  });

  it('reads a number typed by a slow hand', () => {
    expect(run(keys('6.42⏎', 0, 900)).told).toEqual([6.42]);
  });

  it('never ends by a pause; it waits, asks, and gives up after ten seconds', () => {
    const { state, told, wakeAt } = run([...keys('6.42', 0), { kind: 'tick', at: 5000 }]);
    expect(told).toEqual([]);
    expect(wakeAt).toBe(10_060);
    expect(looksUnended(state, 500, BY_KEY)).toBe(false);
    expect(looksUnended(state, 5000, BY_KEY)).toBe(true);
    expect(wedgeStep(state, { kind: 'tick', at: 10_060 }, BY_KEY).outcomes).toEqual([
      { reading: { ok: false, reason: 'cut-short', text: '6.42' }, endedBy: 'loss' }
    ]);
  });

  it('does not make 15.20 of a lost head 1 and the 5.20 of the next slate', () => {
    expect(run([...keys('1', 0), ...keys('5.20⏎', 3600)]).outcomes).toEqual([
      { reading: { ok: false, reason: 'interrupted', text: '15.20' }, endedBy: 'enter' }
    ]);
  });

  it('tells noise instead of keeping silent', () => {
    expect(run(keys('6k4⏎', 0)).told).toEqual(['not-a-number']);
    expect(run(keys('kk⏎', 0)).told).toEqual(['not-a-number']);
    expect(run(keys('6.4'.repeat(40) + '⏎', 0)).told).toEqual(['not-a-number']);
  });

  it('writes nothing for modifiers and for a key that repeats itself', () => {
    const [six, ...rest] = keys('6.4⏎', 0);
    const shift: WedgeEvent = { kind: 'key', key: 'Shift', code: 'ShiftLeft', at: 0 };
    const held: WedgeEvent = { kind: 'key', key: '6', code: 'Digit6', repeat: true, at: 10 };
    const { told, swallowed } = run([shift, six, held, ...rest]);
    expect(told).toEqual([6.4]);
    expect(swallowed).toEqual([false, true, true, true, true, true]);
  });

  it('takes and drops the number in progress at a tap', () => {
    expect(run([...keys('6.4', 0), { kind: 'accept', at: 900 }]).outcomes).toMatchObject([
      { reading: { ok: true, valueMm: 6.4 }, endedBy: 'accept' }
    ]);
    expect(run([...keys('6.4', 0), { kind: 'clear', at: 900 }, ...keys('⏎', 9000)]).told).toEqual(
      []
    );
    expect(run([{ kind: 'accept', at: 0 }]).told).toEqual([]);
  });

  it('corrects with Backspace and gives up with Escape', () => {
    const back: WedgeEvent = { kind: 'key', key: 'Backspace', code: 'Backspace', at: 70 };
    const escape: WedgeEvent = { kind: 'key', key: 'Escape', code: 'Escape', at: 100 };
    expect(run([...keys('6.45', 0), back, ...keys('2⏎', 80)]).told).toEqual([6.42]);
    expect(run([...keys('6.4', 0), escape]).state).toEqual(IDLE_WEDGE);
  });
});

describe('keys left to the page', () => {
  it('lets Enter, Tab and Space work the page between readings', () => {
    const space: WedgeEvent = { kind: 'key', key: ' ', code: 'Space', at: 0, isOnControl: true };
    expect(run([space]).swallowed).toEqual([false]);
    expect(run(keys('⇥⏎', 0)).swallowed).toEqual([false, false]);
    expect(run([...keys('6.4⏎', 0), ...keys('⏎', 4000)]).swallowed.at(-1)).toBe(false);
  });

  it('leaves a second Enter to the page as soon as the burst is past', () => {
    for (const at of [500, 1500, 2500]) {
      const { swallowed, told } = run([...keys('6.4⏎', 0), ...keys('⏎', at)]);
      expect([told, swallowed.at(-1)]).toEqual([[6.4], false]);
    }
    // Enter twice in one burst is the gauge's, and so is one within its tail.
    expect(run([...keys('6.4⏎', 0), ...keys('⏎', 200)]).swallowed.at(-1)).toBe(true);
  });

  it('swallows an Enter that comes two seconds after its Tab, once', () => {
    const { swallowed } = run([...keys('6.4⇥', 0), ...keys('⏎', 2000), ...keys('⏎', 2300)]);
    expect(swallowed.slice(-2)).toEqual([true, false]);
  });
});

describe('a gauge that ends with nothing', () => {
  it('ends with a pause once the decimals are there', () => {
    const { state, wakeAt, told } = run(keys('6.42', 0), BY_PAUSE);
    expect([told, wakeAt]).toEqual([[], 410]);
    expect(wedgeStep(state, { kind: 'tick', at: 409 }, BY_PAUSE).outcomes).toEqual([]);
    expect(wedgeStep(state, { kind: 'tick', at: 410 }, BY_PAUSE).outcomes).toMatchObject([
      { reading: { ok: true, valueMm: 6.42 }, endedBy: 'pause' }
    ]);
  });

  it('needs no tick when the next reading comes', () => {
    const events = [...keys('6.42', 0), ...keys('6.42', 1000), { kind: 'tick', at: 2000 } as const];
    expect(run(events, BY_PAUSE).told).toEqual([6.42, 6.42]);
  });

  it('waits for the rest of a torn burst instead of reading its head', () => {
    const events = [...keys('6.4', 0), ...keys('2', 1500), { kind: 'tick', at: 2000 } as const];
    expect(run(events, BY_PAUSE).told).toEqual([6.42]);
  });

  it('leaves a number typed slowly to its Enter', () => {
    expect(run([...keys('6.42', 0, 400), { kind: 'tick', at: 3000 }], BY_PAUSE).told).toEqual([]);
    expect(run(keys('6.42⏎', 0, 400), BY_PAUSE).told).toEqual([6.42]);
  });
});

describe('focus lost', () => {
  it('refuses the head at once and the tail when it ends', () => {
    const events: WedgeEvent[] = [
      ...keys('16', 0),
      { kind: 'blur', at: 50 },
      { kind: 'focus', at: 900 },
      ...keys('.4⏎', 1000)
    ];
    const { outcomes, swallowed } = run(events);
    expect(outcomes.map(({ reading }) => reading)).toEqual([
      { ok: false, reason: 'cut-short', text: '16' },
      { ok: false, reason: 'cut-short', text: '.4' }
    ]);
    expect(swallowed.at(-1)).toBe(true);
  });

  it('refuses a tail that comes a second after the focus came back', () => {
    const events: WedgeEvent[] = [
      ...keys('16.4', 0),
      { kind: 'blur', at: 70 },
      { kind: 'focus', at: 100 },
      ...keys('2⏎', 1300),
      ...keys('6.4⏎', 4000)
    ];
    expect(run(events).told).toEqual(['cut-short', 'cut-short', 6.4]);
  });

  it('refuses a tail whose head went elsewhere', () => {
    expect(run([{ kind: 'focus', at: 0 }, ...keys('6.4⏎', 100)]).told).toEqual(['cut-short']);
    expect(run([{ kind: 'focus', at: 0 }, ...keys('6.4⏎', 300)]).told).toEqual([6.4]);
  });
});

describe('text of a field (Android 229)', () => {
  it.each([
    [['6', '.', '4', '\n'], [6.4]],
    [['6.4\n'], [6.4]],
    [['6.4\r\n6.4\r\n'], [6.4, 6.4]],
    [
      ['6.4\t', '\n', '7,1\t'],
      [6.4, 7.1]
    ]
  ])('%j', (texts, told) => {
    const events = texts.map((inserted, index): WedgeEvent => ({
      kind: 'text',
      inserted,
      at: index * 50
    }));
    expect(run(events).told).toEqual(told);
  });

  it('follows a keyboard that corrects its last character', () => {
    const events: WedgeEvent[] = [
      { kind: 'text', inserted: '6,4', at: 0 },
      { kind: 'text', erased: 2, inserted: '.42', at: 30 },
      { kind: 'text', inserted: '\n', at: 60 }
    ];
    expect(run(events).told).toEqual([6.42]);
  });

  it('reads nothing from a rewriting that reaches into ended readings', () => {
    const events: WedgeEvent[] = [
      { kind: 'text', inserted: '6.4\n', at: 0 },
      { kind: 'text', erased: 3, inserted: '6,4', at: 30 },
      { kind: 'text', inserted: '\n', at: 60 }
    ];
    expect(run(events).told).toEqual([6.4, 'cut-short']);
  });
});
