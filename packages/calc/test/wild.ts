import * as fc from "fast-check";
import { Bounded, MeshwrightError, Rational } from "../src/exact/index.js";

/** Counts as people, slips and programs give them. */
export const anyCount = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: 1, max: 120 }) },
  fc.integer({ min: 1, max: 1_000_000 }),
  fc.constantFrom(0, -5, 15.5, NaN, Infinity, -Infinity, 1e21, 2 ** 53, 0.1 + 0.2),
  fc.double(),
);

/** Numbers as JSON or text. */
export const anyNumber = fc.oneof(
  { weight: 4, arbitrary: fc.integer({ min: -200, max: 200 }).map((n) => (n / 100).toString()) },
  { weight: 4, arbitrary: fc.integer({ min: 1, max: 90 }) },
  fc.constantFrom("1e400", "1e-400", "-1e300", "1e15", "1/3", "0", "", "none", "1/0", "89.999", "1e-9", "-1"),
  fc.double(),
  fc.string({ maxLength: 4 }),
);

/** Lengths as text. */
export const anyLength = fc.oneof(
  { weight: 5, arbitrary: fc.integer({ min: -100, max: 8000 }).map((n) => `${n / 100} mm`) },
  fc.integer({ min: 1, max: 200 }).map((n) => `${n}/64 in`),
  fc.constantFrom("0 mm", "1e400 m", "1e-400 mm", "-5 mm", "12", "1e14 ft", "-0 mm", "wide", ""),
  fc.string({ maxLength: 5 }).map((text) => `${text} mm`),
);

/** A record whose fields may each be missing. */
export const partly = <T>(fields: { readonly [K in keyof T]: fc.Arbitrary<T[K]> }): fc.Arbitrary<Partial<T>> =>
  fc.record(fields, { requiredKeys: [] }) as fc.Arbitrary<Partial<T>>;

/** Where a result holds a number that is none; nothing where all are finite. */
function notFinite(value: unknown, at = "result"): string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [`${at} is ${value}`];
  if (value instanceof Rational) return /^-?\d+\/\d+$/.test(value.toFraction()) ? [] : [`${at} is ${value}`];
  if (value instanceof Bounded) return [...notFinite(value.low, `${at}.low`), ...notFinite(value.high, `${at}.high`)];
  if (typeof value === "object" && value !== null)
    return Object.entries(value).flatMap(([key, one]) => notFinite(one, `${at}.${key}`));
  return [];
}

/** What a call comes to: finite figures, or an error of ours with a code and a place. Anything else is told. */
export function faultOf(call: () => unknown): string[] {
  try {
    return notFinite(call());
  } catch (error) {
    if (!(error instanceof MeshwrightError)) return [`throws ${String(error)}`];
    if (!error.code || !error.at || /NaN"|undefined/.test(error.message)) return [`says ${error.message}`];
    return [];
  }
}
