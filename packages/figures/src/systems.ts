import { systems, type SystemName } from "@meshwright/calc/article";
import { elementsIn, type Element } from "./article.js";
import type { Warning } from "./check.js";
import { lineStartsOf, placeAt } from "./line.js";
import { readArticle, type Format } from "./read.js";

export type { SystemName };

/** The systems that the notebook hands posts out for, by the names that `--for` takes. */
export const systemNames = Object.keys(systems) as readonly SystemName[];

/** What a system would not take as it is written, each sentence at the first element that it is true of. */
export function notTakenBy(system: SystemName, source: string, format: Format): readonly Warning[] {
  const { name, writing } = systems[system];
  const sentence = ({ start }: Element): string | undefined => {
    const isShortcode = source[start] === "{";
    if (writing === "text")
      return `${name} takes no elements: hand out the post as text, every figure as it reads today.`;
    if (isShortcode && writing !== "shortcodes") return `${name} has no shortcodes: elements stand there as tags.`;
    if (!isShortcode && writing === "shortcodes" && format !== "html")
      return `${name} takes tags out of Markdown unless its settings let them through: elements stand there as shortcodes.`;
    return undefined;
  };
  const lines = lineStartsOf(source);
  const told = new Map<string, Warning>();
  for (const element of elementsIn(readArticle(source, format))) {
    if (!element.tag.startsWith("mw-")) continue;
    const message = sentence(element);
    if (message && !told.has(message))
      told.set(message, { ...placeAt(element.start, lines), element: `<${element.tag}>`, message });
  }
  return [...told.values()];
}
