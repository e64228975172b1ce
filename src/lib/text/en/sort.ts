/** Words of the sort screen. */
export const sort = {};
