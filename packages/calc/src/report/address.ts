import { nearestTo } from "../document/index.js";
import { valueAt, type Build } from "../drivetrain/index.js";
import { stepsFrom, strayFrom } from "./stray.js";

/** What is wrong with an address, and the nearest that there are. */
export interface AddressFault {
  readonly address: string;
  readonly nearest: readonly string[];
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
  const stray = strayFrom(build, address);
  return stray && { address, nearest: [...new Set(nearestTo(stray.found, stray.among()))].map(stray.whole) };
}
