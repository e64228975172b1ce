/** What the Courses screen prints. */
export type CoursesPaper = 'plan' | 'draw' | 'load';
