import { en } from './en/index.ts';
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
export type Catalogue = typeof en;

/** The sections that each language has; what is missing is English. */
const SECTIONS: Record<Locale, () => Promise<Partial<Catalogue>>> = {
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
  #catalogue = $state.raw<Catalogue>(en);
  #numbers = $derived(new NumberWords(this.#locale));

  get locale(): Locale {
    return this.#locale;
  }

  /**
   * Changes the language. Resolves to false, and changes nothing, when its words could not be
   * fetched.
   */
  async use(locale: Locale): Promise<boolean> {
    if (locale === this.#locale) return true;
    try {
      const sections = await SECTIONS[locale]();
      this.#catalogue = { ...en, ...sections };
      this.#locale = locale;
      return true;
    } catch {
      return false;
    }
  }

  /** Numbers, lengths and dates as the language writes them. */
  get numbers(): NumberWords {
    return this.#numbers;
  }

  /** All sections of the catalogue in the language in use. */
  get text(): Catalogue {
    return this.#catalogue;
  }
}

export const words = new Words();
