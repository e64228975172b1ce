export { runTask, type RunningTask } from './client.ts';
export type { TaskInput, TaskName, TaskResult } from './tasks.ts';
