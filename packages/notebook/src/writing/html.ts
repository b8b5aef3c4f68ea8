import type { BlockTable } from "@meshwright/calc/article";
import {
  isUnsaid,
  sayGauge,
  sayParts,
  saySpeeds,
  saySummary,
  sayWorking,
  type Reporter,
} from "@meshwright/calc/article";
import { stagesOf, type Build } from "@meshwright/calc/drivetrain";
import type { Mark, Node } from "prosemirror-model";
import { figureText, reporterOf } from "./figures.js";
import { writtenAs, type Written } from "./notation.js";
import type { BlockAttrs, FigureAttrs } from "./schema.js";

const text = (one: string): string => one.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");
const quoted = (one: string): string => text(one).replace(/"/g, "&quot;");

const attributesText = (attributes: Readonly<Record<string, string>>): string =>
  Object.entries(attributes)
    .map(([name, value]) => ` ${name}="${quoted(value)}"`)
    .join("");

/** What stands in a block until the script arrives, or where it never does. */
function fallbackOf(build: Build, { tag, ask }: BlockAttrs): string {
  const tables: readonly BlockTable[] = [];
  const notes: readonly string[] = [];
  let said: { tables: readonly BlockTable[]; notes: readonly string[] } = { tables, notes };
  const take = (one: unknown): void => {
    if (one && !isUnsaid(one)) said = one as typeof said;
  };
  const speaker = reporterOf(build, ask.at);
  const makers: Readonly<Record<string, (speaker: Reporter) => unknown>> = {
    "mw-ratio-summary": (one) => saySummary(one, ask),
    "mw-overdrive-gauge": (one) => {
      const gauge = sayGauge(one, ask);
      return gauge && !isUnsaid(gauge) ? { tables: [], notes: [gauge.sentence] } : gauge;
    },
    "mw-working": (one) => sayWorking(one, ask),
    "mw-parts-list": (one) => sayParts(one),
    "mw-wheel-speed": (one) => saySpeeds(one, ask),
  };
  try {
    if (speaker && tag === "mw-train-drawing") return `<p>${text(drawingText(build))}</p>`;
    if (speaker) take(makers[tag]?.(speaker));
  } catch {
    // What cannot be said stays empty: the element draws it once it is there.
  }
  const table = ({ caption, heads, rows }: BlockTable): string => {
    const head = `<tr>${heads.map((one) => `<th>${text(one)}</th>`).join("")}</tr>`;
    const body = rows
      .map(
        ({ head: first, beside, texts }) =>
          `<tr>${[first + (beside ? ` ${beside}` : ""), ...texts].map((one, n) => (n ? `<td>${text(one ?? "")}</td>` : `<th>${text(one ?? "")}</th>`)).join("")}</tr>`,
      )
      .join("");
    // The body is named, as every browser does for itself: an editor that compares what it reads with what was saved finds the same.
    return `<table>${caption ? `<caption>${text(caption)}</caption>` : ""}<tbody>${head}${body}</tbody></table>`;
  };
  return [...(said.tables ?? []).map(table), ...(said.notes ?? []).map((one) => `<p>${text(one)}</p>`)].join("");
}

/** The gears of a drawing, in words. */
const drawingText = (build: Build): string =>
  stagesOf(build)
    .map(
      ({ stage }) =>
        `${stage.label ?? stage.id} ${figureText(build, { tag: "mw-value", ask: { figure: "counts", of: stage.id } }) ?? ""}`,
    )
    .join("; ");

/** Writes the elements of a post, with the ids that the drivetrain has where it goes. */
export class Elements {
  readonly #build: Build;
  readonly #written: Written | undefined;

  constructor(build: Build, written: Written | undefined) {
    this.#build = build;
    this.#written = written;
  }

  #asked(ask: Readonly<Record<string, string>>): Record<string, string> {
    const { ids } = this.#written ?? {};
    if (!ids) return { ...ask };
    return Object.fromEntries(
      Object.entries(ask).map(([name, value]) => {
        if (name !== "of" && name !== "with") return [name, value];
        const [id = "", ...rest] = value.split(".");
        return [name, [ids.get(id) ?? id, ...rest].join(".")];
      }),
    );
  }

  /** An element in a sentence, with its text as it reads today. */
  figure(attrs: FigureAttrs): string {
    const now = figureText(this.#build, attrs) ?? "";
    return `<${attrs.tag}${attributesText(this.#asked(attrs.ask))}>${text(now)}</${attrs.tag}>`;
  }

  /** A block on one line, in a wrapper: what makes paragraphs of lines leaves it whole, its table inside. */
  block(attrs: BlockAttrs): string {
    return `<div><${attrs.tag}${attributesText(this.#asked(attrs.ask))}>${fallbackOf(this.#build, attrs)}</${attrs.tag}></div>`;
  }

  /** The drivetrain itself, on one line. */
  build(): string {
    const written = this.#written;
    if (written) return `<mw-build${attributesText(written.attributes)}></mw-build>`;
    const { parts: _, ...bare } = this.#build;
    const json = JSON.stringify(bare).replace(/</g, "\\u003c");
    return `<mw-build><script type="application/json">${json}</script></mw-build>`;
  }

  /** The same as text of one attribute, where scripts inside do not live. */
  carried(): string {
    if (this.#written) return this.build();
    const { parts: _, ...bare } = this.#build;
    return `<mw-build json="${quoted(JSON.stringify(bare))}"></mw-build>`;
  }
}

/** Every figure and block of a post. */
function* asked(doc: Node): Generator<FigureAttrs> {
  const found: FigureAttrs[] = [];
  doc.descendants((node) => {
    if (node.type.name === "figure") found.push(node.attrs as unknown as FigureAttrs);
    return true;
  });
  yield* found;
}

/**
 * The drivetrain as attributes, where every figure of the post reads the same from them; else it goes as JSON. An alternative or
 * an earlier version is more than attributes say.
 */
export function elementsFor(doc: Node, build: Build): Elements {
  const written = writtenAs(build);
  if (!written) return new Elements(build, undefined);
  const probe = new Elements(build, written);
  const same = [...asked(doc)].every((attrs) => {
    const there = /^<[^>]*>(.*)<\/[^>]*>$/s.exec(probe.figure(attrs))?.[1];
    const ask = Object.fromEntries(
      [...probe.figure(attrs).matchAll(/ ([a-z-]+)="([^"]*)"/g)].map(([, name, value]) => [name!, value!]),
    );
    const read = figureText(written.build, { tag: attrs.tag, ask });
    return read !== undefined && text(read) === there;
  });
  const blocksAt: string[] = [];
  doc.descendants((node) => {
    if (node.type.name === "drawn" && (node.attrs as BlockAttrs).ask.at) blocksAt.push(node.type.name);
    return true;
  });
  return same && !blocksAt.length ? probe : new Elements(build, undefined);
}

const open: Readonly<Record<string, (mark: Mark) => string>> = {
  em: () => "<em>",
  strong: () => "<strong>",
  code: () => "<code>",
  link: ({ attrs }) =>
    `<a href="${quoted(String(attrs.href))}"${attrs.title ? ` title="${quoted(String(attrs.title))}"` : ""}>`,
};
const close: Readonly<Record<string, string>> = { em: "</em>", strong: "</strong>", code: "</code>", link: "</a>" };

function inline(node: Node, elements: Elements): string {
  let out = "";
  let marks: readonly Mark[] = [];
  const to = (next: readonly Mark[]): void => {
    let shared = 0;
    while (shared < marks.length && shared < next.length && marks[shared]!.eq(next[shared]!)) shared++;
    for (const mark of marks.slice(shared).reverse()) out += close[mark.type.name] ?? "";
    for (const mark of next.slice(shared)) out += open[mark.type.name]?.(mark) ?? "";
    marks = next;
  };
  node.forEach((child) => {
    to(child.marks);
    const { name } = child.type;
    if (child.isText) out += text(child.text!);
    else if (name === "figure") out += elements.figure(child.attrs as unknown as FigureAttrs);
    else if (name === "hard_break") out += "<br>";
    else if (name === "image")
      out += `<img src="${quoted(String(child.attrs.src))}" alt="${quoted(String(child.attrs.alt ?? ""))}">`;
  });
  to([]);
  return out;
}

function block(node: Node, elements: Elements): string {
  const inside = (): string => {
    const children: string[] = [];
    node.forEach((child) => children.push(block(child, elements)));
    return children.join("\n");
  };
  switch (node.type.name) {
    case "paragraph":
      return `<p>${inline(node, elements)}</p>`;
    case "heading":
      return `<h${node.attrs.level}>${inline(node, elements)}</h${node.attrs.level}>`;
    case "blockquote":
      return `<blockquote>\n${inside()}\n</blockquote>`;
    case "bullet_list":
      return `<ul>\n${inside()}\n</ul>`;
    case "ordered_list":
      return `<ol${node.attrs.order && node.attrs.order !== 1 ? ` start="${node.attrs.order}"` : ""}>\n${inside()}\n</ol>`;
    case "list_item":
      return `<li>${node.childCount === 1 && node.firstChild!.type.name === "paragraph" ? inline(node.firstChild!, elements) : inside()}</li>`;
    case "code_block":
      return `<pre><code>${text(node.textContent)}</code></pre>`;
    case "horizontal_rule":
      return "<hr>";
    case "drawn":
      return elements.block(node.attrs as unknown as BlockAttrs);
    default:
      return inside();
  }
}

/** The post as one block of HTML: the drivetrain first, its text of today in every element. No blank line, which some editors end a block at. */
export function postToHtml(doc: Node, build: Build | undefined): string {
  const elements = elementsFor(doc, build ?? emptyBuild);
  const lines: string[] = build ? [elements.build()] : [];
  doc.forEach((node) => lines.push(block(node, elements)));
  return `${lines.join("\n")}\n`;
}

const emptyBuild = { format: "meshwright-build/1", stages: [], outputs: [] } as unknown as Build;

/** The post as text alone, every figure as it reads today: for places that take no tags. */
export function postToText(doc: Node, build: Build | undefined): string {
  const lines: string[] = [];
  doc.descendants((node) => {
    if (!node.isTextblock) return true;
    let line = "";
    node.forEach((child) => {
      if (child.isText) line += child.text!;
      else if (child.type.name === "figure" && build)
        line += figureText(build, child.attrs as unknown as FigureAttrs) ?? "";
      else if (child.type.name === "hard_break") line += "\n";
    });
    lines.push(line);
    return false;
  });
  return `${lines.join("\n\n")}\n`;
}
