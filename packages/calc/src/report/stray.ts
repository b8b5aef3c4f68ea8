import { placesOf, shapes, spotOf, stageShape, valueAt, type Build } from "../drivetrain/index.js";
import type { Shape } from "../stages/index.js";

/** Where an address goes astray: the word that is not there, and what there is in its place. */
export interface Stray {
  readonly found: string;
  readonly among: () => Iterable<string>;
  /** A word of `among` as a whole address. */
  readonly whole: (word: string) => string;
}

/** What a field's letters say: the name of an object's shape, or that it is a list. */
const inside = (letters: string): string => letters.replace(/!$/, "");

/** The addresses that one more step can lead to. */
export function stepsFrom(address: string, shape: Shape | undefined, value: unknown): readonly string[] {
  if (Array.isArray(value)) return value.map((_, n) => `${address}.${n}`);
  const fields =
    shape ?? (typeof value === "object" && value !== null ? (value as Readonly<Record<string, unknown>>) : {});
  return Object.keys(fields).map((field) => `${address}.${field}`);
}

/** Where an address goes astray in a build, if it does. */
export function strayFrom(build: Build, address: string): Stray | undefined {
  const [id = "", ...fields] = address.split(".");
  const isKey = Object.hasOwn(shapes.build!, id);
  const spot = isKey ? undefined : spotOf(build, id);
  if (!isKey && !spot)
    return {
      found: id,
      among: () => [...placesOf(build).keys(), ...Object.keys(shapes.build!)],
      whole: (known) => [known, ...fields].join("."),
    };
  let shape: Shape | undefined;
  let letters = isKey ? inside(shapes.build![id]!) : "";
  if (spot?.stage) shape = stageShape(spot.stage.kind);
  else if (isKey) shape = shapes[letters];
  else shape = build.outputs.some((output) => output.id === id) ? shapes.output : shapes.branch;
  let at = id;
  for (const field of fields) {
    const value = valueAt(build, at);
    const steps = stepsFrom(at, letters.startsWith("{") ? undefined : shape, value);
    const next = `${at}.${field}`;
    if (!steps.includes(next)) return { found: next, among: () => steps, whole: (one) => one };
    letters = shape && !Array.isArray(value) ? inside(shape[field] ?? "") : letters;
    shape = shapes[letters];
    at = next;
  }
  return undefined;
}

/** Whether an address names one value of a build, which may not be given: a whole object or list is none. */
export function isSingle(build: Build, address: string): boolean {
  const value = valueAt(build, address);
  return !strayFrom(build, address) && !(typeof value === "object" && value);
}
