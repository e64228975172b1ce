import { common } from './common.ts';

/** What can be done with a job of the list, one tap below its line. */
export const jobMenu = {
  rename: 'Rename',
  putAway: 'Put away',
  copyRoof: 'Copy the roof',
  remove: 'Remove from this device',
  cancel: 'Cancel',
  newName: 'New name',
  saveName: 'Save the name',
  renamed: (name: string) => `Renamed: ${name}.`,
  copyHow: 'A new job with the same slopes and slate size, and no readings.',
  copyName: (name: string) => `${name}, copy`,
  newJobName: 'Name of the new job',
  makeCopy: 'Make the new job',
  nothingToCopy: 'This job has no roof and no slate size yet. Enter them on Roof first.',
  removeHow: 'Only this device loses the job. Everybody else keeps theirs.',
  backBy: {
    file: (moment: string) => `Its backup of ${moment} brings it back.`,
    notAll: (n: number) =>
      `${common.entries(n)} not backed up: it goes only once they are backed up or shared.`,
    crew: 'An invitation to the crew brings it back.'
  },
  typeName: (name: string) => `To remove it, type its name: ${name}`,
  wrongName: (name: string) => `That is not its name. Type ${name}, or cancel.`,
  removing: 'Removing…',
  removed: (name: string) => `Removed from this device: ${name}.`,
  onlyHere: (n: number) =>
    `${common.entries(n)} on this device only. Back the job up, then remove it.`,
  keeperOnly: (n: number) =>
    `You hold the lock of this crew, and ${common.entries(n)} are in no backup. Back the job up first.`,
  openElsewhere: 'The job is open on another page of this device. Close it there, then try again.',
  failed: (detail: string) => `Nothing was changed (${detail}). Try again.`
};
