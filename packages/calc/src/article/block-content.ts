import { hasDigit, meaning, phrasing, textOf, type Content } from "./content.js";

const wholeBlocks = /^(table|figure|dl|ol|ul|img|picture|svg|details)$/;

/**
 * Whether the content of a block element stands for it: one table, list, figure or picture, or one short line with a
 * figure in it.
 *
 * @example
 * standsForBlock([{ tag: "table", text: "Front 44.30", holds: true }]); // => true
 * standsForBlock([{ tag: "p", text: "And here the story goes on." }]); // => false
 */
export function standsForBlock(inside: readonly Content[]): boolean {
  const nodes = meaning(inside);
  const [only] = nodes;
  if (!only) return true;
  if (nodes.length === 1 && wholeBlocks.test(only.tag)) return true;
  const text = textOf(inside).trim();
  const isLine = nodes.every(({ tag }) => phrasing.test(tag)) || (nodes.length === 1 && only.tag === "p");
  return isLine && text.length <= 200 && hasDigit(text) && !/^[,.;:!?)\]]/.test(text);
}
