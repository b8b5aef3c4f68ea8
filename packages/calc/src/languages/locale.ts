const canonical = new Map<string, string>();

/**
 * A language tag as `Intl` understands it, "_" taken for "-"; English for what is none.
 *
 * @example
 * [canonicalLocale("de_AT"), canonicalLocale("no language")]; // => ["de-AT", "en"]
 */
export function canonicalLocale(tag: string): string {
  let locale = canonical.get(tag);
  if (!locale) {
    try {
      locale = Intl.getCanonicalLocales(tag.replaceAll("_", "-"))[0]!;
    } catch {
      locale = "en";
    }
    canonical.set(tag, locale);
  }
  return locale;
}

/** The letters of a locale's language. */
export const languageOf = (locale: string): string => /^[a-z]*/.exec(locale.toLowerCase())![0];

/**
 * Whether a locale is English as it is known here: to load the tables of `Intl` takes a fresh page longer than everything
 * else that it does before it shows its figures.
 */
export const isPlainEnglish = (locale: string): boolean => /^en(-(US|GB))?$/.test(locale);

/** Whether a language is written from right to left. */
export const isRightToLeft = (locale: string): boolean => /^(ar|ckb|dv|fa|he|ps|sd|ug|ur|yi)$/.test(languageOf(locale));
