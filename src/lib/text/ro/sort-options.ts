import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('ro');
const SLATE = { one: 'placă', few: 'plăci', other: 'de plăci' };

export const sortOptions: Catalogue['sortOptions'] = {
  title: 'Opțiunile acestui telefon',
  pallets: {
    none: 'Niciun palet încă',
    noneWhy: 'Treceți primul palet, ca fiecare placă să fie numărată de unde vine.',
    chooserTitle: 'Paleți',
    chooserHint:
      'Atingeți paletul din care luați. Țineți mai mulți deschiși: luând din trei sau mai mulți, culoarea se amestecă.',
    keepOpen: 'Deschis',
    name: 'Numele de pe palet',
    slates: 'Plăci pe el',
    slatesHint: 'Ca pe etichetă. 0 dacă nu știe nimeni.',
    mixed: 'Mai multe lungimi amestecate',
    add: 'Adaugă paletul',
    addTitle: 'Alt palet',
    nameMissing: 'Dați paletului un nume, de exemplu A.',
    nameTaken: (name) => `Există deja paletul ${name}. Dați-i alt nume.`,
    slatesWrong: 'Scrieți un număr întreg de la 0 la 100.000.'
  },
  day: {
    title: 'Ziua până acum',
    sorted: (n) => `${many(n, SLATE)} azi`,
    worked: (time) => `${time} de sortare, fără pauze`,
    ofJob: 'Cifrele sunt ale lucrării, niciodată ale unei persoane.',
    setAsideTitle: 'Deoparte, toată lucrarea'
  },
  undo: {
    cut: 'Aici se anulează doar ultimele 20 de înregistrări. Dintre măsurătorile mai vechi, Clase o numește pe cea ieșită din rând.',
    title: 'Ultimele zece înregistrări',
    none: 'Nimic de anulat.'
  },
  checked: {
    belongs: (pile) => `Locul ei: ${pile}.`,
    put: (pile) => `Pune-o pe ${pile}`
  },
  palletRemoved: {
    remove: 'Elimină acest palet',
    done: (label) => `Paletul ${label} a fost eliminat.`,
    bringBack: 'Readu-l',
    stays:
      'Un palet cu ardezii, o stivă sau un loc de probă trecute rămâne. Corectați numele sau numărul la Livrare.'
  },
  held: (n, reading) =>
    `${many(n, {
      one: 'măsurătoare așteaptă răspunsul',
      few: 'măsurători așteaptă răspunsul',
      other: 'de măsurători așteaptă răspunsul'
    })}: ${reading}`,
  sound: 'Un ton pentru fiecare stivă (mai jos e mai groasă)',
  vibration: 'Vibrație',
  speech: 'Spune stiva cu voce tare',
  noVoice: 'Aparatul nu are voce proprie pentru această limbă.',
  leftHand: 'Pentru stângaci',
  awake: 'Ține ecranul aprins',
  awakeMissing: 'Acest browser nu poate ține ecranul aprins.',
  holdStill: 'Măsoară fiecare punct de două ori',
  points: 'Puncte măsurate pe placă',
  nickname: 'Cine sortează (o poreclă sau nimic)',
  nicknameHint: 'Doar pentru a cunoaște fiecare mână din verificări. Nimeni nu este comparat.',
  unit: 'Unitatea șublerului',
  tryOut: 'Încearcă semnele fiecărei stive',
  storage: 'Memoria aparatului',
  storageKept: 'Browserul păstrează înregistrările de pe aparat.',
  storageNotKept: 'Browserul le poate șterge dacă lipsește spațiul: faceți zilnic o copie.',
  ending: 'Șubler care scrie',
  endingKey: 'încheie citirea cu Enter sau Tab',
  endingPause: 'nu trimite sfârșit: o pauză ia citirea',
  endingForget: 'Uită, învață din nou',
  clicker: {
    title: 'Tastele unei telecomenzi',
    hint: 'Manual, tastele 1, 2, 3 … sortează imediat. Învățați aici alte taste. Unele telefoane păstrează tastele de volum pentru ele: folosiți atunci tastele de pagină.',
    none: 'încă fără tastă',
    press: 'Apăsați tasta acum',
    learn: 'Învață'
  },
  serial: {
    title: 'Șubler pe cablu',
    connect: 'Conectează un șubler',
    connecting: 'Alegeți șublerul din lista browserului…',
    speed: 'Viteză (baud)',
    ending: 'Liniile se termină',
    endingLine: 'cu sfârșit de linie',
    endingPause: 'cu o pauză',
    learning: (n) =>
      `Mai luați ${many(n, { one: 'citire de probă', few: 'citiri de probă', other: 'de citiri de probă' })}, fiecare de pe altă placă. Nu se numără.`,
    rawTitle: 'Ce trimite șublerul',
    rawNone: 'Încă nimic. Apăsați tasta de date; dacă apar semne ciudate, încercați altă viteză.',
    which: 'Care este grosimea?',
    noNumber: 'Nu e niciun număr în aceste linii. Încercați altă viteză.',
    learnt: 'Șubler învățat: citirile se preiau.',
    disconnect: 'Deconectează',
    forget: 'Învață din nou',
    unplugged: 'Șublerul a fost scos. Ce a trimis înainte este păstrat.',
    closed: 'Deconectat.',
    failed: (detail) => `Șublerul nu s-a deschis: ${detail}`,
    bytesLost: 'S-au pierdut semne. Dacă ultima placă nu s-a luat, măsurați-o.',
    noise: (text) => `Nu e o citire, lăsat: ${text}`
  },
  /** What is asked of a slate on a flat board. */
  onBoard: {
    board: (step) => `Pe o scândură plană: se leagănă cu peste ${step}?`,
    rocks: 'Se leagănă',
    skip: 'Doar o parte'
  },
  /** Answers to what a reading is. */
  answers: {
    measureAgain: 'Măsurați iar',
    keep: 'Păstrați'
  }
};
