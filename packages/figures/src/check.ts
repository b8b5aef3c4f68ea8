import { buildFor, buildsIn, localeOf, type Load } from "./builds.js";
import { canonical, numbersIn } from "./canonical.js";
import { expectedOf, headOf, isChecked } from "./expected.js";
import {
  around,
  attributeOf,
  childrenOf,
  elementsIn,
  isElement,
  markupOf,
  textOf,
  textsIn,
  type Element,
  type TextNode,
} from "./source.js";

/** One place where an article does not say what its build comes to. Lines and columns count from 1. */
export interface Difference {
  readonly line: number;
  readonly column: number;
  readonly element: string;
  /** What stands there. */
  readonly found: string;
  /** What should; none where no figure can be made at all. */
  readonly expected: string | undefined;
  readonly message: string;
  /** Where the text stands that is to be replaced, where that can be told. */
  readonly range: readonly [start: number, end: number] | undefined;
}

export interface Checked {
  readonly differences: readonly Difference[];
  /** How many figures were compared. */
  readonly compared: number;
}

export interface CheckOptions {
  /** The text is Markdown with HTML in it. */
  readonly markdown?: boolean | undefined;
  /** Reads what a build's `src` names. */
  readonly load?: Load | undefined;
}

const escape = (text: string): string => text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");

const place = (node: Element | TextNode) => {
  const at = node.sourceCodeLocation!;
  return { line: at.startLine, column: at.startCol };
};

/** The range of an element's content, where both its tags are written out. */
function insideOf(element: Element): readonly [number, number] | undefined {
  const { startTag, endTag } = element.sourceCodeLocation ?? {};
  return startTag && endTag ? [startTag.endOffset, endTag.startOffset] : undefined;
}

/** A text without the blanks around it, as a range of the source. */
function trimmed(node: TextNode, source: string): readonly [number, number] | undefined {
  const at = node.sourceCodeLocation;
  if (!at) return undefined;
  const raw = source.slice(at.startOffset, at.endOffset);
  const lead = raw.length - raw.trimStart().length;
  return [at.startOffset + lead, at.startOffset + raw.trimEnd().length];
}

const label = (element: Element): string => {
  const shown = ["figure", "of", "at", "build"].flatMap((name) => attributeOf(element, name) ?? []);
  return `<${element.tagName}>${shown.length ? ` ${shown.join(" ")}` : ""}`;
};

function inlineDifference(element: Element, expected: string, source: string): Difference[] {
  const found = textOf(element).trim();
  if (canonical(found) === canonical(expected)) return [];
  const texts = [...textsIn(element)].filter((text) => text.value.trim());
  const range = texts.length === 1 ? trimmed(texts[0]!, source) : insideOf(element);
  return [
    {
      ...place(element),
      element: label(element),
      found,
      expected,
      message: found ? `says “${found}”, should say “${expected}”` : `says nothing, should say “${expected}”`,
      range,
    },
  ];
}

/** The figures of a block's content, each held against the row that it stands in. */
function blockDifferences(
  element: Element,
  rows: ReadonlyMap<string, readonly string[]>,
  source: string,
): Difference[] {
  const all = new Set([...rows.values()].flat().flatMap((text) => numbersIn(text).map((one) => one.text)));
  return [...textsIn(element)].flatMap((text) => {
    const row = [...around(text)].find((node) => isElement(node) && node.tagName === "tr");
    const head = row && childrenOf(row).find(isElement);
    // A row's head is a name, whatever digits it has.
    if (head && [...textsIn(head)].includes(text)) return [];
    const own = (head && rows.get(headOf(textOf(head)))) ?? [];
    const cells = row ? childrenOf(row).filter(isElement).slice(1) : [];
    // With a cell for each text, a figure has its place; otherwise it only has to be one of them.
    const placed =
      cells.length === own.length ? own[cells.findIndex((cell) => [...textsIn(cell)].includes(text))] : undefined;
    const wanted = numbersIn(placed ?? own.join(" "));
    return numbersIn(text.value).flatMap((number, n): Difference[] => {
      if (!number.decimal || (placed ? wanted[n]?.text === number.text : all.has(number.text))) return [];
      const expected = wanted[n]?.written ?? (rows.size === 1 ? [...rows.values()][0]![0] : undefined);
      const start = text.sourceCodeLocation?.startOffset ?? 0;
      const exact = source.slice(start, text.sourceCodeLocation?.endOffset).indexOf(number.written, 0);
      const range =
        exact < 0 || !expected ? undefined : ([start + exact, start + exact + number.written.length] as const);
      const message = expected
        ? `has “${number.written}”, should have “${expected}”`
        : `has “${number.written}”, which is none of its figures`;
      return [{ ...place(text), element: label(element), found: number.written, expected, message, range }];
    });
  });
}

/**
 * Compares what an article says without scripts with what its builds come to.
 *
 * @param source the text of an HTML page or fragment, or of Markdown
 */
export function checkFigures(source: string, { markdown = false, load = () => undefined }: CheckOptions = {}): Checked {
  const page = markupOf(source, markdown);
  const builds = buildsIn(page, load);
  const differences: Difference[] = [];
  let compared = 0;
  const complain = (element: Element, message: string) =>
    differences.push({
      ...place(element),
      element: label(element),
      found: textOf(element).trim(),
      expected: undefined,
      message,
      range: undefined,
    });
  for (const { element, build, findings } of builds)
    if (!build) complain(element, findings.map(({ at, message }) => (at ? `${at}: ${message}` : message)).join(" "));
  for (const element of elementsIn(page)) {
    if (!isChecked(element)) continue;
    compared++;
    const holder = buildFor(element, builds);
    if (!holder) complain(element, "belongs to no mw-build");
    else if (holder.build) {
      try {
        const mode = attributeOf(holder.element, "mode");
        const expected = expectedOf(element, holder.build, localeOf(element), mode);
        differences.push(
          ...(expected.kind === "text"
            ? inlineDifference(element, expected.text, source)
            : blockDifferences(element, expected.rows, source)),
        );
      } catch (error) {
        complain(element, (error as Error).message);
      }
    }
  }
  return { differences, compared };
}

/**
 * The source with every stale figure mended that can be; every other character as it was.
 *
 * @returns the text, and the differences that are left to be mended by hand
 */
export function mendFigures(
  source: string,
  options?: CheckOptions,
): { text: string; left: readonly Difference[]; mended: number } {
  const { differences } = checkFigures(source, options);
  const ready = differences
    .filter((one) => one.range && one.expected !== undefined)
    .sort((a, b) => b.range![0] - a.range![0]);
  let text = source;
  for (const { range, expected } of ready) text = text.slice(0, range![0]) + escape(expected!) + text.slice(range![1]);
  return { text, left: differences.filter((one) => !ready.includes(one)), mended: ready.length };
}
