import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('ro');
const SLATE = { one: 'placă', few: 'plăci', other: 'de plăci' };

export const sortCount: Catalogue['sortCount'] = {
  title: 'Numără stivele',
  what: { label: 'Ce numărați?', piles: 'Stive întregi', pallets: 'De pe fiecare palet' },
  by: { label: 'Ce scrieți?', slates: 'Plăci', height: 'Înălțime' },
  lead: {
    piles: 'Câte sunt acum? Lăsați gol ce nu ați numărat.',
    pallets:
      'De pe o foaie de numărare sau numărate palet cu palet. Se adaugă la ce este scris deja.'
  },
  book: (n) => `Scrise până acum: ${n}`,
  unit: { slates: 'plăci', mm: 'mm', in: 'inch' },
  severalStacks: 'Mai multe grămezi: adunați-le, 420 + 380.',
  about: (slates, low, high) => `Cam ${slates} plăci, între ${low} și ${high}`,
  pallet: (label) => `Paletul ${label}`,
  cell: (pallet, pile) => `Palet ${pallet}, ${pile}`,
  setAside: 'Puse deoparte',
  asideFor: 'Puse deoparte pentru',
  inCount: {
    label: 'Când au fost sortate?',
    since: 'După numărarea stivelor',
    before: 'Înainte: sunt în acea numărare'
  },
  wide: { title: 'Plăci și jumătate', of: (pile) => `Plăci și jumătate, ${pile}` },
  stack: {
    title: 'O grămadă numărată',
    lead: 'Numărați o grămadă dintr-o stivă și măsurați-o cum stă: apoi ajung înălțimile.',
    none: 'Numărați întâi o grămadă și măsurați-o cum stă. Apoi ajung înălțimile.',
    pile: 'Stiva',
    slates: 'Plăci în ea',
    slatesWrong: 'Scrieți câte plăci ați numărat, de la 1 la 1000.',
    height: 'Înălțimea ei',
    add: 'Păstrează grămada',
    line: (pile, slates, height) => `${pile}: ${many(slates, SLATE)}, înălțime ${height}`,
    remove: 'Scoate'
  },
  problems: {
    notWhole: 'Scrieți un număr întreg sau lăsați gol.',
    tooMany: 'Sunt prea multe pentru o casetă. Numărați din nou.',
    notAHeight: 'Scrieți înălțimea, de exemplu 640 sau 420 + 380.',
    heightZero: 'O grămadă de 0 nu are plăci. Măsurați-o sau lăsați gol.',
    tooHigh: 'Nicio grămadă nu este atât de înaltă. Măsurați din nou.',
    noStack: 'Numărați întâi o grămadă sau scrieți numărul de plăci.',
    noThickness: (pile) => `Numărați o grămadă, ${pile}, sau scrieți numărul de plăci.`,
    aboveCame: (most) =>
      `Aici pot fi cel mult ${most}: n-au venit mai multe. Numărați din nou sau scrieți paletul care lipsește.`,
    aboveWithOthers: (sum, most) =>
      `Cu celelalte stive sunt ${sum}, dar au venit numai ${most}. Numărați din nou.`,
    abovePallet: (left, label) =>
      `Pe paletul ${label} au rămas ${left}: aici sunt mai multe. Numărați din nou.`
  },
  nothing: 'Scrieți măcar un număr.',
  save: 'Salvează numărarea',
  saving: 'Se salvează…',
  savedPiles: (n) => `Numărate: ${many(n, { one: 'stivă', few: 'stive', other: 'de stive' })}.`,
  savedSlates: (n) => `${many(n, SLATE)}: salvat.`,
  undoAll: { piles: 'Anulează această numărare', slates: 'Anulează aceste plăci' }
};
