import type { TaskName } from './tasks.ts';

export type ToWorker =
  { kind: 'start'; id: number; name: TaskName; input: unknown } | { kind: 'cancel'; id: number };

export type FromWorker =
  | { kind: 'progress'; id: number; share: number }
  | { kind: 'done'; id: number; result: unknown }
  | { kind: 'failed'; id: number; message: string };
