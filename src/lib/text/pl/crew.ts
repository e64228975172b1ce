import { pluralizer } from '../plural.ts';
import type { Translation } from '../words.svelte.ts';

const many = pluralizer('pl');
const NOT_SHARED = {
  one: 'wpis niewysłany',
  few: 'wpisy niewysłane',
  many: 'wpisów niewysłanych',
  other: 'wpisu niewysłanego'
};

export const crew: Translation['crew'] = {
  title: 'Ekipa',
  intro: 'Jedna budowa na wszystkich urządzeniach ekipy. Każde działa dalej bez zasięgu.',
  strip: (notShared) => (notShared === 0 ? 'Ekipa ma wszystko' : many(notShared, NOT_SHARED)),
  removedStrip: 'Niewysyłane: poza ekipą',
  state: {
    shared: 'Ekipa ma wszystkie twoje wpisy.',
    waiting: (n) => `${many(n, NOT_SHARED)}. Pójdą same, gdy będzie zasięg.`,
    first: 'Szukanie serwera…',
    'no-answer': 'Nie ma zasięgu albo serwer nie działa. Pracuj dalej: nic nie ginie.',
    removed:
      'To urządzenie nie jest już w ekipie. Budowa zostaje tutaj, ale nic już nie wychodzi. Poproś o nowe zaproszenie.',
    'hub-full': 'Na serwerze nie ma miejsca. Wpisy czekają tutaj; powiedz temu, kto go prowadzi.',
    'device-full': 'Na urządzeniu nie ma miejsca. Zwolnij trochę i otwórz budowę ponownie.',
    wait: 'Serwer jest zajęty. Następna próba za pół minuty.',
    refused: 'Serwer nie przyjął wpisów. Czekają tutaj; wczytaj najnowszą wersję aplikacji.'
  },
  lastShared: (when) => `Ostatnia wymiana: ${when}.`,
  alone: 'Ta budowa jest tylko na tym urządzeniu.',
  name: 'Twoje imię, jak widzi je ekipa',
  needsName: 'Wpisz imię, żeby inni wiedzieli, kto to.',
  start: 'Załóż ekipę dla tej budowy',
  people: 'Kto jest na tej budowie',
  you: 'ty',
  keeper: 'może zapraszać',
  nameless: 'bez imienia',
  heard: (when) => `ostatni kontakt: ${when}`,
  neverHeard: 'jeszcze bez kontaktu',
  remove: 'Usuń',
  removeWhom: (name) => `Usuń: ${name}`,
  removeSure: (name) =>
    `Usunąć z ekipy: ${name}? Dotychczasowe wpisy zostają. Urządzenie zachowa swoją kopię.`,
  invite: 'Zaproś kogoś',
  inviteKeeper: 'Zaproś kogoś, kto też może zapraszać',
  inviteHow:
    'Dla jednej osoby, ważne siedem dni. Daj do zeskanowania albo wyślij link. Kto go ma, może czytać budowę.',
  qrAlt: 'Zaproszenie jako kod QR',
  copy: 'Kopiuj link',
  copied: 'Skopiowano.',
  notCopied: 'Nie skopiowano: zaznacz link i skopiuj.',
  send: 'Wyślij link',
  lock: 'Zmień klucz',
  lockHow:
    'Zakłada nowy klucz budowy. Użyj, gdy zginęło urządzenie. Wszystkich innych trzeba zaprosić od nowa. To, co już mają, zostaje u nich.',
  lockSure: 'Zmienić klucz? Wszystkich innych trzeba zaprosić od nowa.',
  leave: 'Opuść ekipę',
  leaveHow: 'Budowa zostaje na tym urządzeniu. Nic już nie wychodzi ani nie przychodzi.',
  leaveSure: 'Opuścić ekipę? Budowa zostaje na tym urządzeniu.',
  sees: 'Co widzi serwer',
  seesWhat:
    'Serwer trzyma wpisy zapieczętowane i nie może ich czytać. Widzi, jak są duże, kiedy przychodzą, z jakiego adresu i ile jest urządzeń. Jego kopie też są zapieczętowane.',
  copiedStrip: 'Nieudostępnione: ten telefon skopiowano. Zobacz Ekipa',
  keepBoth: 'Zachowaj oba',
  keepBothHow: 'Zachowuje wpisy obu, każdy raz.',
  mate: {
    title: 'Wyślij koledze',
    how: 'Bez serwera i zasięgu: jako plik albo kody, które jego aparat czyta z tego ekranu.',
    send: 'Wyślij plik',
    save: 'Zapisz plik',
    show: 'Pokaż jako kody',
    tooMuch: 'Za dużo na kody. Wyślij plik.',
    nothing: 'Ma już wszystko.',
    stop: 'Stop',
    next: 'Następny kod',
    have: 'Co mam'
  },
  scan: {
    start: 'Skanuj kod',
    looking: 'Trzymaj aparat nad kodem.',
    stop: 'Przestań skanować'
  },
  warnings: {
    held: (name) =>
      `Wpisy (${name}) nie pasują i czekają. Budowa jest bez zmian; porównajcie odciski.`,
    copied: 'Ten telefon został skopiowany: serwer ma pod jego numerem inne wpisy.',
    'put-back': 'Serwer wrócił do starej kopii. Aplikacja wysyła ponownie to, co stracił.',
    withheld: (name) =>
      `Serwer oddaje mniej wpisów (${name}), niż widzieli inni. Zapytaj prowadzącego; porównajcie odciski.`
  },
  faults: {
    'no-answer': 'Serwer nie odpowiada. Sprawdź zasięg i adres, potem spróbuj ponownie.',
    'not-let-in': 'Serwer nie zna tego klucza. Poproś prowadzącego o nowy link.',
    removed: 'To urządzenie nie jest już w ekipie. Poproś o nowe zaproszenie.',
    'keeper-only': 'Może to zrobić tylko ten, kto może zapraszać.',
    'last-keeper': 'To ostatnia osoba, która może zapraszać. Najpierw zaproś inną.',
    'too-many': 'Za dużo prób w ciągu minuty. Poczekaj minutę i spróbuj ponownie.',
    full: 'Na serwerze nie ma miejsca. Powiedz prowadzącemu.',
    used: 'To zaproszenie już wykorzystano. Każde jest dla jednej osoby: poproś o inne.',
    expired: 'To zaproszenie ma ponad siedem dni. Poproś o inne.',
    revoked: 'To zaproszenie cofnięto. Poproś o inne.',
    'unknown-invitation': 'Serwer nie zna tego zaproszenia. Poproś o inne.',
    'other-version': 'Serwer i aplikacja nie pasują do siebie. Wczytaj najnowszą wersję aplikacji.',
    failed: 'Serwer nie dał rady. Spróbuj ponownie; jeśli to nie minie, powiedz prowadzącemu.',
    cut: 'Brakuje części linku. Skopiuj go w całości albo zeskanuj.',
    'too-new': 'Link jest z nowszej wersji. Najpierw wczytaj najnowszą wersję aplikacji.',
    'no-job': 'Nikt z ekipy nie dodał jeszcze budowy. Spróbuj za minutę.',
    'nothing-yet': 'Masz dostęp, ale budowy jeszcze nie ma. Spróbuj za minutę.'
  },
  join: {
    title: 'Dołącz do budowy',
    found: 'Masz zaproszenie na budowę. Trafi na to urządzenie i pozostanie wspólna.',
    join: 'Dołącz',
    working: 'Pobieranie budowy…',
    keyKept: 'To urządzenie może teraz zakładać ekipy. Otwórz budowę, potem Ekipa.',
    toJobs: 'Do budów'
  }
};
