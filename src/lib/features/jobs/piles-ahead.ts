import { type JobState, pilesAside } from '$lib/app';
import { slopesOf } from '$lib/job';

/** Has the piles worked out while somebody reads the job's page: Courses and Lay then open sooner. */
export function pilesAhead({ view, sizes, grades }: JobState): void {
  if (grades && sizes.length === 0 && slopesOf(view).length > 0) void pilesAside(view);
}
