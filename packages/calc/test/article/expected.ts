// What every element of a made article says, by calc's article room alone.
import {
  atFault,
  holderOf,
  holdersOf,
  isUnsaid,
  localeOf,
  readEmbedded,
  sayGauge,
  saySpeeds,
  saySummary,
  sayTeeth,
  sayValue,
  sayWorking,
  speakerOf,
  standsForValue,
  versionOf,
  type Block,
  type Reporter,
  type SaidGauge,
  type Tree,
  type Unsaid,
} from "@meshwright/calc/article";
import { buildFromAttributes } from "@meshwright/calc/document";
import type { Build } from "@meshwright/calc/drivetrain";
import { evaluate } from "@meshwright/calc/evaluate";
import { wordsFor } from "@meshwright/calc/languages/all";
import { figures } from "@meshwright/calc/report";
import { elementsIn, type MadeElement } from "./documents.js";

/** A made article as calc looks at it. */
export function treeOf(root: MadeElement): Tree<MadeElement> {
  const order = new Map([...elementsIn(root)].map((element, n) => [element, n]));
  return {
    parent: ({ parent }) => parent,
    attribute: ({ attributes }, name) => attributes[name],
    isBefore: (one, other) => order.get(one)! < order.get(other)!,
  };
}

/** What an element is to show: its texts, or nothing but what stands inside it. */
export interface Expected {
  readonly n: string;
  readonly name: string;
  readonly locale: string;
  readonly texts: readonly string[] | undefined;
}

const buildOf = (holder: MadeElement): Build | undefined => {
  const [script] = holder.children;
  const { id: _, ...notation } = holder.attributes;
  const reading =
    typeof script === "object"
      ? readEmbedded(script.children[0])
      : buildFromAttributes(notation as Record<string, string>);
  return reading.ok ? reading.build : undefined;
};

const textsOf = ({ tables, notes }: Block): string[] =>
  [
    ...tables.flatMap(({ heads, rows }) => [
      ...heads,
      ...rows.flatMap(({ head, beside, texts }) => [head, beside, ...texts]),
    ]),
    ...notes,
  ].filter((text): text is string => !!text);

function saidBy({ name, attributes }: MadeElement, speaker: Reporter): readonly string[] | Unsaid | undefined {
  const makers: Readonly<Record<string, () => string | Block | SaidGauge | Unsaid | undefined>> = {
    "mw-value": () => sayValue(speaker, attributes),
    "mw-teeth": () => sayTeeth(speaker, attributes),
    "mw-ratio-summary": () => saySummary(speaker, attributes),
    "mw-working": () => sayWorking(speaker, attributes),
    "mw-wheel-speed": () => saySpeeds(speaker, attributes),
    "mw-overdrive-gauge": () => sayGauge(speaker, attributes),
  };
  const said = makers[name]?.();
  if (said === undefined || isUnsaid(said)) return said;
  if (typeof said === "string") return [said];
  if ("gap" in said) return said.opposed ? [said.opposed] : [said.sentence, ...said.notes];
  return textsOf(said);
}

/** What every element of an article says, in the order of the document. */
export function expectedIn(root: MadeElement): readonly Expected[] {
  const tree = treeOf(root);
  const all = [...elementsIn(root)];
  const builds = new Map(all.filter(({ name }) => name === "mw-build").map((holder) => [holder, buildOf(holder)]));
  const holders = holdersOf(tree, builds.keys());
  return all.flatMap((element): Expected[] => {
    const { "data-n": n, build: id, at } = element.attributes;
    if (n === undefined) return [];
    const locale = localeOf(tree, element);
    const holder = holderOf(tree, holders, element, id);
    const article = holder && builds.get(holder);
    // A count is the build's as it stands, and speeds are as well.
    const pinned = /teeth|speed/.test(element.name) ? undefined : at;
    const build = article && !atFault(article, pinned) ? versionOf(article, pinned ?? "article") : undefined;
    const version = (name: string) => {
      const other = article && versionOf(article, name);
      return other && evaluate(other);
    };
    const { figures: words, reports } = wordsFor(locale);
    const speaker = build && speakerOf({ evaluation: evaluate(build), locale, words, reports, figures, version });
    const said = speaker && saidBy(element, speaker);
    const content = String(element.children[0] ?? "");
    const shown = said && !isUnsaid(said) ? said : undefined;
    if (element.name !== "mw-value" && element.name !== "mw-teeth")
      return [{ n, name: element.name, locale, texts: shown }];
    const hides = shown && standsForValue(content ? [{ tag: "", text: content }] : [], shown[0]!);
    const line = `${shown?.[0] ?? ""}${hides ? "" : content}`.replace(/\s+/g, " ").trim();
    return [{ n, name: element.name, locale, texts: line ? [line] : undefined }];
  });
}
