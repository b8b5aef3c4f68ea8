import { messageOf } from "@meshwright/calc/languages";
import { wordsFor } from "@meshwright/calc/languages/all";
import { missingElement } from "@meshwright/calc/document";
import type { Finding } from "@meshwright/calc/stages";
import { elementsIn, enclosing, textOf, type Article, type Element, type Text } from "./article.js";
import { faultsOf } from "./block.js";
import { Builds, isKnown, saysFigures, type Expected, type Load, type Why } from "./expected.js";
import { hasExpression, mendInline, saysAnyOf, unclosed } from "./inline.js";
import { lineStartsOf, placeAt } from "./line.js";
import { withoutCrossings, type Edit } from "./mending.js";
import { readArticle, type Format } from "./read.js";

/** One place where an article does not say what its build comes to, or of which it cannot be told. Lines and columns count from 1. */
export interface Difference {
  /** What stands there is not what it should be, or nobody knows what it should be. */
  readonly kind: "stale" | "untold";
  readonly line: number;
  readonly column: number;
  readonly element: string;
  /** What stands there. */
  readonly found: string;
  /** What should; none where that is not known. */
  readonly expected: string | undefined;
  readonly message: string;
  /** How it is mended. */
  readonly edit: Edit | undefined;
  /** Why it is left, where it is stale and not mended. */
  readonly reason: string | undefined;
}

/** Something odd about an element, such as an attribute that nobody reads. Lines and columns count from 1. */
export type Warning = Pick<Difference, "line" | "column" | "element" | "message">;

/** What a check of a text came to. */
export interface Checked {
  readonly differences: readonly Difference[];
  /** How many elements were compared. */
  readonly compared: number;
  /** What is odd, and keeps no figure from being told. */
  readonly warnings: readonly Warning[];
  /** What says figures and was not looked at: how many of each. */
  readonly notChecked: Readonly<Record<string, number>>;
}

/** How a text is read. */
export interface CheckOptions {
  /** What the text is written in; HTML where not said. */
  readonly format?: Format | undefined;
  /** Reads what a build's `src` names. */
  readonly load?: Load | undefined;
}

const label = ({ tag, attributes }: Element): string => {
  const shown = ["figure", "of", "at", "build"].flatMap((name) => attributes[name] ?? []);
  return `<${tag}>${shown.length ? ` ${shown.join(" ")}` : ""}`;
};

/** What was found, in the words of the article's language; of a build, each with its place in it. */
function sentencesFor(findings: readonly Finding[], { tag }: Element, locale: string): string {
  const { findings: words } = wordsFor(locale);
  const sentences = findings.map((one) => {
    const sentence = messageOf(one, words);
    return tag === "mw-build" && one.at ? `${one.at}: ${sentence}` : sentence;
  });
  return sentences.join(" ");
}

type About = Pick<Difference, "kind" | "found" | "expected" | "message"> & { readonly edit?: Edit | string };

const short = (text: string): string => (text.length > 80 ? `${text.slice(0, 79)}…` : text).replace(/\s+/g, " ");

function staleMessage(found: string, expected: string | undefined): string {
  if (expected === undefined) return `has “${short(found)}”, which is none of its figures`;
  return found ? `says “${short(found)}”, should say “${expected}”` : `says nothing, should say “${expected}”`;
}

/** Compares an article that was read. */
export function checkArticle(article: Article, load: Load): Checked {
  const builds = new Builds(article, load);
  const lines = lineStartsOf(article.source);
  const differences: Difference[] = [];
  const notChecked: Record<string, number> = {};
  let compared = 0;
  const leave = (what: string, times = 1) => {
    if (times) notChecked[what] = (notChecked[what] ?? 0) + times;
  };
  const tell = (element: Element, { edit, ...about }: About, at: Element | Text = element) =>
    differences.push({
      ...placeAt(at.kind === "text" && at.range ? at.range[0] : at.start, lines),
      element: label(element),
      ...about,
      edit: typeof edit === "object" ? edit : undefined,
      reason: typeof edit === "string" ? edit : undefined,
    });
  const untold = (element: Element, why: Why) =>
    tell(element, {
      ...{ kind: "untold", found: "", expected: undefined },
      message: typeof why === "string" ? why : sentencesFor(why, element, builds.localeOf(element)),
    });
  const warnings: Warning[] = [];

  const elements = [...elementsIn(article)];
  const expected = new Map<Element, Expected>();
  for (const element of elements)
    if (isKnown(element.tag) && element.tag !== "mw-build") expected.set(element, builds.expected(element));
  const isText = (element: Element) => expected.get(element)?.kind === "text";
  const inBlock = (element: Element, edit: Edit | string): Edit | string => {
    if (!element.inside || element.selfClosed) return unclosed("its element", element);
    return enclosing(element, isText) ? "it stands in another figure" : edit;
  };

  for (const { element, build, found } of builds.all) {
    // A version of a build that cannot be made keeps no figure of the others from being told.
    const wrong = build && typeof found !== "string" ? found.filter(({ severity }) => severity === "error") : found;
    if (wrong.length) untold(element, wrong);
  }
  for (const element of elements) {
    if (/^mw-/i.test(element.tag) && !isKnown(element.tag)) {
      untold(element, [missingElement(element.tag)!]);
    }
    const odd = builds.oddAbout(element);
    const message = sentencesFor(odd, element, builds.localeOf(element));
    if (message) warnings.push({ ...placeAt(element.start, lines), element: label(element), message });
    const should = expected.get(element);
    if (should?.kind === "unchecked") leave(element.tag);
    else if (should?.kind === "untold") untold(element, should.why);
    else if (should?.kind === "text") {
      const isRight = saysAnyOf(element, should.texts);
      // What a program adds to it is not known here.
      if (isRight && hasExpression(element, article)) {
        leave("figure with an expression in it");
        continue;
      }
      compared++;
      if (isRight) continue;
      const [text] = should.texts;
      const found = textOf(element);
      const edit = mendInline(element, should, article, isText);
      tell(element, { kind: "stale", found, expected: text, message: staleMessage(found, text), edit });
    } else if (should?.kind === "figures") {
      compared++;
      const { faults, unplaced, headed } = faultsOf(element, should, article, saysFigures);
      leave("whole number without a place", unplaced);
      leave("number in a head", headed);
      for (const { at, found, expected: text, edit } of faults) {
        const whole = inBlock(element, edit);
        tell(element, { kind: "stale", found, expected: text, message: staleMessage(found, text), edit: whole }, at);
      }
    }
  }
  leave("tag in an expression", article.expressions);
  return { differences: withoutCrossings(differences), warnings, compared, notChecked };
}

/**
 * Compares what an article says without scripts with what its builds come to.
 *
 * @param source the text of an HTML page or fragment, or of Markdown or MDX
 * @throws where the text cannot be read as what it is said to be
 */
export const checkFigures = (source: string, { format = "html", load = () => undefined }: CheckOptions = {}): Checked =>
  checkArticle(readArticle(source, format), load);
