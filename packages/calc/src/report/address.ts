import { nearestTo, slipsBetween } from "../document/index.js";
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

/** What a part of a build is: the fields that it has, or, of a map or a list, what stands in it. */
interface Part {
  readonly shape: Shape | undefined;
  readonly letters: string;
}

function partAt(build: Build, id: string): Part | undefined {
  if (Object.hasOwn(shapes.build!, id)) {
    const letters = inside(shapes.build![id]!);
    return { shape: shapes[letters], letters };
  }
  const spot = spotOf(build, id);
  if (!spot) return undefined;
  const isOutput = build.outputs.some((output) => output.id === id);
  return { shape: spot.stage ? stageShape(spot.stage.kind) : isOutput ? shapes.output : shapes.branch, letters: "" };
}

/** The addresses one step further down, and what a field of a part is. */
const stepsOf = (build: Build, at: string, { shape, letters }: Part): readonly string[] =>
  stepsFrom(at, letters.startsWith("{") ? undefined : shape, valueAt(build, at));

function partOf(build: Build, at: string, { shape, letters }: Part, field: string): Part {
  const next = shape && !Array.isArray(valueAt(build, at)) ? inside(shape[field] ?? "") : letters;
  return { shape: shapes[next], letters: next };
}

/** All addresses from one on, as many steps down as an address has. */
function* addressesFrom(build: Build, at: string, part: Part, depth = 2): Generator<string> {
  yield at;
  if (depth)
    for (const step of stepsOf(build, at, part))
      yield* addressesFrom(build, step, partOf(build, at, part, step.slice(at.length + 1)), depth - 1);
}

/** Whether an address may have been meant to begin with an id. */
function beginsWith(address: string, id: string): boolean {
  const most = Math.max(1, Math.floor(id.length / 3));
  return [0, -1, 1].some((more) => slipsBetween(address.slice(0, id.length + more).toLowerCase(), id) <= most);
}

/** The addresses nearest to one that the build does not have. */
function near(build: Build, address: string): readonly string[] {
  const ids = new Set([...placesOf(build).keys(), ...Object.keys(shapes.build!)]);
  const begun = [...ids].filter((id) => beginsWith(address, id.toLowerCase()));
  return nearestTo(
    address,
    begun.flatMap((id) => [...addressesFrom(build, id, partAt(build, id)!)]),
  );
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
  let part = partAt(build, id);
  let at = id;
  for (const field of fields) {
    const next = `${at}.${field}`;
    if (!part || !stepsOf(build, at, part).includes(next)) return { address, nearest: near(build, address) };
    part = partOf(build, at, part, field);
    at = next;
  }
  return part ? undefined : { address, nearest: near(build, address) };
}

/** What may stand at an address, in the letters of its shape: `size`, `ratio`, `count`; nothing where the build has no such place. */
export function lettersAt(build: Build, address: string): string | undefined {
  if (addressFault(build, address)) return undefined;
  const [id = "", ...fields] = address.split(".");
  let part = partAt(build, id)!;
  let at = id;
  for (const field of fields) {
    part = partOf(build, at, part, field);
    at = `${at}.${field}`;
  }
  return part.letters;
}
