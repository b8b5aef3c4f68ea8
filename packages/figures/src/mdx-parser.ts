import type { StateBlock, StateInline } from "markdown-it";
import { isModule, NoMdx, pieceAt, type Piece } from "./jsx.js";
import { placedParser, type Parser } from "./placed-markdown.js";

/** A module's code goes on over so many blank lines, at most. */
const longestModule = 100;

/** Imports and exports: from the beginning of a line to a blank line behind which the code is whole. */
function moduleCode(state: StateBlock, first: number, last: number, silent: boolean): boolean {
  const start = state.bMarks[first]!;
  if (silent || state.level || state.tShift[first] || !/^(?:im|ex)port\b/.test(state.src.slice(start, start + 7)))
    return false;
  for (let line = first, tries = 0; tries < longestModule; tries++) {
    while (line < last && !state.isEmpty(line)) line++;
    const code = state.src.slice(start, state.eMarks[line - 1]);
    if (isModule(code)) {
      const token = state.push("mdx", "", 0);
      token.meta = { pieces: [{ kind: "expression", from: start, to: start + code.length, code }] };
      state.line = line;
      return true;
    }
    while (line < last && state.isEmpty(line)) line++;
    if (line >= last) break;
  }
  throw new NoMdx(`An import or export in line ${first + 1} cannot be read.`);
}

/** Tags and expressions that have their lines to themselves. */
function flow(state: StateBlock, first: number, last: number, silent: boolean): boolean {
  const { src } = state;
  let at = state.bMarks[first]! + state.tShift[first]!;
  if (src[at] !== "<" && src[at] !== "{") return false;
  const pieces: Piece[] = [];
  for (; src[at] !== undefined && src[at] !== "\n"; at++) {
    if (src[at] === " " || src[at] === "\t") continue;
    if (src[at] !== "<" && src[at] !== "{") return false;
    const piece = pieceAt(src, at);
    pieces.push(piece);
    at = piece.to - 1;
  }
  let line = first;
  while (state.eMarks[line]! < at) line++;
  if (line >= last) throw new NoMdx(`A tag in line ${first + 1} ends outside of what it stands in.`);
  if (silent) return true;
  const token = state.push("mdx", "", 0);
  token.meta = { pieces };
  state.line = line + 1;
  return true;
}

/** Tags and expressions in a sentence. */
function inline(state: StateInline, silent: boolean): boolean {
  const { src, pos } = state;
  if (src[pos] !== "<" && src[pos] !== "{") return false;
  const piece = pieceAt(src, pos);
  if (!silent) {
    const token = state.push("mdx", "", 0);
    token.meta = { at: pos, pieces: [piece] };
  }
  state.pos = piece.to;
  return true;
}

/** How much deeper than what it stands in a line may be before Markdown takes it for code. */
const plainDepth = 3;

/** A state that knows how deep each line is written beside how deep it is taken to be. */
interface DeepState extends StateBlock {
  readonly depths: number[];
}

/** What stands in a component may be a fence or a list as anywhere else, however deep it is written. */
const shallow = (state: StateBlock): number[] =>
  new Proxy(state.sCount, {
    get: (depths, line) => {
      const depth: unknown = Reflect.get(depths, line);
      return typeof depth === "number" && line !== "length" ? Math.min(depth, state.blkIndent + plainDepth) : depth;
    },
  });

/** What belongs to an item is told by how deep its mark is written: all around a deep one is taken as much less deep meanwhile. */
function deepList(state: StateBlock, first: number, last: number, silent: boolean): boolean {
  const { depths } = state as DeepState;
  const depth = depths[first]!;
  const by = depth - state.sCount[first]!;
  if (silent || !by || !/[-+*\d]/.test(state.src[state.bMarks[first]! + state.tShift[first]!]!)) return false;
  // It ends where something less deep stands behind an empty line, if not before.
  let end = first + 1;
  while (end < last && (state.isEmpty(end) || !state.isEmpty(end - 1) || depths[end]! >= depth)) end++;
  const kept = depths.slice(first, end);
  kept.forEach((one, n) => (depths[first + n] = Math.max(Math.min(one, 0), one - by)));
  const isRead = state.md.block.ruler.getRules("").some((rule) => rule(state, first, end, false));
  kept.forEach((one, n) => (depths[first + n] = one));
  return isRead;
}

/** The parser of MDX: Markdown whose tags are JSX, without code by indentation and addresses in angles. */
export const mdxParser: Parser = placedParser((parser) => {
  parser.block.ruler.disable(["html_block", "code"]);
  parser.block.State = class extends parser.block.State {
    readonly depths: number[];

    constructor(...given: ConstructorParameters<typeof parser.block.State>) {
      super(...given);
      this.depths = this.sCount;
      this.sCount = shallow(this);
    }
  };
  parser.inline.ruler.disable(["html_inline", "autolink"]);
  const alt = ["paragraph", "reference", "blockquote", "list"];
  parser.block.ruler.before("table", "mdx_deep_list", deepList);
  parser.block.ruler.before("table", "mdx_module", moduleCode);
  parser.block.ruler.before("table", "mdx_flow", flow, { alt });
  parser.inline.ruler.after("backticks", "mdx_inline", inline);
});
