export { JobState, type SaveFailure } from './job.svelte.ts';
export { provideJob, useJob } from './job-context.ts';
export { device } from './device.svelte.ts';
export { JobsState } from './jobs.svelte.ts';
export { updates } from './updates.svelte.ts';
export { type NextStep, nextStep } from './next-step.ts';
export { FilesState, type CsvImport } from './files.svelte.ts';
export { type ReadyFile, download, share } from './file-saving.ts';
