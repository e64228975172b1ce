/** Words of the settings screen. */
export const settings = {};
