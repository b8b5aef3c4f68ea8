import { sentenceOf, type FindingCause, type FindingWords } from "../stages/index.js";

/**
 * A finding's sentence in the words of a language. Words of closed tables, ids and what an author wrote stay as they are.
 *
 * @example
 * const { findings } = buildFromAttributes({ stages: "", raer: "Ring: 12 to 35" });
 * messageOf(findings[0]!, findingWords); // => "<mw-build> has no attribute raer; nearest: rear."
 */
export const messageOf = ({ code, values }: FindingCause, words: FindingWords): string =>
  sentenceOf({ code, values }, words);
