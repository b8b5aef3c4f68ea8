import type { Build } from "./types.js";
import { oneIn } from "./walk.js";

/** What people call the thing at an address: the gear's own name, else that of its stage, axle or shaft; else the address. */
export function labelAt(build: Build, address: string): string {
  const [id, field] = address.split(".") as [string, string?];
  const thing = oneIn(build).value(id) as Readonly<Record<string, unknown>> | undefined;
  const name = (field !== undefined && thing?.[`${field}Label`]) || thing?.label;
  return typeof name === "string" && name ? name : address;
}

/** An id of the kind's name and a number, one that nothing has. */
export function freeId(kind: string, isTaken: (id: string) => boolean): string {
  let n = 1;
  while (isTaken(`${kind}-${n}`)) n++;
  return `${kind}-${n}`;
}
