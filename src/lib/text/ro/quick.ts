import { pluralizer } from '../plural.ts';
import type { Catalogue } from '../words.svelte.ts';

const many = pluralizer('ro');
const SLATE = { one: 'placă', few: 'plăci', other: 'de plăci' };

export const quick: Catalogue['quick'] = {
  title: 'Împărțire rapidă',
  lead: 'Fără paleți, fără acoperiș: unde împărțim, după 20 de plăci.',
  slates: 'Câte plăci sunt?',
  know: 'Ce știți despre acoperiș?',
  knows: { courses: 'Numărul de rânduri', size: 'Căprior, lățime și placă' },
  courses: 'Rânduri, de la streașină la coamă',
  rafter: 'Lungimea căpriorului',
  width: 'Lățimea la streașină',
  slateLength: 'Lungimea plăcii',
  slateWidth: 'Lățimea plăcii',
  headlap: 'Suprapunere',
  measure: 'Măsoară 20 de plăci',
  wrong: {
    slates: 'Scrieți câte plăci sunt: un număr întreg de la 1 la 100.000.',
    courses: 'Scrieți câte rânduri sunt: un număr întreg de la 1 la 300.',
    length: 'Scrieți o lungime în milimetri, de exemplu 5000.',
    moreCourses: 'Iese mai puțin de o placă pe rând. Verificați ambele numere.',
    roof: (field) => `Un acoperiș cu aceste măsuri nu se poate acoperi. Verificați: ${field}.`,
    anyRoof: 'Un acoperiș cu aceste măsuri nu se poate acoperi. Verificați măsurile.'
  },
  caution: 'Deschideți lăzile culcate, pe teren tare. Ridicați în doi, cu mănuși: muchiile taie.',
  count: (done, asked) => `${done} din ${asked}`,
  counted: (done) =>
    many(done, { one: 'placă măsurată', few: 'plăci măsurate', other: 'de plăci măsurate' }),
  takeBack: (thickness) => `Anulează ${thickness}`,
  show: 'Arată împărțirea',
  paste: 'Lipește o listă',
  pasteLabel: 'Grosimi în mm, una pe rând',
  pasteTake: 'Ia lista',
  pasteWrong: {
    empty: 'Lista este goală. Scrieți sau lipiți grosimi, de exemplu 6,2.',
    tooMany: 'Lista are peste 2.000 de numere. Luați mai puține.',
    notAReading: (text) =>
      `„${text}” nu este o grosime între 1,5 și 40 mm. Corectați; încă nu s-a luat nimic.`
  },
  tooFew: (readings, fewest) =>
    `${many(readings, SLATE)} nu ${readings === 1 ? 'spune' : 'spun'} încă nimic: măsurați ${fewest} sau mai multe, cel mai bine 20.`,
  allEqual: (thickness) =>
    `Toate au ${thickness}: nu e nimic de împărțit. Măsurați mai multe sau montați-le așa cum sunt.`,
  lines: 'Unde împărțim',
  over: (from) => `${from} și peste`,
  between: (from, to) => `${from} până la ${to}`,
  under: (to) => `sub ${to}`,
  share: (isFirst, courses) =>
    `${isFirst ? 'cam ' : ''}${many(courses, { one: 'rând', few: 'rânduri', other: 'de rânduri' })}`,
  slatesOf: (slates) => `cam ${slates} plăci`,
  picture: (said) => `Acoperișul, de la streașină la coamă: ${said}`,
  joints: (sorted, unsorted) => `${sorted} din 100 de rosturi se vor vedea; nesortat, ${unsorted}.`,
  about: (n) => `Cam ${n}`,
  lessThanOne: 'Sub 1',
  short: (missing) => `Mai lipsesc cam ${missing} plăci pentru acoperiș.`,
  rough: (readings) => `După ${many(readings, SLATE)}: o primă idee.`,
  keep: 'Păstrează ca lucrare',
  more: 'Mai măsoară',
  numbers: 'Schimbă numerele',
  restart: 'De la capăt',
  restartSure: (readings) =>
    `Renunțați la ${many(readings, { one: 'măsurătoare', few: 'măsurători', other: 'de măsurători' })}?`,
  jobName: (day) => `Împărțire rapidă, ${day}`,
  pallet: 'Toate',
  slope: 'Acoperiș'
};
