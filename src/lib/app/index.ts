export { Announcer } from './announcer.svelte.ts';
export {
  makeEveryBackup,
  noteEveryBackup,
  type EveryBackup,
  type NotBackedUp
} from './every-backup.ts';
export { clearsUnusedSites, isBackupDue } from './backup-reminder.ts';
export {
  makeBackup,
  noteBackup,
  rescue,
  restore,
  restoreEach,
  sayWhatIsMissing,
  sayRestore,
  type MadeBackup,
  type ReadyBackup,
  type RestoredJobs
} from './backup.ts';
export { today } from './calendar-day.ts';
export { type CrewOfJob, provideCrew, useCrew } from './crew-context.ts';
export { device } from './device.svelte.ts';
export { Feedback, localVoice } from './feedback.ts';
export { download, readyFile, share, type ReadyFile } from './file-saving.ts';
export { GaugeInput, type InputSource, type InputRefusal } from './gauge-input.svelte.ts';
export { HealthState } from './health.svelte.ts';
export { inTurn, nextTask } from './in-turn.ts';
export { needsInstallHint } from './install-hint.ts';
export { isKeptPoints, keepPoints, keptPoints, type KeptPoints } from './kept-points.ts';
export { provideJob, useJob } from './job-context.ts';
export { canShare, isShared } from './is-shared.ts';
export {
  JobPhotos,
  LARGEST_PHOTO_BYTES,
  type PhotoStatus,
  type ShownPhoto
} from './job-photos.svelte.ts';
export { JobState } from './job.svelte.ts';
export { chooseLanguage, startLanguage } from './language.ts';
export { newJobId } from './new-job.ts';
export { useOwnLetters } from './own-letters.ts';
export { pageTimer } from './page-timer.ts';
export { printMark } from './print-mark.ts';
export { pilesAside } from './piles-aside.ts';
export { PlanState } from './plan.svelte.ts';
export { Preferences, preferences, type LearntSerialGauge } from './preferences.svelte.ts';
export { SessionMark } from './session-mark.ts';
export { SlateInHand } from './slate-in-hand.ts';
export { BothSides, SIDES_EVERY } from './both-sides.svelte.ts';
export { startCheck } from './start-check.svelte.ts';
export { journalStore, randomHex } from './store.ts';
export { sayTold, type Prompt, type Told } from './told.ts';
export { copyText } from './copy-text.ts';
export { updates } from './updates.svelte.ts';
export { WaitingReadings } from './waiting-readings.svelte.ts';
export { WakeLock } from './wake-lock.ts';
export { palletOfSize } from './pallet-of-size.ts';
export { takeInHand } from './size-in-hand.ts';
