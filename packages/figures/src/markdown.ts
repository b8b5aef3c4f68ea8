import type { Article } from "./article.js";
import { readHtml, TooMuch } from "./html.js";
import type { Piece } from "./jsx.js";
import { mdxParser } from "./mdx-parser.js";
import { deepest, placedParser, placeIn, type Token } from "./placed-markdown.js";
import { Written } from "./written.js";

interface Line {
  readonly start: number;
  readonly text: string;
}

const linesOf = (text: string): readonly Line[] => {
  let start = 0;
  return text.split("\n").map((line) => {
    start += line.length + 1;
    return { start: start - line.length - 1, text: line };
  });
};

/** A line of a block's content, and where it stands in the file. */
interface Part {
  readonly text: string;
  /** Its first character's place in the content. */
  readonly from: number;
  readonly offset: number | undefined;
}

/** A line of content is what is left of the file's line without what contains the block. */
function offsetOf(text: string, line: Line | undefined, column = 0): number | undefined {
  const own = text.trim();
  if (!line || !own) return undefined;
  const whole = line.text.trimEnd();
  // A heading may have its signs behind it as well, a cell its neighbours.
  const at = !column && whole.endsWith(own) ? whole.length - own.length : line.text.indexOf(own, column);
  return at < 0 ? undefined : line.start + at - (text.length - text.trimStart().length);
}

function partsOf(content: string, placed: (text: string, n: number) => number | undefined): readonly Part[] {
  let from = 0;
  return content.split("\n").map((text, n) => {
    const part = { text, from, offset: placed(text, n) };
    from += text.length + 1;
    return part;
  });
}

/** The place in the file of a character of a paragraph. */
function placeOf(at: number, parts: readonly Part[]): number | undefined {
  let [low, high] = [0, parts.length];
  while (low + 1 < high) {
    const middle = (low + high) >> 1;
    if (parts[middle]!.from <= at) low = middle;
    else high = middle;
  }
  const { from, offset } = parts[low]!;
  return offset === undefined ? undefined : offset + at - from;
}

/** A cell as it is written: a stroke of its own has a backslash before it. */
const piped = (text: string): string => text.replaceAll("|", "\\|");

/** Elements of HTML that have no end. */
const endless = /^(?:area|base|br|col|embed|hr|img|input|link|meta|source|track|wbr)$/;

/** Markdown as the HTML that it becomes. What is code, an address or a line's end has no place in the file: nothing is done to it. */
class Writer extends Written {
  readonly #lines: readonly Line[];
  /** The row of a table that is being written, how far along it, and whether one of its cells is. */
  #row: Line | undefined;
  #column = 0;
  #isCell = false;
  /** How many tags of ours stand in what a program works out. */
  expressions = 0;
  readonly programs: number[] = [];

  constructor(source: string) {
    super();
    this.#lines = linesOf(source);
  }

  #html(content: string, first: number): void {
    const parts = partsOf(content, (text, n) => offsetOf(text, this.#lines[first + n]));
    parts.forEach(({ text, offset }, n) => {
      const line = this.#lines[first + n];
      if (n) this.add("\n");
      // Tabs that were opened into blanks are nowhere in the file.
      const lead = offset === undefined || !line ? text.length : Math.max(0, line.start - offset);
      this.add(text.slice(0, lead));
      this.copy(text.slice(lead), (offset ?? 0) + lead);
    });
  }

  #text(text: string, place: number | undefined): void {
    for (const { 0: part, index } of text.matchAll(/[&<]|[^&<]+/g)) {
      if (part === "&") this.add("&amp;");
      else if (part === "<") this.add("&lt;");
      else this.#copyAt(part, place === undefined ? undefined : place + index);
    }
  }

  #paragraph({ content, map, children }: Token): void {
    const row = this.#row;
    this.#isCell = !map;
    const written = map ? content : piped(content);
    const parts = partsOf(content, (text, n) =>
      map ? offsetOf(text, this.#lines[map[0] + n]) : offsetOf(written, row, this.#column),
    );
    const { offset } = parts[0]!;
    // A cell that is written otherwise than it reads leaves the others of its row without a place.
    if (!map && row && content) {
      if (offset === undefined) this.#row = undefined;
      else this.#column = offset - row.start + written.length;
    }
    for (const token of children ?? []) {
      const at = placeIn(token);
      const there = (place: number) => this.#placeOf(place, content, parts);
      if (token.type === "mdx") this.#mdx(token, there);
      else if (token.type === "html_inline" && at !== undefined) this.#tag(token.content, at, there);
      else this.#inline(token, at === undefined ? undefined : there(at));
    }
  }

  /** A tag or a comment, over several lines perhaps. */
  #tag(content: string, first: number, placeOf: (at: number) => number | undefined): void {
    let at = first;
    for (const line of content.split("\n")) {
      if (at > first) this.add("\n");
      this.#copyAt(line, placeOf(at));
      at += line.length + 1;
    }
  }

  #copyAt(text: string, place: number | undefined): void {
    if (place === undefined) return this.add(text);
    let at = place;
    for (const [n, piece] of (this.#isCell ? text.split("|") : [text]).entries()) {
      if (n) this.add("|");
      at += n && 2;
      this.copy(piece, at);
      at += piece.length;
    }
  }

  /** The place of a character of a paragraph, or of a cell, where each stroke before it is written as two characters. */
  #placeOf(at: number, content: string, parts: readonly Part[]): number | undefined {
    const place = placeOf(at, parts);
    return place === undefined || !this.#isCell ? place : place + piped(content.slice(0, at)).length - at;
  }

  #mdx(token: Token, place: (at: number) => number | undefined): void {
    for (const piece of token.meta!.pieces as readonly Piece[]) {
      if (piece.kind === "expression") {
        this.expressions += piece.code.match(/<mw-[a-z]/gi)?.length ?? 0;
        // A comment says nothing, nor do blanks.
        const start = /^(?:(["'`])\s*\1\s*)?$/.test(piece.code) ? undefined : place(piece.from);
        if (start !== undefined) this.programs.push(start);
      } else if (piece.name) {
        const { from, to, name, closing, selfClosed, attributes } = piece;
        // A component may be called as an element is; it is none.
        const tag = /^[a-z][\w-]*$/.test(name) ? name : `jsx-${name.toLowerCase().replace(/[^a-z0-9]/g, "-")}`;
        this.#copyAt(closing ? "</" : "<", place(from));
        this.add(`${tag}${attributes}${selfClosed ? "/" : ""}`);
        this.#copyAt(">", place(to - 1));
        if (selfClosed && !endless.test(tag)) this.add(`</${tag}>`);
      }
    }
  }

  #inline(token: Token, place: number | undefined): void {
    const { type, content, info, markup } = token;
    // HTML reads a character's code as Markdown does; a backslash it does not.
    if (type === "text_special" && info === "entity") this.#copyAt(markup, place);
    else if (/^text/.test(type)) this.#text(content, type === "text" ? place : undefined);
    else if (type === "html_inline") this.add(content);
    else if (type === "code_inline") {
      this.add("<code>");
      this.#text(content, undefined);
      this.add("</code>");
    } else if (type === "softbreak") this.add("\n");
    else this.#structure(token);
  }

  #structure({ tag, nesting, hidden }: Token): void {
    if (tag && !hidden) this.add(nesting < 0 ? `</${tag}>` : `<${tag}>`);
  }

  write(token: Token): void {
    if (token.level >= deepest - 1) throw new TooMuch(`Its blocks are nested more than ${deepest} deep.`);
    if (token.type === "mdx") this.#mdx(token, (at) => at);
    else if (token.type === "html_block") this.#html(token.content, token.map![0]);
    else if (token.type === "inline") this.#paragraph(token);
    // Code is nobody's markup.
    else if (/^(fence|code_block)$/.test(token.type)) this.add("<pre></pre>");
    else {
      if (token.type === "tr_open") {
        this.#row = this.#lines[token.map![0]];
        this.#column = 0;
      }
      this.#structure(token);
    }
  }
}

const parsers = { markdown: placedParser(), mdx: mdxParser };

/**
 * Reads Markdown, or MDX.
 *
 * @param text what is read; `source` is what the file has, as long
 */
export function readMarkdown(text: string, source: string, format: keyof typeof parsers): Article {
  const plain = text.replace(/\r\n/g, " \n").replace(/\r/g, "\n");
  const writer = new Writer(plain);
  for (const token of parsers[format].parse(plain, {})) writer.write(token);
  const { expressions, programs } = writer;
  return readHtml(writer.text, { source, places: writer, markdown: true, expressions, programs });
}
