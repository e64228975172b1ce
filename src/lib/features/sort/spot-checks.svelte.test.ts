import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { createRandom, randomNormal } from '$lib/engine';
import { type SpotCheck, learnHand } from '$lib/engine/statistics';
import { pileOf } from '$lib/engine/grading';
import { MemoryStore } from '../../../../tests/support/memory-store.ts';
import { JobState } from '$lib/app/job.svelte.ts';
import { SpotChecks } from './spot-checks.svelte.ts';

const JOB = '01998f00-0000-7000-8000-0000000000aa';
const PALLET = 'pallet-A';
const THRESHOLDS = [6, 5];

/** Spot checks of a hand that strays by so much about the grades' thresholds. */
function checksOfHand(count: number, sdMm: number): SpotCheck[] {
  const random = createRandom(11);
  return Array.from({ length: count }, () => {
    const thicknessMm = Math.round(100 * (4 + 3 * random())) / 100;
    return { thicknessMm, pile: pileOf(thicknessMm + sdMm * randomNormal(random), THRESHOLDS) };
  });
}

const WELL_KNOWN = checksOfHand(400, 0.3);
const ROUGH = checksOfHand(40, 0.3);
const SEPARATED = checksOfHand(40, 0);

let job: JobState;
let sorter = $state('');

beforeEach(async () => {
  let clock = Date.UTC(2026, 4, 1, 8);
  let digits = 0;
  const randomHex = () => (digits++).toString(16).padStart(16, '0');
  sorter = '';
  job = new JobState(JOB, new MemoryStore({ now: () => (clock += 1000), randomHex }));
  await job.act([
    { type: 'jobOpened', body: { name: 'Job' } },
    { type: 'palletAdded', body: { palletId: PALLET, label: 'A', slates: 400 } }
  ]);
  await setGrades(THRESHOLDS);
});

async function setGrades(thresholdsMm: number[]): Promise<void> {
  await job.act({ type: 'gradesSet', body: { method: 'byHand', thresholdsMm } });
}

const gradesId = (): string => job.grades?.gradesId ?? '';

/** Puts spot checks of a sorter's taps, under the grades in force, into the job. */
async function check(name: string, checks: readonly SpotCheck[]): Promise<void> {
  const events = checks.map(({ pile, thicknessMm }) => ({
    type: 'slateChecked' as const,
    body: {
      ...{ palletId: PALLET, of: 'tap' as const, pile, gradesId: gradesId() },
      points: [Math.round(100 * thicknessMm)]
    }
  }));
  await job.act(events, name);
}

/** Spot checks of the job, every draw of whose time is the same: 0.5 asks after just the interval. */
const spotChecks = (draw = 0.5): SpotChecks =>
  new SpotChecks(
    () => job,
    () => sorter,
    () => draw
  );

function tap(checks: SpotChecks, pile = 2): boolean {
  return checks.tapped({ pile, palletId: PALLET, gradesId: gradesId() });
}

/** Taps until a question comes up, the first tap included; the hand is looked at after the first. */
async function tapsToQuestion(checks: SpotChecks): Promise<number> {
  for (let taps = 1; taps <= 100; taps++) {
    if (tap(checks)) return taps;
    expect(checks.asked).toBeUndefined();
    if (taps === 1) await checks.learn();
  }
  throw new Error('no question in 100 taps');
}

describe('the pace of spot checks', () => {
  it.each([
    { hand: 'nobody checked', checks: [], taps: 5 },
    { hand: 'whose checks were all as the gauge had it', checks: SEPARATED, taps: 5 },
    { hand: 'known roughly', checks: ROUGH, taps: 10 },
    { hand: 'known well', checks: WELL_KNOWN, taps: 20 }
  ])('of a hand $hand: a question every $taps taps', async ({ checks: made, taps }) => {
    await check('', made);
    const checks = spotChecks();
    for (let question = 0; question < 3; question++) {
      expect(await tapsToQuestion(checks)).toBe(taps);
      checks.putOff();
    }
  });

  it('is that of the hand it says: the cases are what they are called', () => {
    expect(learnHand(SEPARATED, 3)).toMatchObject({ ok: false, reason: 'separated' });
    expect(learnHand(ROUGH, 3).ok).toBe(true);
    expect(learnHand(WELL_KNOWN, 3).ok).toBe(true);
  });

  it('varies by a quarter either way', async () => {
    await check('', WELL_KNOWN);
    expect(await tapsToQuestion(spotChecks(0))).toBe(15);
    expect(await tapsToQuestion(spotChecks(0.9999))).toBe(25);
  });

  it('slows when a check makes the hand known', async () => {
    const checks = spotChecks();
    expect(await tapsToQuestion(checks)).toBe(5);
    checks.putOff();
    await check('', WELL_KNOWN);
    await checks.learn();
    expect(await tapsToQuestion(checks)).toBe(20);
  });

  it('waits until the hand was looked at, and then counts the taps so far', async () => {
    const checks = spotChecks();
    for (let taps = 0; taps < 8; taps++) expect(tap(checks)).toBe(false);
    await checks.learn();
    expect(tap(checks)).toBe(true);
  });

  it('does not look at the pile', async () => {
    const piles = fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 60, maxLength: 60 });
    const askedAt = async (sequence: readonly number[], seed: number): Promise<number[]> => {
      const checks = new SpotChecks(
        () => job,
        () => sorter,
        createRandom(seed)
      );
      tap(checks, sequence[0]);
      await checks.learn();
      return sequence.slice(1).flatMap((pile, index) => (tap(checks, pile) ? [index] : []));
    };
    await fc.assert(
      fc.asyncProperty(piles, fc.nat(), async (sequence, seed) => {
        const asked = await askedAt(sequence, seed);
        expect(asked.length).toBeGreaterThan(3);
        expect(asked).toEqual(await askedAt(new Array<number>(60).fill(1), seed));
      }),
      { seed: 20_260_703, numRuns: 50 }
    );
  });
});

describe('another sorter', () => {
  it('has a pace of their own from the first tap', async () => {
    await check('Wren', WELL_KNOWN);
    const checks = spotChecks();
    sorter = 'Wren';
    tap(checks);
    await checks.learn();
    for (let taps = 0; taps < 10; taps++) tap(checks);
    sorter = 'Finch';
    expect(await tapsToQuestion(checks)).toBe(5);
    sorter = 'Wren';
    expect(await tapsToQuestion(checks)).toBe(20);
  });

  it('is not asked of a slate that somebody else tapped', async () => {
    const checks = spotChecks();
    await tapsToQuestion(checks);
    expect(checks.asked).toBeDefined();
    sorter = 'Finch';
    expect(checks.asked).toBeUndefined();
    expect(await tapsToQuestion(checks)).toBe(5);
  });
});

describe('other grades', () => {
  it('are another hand: unknown until it is checked', async () => {
    await check('', WELL_KNOWN);
    const checks = spotChecks();
    expect(await tapsToQuestion(checks)).toBe(20);
    await setGrades([6.2, 5.2]);
    expect(checks.asked).toBeUndefined();
    expect(await tapsToQuestion(checks)).toBe(5);
  });

  it('set anew while a hand is looked at: the pace is that of the new ones', async () => {
    await check('', WELL_KNOWN);
    const checks = spotChecks();
    tap(checks);
    await setGrades([6.2, 5.2]);
    expect(await tapsToQuestion(checks)).toBe(5);
  });
});

describe('a question', () => {
  it('is about the slate tapped last', async () => {
    const checks = spotChecks();
    await tapsToQuestion(checks);
    tap(checks, 3);
    expect(checks.asked).toEqual({ pile: 3, palletId: PALLET, gradesId: gradesId() });
  });

  it('goes when it is answered or put off', async () => {
    const checks = spotChecks();
    await tapsToQuestion(checks);
    checks.putOff();
    expect(checks.asked).toBeUndefined();
    for (let taps = 1; taps < 5; taps++) expect(tap(checks)).toBe(false);
    expect(tap(checks)).toBe(true);
  });

  it('goes when the tap is taken back, and comes with the next one', async () => {
    const checks = spotChecks();
    await tapsToQuestion(checks);
    checks.forgetLast();
    expect(checks.asked).toBeUndefined();
    tap(checks, 1);
    expect(checks.asked?.pile).toBe(1);
  });

  it('lapses after six taps', async () => {
    const checks = spotChecks();
    await tapsToQuestion(checks);
    for (let taps = 1; taps < 6; taps++) {
      tap(checks);
      expect(checks.asked).toBeDefined();
    }
    tap(checks);
    expect(checks.asked).toBeUndefined();
  });

  it('does not come before there are grades', async () => {
    job = new JobState(JOB, new MemoryStore({ now: () => 0, randomHex: () => '0'.repeat(16) }));
    const checks = spotChecks();
    tap(checks);
    await checks.learn();
    for (let taps = 0; taps < 40; taps++) expect(tap(checks)).toBe(false);
  });
});
