import { nearestTo } from "../document/index.js";
import { placesOf, shapes, spotOf, stageShape, valueAt, type Build } from "../drivetrain/index.js";
import type { Shape } from "../stages/index.js";

/** What is wrong with an address, and the nearest that there are. */
export interface AddressFault {
  readonly address: string;
  readonly nearest: readonly string[];
}

/** What a field's letters say: the name of an object's shape, or that it is a list. */
const inside = (letters: string): string => letters.replace(/!$/, "");

/** The addresses that one more step can lead to. */
function stepsFrom(address: string, shape: Shape | undefined, value: unknown): readonly string[] {
  if (Array.isArray(value)) return value.map((_, n) => `${address}.${n}`);
  const fields =
    shape ?? (typeof value === "object" && value !== null ? (value as Readonly<Record<string, unknown>>) : {});
  return Object.keys(fields).map((field) => `${address}.${field}`);
}

/** The same for what has to be one value: a whole object or list is none, and its own fields are the nearest. */
export function singleFault(build: Build, address: string): AddressFault | undefined {
  const found = addressFault(build, address);
  const value = found ? undefined : valueAt(build, address);
  if (typeof value !== "object" || value === null) return found;
  return { address, nearest: stepsFrom(address, undefined, value).slice(0, 3) };
}

/**
 * What is wrong with an address such as `primary.driver` or `front.wheel.diameter`: nothing where the build has such a place, though
 * its value may not be given.
 *
 * @example
 * const ring = { id: "ring", kind: "pair", driver: 12, driven: 35 };
 * const build = parseBuild({ format: "meshwright-build/1", outputs: [{ id: "rear", stages: [ring] }] });
 * addressFault(build, "rear.wheel.diameter"); // => undefined
 * addressFault(build, "rign.driver")!.nearest; // => ["ring.driver"]
 * addressFault(build, "ring.drivr")!.nearest; // => ["ring.driver"]
 */
export function addressFault(build: Build, address: string): AddressFault | undefined {
  const [id = "", ...fields] = address.split(".");
  const rest = (known: string): string => [known, ...fields].join(".");
  const isKey = Object.hasOwn(shapes.build!, id);
  const spot = isKey ? undefined : spotOf(build, id);
  if (!isKey && !spot) {
    const ids = [...placesOf(build).keys(), ...Object.keys(shapes.build!)];
    return { address, nearest: [...new Set(nearestTo(id, ids))].map(rest) };
  }
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
    if (!steps.includes(next)) return { address, nearest: nearestTo(next, steps) };
    letters = shape && !Array.isArray(value) ? inside(shape[field] ?? "") : letters;
    shape = shapes[letters];
    at = next;
  }
  return undefined;
}
