import { applyChanges } from "@meshwright/calc/document";
import { labelAt, stagesOf, type Build } from "@meshwright/calc/drivetrain";
import type { Node } from "prosemirror-model";
import { candidatesOf, figureText, type Candidate } from "./figures.js";

/** A number of the post that equals a figure of the drivetrain. */
export interface Match {
  readonly from: number;
  readonly to: number;
  readonly text: string;
  /** The sentence around it, up to it and after it. */
  readonly before: string;
  readonly after: string;
  /** What it can be, the likeliest first. */
  readonly choices: readonly Candidate[];
  /** What is offered as it stands: nothing for a whole number, which is in a sentence for many reasons. */
  readonly preselected: Candidate | undefined;
  /** Under it a refusal is remembered. */
  readonly key: string;
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");

/** A figure's text as people may have typed it: any space, or none, before a unit. */
const patternOf = (text: string): RegExp =>
  new RegExp(
    `(?<![\\d.,\\p{L}])${escaped(text)
      .replace(/\s+/g, "[\\s\\u00a0]+")
      .replace(/(?<=\d)%/g, "[\\s\\u00a0]*%")}(?![\\d]|[.,]\\d|[\\p{L}])`,
    "gu",
  );

/** Dates, years, prices: numbers that are none of the drivetrain's. */
const passed =
  /\d{4}-\d{2}-\d{2}|\b\d{1,2}[./]\d{1,2}[./]\d{2,4}\b|\b\d{1,2}\.? (?:January|February|March|April|May|June|July|August|September|October|November|December)\b|\b(?:January|February|March|April|May|June|July|August|September|October|November|December) \d{1,2}\b|\b(?:19|20)\d{2}\b|[€$£¥]\s?\d[\d.,]*|\b\d[\d.,]*\s?(?:€|£|¥|\$|EUR|USD|GBP|CHF|JPY|euros?|pounds|dollars)(?![\p{L}])/gu;

/** Numbers are looked for in prose: not in code, and not in what somebody else has said. */
function* proseOf(doc: Node): Generator<{ readonly node: Node; readonly at: number }> {
  const found: { node: Node; at: number }[] = [];
  doc.descendants((node, at) => {
    if (node.type.name === "blockquote" || node.type.name === "code_block") return false;
    if (node.isTextblock) found.push({ node, at });
    return true;
  });
  yield* found;
}

/** The text of a paragraph with one character for each position, so that places in it are places in the post. */
const textOf = (node: Node): string => {
  let text = "";
  node.forEach((child) => {
    const isCode = child.marks.some(({ type }) => type.name === "code");
    text += child.isText && !isCode ? child.text! : "\ufffc".repeat(child.nodeSize);
  });
  return text;
};

/** What stands around a place in its sentence. A point within a number ends none. */
function sentenceAround(text: string, from: number, to: number): readonly [before: string, after: string] {
  const ends = [...text.slice(0, from).matchAll(/[.!?]\s+/g)].map(({ 0: end, index }) => index + end.length);
  const start = Math.max(ends.at(-1) ?? 0, from - 60);
  const end = /[.!?](?=\s|$)/.exec(text.slice(to));
  return [text.slice(start, from), text.slice(to, Math.min(end ? to + end.index + 1 : text.length, to + 60))];
}

/** Every number of a post that equals a figure of the drivetrain, and was not refused before. */
export function matchesIn(doc: Node, build: Build, onlyText: readonly string[] = []): readonly Match[] {
  const byText = new Map<string, Candidate[]>();
  for (const one of candidatesOf(build)) byText.set(one.text, [...(byText.get(one.text) ?? []), one]);
  // The longest first: a range is one figure, and not its two ends.
  const texts = [...byText.keys()].sort((one, other) => other.length - one.length);
  const refused = new Set(onlyText);
  const matches: Match[] = [];
  for (const { node, at } of proseOf(doc)) {
    const text = textOf(node);
    const taken = new Array<boolean>(text.length).fill(false);
    const take = (from: number, to: number): boolean => {
      if (taken.slice(from, to).some(Boolean)) return false;
      taken.fill(true, from, to);
      return true;
    };
    for (const found of text.matchAll(passed)) take(found.index, found.index + found[0].length);
    for (const one of texts)
      for (const found of text.matchAll(patternOf(one))) {
        const [from, to] = [found.index, found.index + found[0].length];
        if (!take(from, to)) continue;
        const [before, after] = sentenceAround(text, from, to);
        const key = `${before.trim()} | ${found[0]}`;
        if (refused.has(key)) continue;
        const choices = byText.get(one)!;
        const isWhole = /^\d+$/.test(one);
        matches.push({
          from: at + 1 + from,
          to: at + 1 + to,
          text: found[0],
          before,
          after,
          choices,
          preselected: isWhole ? undefined : choices[0],
          key,
        });
      }
  }
  return matches.sort((one, other) => one.from - other.from);
}

/** "If the motor pinion becomes 16, this reads: With 16 teeth …": what a choice would do. */
export function wouldRead(build: Build, { before, after }: Match, choice: Candidate): string | undefined {
  const own = choice.tag === "mw-teeth" ? choice.ask.of! : undefined;
  const first = stagesOf(build).find(({ stage }) => stage.kind === "pair")?.stage;
  const address = own ?? (first && `${first.id}.driver`);
  if (!address) return undefined;
  const [id, ...fields] = address.split(".") as [string, ...string[]];
  const stage = stagesOf(build).find((place) => place.stage.id === id)?.stage as unknown as
    Record<string, unknown> | undefined;
  const now = fields.reduce<unknown>((value, field) => (value as Record<string, unknown> | undefined)?.[field], stage);
  if (typeof now !== "number") return undefined;
  const reading = applyChanges(build, { [address]: now + 1 });
  const text = reading.ok && figureText(reading.build, choice);
  if (!text || !reading.ok) return undefined;
  const label = labelAt(build, address);
  const name = label === address ? labelAt(build, id) : label;
  return `If ${name} becomes ${now + 1}, this reads: ${before.trimStart()}${text}${after}`;
}
