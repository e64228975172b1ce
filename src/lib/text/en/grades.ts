/** Words of the grades screen. */
export const grades = {};
