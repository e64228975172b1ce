import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('pl');
const SLATE = { one: 'płytka', few: 'płytki', many: 'płytek', other: 'płytki' };

export const sortCount: Catalogue['sortCount'] = {
  title: 'Policz stosy',
  what: { label: 'Co liczysz?', piles: 'Całe stosy', pallets: 'Z każdej palety' },
  by: { label: 'Co wpisujesz?', slates: 'Płytki', height: 'Wysokość' },
  lead: {
    piles: 'Ile ich teraz stoi? Puste zostaw to, czego nie policzono.',
    pallets: 'Z arkusza kresek albo policzone paleta po palecie. Dodają się do tego, co wpisano.'
  },
  book: (n) => `Wpisano dotąd: ${n}`,
  unit: { slates: 'płytek', mm: 'mm', in: 'cale' },
  severalStacks: 'Kilka stert: dodaj je, 420 + 380.',
  about: (slates, low, high) => `Około ${slates} płytek, od ${low} do ${high}`,
  pallet: (label) => `Paleta ${label}`,
  cell: (pallet, pile) => `Paleta ${pallet}, ${pile}`,
  setAside: 'Odłożone',
  asideFor: 'Odłożone na',
  inCount: {
    label: 'Kiedy je posortowano?',
    since: 'Po policzeniu stosów',
    before: 'Przedtem: są w tamtym liczeniu'
  },
  wide: { title: 'Płytki półtora', of: (pile) => `Płytki półtora, ${pile}` },
  stack: {
    title: 'Policzona sterta',
    lead: 'Policz jedną stertę ze stosu i zmierz ją tak, jak stoi: potem wystarczą wysokości.',
    none: 'Najpierw policz jedną stertę i zmierz ją tak, jak stoi. Potem wystarczą wysokości.',
    pile: 'Stos',
    slates: 'Ile w niej płytek',
    slatesWrong: 'Wpisz, ile płytek policzono, od 1 do 1000.',
    height: 'Jej wysokość',
    add: 'Zapisz tę stertę',
    line: (pile, slates, height) => `${pile}: ${many(slates, SLATE)}, wysokość ${height}`,
    remove: 'Usuń'
  },
  problems: {
    notWhole: 'Wpisz liczbę całkowitą albo zostaw puste.',
    tooMany: 'To za dużo na jedno pole. Policz jeszcze raz.',
    notAHeight: 'Wpisz wysokość, na przykład 640 albo 420 + 380.',
    heightZero: 'Sterta o wysokości 0 nie ma płytek. Zmierz ją albo zostaw puste.',
    tooHigh: 'Żadna sterta nie jest tak wysoka. Zmierz jeszcze raz.',
    noStack: 'Najpierw policz jedną stertę albo wpisz liczbę płytek.',
    noThickness: (pile) => `Policz jedną stertę, ${pile}, albo wpisz liczbę płytek.`,
    aboveCame: (most) =>
      `Może ich tu być najwyżej ${most}: więcej nie przyszło. Policz jeszcze raz albo wpisz brakującą paletę.`,
    aboveWithOthers: (sum, most) =>
      `Z innymi stosami to ${sum}, a przyszło tylko ${most}. Policz jeszcze raz.`,
    abovePallet: (left, label) =>
      `Na palecie ${label} zostało ${left}: to więcej. Policz jeszcze raz.`
  },
  nothing: 'Wpisz co najmniej jedną liczbę.',
  save: 'Zapisz liczenie',
  saving: 'Zapisywanie…',
  savedPiles: (n) =>
    `Policzono: ${many(n, { one: 'stos', few: 'stosy', many: 'stosów', other: 'stosu' })}.`,
  savedSlates: (n) => `${many(n, SLATE)}: zapisano.`,
  undoAll: { piles: 'Cofnij to liczenie', slates: 'Cofnij te płytki' }
};
