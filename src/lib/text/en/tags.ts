/** Words of the tags screen. */
export const tags = {};
