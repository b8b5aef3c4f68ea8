import type { Build } from "./types.js";
import { oneIn, type Finder } from "./walk.js";

/**
 * What people call the thing at an address: the gear's own name, else that of its stage, axle or shaft; else the address.
 *
 * @param find of the same build, where many are asked for
 */
export function labelAt(build: Build, address: string, find: Finder = oneIn(build)): string {
  const [id, field] = address.split(".") as [string, string?];
  const thing = find.value(id) as Readonly<Record<string, unknown>> | undefined;
  const name = (field !== undefined && thing?.[`${field}Label`]) || thing?.label;
  return typeof name === "string" && name ? name : address;
}

/** An id of the kind's name and a number, one that nothing has. */
export function freeId(kind: string, isTaken: (id: string) => boolean): string {
  let n = 1;
  while (isTaken(`${kind}-${n}`)) n++;
  return `${kind}-${n}`;
}
