/**
 * How locales write the time of day, as the CLDR of Unicode has it: every screen of a job says one,
 * and a slow phone takes 100 ms to make its first formatter of dates.
 */
export const CLOCKS: Readonly<Record<string, 'HH:mm' | 'H:mm'>> = {
  'en-GB': 'HH:mm',
  ...{ es: 'H:mm', 'es-ES': 'H:mm' },
  ...{ fr: 'HH:mm', 'fr-FR': 'HH:mm' },
  ...{ pl: 'HH:mm', 'pl-PL': 'HH:mm' },
  ...{ ro: 'HH:mm', 'ro-RO': 'HH:mm' }
};

/** Numbers as a locale writes them. One per locale; formatters are slow to make. */
export class NumberWords {
  readonly #locale: string;
  readonly #formats = new Map<number, Intl.NumberFormat>();
  #clock: Intl.DateTimeFormat | undefined;

  constructor(locale: string) {
    this.#locale = locale;
  }

  /** A number with so many decimals, grouped as the locale does; what rounds to nothing has no sign. */
  decimal(value: number, decimals = 0): string {
    let format = this.#formats.get(decimals);
    if (!format) {
      const digits = {
        minimumFractionDigits: decimals,
        maximumFractionDigits: decimals,
        signDisplay: 'negative'
      } as const;
      format = new Intl.NumberFormat(this.#locale, digits);
      this.#formats.set(decimals, format);
    }
    return format.format(value);
  }

  whole(value: number): string {
    return this.decimal(value, 0);
  }

  /** A length with its unit: 6.4 mm. */
  mm(lengthMm: number, decimals = 1): string {
    return `${this.decimal(lengthMm, decimals)} mm`;
  }

  /** A share of 1 as per cent: 0.125 → 12.5 %. */
  percent(share: number, decimals = 0): string {
    return `${this.decimal(share * 100, decimals)} %`;
  }

  /** A moment as day and time of day. */
  moment(at: string): string {
    const style = { dateStyle: 'medium', timeStyle: 'short' } as const;
    return new Date(at).toLocaleString(this.#locale, style);
  }

  /** The time of day of a moment. */
  time(at: string): string {
    const moment = new Date(at);
    const pattern = CLOCKS[this.#locale];
    if (!pattern) {
      this.#clock ??= new Intl.DateTimeFormat(this.#locale, { timeStyle: 'short' });
      return this.#clock.format(moment);
    }
    const hours = `${moment.getHours()}`.padStart(pattern === 'HH:mm' ? 2 : 1, '0');
    return `${hours}:${`${moment.getMinutes()}`.padStart(2, '0')}`;
  }

  /** A moment not long ago: the time of day if it was today, else with the day. */
  lately(at: string, now = new Date()): string {
    const isToday = new Date(at).toDateString() === now.toDateString();
    return isToday ? this.time(at) : this.moment(at);
  }

  day(at: string): string {
    return new Date(at).toLocaleDateString(this.#locale, { dateStyle: 'medium' });
  }
}
