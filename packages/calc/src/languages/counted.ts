import { isPlainEnglish } from "./locale.js";
import { fill } from "./sentences.js";
import type { Forms } from "./tables.js";

// Making these costs a hundred times as much as asking them.
const counters = new Map<string, readonly [Intl.PluralRules, Intl.NumberFormat]>();

/** A sentence in the form that a count asks for. */
export function fillCount(forms: Forms, count: number, locale: string): string {
  if (isPlainEnglish(locale) && count < 1000) return fill((count === 1 && forms.one) || forms.other!, count);
  let counter = counters.get(locale);
  if (!counter) counters.set(locale, (counter = [new Intl.PluralRules(locale), new Intl.NumberFormat(locale)]));
  const [rules, numbers] = counter;
  return fill(forms[rules.select(count)] ?? forms.other!, numbers.format(count));
}
