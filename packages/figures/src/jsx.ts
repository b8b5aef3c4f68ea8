import { Parser } from "acorn";
import acornJsx from "acorn-jsx";

const Script = Parser.extend(acornJsx());
const options = { ecmaVersion: "latest", sourceType: "module" } as const;

/** What an attribute says whose value a program works out. */
export const computed = "\uE000";

/** What keeps a text from being MDX. */
export class NoMdx extends Error {}

/** A tag, or what a program works out, in a text. */
export type Piece = { readonly from: number; readonly to: number } & (
  | {
      readonly kind: "tag";
      readonly name: string;
      readonly closing: boolean;
      readonly selfClosed: boolean;
      readonly attributes: string;
    }
  | { readonly kind: "expression"; readonly code: string }
);

/** The next character that is neither blank nor comment. */
function afterComments(text: string, at: number): number {
  const comment = /(?:\s|\/\*[^]*?\*\/|\/\/[^\n]*)*/y;
  comment.lastIndex = at;
  return at + comment.exec(text)![0].length;
}

/** The end of an expression in braces. */
function expressionAt(text: string, from: number): Piece {
  const rest = text.slice(from + 1);
  let to = afterComments(rest, 0);
  const start = to;
  const bare = rest[to] === "}";
  if (rest.startsWith("...", to)) to += 3;
  if (!bare) {
    try {
      to = afterComments(rest, Script.parseExpressionAt(rest, to, options).end);
    } catch (error) {
      throw new NoMdx(`An expression in braces cannot be read: ${(error as Error).message}.`);
    }
    if (rest[to] !== "}") throw new NoMdx("An expression has no closing brace.");
  }
  return { kind: "expression", from, to: from + to + 2, code: bare ? "" : rest.slice(start, to) };
}

const blanks = /\s*/y;
const slash = /\s*\//y;
const name = /[\p{L}_$][\w$.:-]*/uy;
const equals = /\s*=\s*/y;
const string = /"[^"]*"|'[^']*'/y;
const ending = /(?:\/\s*)?>/y;

/** A tag of JSX. */
function tagAt(text: string, from: number): Piece {
  let at = from + 1;
  const next = (pattern: RegExp): string | undefined => {
    pattern.lastIndex = at;
    const all = pattern.exec(text)?.[0];
    at += all?.length ?? 0;
    return all;
  };
  const broken = (): never => {
    throw new NoMdx(`A tag cannot be read: “${text.slice(from, from + 20)}”.`);
  };
  const closing = next(slash) !== undefined;
  next(blanks);
  const tag = next(name) ?? "";
  let attributes = "";
  for (;;) {
    next(blanks);
    const end = next(ending);
    if (end) {
      const selfClosed = end.length > 1;
      if (closing && (attributes || selfClosed)) broken();
      return { kind: "tag", from, to: at, name: tag, closing, selfClosed, attributes };
    }
    if (text[at] === "{") {
      at = expressionAt(text, at).to;
      attributes += ` ...="${computed}"`;
      continue;
    }
    attributes += ` ${next(name) ?? broken()}`;
    if (next(equals) === undefined) continue;
    if (text[at] === "{") {
      at = expressionAt(text, at).to;
      attributes += `="${computed}"`;
    } else attributes += `=${next(string) ?? broken()}`;
  }
}

/** What stands at a `<` or a `{`. */
export function pieceAt(text: string, from: number): Piece {
  if (text[from] === "{") return expressionAt(text, from);
  if (!text.startsWith("<!--", from)) return tagAt(text, from);
  // Some generators of sites allow the comments of HTML.
  const end = text.indexOf("-->", from + 4);
  if (end < 0) throw new NoMdx("A comment has no end.");
  return { kind: "expression", from, to: end + 3, code: "" };
}

/** Whether a text is whole as a module's code; not whether more of it would be. */
export function isModule(code: string): boolean {
  try {
    Script.parse(code, options);
    return true;
  } catch {
    return false;
  }
}
