import { rational } from "../../exact/index.js";
import { shapes, stageShape } from "../../drivetrain/index.js";
import { stageShapes, type Shape, type StageKind } from "../../stages/index.js";
import { addressPattern, longestText, scalars } from "../scalars.js";

/** Not so, or not plainly: whoever reads in full will tell. */
export const no = (): never => {
  throw new RangeError();
};

/** Goes on only where something is so. */
export const must = (isSo: unknown): void => {
  if (!isSo) no();
};

const own = (holder: object, key: string): boolean => Object.hasOwn(holder, key);

/** Stages inside stages, and so much data that is only carried along, have an end. */
const deepest = 50;
const mostCarried = 20_000;

/** Reads a value of a shape into a copy of its own, as the full reader does, or throws. */
export function leanShape(data: unknown): unknown {
  let carried = 0;

  const carry = (value: unknown, depth: number): unknown => {
    must(depth < deepest && ++carried < mostCarried);
    if (typeof value === "object" && value)
      return Array.isArray(value)
        ? Array.from(value, (one) => carry(one, depth + 1))
        : Object.fromEntries(Object.entries(value).map(([key, one]) => [key, carry(one, depth + 1)]));
    must(value === null || typeof value === "string" || typeof value === "boolean" || Number.isFinite(value));
    return value;
  };

  const fields = (shape: Shape, value: object, depth: number): unknown => {
    const copy: Record<string, unknown> = {};
    for (const [key, one] of Object.entries(value))
      if (own(shape, key)) {
        if (one !== undefined) copy[key] = read(shape[key]!, one, depth);
      } else copy[key.startsWith("x-") ? key : no()] = carry(one, 0);
    for (const key in shape) must(!shape[key]!.endsWith("!") || own(copy, key));
    return copy;
  };

  const read = (letters: string, value: unknown, depth: number): unknown => {
    const name = letters.replace("!", "");
    const scalar = own(scalars, name) && scalars[name]!;
    if (scalar) {
      const { pattern, from, above, whole } = scalar;
      // A number that is written as its text has to be is one; others are too long, or not plainly whole.
      must(typeof value === "string" || (typeof value === "number" && (from ?? above) !== undefined));
      const text = String(value);
      must(pattern ? text.length < 120 && pattern.test(text) : text.length <= longestText);
      if (typeof value === "number" && value % 1) rational(value);
      return whole ? Number(value) : value;
    }
    if (name === "any") return carry(value, 0);
    if (name === "flag") must(typeof value === "boolean");
    else if (name.includes("|")) must(typeof value === "string" && name.split("|").includes(value));
    else {
      if (name === "span" && typeof value !== "object") return read("positive", value, depth);
      must(typeof value === "object" && value);
      const holder = value as Record<string, unknown>;
      const [, item, from, to] = /^\[(.+)\](\d+)-(\d+)$/.exec(name) ?? [];
      if (item) {
        must(Array.isArray(value) && value.length >= +from! && value.length <= +to!);
        return Array.from(value as unknown[], (one) => read(item, one, depth));
      }
      must(!Array.isArray(value));
      if (name === "stage") {
        const { kind } = holder as { kind: StageKind };
        must(typeof kind === "string" && own(stageShapes, kind) && depth < deepest);
        return fields(stageShape(kind), holder, depth + 1);
      }
      if (name[0] !== "{") return fields(shapes[name]!, holder, depth);
      return Object.fromEntries(
        Object.entries(holder).map(([key, one]) => [
          addressPattern.test(key) ? key : no(),
          read(name.slice(1, -1), one, 0),
        ]),
      );
    }
    return value;
  };

  return read("build", data, 0);
}
