import { findingWords, messageOf, type FindingWords } from "@meshwright/calc/languages";
import type { PageFinding } from "../element/index.js";
import { tableFor } from "../words/index.js";
import { load } from "./load.js";

const longest = 40;
const short = (text: string): string => (text.length > longest ? `${text.slice(0, longest - 1)}…` : text);

/** Where something is wrong, as its author wrote it: `<mw-value figure="laed">`, `front-wheel`, `/outputs/0/id`. */
export function spotOf({ element, at }: PageFinding): string {
  const name = at.slice(1);
  if (!element) return /^\/[^/]+$/.test(at) ? name : at;
  const value = name && (element.getAttribute(name) ?? (element as unknown as Record<string, unknown>)[name]);
  return `<${element.localName}${name ? ` ${name}="${short(String(value ?? ""))}"` : ""}>`;
}

/**
 * What is wrong, in a sentence of the language that it stands in: in English until its words have come, which are asked for
 * only where a sign says something.
 */
export const sentenceFor = (finding: PageFinding, locale: string): string =>
  messageOf(finding, tableFor<FindingWords>("findings", findingWords, locale, load));
