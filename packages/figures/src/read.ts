import { withTags } from "@meshwright/calc/article";
import type { Article } from "./article.js";
import { blank, frontMatterOf } from "./front-matter.js";
import { readHtml } from "./html.js";
import { readMarkdown } from "./markdown.js";

/** What a text is written in. */
export type Format = "html" | "markdown" | "mdx";

/** Reads an article; one without a tag of ours in no time. In Markdown elements may be shortcodes, each read as the tag that it becomes. */
export function readArticle(written: string, format: Format): Article {
  const source = format === "markdown" && written.includes("{{") ? withTags(written) : written;
  if (!/<mw-/i.test(source)) return readHtml("", { source });
  // Front matter and the mark of the encoding are no markup; everything else keeps its place.
  const mark = source.startsWith("\uFEFF") ? 1 : 0;
  const front = mark + frontMatterOf(source.slice(mark));
  const text = "\n".slice(0, mark) + blank(source.slice(mark, front)) + source.slice(front);
  return format === "html" ? readHtml(text, { source }) : readMarkdown(text, source, format);
}
