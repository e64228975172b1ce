import {
  type WedgeEnding,
  type WedgeEvent,
  type WedgeOutcome,
  IDLE_WEDGE,
  changeOfText,
  wedgeStep
} from '$lib/gauge';
import fc from 'fast-check';

export const SEED = { seed: 20260301 };

/** A gauge's number: its text as sent, and the thickness it stands for. */
export interface Sent {
  readonly text: string;
  readonly hundredths: number;
}

export const mark = fc.constantFrom('.', ',');
export const hundredths = fc.integer({ min: 150, max: 4000 });
export const textOf = (value: number, decimalMark: string) =>
  (value / 100).toFixed(2).replace('.', decimalMark);
export const sent: fc.Arbitrary<Sent> = fc
  .tuple(hundredths, mark, fc.constantFrom('', '+', ' ', '00'), fc.constantFrom('', 'mm', ' mm'))
  .map(([value, decimalMark, before, after]) => ({
    text: before + textOf(value, decimalMark) + after,
    hundredths: value
  }));
export const bare: fc.Arbitrary<Sent> = fc
  .tuple(hundredths, mark)
  .map(([value, decimalMark]) => ({ text: textOf(value, decimalMark), hundredths: value }));

export const gap = fc.integer({ min: 0, max: 120 });
export const gaps = fc.array(gap, { minLength: 24, maxLength: 24 });
/** A burst torn in two: where, as a share of its length, and for how long. */
export const tear = fc.option(
  fc.record({
    share: fc.double({ min: 0, max: 1, noNaN: true }),
    ms: fc.integer({ min: 200, max: 2000 })
  }),
  { nil: undefined }
);

export interface Burst {
  readonly sent: Sent;
  readonly ends: readonly string[];
  readonly gaps: readonly number[];
  readonly tear?: { readonly share: number; readonly ms: number };
  readonly quietMs: number;
}

export const burstWith = (number: fc.Arbitrary<Sent>, ends: fc.Arbitrary<string[]>) =>
  fc.record({
    sent: number,
    ends,
    gaps,
    tear,
    quietMs: fc.integer({ min: 500, max: 4000 })
  });

export const keyEnds = fc.constantFrom<string[]>(
  ['Enter'],
  ['Tab'],
  ['Enter', 'Tab'],
  ['Tab', 'Enter']
);

/** Key names of bursts with their times. A tear falls between characters of the number. */
export function timed(
  bursts: readonly Burst[],
  startAt = 1000
): { key: string; at: number; burst: number }[] {
  let at = startAt;
  return bursts.flatMap((burst, index) => {
    const names = [...burst.sent.text, ...burst.ends];
    const digits = burst.sent.text.trimStart().length;
    const lead = burst.sent.text.length - digits;
    const tornAt = burst.tear ? lead + 1 + Math.floor(burst.tear.share * (digits - 2)) : -1;
    const keys = names.map((key, place) => {
      at += place === tornAt ? (burst.tear?.ms ?? 0) : burst.gaps[place];
      return { key, at, burst: index };
    });
    at += burst.quietMs;
    return keys;
  });
}

export function keyEvent(key: string, at: number): WedgeEvent {
  const code = /\d/.test(key) ? `Digit${key}` : key === '.' ? 'Period' : key;
  return { kind: 'key', key, code, at, isOnControl: false };
}

/** The same keys as Android tells them: text appearing in a field, ends as line break or tab. */
export function fieldEvents(keys: readonly { key: string; at: number }[]): WedgeEvent[] {
  let before = '';
  return keys.map(({ key, at }): WedgeEvent => {
    if (key === 'Enter') return keyEvent(key, at);
    if (key === 'Tab') return { kind: 'text', inserted: '\t', at };
    const after = before + key;
    const change = changeOfText(before, after);
    before = after;
    return { kind: 'text', ...change, at };
  });
}

export function run(events: readonly WedgeEvent[], ending: WedgeEnding, withTicks: boolean) {
  let state = IDLE_WEDGE;
  let wakeAt: number | null = null;
  const outcomes: WedgeOutcome[] = [];
  const passed: string[] = [];
  const take = (event: WedgeEvent) => {
    const step = wedgeStep(state, event, { unit: 'mm', ending });
    ({ state, wakeAt } = step);
    outcomes.push(...step.outcomes);
    if (event.kind === 'key' && !step.isSwallowed) passed.push(event.key);
  };
  for (const event of events) {
    if (withTicks && wakeAt !== null && event.at >= wakeAt) take({ kind: 'tick', at: wakeAt });
    take(event);
  }
  take({ kind: 'tick', at: (events.at(-1)?.at ?? 0) + 60_000 });
  return { outcomes, passed };
}

export const taken = (outcomes: readonly WedgeOutcome[]) =>
  outcomes.map(({ reading }) => (reading.ok ? reading.hundredths : reading.reason));
export const expected = (bursts: readonly Burst[]) => bursts.map((burst) => burst.sent.hundredths);
