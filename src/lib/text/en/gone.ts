/** Why slates are no more on the piles though nobody set them aside. */
export const gone = {
  taken: (slates: string) => `${slates} laid or lost before the piles were counted`,
  notFound: (slates: string) => `about ${slates} not found when the piles were counted`
};
