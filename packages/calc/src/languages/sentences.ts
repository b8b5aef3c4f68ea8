/**
 * Puts values into a sentence.
 *
 * @example
 * fill("{0} driving {1}", 15, 62); // => "15 driving 62"
 */
export const fill = (sentence: string, ...values: readonly (string | number)[]): string =>
  sentence.replace(/\{(\d)\}/g, (_, n) => String(values[n]));
