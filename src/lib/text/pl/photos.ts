import type { Catalogue } from '../words.svelte.ts';

export const photos: Catalogue['photos'] = {
  title: 'Zdjęcia',
  hint: 'Zmniejszane na tym urządzeniu; miejsce wykonania nie jest zapisywane.',
  add: 'Dodaj zdjęcie',
  caption: 'Co na nim widać',
  captionHint: 'Na przykład: ułamany róg, paleta B.',
  working: 'Zmniejszanie zdjęcia…',
  tooLarge: (size, limit) =>
    `Zdjęcie ma ${size}; telefon otworzy najwyżej ${limit}. Zrób je w mniejszej rozdzielczości.`,
  notAPhoto: 'Przeglądarka nie otworzy tego pliku jako zdjęcia. Wybierz JPEG albo PNG.',
  failed: (detail) => `Zdjęcie nie zostało zapisane (${detail}). Wybierz je ponownie.`,
  missing: 'Tego zdjęcia nie ma na urządzeniu.',
  alt: (caption) => `Zdjęcie: ${caption}`,
  from: (pallet) => `Paleta ${pallet}`,
  course: (course, slope) => `Rząd ${course}, ${slope}`
};
