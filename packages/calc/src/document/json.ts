import { pointerTo } from "../drivetrain/index.js";
import { errorOf, type Finding, type FindingCode, type FindingTerm, type FindingValues } from "../stages/index.js";

/** JSON text nested deeper than this is no build: ten times what one has, and far from what a stack bears. */
const deepest = 250;
const longest = 5e6;
/** So many values, and different keys, are far beyond ten thousand stages; more would only keep the page waiting. */
const mostValues = 250_000;
const mostKeys = 20_000;

/** The start of a text, quoted. */
const quoted = (text: string): string => JSON.stringify(text.slice(0, 20));

/**
 * Looks through JSON text (RFC 8259) for the first place where it is none, and for keys that an object has twice, which
 * `JSON.parse` would let pass. What the text says is left to `JSON.parse`, which is many times as fast and knows every escape.
 */
function faultIn(text: string): Finding | undefined {
  const path: (string | number)[] = [];
  /** For each key, the last object at each depth that has it: objects are numbered as they begin. */
  const seen = new Map<string, number[]>();
  let values = 0;
  let at = 0;
  let fault: Finding | undefined;

  const fail = (code: FindingCode, values: FindingValues): false => {
    let line = 1;
    let start = 0;
    for (let n = 0; n < at; n++)
      if (text[n] === "\n" || (text[n] === "\r" && text[n + 1] !== "\n")) {
        line++;
        start = n + 1;
      }
    fault = errorOf("shape", code, path.reduce<string>(pointerTo, ""), { line, column: at - start + 1, ...values });
    return false;
  };
  const expected = (what: string | FindingTerm): false =>
    fail("not-json", { found: at < text.length ? quoted(text.slice(at)) : { term: "end" }, expected: what });

  const skip = (): string => {
    for (;;) {
      const code = text.charCodeAt(at);
      if (code !== 32 && code !== 10 && code !== 13 && code !== 9) return text[at] ?? "";
      at++;
    }
  };
  /** Moves behind a quoted text and returns what it says; undefined where it is broken, with `at` at the fault. */
  const readText = (): string | undefined => {
    const start = at++;
    let escaped = false;
    for (;;) {
      const code = text.charCodeAt(at);
      // NaN, behind the end, is not above 31 either.
      if (!(code > 31)) return undefined;
      if (code === 34) break;
      if (code === 92) {
        escaped = true;
        simple.lastIndex = at;
        if (!simple.test(text)) return undefined;
        at = simple.lastIndex;
      } else at++;
    }
    at++;
    return escaped ? (JSON.parse(text.slice(start, at)) as string) : text.slice(start + 1, at - 1);
  };
  const simple = /\\(?:["\\/bfnrt]|u[\dA-Fa-f]{4})/y;
  const plain = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[Ee][+-]?\d+)?|true|false|null/y;

  /** Whether what stands here is a value; moves behind it. */
  const value = (): boolean => {
    const first = skip();
    if (++values > mostValues || seen.size > mostKeys) return fail("too-long", { found: values, most: mostValues });
    if (first === '"') return readText() !== undefined || expected({ term: "rest" });
    if (first !== "{" && first !== "[") {
      plain.lastIndex = at;
      if (!plain.test(text)) return expected({ term: "value" });
      at = plain.lastIndex;
      return true;
    }
    if (path.length >= deepest) return fail("too-deep", { most: deepest });
    const end = first === "{" ? "}" : "]";
    const number = values;
    const depth = path.length;
    at++;
    if (skip() === end) return !!++at;
    for (let n = 0; ; n++) {
      path.push(n);
      if (end === "}") {
        const start = at;
        const key = skip() === '"' ? readText() : undefined;
        if (key === undefined) {
          path.pop();
          return expected({ term: "key" });
        }
        path[path.length - 1] = key;
        let holders = seen.get(key);
        if (!holders) seen.set(key, (holders = []));
        if (holders[depth] === number) {
          at = start;
          return fail("key-repeated", { found: quoted(key) });
        }
        holders[depth] = number;
        if (skip() !== ":") return expected('":"');
        at++;
      }
      if (!value()) return false;
      path.pop();
      const next = skip();
      if (next === end) return !!++at;
      if (next !== ",") return expected({ term: "commaOr", amount: `"${end}"` });
      at++;
      skip();
    }
  };

  if (text.length > longest) fail("too-long", { found: text.length, most: longest });
  else if (value() && skip()) expected({ term: "end" });
  return fault;
}

/**
 * How many texts of valid JSON are keys: those with a colon behind. Where different ones are asked for, it stops at more of
 * them than a build may have; of text that is no JSON anything may come out.
 */
function keysWritten(text: string, names?: Set<string>): number {
  const isEscaped = (at: number): boolean => {
    let before = at - 1;
    while (text.charCodeAt(before) === 92) before--;
    return (at - before) % 2 === 0;
  };
  let count = 0;
  for (let at = text.indexOf('"'); at >= 0; at = text.indexOf('"', at)) {
    const start = at;
    do at = text.indexOf('"', at + 1);
    while (isEscaped(at));
    if (at < 0) break;
    const end = at;
    let code: number;
    do code = text.charCodeAt(++at);
    while (code === 32 || code === 10 || code === 13 || code === 9);
    if (code !== 58) continue;
    count++;
    if (names?.add(text.slice(start, end)) && names.size > mostKeys) break;
  }
  return count;
}

/** How many keys data have; undefined where there is more in them, or it is nested deeper, than any build has. */
function keysIn(data: unknown): number | undefined {
  let [keys, values] = [0, 0];
  const isCounted = (one: unknown, depth: number): boolean => {
    if (++values > mostValues) return false;
    if (typeof one !== "object" || one === null) return true;
    if (depth >= deepest) return false;
    const inner = Object.values(one);
    if (!Array.isArray(one)) keys += inner.length;
    return inner.every((next) => isCounted(next, depth + 1));
  };
  return isCounted(data, 0) ? keys : undefined;
}

/** Whether a text may hold more values than a build: each but the first of its list or object has a comma before it. */
function mayHoldTooMuch(text: string): boolean {
  if (text.length < 2 * mostValues) return false;
  let commas = 0;
  for (let at = text.indexOf(","); at >= 0 && commas < mostValues; at = text.indexOf(",", at + 1)) commas++;
  return commas >= mostValues;
}

/** What `JSON.parse` makes of a text, where that is all that it says and no more than a build may hold. */
function plainly(text: string): unknown {
  if (text.length > longest || mayHoldTooMuch(text)) return undefined;
  const written = keysWritten(text);
  if (written > mostKeys) {
    const names = new Set<string>();
    keysWritten(text, names);
    if (names.size > mostKeys) return undefined;
  }
  try {
    const data: unknown = JSON.parse(text);
    // As many as are written: none stands twice.
    return keysIn(data) === written ? data : undefined;
  } catch {
    return undefined;
  }
}

/**
 * The data that JSON text stands for, or the first place where it is none, with keys that an object has twice, which
 * `JSON.parse` lets pass. What is wrong is looked for letter by letter, where something is.
 */
export function readJson(text: string): { readonly data: unknown } | { readonly fault: Finding } {
  const data = plainly(text);
  if (data !== undefined) return { data };
  const fault = faultIn(text);
  return fault ? { fault } : { data: JSON.parse(text) };
}
