import { fill, isRightToLeft, type FigureWords } from "../languages/index.js";
import { displays, inners, type Stage } from "../stages/index.js";
import type { BareWriter } from "./bare-writer.js";

/** How gears that drive each other are written: in a sentence, in tables and pictures, or to be read aloud. */
export type DriveForm = "sentence" | "arrow" | "heard";

/** The arrow that means drives, in the direction of reading. */
export const arrowFor = (locale: string): string => (isRightToLeft(locale) ? "←" : "→");

/**
 * Counts that drive one another, in their order.
 *
 * @example
 * driveText(["18", "31", "45"], "arrow", new Writer()); // => "18 → 31 → 45"
 * driveText(["15", "62"], "sentence", new Writer()); // => "15 driving 62"
 */
export function driveText(counts: readonly string[], form: DriveForm, { words, locale }: BareWriter): string {
  if (form === "arrow" || counts.length < 2) return counts.join(` ${arrowFor(locale)} `);
  const sentence = form === "heard" ? words.drives : words.driving;
  // Where the verb stands between, a row reads on; where it ends the sentence, each mesh is told by itself.
  if (/^\{0\}.*\{1\}$/.test(sentence)) return counts.reduce((text, count) => fill(sentence, text, count));
  const meshes = counts.slice(1).map((count, n) => fill(sentence, counts[n]!, count));
  return meshes.reduce((text, mesh) => fill(words.aside, text, mesh));
}

const joint = (words: FigureWords, word: keyof FigureWords["joints"]): string => words.joints[word];

/**
 * What is shown of a stage: its counts in the order of drive, with the words of its kind. A box with a lever says how it
 * stands.
 *
 * @param at the position that stands, where it is not the selected one
 */
export function stageText(stage: Stage, form: DriveForm, writer: BareWriter, at?: string): string {
  const { words } = writer;
  const inner = inners[stage.kind];
  if (inner) {
    const stands = inner.at(stage, at);
    if (typeof stands === "string") return words[stands];
    const { id, label } = inner.positions(stage).find(({ stages }) => stages === stands)!;
    const inside = (stands as readonly Stage[]).map((one) => stageText(one, form, writer));
    return inside.reduce((text, one) => fill(words.aside, text, one), label ?? id);
  }
  const parts: string[] = [];
  let chain: string[] = [];
  let driven = false;
  const flush = (): void => {
    if (chain.length) parts.push(driveText(chain, form, writer));
    chain = [];
  };
  for (const piece of displays[stage.kind](stage)) {
    if ("value" in piece) {
      if (!driven) flush();
      chain.push(writer.given(piece.value));
      driven = false;
    } else if (piece.word === "drives") driven = true;
    else {
      flush();
      parts.push(joint(words, piece.word));
    }
  }
  flush();
  return parts.join(" ");
}
