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

/** An id for a new stage: its kind's name and a number, which nothing has in any of the builds. */
export function freeId(kind: string, builds: readonly Build[], isTaken = (_: string): boolean => false): string {
  const finders = builds.map(oneIn);
  const others = new Set(
    builds.flatMap((build) => {
      const { alternatives = [], references = [] } = build as { references?: Build["alternatives"] } & Build;
      return [...alternatives, ...references].map(({ id }) => id);
    }),
  );
  for (let n = 1; ; n++) {
    const id = `${kind}-${n}`;
    if (!isTaken(id) && !others.has(id) && !finders.some((find) => find(id))) return id;
  }
}
