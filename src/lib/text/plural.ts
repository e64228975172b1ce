/** Forms of a word by plural category of the language (CLDR); `other` must be there. */
export type PluralForms = Partial<Record<Intl.LDMLPluralRule, string>> & { other: string };

type Pluralizer = (n: number, forms: PluralForms) => string;

const known = new Map<string, Pluralizer>();

/**
 * A maker of "n things" in one language: number formatted, right plural form. One for each language,
 * made when it is first asked, since what it rests on is slow to make.
 */
export function pluralizer(locale: string): Pluralizer {
  return (n, forms) => {
    let say = known.get(locale);
    if (!say) {
      say = makePluralizer(locale);
      known.set(locale, say);
    }
    return say(n, forms);
  };
}

function makePluralizer(locale: string): Pluralizer {
  const rules = new Intl.PluralRules(locale);
  const format = new Intl.NumberFormat(locale);
  return (n, forms) => `${format.format(n)} ${forms[rules.select(n)] ?? forms.other}`;
}
