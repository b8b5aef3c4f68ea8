import MarkdownIt, { type MarkdownIt as Parser, type Token } from "markdown-it";

export type { Parser, Token };

/** Blocks inside blocks, at most: the parser reads no further. */
export const deepest = 100;

/** Where a piece of a paragraph stands in the paragraph's text, where that can be told. */
export const placeIn = (token: Token): number | undefined => token.meta?.at as number | undefined;

/**
 * A parser of Markdown that notes where each piece of a paragraph stands in it.
 *
 * @param extend adds rules, or takes some away
 */
export function placedParser(extend: (parser: Parser) => void = () => undefined): Parser {
  const parser = new MarkdownIt({ html: true, maxNesting: deepest });
  // Line ends are of one length already, and texts stay in pieces: each has its place.
  parser.core.ruler.disable(["normalize", "linkify", "replacements", "smartquotes", "text_join"]);
  parser.inline.ruler2.disable("fragments_join");
  extend(parser);

  class PlacedState extends parser.inline.State {
    /** Where the text begins that waits to become a piece. */
    pendingAt = 0;

    override pushPending(): Token {
      const token = super.pushPending();
      token.meta = { at: this.pendingAt };
      return token;
    }
  }
  parser.inline.State = PlacedState;

  // What no other rule takes is text.
  parser.inline.ruler.push("rest", (state, silent) => {
    if (!silent) state.pending += state.src[state.pos]!;
    state.pos++;
    return true;
  });

  const rules = parser.inline.ruler.getRules("").map((rule): typeof rule => (state, silent) => {
    const { pos, tokens } = state;
    const first = tokens.length;
    if (!state.pending) (state as PlacedState).pendingAt = pos;
    if (!rule(state, silent)) return false;
    let at = pos;
    for (const token of tokens.slice(first)) {
      if (token.meta || !/^(text|text_special|html_inline)$/.test(token.type)) continue;
      const written = token.type === "text_special" ? token.markup : token.content;
      if (!state.src.startsWith(written, at)) break;
      token.meta = { at };
      at += written.length;
    }
    return true;
  });
  parser.inline.ruler.getRules = () => rules;
  return parser;
}
