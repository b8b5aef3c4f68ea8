import { labelAt, oneIn, type Build } from "../drivetrain/index.js";
import { fill } from "../languages/index.js";

type Names = Readonly<Record<string, string>>;

/** What values are called in a language. */
export interface ValueNames {
  /** Whose it is, and what: "{0}: {1}". */
  readonly told: string;
  /** A gear of a row by its place: "gear {0}". */
  readonly gear: string;
  /** What of a stage is a count of teeth, by field; and all other fields. */
  readonly fields: Names;
  readonly quantities: Names;
  /** What has no label of its own: motor, battery, controller; and what is of an axle, its `wheel` and its `ownMotor`. */
  readonly things: Names;
}

/** What a value belongs to, and the keys from there on. */
type Owned = readonly [owner: string, keys: readonly string[]];

/**
 * Whose a value is that no stage has.
 *
 * @param called what a stage is called
 */
function ownedBy(
  build: Build,
  id: string,
  keys: readonly string[],
  { things, quantities }: ValueNames,
  called: (stage: string) => string,
): Owned {
  const mount = id === "mounts" && build.mounts?.[Number(keys[0])];
  if (mount) return [called(mount.stage), keys.slice(1)];
  const output = build.outputs.find((one) => one.id === id);
  const [first, ...rest] = keys;
  if (!output) {
    const { label } = (build[id as keyof Build] ?? {}) as { readonly label?: string };
    return [label ?? things[id] ?? quantities[id] ?? id, keys];
  }
  const axle = output.label ?? id;
  if (first === "wheel") return [fill(things.wheel!, axle), rest];
  return first === "motor" ? [output.motor?.label ?? fill(things.ownMotor!, axle), rest] : [axle, keys];
}

/**
 * What the value at an address is called: a gear by its own name, or its stage and what it is of it, with the axle where several
 * stages bear one label; and of what stands beside the stages, whose it is.
 *
 * @example
 * const { build } = buildFromAttributes({ stages: "Spur: 15 to 62", rear: "Ring: 12 to 35", motor: "1850 kv" });
 * const words = { told: "{0}: {1}", gear: "gear {0}", fields: { driver: "driver" }, quantities: {}, things: { motor: "motor" } };
 * nameAt(build!, "spur.driver", words); // => "Spur: driver"
 * nameAt(build!, "motor.kv", words); // => "motor: kV"
 */
export function nameAt(build: Build, address: string, words: ValueNames): string {
  const { told, gear, fields, quantities } = words;
  const find = oneIn(build);
  const [id, ...keys] = address.split(".") as [string, ...string[]];
  const called = (at: string): string => labelAt(build, at, find, (owner, name) => fill(told, owner, name));
  const stage = find(id)?.stage as Names | undefined;
  if (stage?.[`${keys[0]}Label`]) return called(address);
  // How a lever stands is all that there is to say of its box.
  const own = keys[0] === "selected" ? [] : keys;
  const [owner, rest]: Owned = stage ? [called(id), own] : ownedBy(build, id, keys, words, called);
  const field = rest.findLast((key) => !/^\d+$/.test(key));
  if (field === undefined) return owner;
  // A unit of the trade is called what it is in every language; of a row's gears each has its place.
  const isInRow = stage && field !== rest.at(-1);
  const known = field === "kv" ? "kV" : (fields[field] ?? quantities[field] ?? field);
  return fill(told, owner, isInRow ? fill(gear, Number(rest.at(-1)) + 1) : known);
}
