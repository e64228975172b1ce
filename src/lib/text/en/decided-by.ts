/** Who decided of a delivery, as a heading: the job page has it without the delivery's other words. */
export const decidedBy = {
  take: (who: string, when: string) => `Taken by ${who} on ${when}`,
  query: (who: string, when: string) => `Queried by ${who} on ${when}`,
  refuse: (who: string, when: string) => `Refused by ${who} on ${when}`
};
