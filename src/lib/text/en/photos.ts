/** Words of photos, wherever they are taken or shown. */
export const photos = {
  title: 'Photos',
  hint: 'Made small on this device; the place where it was taken is not kept.',
  add: 'Add a photo',
  caption: 'What it shows',
  captionHint: 'For example: broken corner, pallet B.',
  working: 'Making the photo small…',
  tooLarge: (size: string, limit: string) =>
    `The photo has ${size}; at most ${limit} can be opened on a phone. Take it at a lower resolution.`,
  notAPhoto: 'This file is no photo that the browser can open. Choose a JPEG or PNG.',
  failed: (detail: string) => `The photo was not saved (${detail}). Choose it again.`,
  missing: 'This photo is not on this device.',
  alt: (caption: string) => `Photo: ${caption}`,
  from: (pallet: string) => `Pallet ${pallet}`,
  course: (course: number, slope: string) => `Course ${course}, ${slope}`
};
