import { elementsIn, type Article } from "./article.js";
import { checkArticle, checkFigures, type Checked, type CheckOptions, type Difference } from "./check.js";
import { readArticle } from "./read.js";

/** An article with its stale figures mended. Its differences are those of the source, each with what became of it. */
export interface Mended extends Checked {
  /** The text, mended or as it was. */
  readonly text: string;
  /** How many figures were stale: those that are mended, and those that are left. */
  readonly stale: number;
  readonly mended: number;
  readonly left: number;
}

/** The encoding that a page says it has, where that is another than it can have. */
function otherEncoding(article: Article): string | undefined {
  for (const { tag, attributes } of elementsIn(article)) {
    if (tag !== "meta") continue;
    const said = attributes.charset ?? /charset\s*=\s*["']?([\w-]+)/i.exec(attributes.content ?? "")?.[1];
    if (said && !/^(utf-?8|us-ascii|ascii)$/i.test(said.trim())) return said.trim();
  }
  return undefined;
}

/** What stays of a difference that is left. */
const essence = ({ kind, element, expected, message, reason }: Difference): string =>
  JSON.stringify([kind, element, expected, reason, kind === "untold" && message]);

/** Whether a mended text says just what is left, read again. */
function isClean(text: string, { compared, notChecked, differences }: Checked, options: CheckOptions): boolean {
  const again = checkFigures(text, options);
  const left = differences.filter(({ edit }) => !edit);
  return (
    again.compared === compared &&
    JSON.stringify(again.notChecked) === JSON.stringify(notChecked) &&
    again.differences.map(essence).join("\n") === left.map(essence).join("\n")
  );
}

/**
 * The source with every stale figure mended that can be shown to be whole: every other character as it was, and read again,
 * nothing but those figures otherwise. Where that does not come out, the text is the source, and everything is left.
 */
export function mendFigures(source: string, { format = "html", load = () => undefined }: CheckOptions = {}): Mended {
  const article = readArticle(source, format);
  const checked = checkArticle(article, load);
  const { differences } = checked;
  const stale = differences.filter(({ kind }) => kind === "stale").length;
  const unmended = (reason: string): Mended => {
    const left = differences.map((one) => (one.edit ? { ...one, edit: undefined, reason } : one));
    return { ...checked, differences: left, text: source, stale, mended: 0, left: stale };
  };
  const edits = differences.flatMap(({ edit }) => edit ?? []).sort((one, other) => one.range[0] - other.range[0]);
  const encoding = edits.length ? otherEncoding(article) : undefined;
  if (encoding) return unmended(`the page says that its encoding is ${encoding}`);
  let text = "";
  let at = 0;
  for (const edit of edits) {
    text += source.slice(at, edit.range[0]) + edit.text;
    at = edit.range[1];
  }
  text += source.slice(at);
  const mended = edits.length;
  if (mended && !isClean(text, checked, { format, load }))
    return unmended("read again, the mended text says something else");
  return { ...checked, text, stale, mended, left: stale - mended };
}
