import type { Catalogue } from '../words.svelte.ts';

export const photos: Catalogue['photos'] = {
  title: 'Fotos',
  hint: 'Se reducen en este aparato; no se guarda dónde se tomaron.',
  add: 'Añadir una foto',
  caption: 'Qué se ve',
  captionHint: 'Por ejemplo: esquina rota, palé B.',
  working: 'Reduciendo la foto…',
  tooLarge: (size, limit) =>
    `La foto tiene ${size}; en un teléfono se pueden abrir ${limit} como mucho. Tómela con menos resolución.`,
  notAPhoto: 'Este archivo no es una foto que el navegador pueda abrir. Elija un JPEG o PNG.',
  failed: (detail) => `La foto no se guardó (${detail}). Elíjala otra vez.`,
  missing: 'Esta foto no está en este aparato.',
  alt: (caption) => `Foto: ${caption}`,
  from: (pallet) => `Palé ${pallet}`,
  course: (course, slope) => `Hilada ${course}, ${slope}`
};
