import type { FromWorker, ToWorker } from './protocol.ts';
import { tasks } from './tasks.ts';

const cancelled = new Set<number>();
const answer = (message: FromWorker): void => postMessage(message);
const breathe = (): Promise<void> => new Promise((resume) => setTimeout(resume, 0));

addEventListener('message', ({ data }: MessageEvent<ToWorker>) => {
  if (data.kind === 'cancel') cancelled.add(data.id);
  else void run(data);
});

/** Runs a task step by step, letting messages in between, until it is done or cancelled. */
async function run({ id, name, input }: Extract<ToWorker, { kind: 'start' }>): Promise<void> {
  try {
    const task = (tasks[name] as (input: unknown) => Generator<number> | AsyncGenerator<number>)(
      input
    );
    for (;;) {
      const step = await task.next();
      if (step.done) return answer({ kind: 'done', id, result: step.value });
      answer({ kind: 'progress', id, share: step.value });
      await breathe();
      if (cancelled.delete(id)) return;
    }
  } catch (error) {
    answer({ kind: 'failed', id, message: error instanceof Error ? error.message : String(error) });
  }
}
