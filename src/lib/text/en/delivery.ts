/** Words of the delivery screen. */
export const delivery = {};
