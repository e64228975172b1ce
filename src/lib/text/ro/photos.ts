import type { Catalogue } from '../words.svelte.ts';

export const photos: Catalogue['photos'] = {
  title: 'Fotografii',
  hint: 'Micșorate pe acest aparat; locul în care au fost făcute nu se păstrează.',
  add: 'Adaugă o fotografie',
  caption: 'Ce se vede',
  captionHint: 'De exemplu: colț rupt, paletul B.',
  working: 'Se micșorează fotografia…',
  tooLarge: (size, limit) =>
    `Fotografia are ${size}; un telefon deschide cel mult ${limit}. Faceți-o la o rezoluție mai mică.`,
  notAPhoto:
    'Acest fișier nu este o fotografie pe care browserul o poate deschide. Alegeți un JPEG sau PNG.',
  failed: (detail) => `Fotografia nu s-a salvat (${detail}). Alegeți-o din nou.`,
  missing: 'Această fotografie nu este pe acest aparat.',
  alt: (caption) => `Fotografie: ${caption}`,
  from: (pallet) => `Paletul ${pallet}`,
  course: (course, slope) => `Rândul ${course}, ${slope}`
};
