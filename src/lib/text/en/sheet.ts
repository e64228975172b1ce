/** Words of the sheet screen. */
export const sheet = {};
