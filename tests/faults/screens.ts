/** Every screen of a job that the steps and the job page lead to, by the last part of its address. */
export const JOB_SCREENS = [
  '',
  '/delivery',
  '/sort',
  '/grades',
  '/roof',
  '/courses',
  '/lay',
  '/sheet',
  '/order',
  '/sizes',
  '/tags',
  '/files'
] as const;
