import type { FromWorker, ToWorker } from './protocol.ts';
import type { TaskInput, TaskName, TaskResult } from './tasks.ts';

/** A task under way in the engine's worker. */
export interface RunningTask<R> {
  /** Rejects with the engine's message, or with `AbortError` once cancelled. */
  result: Promise<R>;
  cancel: () => void;
}

interface Waiting {
  done: (result: unknown) => void;
  failed: (error: Error) => void;
  progress?: (share: number) => void;
}

let worker: Worker | undefined;
let nextId = 1;
const waiting = new Map<number, Waiting>();

/**
 * Runs a task of the engine away from the page, so that the page stays quick.
 *
 * @param input plain data; copied to the worker
 * @param progress called with the share done, 0 to 1
 */
export function runTask<N extends TaskName>(
  name: N,
  input: TaskInput<N>,
  progress?: (share: number) => void
): RunningTask<TaskResult<N>> {
  const id = nextId++;
  const engine = engineWorker();
  const result = new Promise<TaskResult<N>>((resolve, reject) => {
    waiting.set(id, { done: (value) => resolve(value as TaskResult<N>), failed: reject, progress });
  });
  engine.postMessage({ kind: 'start', id, name, input } satisfies ToWorker);
  return {
    result,
    cancel: () => {
      engine.postMessage({ kind: 'cancel', id } satisfies ToWorker);
      waiting.get(id)?.failed(new DOMException('cancelled', 'AbortError'));
      waiting.delete(id);
    }
  };
}

function engineWorker(): Worker {
  if (worker) return worker;
  worker = new Worker(new URL('./engine-worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => {
    const task = waiting.get(data.id);
    if (!task) return;
    if (data.kind === 'progress') return task.progress?.(data.share);
    waiting.delete(data.id);
    if (data.kind === 'done') task.done(data.result);
    else task.failed(new Error(data.message));
  });
  worker.addEventListener('error', (event) => {
    for (const task of waiting.values()) task.failed(new Error(event.message));
    waiting.clear();
    worker?.terminate();
    worker = undefined;
  });
  return worker;
}
