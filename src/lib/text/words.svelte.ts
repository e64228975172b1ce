import { en } from './en/index.ts';
import { NumberWords } from './numbers.ts';

export const LOCALES = { en: 'English' } as const;
export type Locale = keyof typeof LOCALES;
export type Catalogue = typeof en;

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
