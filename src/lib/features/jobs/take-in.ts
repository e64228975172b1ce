// Fetched when a file is chosen or made: the first screen does without.
export {
  download,
  makeEveryBackup,
  noteEveryBackup,
  rescue,
  restore,
  restoreEach,
  sayRestore,
  sayWhatIsMissing,
  share
} from '$lib/app';
