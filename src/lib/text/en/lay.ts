/** Words of the lay screen. */
export const lay = {};
