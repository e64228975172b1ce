import { pluralizer } from '../plural.ts';
import type { Translation } from '../words.svelte.ts';

const many = pluralizer('ro');
const NOT_SHARED = {
  one: 'înregistrare netrimisă',
  few: 'înregistrări netrimise',
  other: 'de înregistrări netrimise'
};

export const crew: Translation['crew'] = {
  title: 'Echipă',
  intro: 'O lucrare pe toate aparatele echipei. Fiecare merge mai departe fără semnal.',
  strip: (notShared) => (notShared === 0 ? 'Echipa are tot' : many(notShared, NOT_SHARED)),
  removedStrip: 'Netrimis: scos din echipă',
  state: {
    shared: 'Echipa are toate înregistrările dumneavoastră.',
    waiting: (n) => `${many(n, NOT_SHARED)}. Pleacă singure când este semnal.`,
    first: 'Se caută serverul…',
    'no-answer': 'Nu este semnal sau serverul nu merge. Lucrați mai departe: nu se pierde nimic.',
    removed:
      'Acest aparat nu mai este în echipă. Lucrarea rămâne aici, dar nu mai pleacă nimic. Cereți o invitație nouă.',
    'hub-full':
      'Serverul nu mai are loc. Înregistrările așteaptă aici; spuneți celui care îl ține.',
    'device-full': 'Aparatul nu mai are loc. Eliberați puțin, apoi redeschideți lucrarea.',
    wait: 'Serverul este ocupat. Se încearcă din nou peste o jumătate de minut.',
    refused:
      'Serverul nu a primit înregistrările. Așteaptă aici; încărcați ultima versiune a aplicației.'
  },
  lastShared: (when) => `Ultimul schimb: ${when}.`,
  alone: 'Lucrarea este numai pe acest aparat.',
  name: 'Numele dumneavoastră, cum îl vede echipa',
  needsName: 'Scrieți un nume, ca ceilalți să știe cine este.',
  start: 'Formează o echipă pentru această lucrare',
  people: 'Cine este pe această lucrare',
  you: 'dumneavoastră',
  keeper: 'poate invita',
  nameless: 'fără nume',
  heard: (when) => `ultima veste: ${when}`,
  neverHeard: 'încă fără vești',
  remove: 'Scoate',
  removeWhom: (name) => `Scoate: ${name}`,
  removeSure: (name) =>
    `Scoateți din echipă: ${name}? Ce a notat rămâne. Aparatul lui își păstrează copia.`,
  invite: 'Invită pe cineva',
  inviteKeeper: 'Invită pe cineva care poate și el invita',
  inviteHow:
    'Bună pentru o persoană și șapte zile. Lăsați-l să o scaneze sau trimiteți linkul. Cine îl are poate citi lucrarea.',
  qrAlt: 'Invitația în cod QR',
  copy: 'Copiază linkul',
  copied: 'Copiat.',
  notCopied: 'Nu s-a copiat: marcați linkul și copiați-l.',
  send: 'Trimite linkul',
  lock: 'Schimbă cheia',
  lockHow:
    'Ia o cheie nouă pentru lucrare. De folosit când s-a pierdut un aparat. Toți ceilalți trebuie invitați din nou. Ce s-a trimis deja rămâne la ei.',
  lockSure: 'Schimbați cheia? Toți ceilalți trebuie invitați din nou.',
  leave: 'Ieși din echipă',
  leaveHow: 'Lucrarea rămâne pe acest aparat. Nu mai pleacă și nu mai vine nimic.',
  leaveSure: 'Ieșiți din echipă? Lucrarea rămâne pe acest aparat.',
  sees: 'Ce vede serverul',
  seesWhat:
    'Serverul ține înregistrările sigilate și nu le poate citi. Vede cât sunt de mari, când vin, de la ce adresă și câte aparate sunt. Și copiile lui sunt sigilate.',
  copiedStrip: 'Nepartajat: acest telefon a fost copiat. Vezi Echipa',
  keepBoth: 'Păstrează ambele',
  keepBothHow: 'Păstrează înregistrările ambelor, fiecare o dată.',
  mate: {
    title: 'Trimite unui coleg',
    how: 'Fără server sau semnal: ca fișier, sau coduri pe care camera lui le citește de pe acest ecran.',
    send: 'Trimite fișierul',
    save: 'Salvează fișierul',
    show: 'Arată ca coduri',
    tooMuch: 'Prea mult pentru coduri. Trimite fișierul.',
    nothing: 'Are deja tot.',
    stop: 'Oprește',
    next: 'Codul următor',
    have: 'Ce am'
  },
  scan: {
    start: 'Scanează un cod',
    looking: 'Țineți camera deasupra codului.',
    stop: 'Oprește scanarea'
  },
  warnings: {
    held: (name) =>
      `Înregistrări (${name}) nu se potrivesc și așteaptă. Lucrarea este neschimbată; comparați amprentele.`,
    copied: 'Acest telefon a fost copiat: serverul are alte înregistrări sub numărul lui.',
    'put-back': 'Serverul a revenit la o copie veche. Aplicația trimite din nou ce a pierdut.',
    withheld: (name) =>
      `Serverul dă mai puțin (${name}) decât au văzut alții. Întrebați pe cine îl ține; comparați amprentele.`
  },
  faults: {
    'no-answer': 'Serverul nu răspunde. Verificați semnalul și adresa, apoi încercați din nou.',
    'not-let-in': 'Serverul nu cunoaște această cheie. Cereți un link nou celui care îl ține.',
    removed: 'Acest aparat nu mai este în echipă. Cereți o invitație nouă.',
    'keeper-only': 'Asta poate face numai cine poate invita.',
    'last-keeper': 'Este ultimul care poate invita. Invitați întâi pe altcineva.',
    'too-many': 'Prea multe încercări într-un minut. Așteptați un minut, apoi încercați din nou.',
    full: 'Serverul nu mai are loc. Spuneți celui care îl ține.',
    used: 'Invitația a fost folosită deja. Fiecare este pentru o persoană: cereți alta.',
    expired: 'Invitația are peste șapte zile. Cereți alta.',
    revoked: 'Invitația a fost retrasă. Cereți alta.',
    'unknown-invitation': 'Serverul nu cunoaște această invitație. Cereți alta.',
    'other-version':
      'Serverul și aplicația nu se potrivesc. Încărcați ultima versiune a aplicației.',
    failed: 'Serverul nu a reușit. Încercați din nou; dacă rămâne așa, spuneți celui care îl ține.',
    cut: 'Lipsește o parte din link. Copiați-l întreg sau scanați-l.',
    'too-new': 'Linkul este dintr-o versiune mai nouă. Încărcați întâi ultima versiune.',
    'no-job': 'Nimeni din echipă nu a pus încă lucrarea. Încercați peste un minut.',
    'nothing-yet': 'Ați fost primit, dar lucrarea nu a ajuns încă. Încercați peste un minut.'
  },
  join: {
    title: 'Intră într-o lucrare',
    found: 'Sunteți invitat la o lucrare. Vine pe acest aparat și rămâne comună.',
    join: 'Intră',
    working: 'Se aduce lucrarea…',
    keyKept: 'Acest aparat poate acum forma echipe. Deschideți o lucrare, apoi Echipă.',
    toJobs: 'La lucrări'
  }
};
