import type { BlockTable } from "@meshwright/calc/article";
import {
  askedFindings,
  isUnsaid,
  sayGauge,
  sayParts,
  saySpeeds,
  saySummary,
  sayWorking,
  type Reporter,
  type Unsaid,
} from "@meshwright/calc/article";
import { attributeFindings } from "@meshwright/calc/document";
import { stagesOf, type Build } from "@meshwright/calc/drivetrain";
import type { Mark, Node } from "prosemirror-model";
import { figureText, isMisspelt, reporterOf } from "./figures.js";
import { renamed, withoutParts, writtenAs, type Written } from "./notation.js";
import { blocks, type Ask, type BlockAttrs, type FigureAttrs } from "./schema.js";

const text = (one: string): string => one.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");
const quoted = (one: string): string => text(one).replace(/"/g, "&quot;");

const attributesText = (attributes: Readonly<Record<string, string>>): string =>
  Object.entries(attributes)
    .map(([name, value]) => ` ${name}="${quoted(value)}"`)
    .join("");

/** What a block says: tables, and lines beneath. */
interface Said {
  readonly tables: readonly BlockTable[];
  readonly notes: readonly string[];
}

/** What a block says now; nothing where the drivetrain has no answer for it. */
function blockSaid(build: Build, { tag, ask }: BlockAttrs): Said | undefined {
  const makers: Readonly<Record<string, (speaker: Reporter) => Said | Unsaid | undefined>> = {
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
    const speaker = reporterOf(build, ask.at);
    if (!speaker || isMisspelt(tag, ask) || askedFindings(tag, build, ask).length) return undefined;
    if (tag === "mw-train-drawing") return { tables: [], notes: [drawingText(build)] };
    const said = makers[tag]?.(speaker);
    return isUnsaid(said) ? undefined : said;
  } catch {
    return undefined;
  }
}

/** What stands in a block until the script arrives, or where it never does; nothing where the drivetrain has no answer for it. */
export function blockHtml(build: Build, attrs: BlockAttrs): string | undefined {
  const said = blockSaid(build, attrs);
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
  return (
    said && [...(said.tables ?? []).map(table), ...(said.notes ?? []).map((one) => `<p>${text(one)}</p>`)].join("")
  );
}

/** The gears of a drawing, in words. */
const drawingText = (build: Build): string =>
  stagesOf(build)
    .map(
      ({ stage }) =>
        `${stage.label ?? stage.id} ${figureText(build, { tag: "mw-value", ask: { figure: "counts", of: stage.id } }) ?? ""}`,
    )
    .join("; ");

/** An element of the drivetrain in markup that is kept as it stands. */
const inMarkup = /<(mw-[a-z-]+)((?:"[^"]*"|'[^']*'|[^>"'])*)>([^]*?)<\/\1>/g;
const characters: Readonly<Record<string, string>> = {
  "&amp;": "&",
  "&lt;": "<",
  "&gt;": ">",
  "&quot;": '"',
  "&nbsp;": "\u00a0",
};
const decoded = (markup: string): string => markup.replace(/&(amp|lt|gt|quot|nbsp);/g, (one) => characters[one]!);
const attributesIn = (given: string): Record<string, string> =>
  Object.fromEntries(
    [...given.matchAll(/([\w:.-]+)(?:="([^"]*)")?/g)].map(([, name, value = ""]) => [name!, decoded(value)]),
  );
/** Some editors end a block at a blank line: none stands in markup. */
const withoutBlanks = (markup: string): string =>
  markup.replace(/\n([ \t]*)(?=\n)/g, "\n$1&#10;").replace(/&#10;\n/g, "&#10;");
/** Markup as text, a line for each of its own. */
const plainOf = (markup: string): string =>
  decoded(
    markup
      .replace(/<!--[^]*?-->/g, "")
      .replace(/<\/(td|th)>(?=\s*<t)/gi, " · ")
      .replace(/<br\b[^>]*>|<\/(p|tr|li|caption|figcaption|summary|h\d|dt|dd|div|pre)>/gi, "\n")
      .replace(/<[^>]*>/g, ""),
  )
    .replace(/[ \t]*\n\s*/g, "\n")
    .trim();

type Asked = FigureAttrs | BlockAttrs;
const isFigure = (attrs: Asked): attrs is FigureAttrs => attrs.tag === "mw-teeth" || attrs.tag === "mw-value";

/** What a figure or block says now, as it is written; nothing where the drivetrain has no answer for it. */
function saidNow(build: Build | undefined, attrs: Asked): string | undefined {
  if (!build) return undefined;
  if (!isFigure(attrs)) return blockHtml(build, attrs);
  const now = figureText(build, attrs);
  return now === undefined ? undefined : text(now);
}

/** Every figure and block of a post, those in markup that is kept too. */
function askedIn(doc: Node): readonly Asked[] {
  const found: Asked[] = [];
  doc.descendants((node) => {
    if (node.type.name === "figure" || node.type.name === "drawn") found.push(node.attrs as unknown as Asked);
    if (node.type.name === "kept" || node.type.name === "kept_block")
      for (const [, tag = "", given = "", inside = ""] of (node.attrs.html as string).matchAll(inMarkup)) {
        const ask = attributesIn(given);
        if (isOwn(tag, ask)) found.push({ tag, ask, said: plainOf(inside) } as Asked);
      }
    return true;
  });
  return found;
}

const isOwn = (tag: string, { build }: Ask): boolean =>
  build === undefined && (Object.hasOwn(blocks, tag) || tag === "mw-teeth" || tag === "mw-value");

/** A figure or block that follows nothing in the drivetrain: what it reads as, and why it is so. */
export interface Dead {
  readonly text: string;
  readonly why: string;
}

/** The figures and blocks of a post that follow nothing: they are handed out as they read last. */
export function deadIn(doc: Node, build: Build): readonly Dead[] {
  return askedIn(doc)
    .filter((attrs) => saidNow(build, attrs) === undefined)
    .map((attrs) => ({
      text: isFigure(attrs) ? (attrs.said ?? "") : (blocks[attrs.tag] ?? attrs.tag),
      why: whyDead(build, attrs),
    }));
}

/** Why a figure or block follows nothing. */
function whyDead(build: Build, { tag, ask }: Asked): string {
  try {
    const faults = [...attributeFindings(tag, Object.keys(ask)), ...askedFindings(tag, build, ask)];
    return faults.find(({ severity }) => severity === "error")?.message ?? "The drivetrain does not say enough for it.";
  } catch {
    return "The drivetrain does not say enough for it.";
  }
}

/** How a drivetrain goes along with a post: as attributes, or as data. */
type Carried = Written | { readonly data: Build };

/** Writes the elements of a post, with the ids that the drivetrain has where it goes. */
export class Elements {
  readonly #build: Build | undefined;
  readonly #carried: Carried | undefined;

  constructor(build?: Build, carried?: Carried) {
    this.#build = build;
    this.#carried = carried;
  }

  get #written(): Written | undefined {
    return this.#carried && "attributes" in this.#carried ? this.#carried : undefined;
  }

  asked(ask: Ask): Record<string, string> {
    const { ids } = this.#written ?? {};
    if (!ids) return { ...ask };
    return Object.fromEntries(
      Object.entries(ask).map(([name, value]) => [
        name,
        name === "of" || name === "with" ? renamed(value, ids) : value,
      ]),
    );
  }

  #element({ tag, ask, rest }: Asked, inside: string): string {
    return `<${tag}${attributesText({ ...this.asked(ask), ...rest })}>${inside}</${tag}>`;
  }

  /** An element in a sentence, with its text as it reads today; where it follows nothing, as it read last. */
  figure(attrs: FigureAttrs): string {
    return this.#element(attrs, saidNow(this.#build, attrs) ?? text(attrs.said ?? ""));
  }

  /** A block on one line, in a wrapper: what makes paragraphs of lines leaves it whole, its table inside. */
  block(attrs: BlockAttrs): string {
    return `<div>${this.#element(attrs, saidNow(this.#build, attrs) ?? attrs.said ?? "")}</div>`;
  }

  /** Markup that is kept as it stands: but for what the drivetrain says in it. */
  kept(html: string): string {
    return withoutBlanks(
      html.replace(inMarkup, (whole, tag: string, given: string, inside: string) => {
        const ask = attributesIn(given);
        if (!isOwn(tag, ask)) return whole;
        const attrs = { tag, ask } as Asked;
        return this.#element(attrs, saidNow(this.#build, attrs) ?? inside);
      }),
    );
  }

  /** A figure or block as text alone. */
  plain(attrs: Asked): string {
    const now = saidNow(this.#build, attrs);
    return now === undefined && isFigure(attrs) ? (attrs.said ?? "") : plainOf(now ?? attrs.said ?? "");
  }

  /** The drivetrain itself, on one line; nothing where there is none. */
  build(): string {
    if (!this.#carried) return "";
    if ("attributes" in this.#carried) return `<mw-build${attributesText(this.#carried.attributes)}></mw-build>`;
    const json = JSON.stringify(this.#carried.data).replace(/</g, "\\u003c");
    return `<mw-build><script type="application/json">${json}</script></mw-build>`;
  }

  /** The same as text of one attribute, where scripts inside do not live. */
  carried(): string {
    if (!this.#carried || "attributes" in this.#carried) return this.build();
    return `<mw-build json="${quoted(JSON.stringify(this.#carried.data))}"></mw-build>`;
  }
}

/**
 * The drivetrain as attributes, where they say all of it that counts, and every figure and block of the post reads the same from
 * them; else as data, with parts where one asks for them. An alternative or an earlier version is more than attributes say.
 */
export function elementsFor(doc: Node, build: Build | undefined): Elements {
  if (!build) return new Elements();
  const asks = askedIn(doc).filter((attrs) => saidNow(build, attrs) !== undefined);
  const written = writtenAs(build);
  if (written) {
    const there = new Elements(build, written);
    // Of an axle's name attributes leave out what is a capital letter.
    const isSame = (attrs: Asked): boolean => {
      const read = saidNow(written.build, { ...attrs, ask: there.asked(attrs.ask) } as Asked);
      const now = saidNow(build, attrs);
      return isFigure(attrs) ? read === now : read?.toLowerCase() === now?.toLowerCase();
    };
    if (asks.every(isSame)) return there;
  }
  const bare = withoutParts(build);
  const saysSame = (data: Build): boolean => asks.every((attrs) => saidNow(data, attrs) === saidNow(build, attrs));
  return new Elements(build, { data: bare && saysSame(bare) ? bare : build });
}

const rested = ({ attrs }: Node | Mark): string => attributesText((attrs.rest as Ask | null) ?? {});

/** What a mark is written as. */
export function openTag(mark: Mark): string {
  const { name } = mark.type;
  const { href, title, tag } = mark.attrs as Readonly<Record<string, string | null>>;
  if (name === "link") return `<a${attributesText({ href: String(href), ...(title && { title }) })}${rested(mark)}>`;
  return `<${name === "phrase" ? tag : name}${rested(mark)}>`;
}
export const closeTag = ({ type: { name }, attrs }: Mark): string =>
  `</${name === "link" ? "a" : name === "phrase" ? String(attrs.tag) : name}>`;

export function imageTag(node: Node): string {
  const { src, alt, title } = node.attrs as Readonly<Record<string, string | null>>;
  return `<img${attributesText({ src: String(src), alt: alt ?? "", ...(title && { title }) })}${rested(node)}>`;
}

function inline(node: Node, elements: Elements): string {
  let out = "";
  let marks: readonly Mark[] = [];
  const to = (next: readonly Mark[]): void => {
    let shared = 0;
    while (shared < marks.length && shared < next.length && marks[shared]!.eq(next[shared]!)) shared++;
    for (const mark of marks.slice(shared).reverse()) out += closeTag(mark);
    for (const mark of next.slice(shared)) out += openTag(mark);
    marks = next;
  };
  node.forEach((child) => {
    to(child.marks);
    const { name } = child.type;
    if (child.isText) out += text(child.text!);
    else if (name === "figure") out += elements.figure(child.attrs as unknown as FigureAttrs);
    else if (name === "hard_break") out += `<br${rested(child)}>`;
    else if (name === "kept") out += elements.kept(child.attrs.html as string);
    else if (name === "image") out += imageTag(child);
  });
  to([]);
  return out;
}

/** A block of the post as HTML. */
export function blockTags(node: Node, elements: Elements): string {
  const inside = (): string => node.children.map((child) => blockTags(child, elements)).join("\n");
  const rest = rested(node);
  switch (node.type.name) {
    case "paragraph":
      return `<p${rest}>${inline(node, elements)}</p>`;
    case "heading":
      return `<h${node.attrs.level}${rest}>${inline(node, elements)}</h${node.attrs.level}>`;
    case "blockquote":
      return `<blockquote${rest}>\n${inside()}\n</blockquote>`;
    case "bullet_list":
      return `<ul${rest}>\n${inside()}\n</ul>`;
    case "ordered_list":
      return `<ol${node.attrs.order && node.attrs.order !== 1 ? ` start="${node.attrs.order}"` : ""}${rest}>\n${inside()}\n</ol>`;
    case "list_item": {
      const only = node.childCount === 1 && node.firstChild!.type.name === "paragraph" && !node.firstChild!.attrs.rest;
      return `<li${rest}>${only ? inline(node.firstChild!, elements) : inside()}</li>`;
    }
    case "code_block":
      return withoutBlanks(`<pre><code>${text(node.textContent)}</code></pre>`);
    case "horizontal_rule":
      return "<hr>";
    case "drawn":
      return elements.block(node.attrs as unknown as BlockAttrs);
    case "kept_block":
      return elements.kept(node.attrs.html as string);
    case "box":
      return `<${node.attrs.tag}${rest}>\n${inside()}\n</${node.attrs.tag}>`;
    default:
      return inside();
  }
}

/** The post as one block of HTML: the drivetrain first, its text of today in every element. No blank line, which some editors end a block at. */
export function postToHtml(doc: Node, build: Build | undefined): string {
  const elements = elementsFor(doc, build);
  const lines = [elements.build(), ...doc.children.map((node) => blockTags(node, elements))];
  return `${lines.filter(Boolean).join("\n")}\n`;
}

/** The post as text alone, every figure as it reads today: for places that take no tags. */
export function postToText(doc: Node, build: Build | undefined): string {
  const elements = new Elements(build);
  const lines: string[] = [];
  doc.descendants((node) => {
    const { name } = node.type;
    if (name === "drawn") lines.push(elements.plain(node.attrs as unknown as BlockAttrs));
    if (name === "kept_block") lines.push(plainOf(elements.kept(node.attrs.html as string)));
    if (!node.isTextblock) return true;
    let line = "";
    node.forEach((child) => {
      const { attrs } = child;
      if (child.isText) line += child.text!;
      else if (child.type.name === "figure") line += elements.plain(attrs as unknown as FigureAttrs);
      else if (child.type.name === "hard_break") line += "\n";
      else if (child.type.name === "kept") line += plainOf(elements.kept(attrs.html as string));
      else if (child.type.name === "image") line += String(attrs.alt ?? "");
    });
    lines.push(line);
    return false;
  });
  return `${lines.join("\n\n")}\n`;
}
