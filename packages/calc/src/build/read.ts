import { rational } from "../exact/index.js";
import { kinds, type Shape, type Stage } from "../kinds/index.js";
import { longestText, scalars, type Scalar } from "./scalars.js";
import { shapes, stageShape } from "./shapes.js";
import type { Finding } from "./types.js";

const own = (object: object, key: string): boolean => Object.prototype.hasOwnProperty.call(object, key);

/** One more step of a JSON Pointer. */
export const step = (pointer: string, key: string | number): string =>
  `${pointer}/${String(key).replace(/~/g, "~0").replace(/\//g, "~1")}`;

const addressPattern = /^[a-z][A-Za-z0-9-]{0,99}(\.[A-Za-z0-9-]{1,99}){0,2}$/;
const deepest = 50;

/** What was found, in a few words. */
const found = (value: unknown): string => {
  if (value === undefined) return "nothing";
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === "object" && value) return "an object";
  const text = typeof value === "string" ? JSON.stringify(value.slice(0, 40)) : String(value);
  return text.slice(0, 42);
};

/**
 * Reads a value of a shape into a copy of its own, and gathers what is wrong with the shape. Counts become numbers; all
 * else stays as it was written.
 */
export class Reader {
  readonly findings: Finding[] = [];

  say(severity: Finding["severity"], about: Finding["about"], code: string, pointer: string, message: string): void {
    this.findings.push({ severity, about, code, pointer, message });
  }

  #wrong(code: string, pointer: string, expected: string, value: unknown): undefined {
    this.say("error", "shape", code, pointer, `Expected ${expected}, found ${found(value)}.`);
    return undefined;
  }

  read(shape: string, value: unknown, pointer: string, depth = 0): unknown {
    const scalar = scalars[shape];
    if (scalar) return this.#scalar(scalar, shape, value, pointer);
    if (shape === "flag") return typeof value === "boolean" ? value : this.#wrong("not-a-flag", pointer, "true or false", value);
    if (shape === "any") return value;
    if (shape === "stage") return this.#stage(value, pointer, depth + 1);
    if (shape === "span" && typeof value !== "object") return this.read("positive", value, pointer);
    const [, item, from, to] = /^\[(.+)\](\d*)-?(\d*)$/.exec(shape) ?? [];
    if (item) return this.#list(item, +from!, +to!, value, pointer, depth);
    if (shape.includes("|"))
      return shape.split("|").includes(value as string)
        ? value
        : this.#wrong("not-a-choice", pointer, `one of ${shape.split("|").join(", ")}`, value);
    if (typeof value !== "object" || value === null || Array.isArray(value))
      return this.#wrong("not-an-object", pointer, "an object", value);
    return shape[0] === "{"
      ? this.#map(shape.slice(1, -1), value, pointer)
      : this.#object(shapes[shape]!, value, pointer, depth);
  }

  #scalar(scalar: Scalar, shape: string, value: unknown, pointer: string): unknown {
    if (typeof value === "string") {
      const { pattern } = scalar;
      // A text that is too long even for pairs of code units is not worth counting.
      const fits = pattern
        ? value.length < 120 && pattern.test(value)
        : value.length <= longestText * 2 && [...value].length <= longestText;
      if (fits) return scalar.whole ? Number(value) : value;
    } else if (typeof value === "number") {
      const { from = NaN, above = NaN, to = Infinity, whole } = scalar;
      if (Number.isFinite(value) && (value >= from || value > above) && value <= to && !(whole && value % 1)) {
        try {
          rational(value);
        } catch (error) {
          this.say("error", "meaning", "number-long", pointer, (error as Error).message);
        }
        return value;
      }
    }
    return this.#wrong(`not-${shape}`, pointer, scalar.expected, value);
  }

  #list(item: string, from: number, to: number, value: unknown, pointer: string, depth: number): unknown {
    const size = Array.isArray(value) ? value.length : -1;
    if (size < from || size > to) return this.#wrong("not-a-list", pointer, `a list of ${from} to ${to}`, value);
    return (value as unknown[]).map((one, n) => this.read(item, one, step(pointer, n), depth));
  }

  #map(item: string, value: object, pointer: string): unknown {
    const copy: Record<string, unknown> = {};
    for (const [key, one] of Object.entries(value))
      if (addressPattern.test(key)) copy[key] = this.read(item, one, step(pointer, key));
      else this.#wrong("not-an-address", step(pointer, key), "an address such as rear-ring.driven", key);
    return copy;
  }

  #object(shape: Shape, value: object, pointer: string, depth: number): unknown {
    const copy: Record<string, unknown> = {};
    for (const [key, one] of Object.entries(value)) {
      if (own(shape, key)) copy[key] = this.read(shape[key]!.replace("!", ""), one, step(pointer, key), depth);
      else if (key.startsWith("x-")) copy[key] = one;
      else this.#wrong("unknown-key", step(pointer, key), `one of ${Object.keys(shape).join(", ")}, or x-…`, key);
    }
    for (const key in shape)
      if (shape[key]!.endsWith("!") && !own(value, key)) this.#wrong("missing", pointer, `"${key}"`, undefined);
    return copy;
  }

  #stage(value: unknown, pointer: string, depth: number): unknown {
    const kind = (value as Stage | null | undefined)?.kind;
    if (typeof kind !== "string" || !own(kinds, kind))
      return this.#wrong("unknown-kind", step(pointer, "kind"), `one of ${Object.keys(kinds).join(", ")}`, kind);
    if (depth > deepest) return this.#wrong("too-deep", pointer, `stages nested ${deepest} deep at the most`, undefined);
    return this.#object(stageShape(kind), value as object, pointer, depth);
  }
}
