import { type Catalogue, LATER, type LaterSection, en } from './en/index.ts';
import { NumberWords } from './numbers.ts';

/** Languages by their own names. All but English await review by a native speaker of the trade. */
export const LOCALES = {
  en: 'English',
  es: 'Español',
  fr: 'Français',
  pl: 'Polski',
  ro: 'Română'
} as const;
export type Locale = keyof typeof LOCALES;
export type { Catalogue, LaterSection };

/** Words of one language, at any depth perhaps in part; what is missing is English. */
type InPart<T> = T extends (...args: never[]) => unknown
  ? T
  : T extends readonly unknown[]
    ? T
    : T extends object
      ? { [K in keyof T]?: InPart<T[K]> }
      : T;
export type Translation = { [K in keyof Catalogue]?: InPart<Catalogue[K]> };

const TRANSLATIONS: Record<Locale, () => Promise<Translation>> = {
  en: async () => ({}),
  es: async () => (await import('./es/index.ts')).es,
  fr: async () => (await import('./fr/index.ts')).fr,
  pl: async () => (await import('./pl/index.ts')).pl,
  ro: async () => (await import('./ro/index.ts')).ro
};

/** Whether a text names one of the languages. */
export function isLocale(text: string): text is Locale {
  return Object.hasOwn(LOCALES, text);
}

/**
 * The words of the app in the language in use. Sections that a language lacks are English. Reading
 * any word in a component makes it follow a change of language.
 */
class Words {
  #locale = $state<Locale>('en');
  /** The English sections fetched so far. */
  #english: Partial<Catalogue> = { ...en };
  #translation: Translation = {};
  /** Complete for the sections that the open screen asked for. */
  #catalogue = $state.raw<Catalogue>(en as Catalogue);
  #numbers = $derived(new NumberWords(regional(this.#locale)));

  get locale(): Locale {
    return this.#locale;
  }

  /**
   * Fetches the sections that a screen needs beside those of the start; a page's `load` waits for
   * it. What was fetched stays.
   */
  async load(...sections: LaterSection[]): Promise<void> {
    const missing = sections.filter((section) => !this.#english[section]);
    const fetched = await Promise.all(missing.map((section) => LATER[section]()));
    for (const [index, section] of missing.entries())
      Object.assign(this.#english, { [section]: fetched[index] });
    if (missing.length > 0) this.#compose();
  }

  /**
   * Changes the language. Resolves to false, and changes nothing, when its words could not be
   * fetched.
   */
  async use(locale: Locale): Promise<boolean> {
    if (locale === this.#locale) return true;
    try {
      this.#translation = await TRANSLATIONS[locale]();
      this.#locale = locale;
      this.#compose();
      return true;
    } catch {
      return false;
    }
  }

  /** Numbers, lengths and dates as the language writes them. */
  get numbers(): NumberWords {
    return this.#numbers;
  }

  /** The catalogue in the language in use: the sections of the start and those fetched. */
  get text(): Catalogue {
    return this.#catalogue;
  }

  /** The translation, with English words where it has none. */
  #compose(): void {
    this.#catalogue = over(this.#english, this.#translation) as Catalogue;
  }
}

/** Words with those of another language in their places, at any depth. */
function over(english: object, translation: object): object {
  const words: Record<string, unknown> = { ...english };
  for (const [name, word] of Object.entries(translation)) {
    const before = words[name];
    words[name] = isGroup(word) && isGroup(before) ? over(before, word) : word;
  }
  return words;
}

function isGroup(word: unknown): word is object {
  return typeof word === 'object' && word !== null && !Array.isArray(word);
}

/** The person's own region of a language, where the browser tells it: how dates are written. */
function regional(locale: Locale): string {
  const wanted = globalThis.navigator?.languages ?? [];
  return wanted.find((tag) => tag === locale || tag.startsWith(`${locale}-`)) ?? locale;
}

export const words = new Words();
