/** Words of the courses screen. */
export const courses = {};
