import type { Catalogue } from '../words.svelte.ts';

export const photos: Catalogue['photos'] = {
  title: 'Photos',
  hint: 'Réduites sur cet appareil ; le lieu de la prise n’est pas gardé.',
  add: 'Ajouter une photo',
  caption: 'Ce qu’on y voit',
  captionHint: 'Par exemple : coin cassé, palette B.',
  working: 'Réduction de la photo…',
  tooLarge: (size, limit) =>
    `La photo fait ${size} ; un téléphone en ouvre ${limit} au plus. Prenez-la en plus petit.`,
  notAPhoto:
    'Ce fichier n’est pas une photo que le navigateur sait ouvrir. Choisissez un JPEG ou un PNG.',
  failed: (detail) => `La photo n’est pas enregistrée (${detail}). Choisissez-la encore.`,
  missing: 'Cette photo n’est pas sur cet appareil.',
  alt: (caption) => `Photo : ${caption}`,
  from: (pallet) => `Palette ${pallet}`,
  course: (course, slope) => `Rang ${course}, ${slope}`
};
