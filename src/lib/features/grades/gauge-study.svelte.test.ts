import { describe, expect, it } from 'vitest';
import { settingsOf } from '$lib/job';
import { MemoryStore } from '../../../../tests/support/memory-store.ts';
import { GaugeStudy } from './gauge-study.svelte.ts';
import { GradesState } from './grades.svelte.ts';
import { JobState } from '$lib/app/job.svelte.ts';

const JOB = '01998f00-0000-7000-8000-0000000000aa';

async function study(): Promise<{ job: JobState; study: GaugeStudy }> {
  let clock = Date.UTC(2026, 4, 1, 8);
  let digits = 0;
  const randomHex = () => (digits++).toString(16).padStart(16, '0');
  const job = new JobState(JOB, new MemoryStore({ now: () => (clock += 1000), randomHex }));
  await job.act({ type: 'jobOpened', body: { name: 'Job' } });
  const grades = new GradesState(() => job);
  await grades.load();
  return {
    job,
    study: new GaugeStudy(
      () => job,
      () => grades
    )
  };
}

describe('a guided gauge study', () => {
  it('goes slate by slate, then person by person, then round by round', async () => {
    const { study: one } = await study();
    one.start({ parts: 2, sorters: 2, trials: 2 });
    const steps = [];
    while (one.next) {
      steps.push([one.next.trial, one.next.sorter, one.next.part]);
      one.entry = '6.00';
      one.take();
    }
    expect(steps).toEqual([
      [1, 1, 1],
      [1, 1, 2],
      [1, 2, 1],
      [1, 2, 2],
      [2, 1, 1],
      [2, 1, 2],
      [2, 2, 1],
      [2, 2, 2]
    ]);
    expect(one.result?.anova).toEqual({ ok: false, reason: 'no-spread' });
  });

  it('refuses what is no thickness and keeps it in the field', async () => {
    const { study: one } = await study();
    one.start({ parts: 2, sorters: 1, trials: 2 });
    for (const text of ['', 'abc', '60', '0.9', '6,4,2']) {
      one.entry = text;
      one.take();
      expect(one.refused, text).toBeDefined();
      expect(one.entry).toBe(text);
    }
    expect(one.done).toBe(0);
  });

  it('is kept with its repeatability as the gauge of the job', async () => {
    const { job, study: one } = await study();
    one.start({ parts: 2, sorters: 1, trials: 2 });
    for (const text of ['5.00', '6,00', '5.10', '6.10']) {
      one.entry = text;
      one.take();
    }
    one.back();
    one.entry = '6.10';
    one.take();
    expect(one.table).toEqual([[[500, 510]], [[600, 610]]]);
    const anova = one.result?.anova;
    if (!anova?.ok) throw new Error('no result');
    expect(anova.repeatabilityVariance).toBeCloseTo(0.005, 12);
    expect(await one.keep()).toBe(true);
    expect(settingsOf(job.view).gaugeSdMm).toBe(anova.repeatabilitySdMm);
    expect(one.kept?.readings).toEqual([[[500, 510]], [[600, 610]]]);
    expect(one.isOpen).toBe(false);
  });
});
