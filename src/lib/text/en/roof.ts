/** Words of the roof screen. */
export const roof = {};
