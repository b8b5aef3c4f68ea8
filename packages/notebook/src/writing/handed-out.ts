import { withShortcodes, type Marking } from "@meshwright/calc/article";
import type { Build } from "@meshwright/calc/drivetrain";
import type { Node } from "prosemirror-model";
import { postToHtml, postToText } from "./html.js";
import { postToMarkdown } from "./markdown.js";

/** A post as it is handed to a system. */
export function handedOut(doc: Node, build: Build | undefined, writing: Marking): string {
  if (writing === "text") return postToText(doc, build);
  if (writing === "html") return postToHtml(doc, build);
  const markdown = postToMarkdown(doc, build);
  return writing === "shortcodes" ? withShortcodes(markdown) : markdown;
}
