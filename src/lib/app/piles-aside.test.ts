import { beforeEach, expect, it, vi } from 'vitest';
import { foldAll, EMPTY_VIEW, readEvent } from '$lib/journal';
import { workOutPiles } from '$lib/job/sorted';
import { fixedExample } from '../../../tests/support/fixed-example.ts';

const runTask = vi.fn();
vi.mock('$lib/worker', () => ({ runTask }));
const events = fixedExample().map(readEvent);
const view = foldAll(events, EMPTY_VIEW);

beforeEach(() => {
  vi.resetModules();
  runTask.mockReset();
});

it('one screen after the other has the piles worked out once', async () => {
  runTask.mockReturnValue({ result: Promise.resolve(workOutPiles(view)) });
  const { pilesAside } = await import('./piles-aside.ts');
  expect(await pilesAside(view)).toEqual(workOutPiles(view));
  expect(await pilesAside(view)).toEqual(workOutPiles(view));
  expect(runTask).toHaveBeenCalledTimes(1);
});

it('are worked out anew after another slate was sorted', async () => {
  runTask.mockReturnValue({ result: Promise.resolve(workOutPiles(view)) });
  const { pilesAside } = await import('./piles-aside.ts');
  await pilesAside(foldAll(events.slice(0, -40), EMPTY_VIEW));
  await pilesAside(view);
  expect(runTask).toHaveBeenCalledTimes(2);
});

it('are asked for again where the worker failed', async () => {
  runTask.mockReturnValue({ result: Promise.reject(new Error('gone')) });
  const { pilesAside } = await import('./piles-aside.ts');
  expect(await pilesAside(view)).toBeUndefined();
  runTask.mockReturnValue({ result: Promise.resolve(workOutPiles(view)) });
  expect(await pilesAside(view)).toBeDefined();
});
