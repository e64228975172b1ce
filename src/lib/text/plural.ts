/** Forms of a word by plural category of the language (CLDR); `other` must be there. */
export type PluralForms = Partial<Record<Intl.LDMLPluralRule, string>> & { other: string };

/** A maker of "n things" in one language: number formatted, right plural form. */
export function pluralizer(locale: string): (n: number, forms: PluralForms) => string {
  const rules = new Intl.PluralRules(locale);
  const format = new Intl.NumberFormat(locale);
  return (n, forms) => `${format.format(n)} ${forms[rules.select(n)] ?? forms.other}`;
}
