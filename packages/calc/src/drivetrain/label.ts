import type { Build } from "./types.js";
import { oneIn, stagesOf, type Finder } from "./walk.js";

type Loose = Readonly<Record<string, unknown>>;

/** Whose stages a stage is among: those of an axle, a branch or a lever's position; empty where they are the shared ones. */
const ownerAt = (pointer: string): string => pointer.replace(/\/stages\/\d+$/, "");

const ownerName = (build: Build, owner: string): string => {
  const { label, id } = owner
    .split("/")
    .slice(1)
    .reduce((at, key) => at[key] as Loose, build as unknown as Loose);
  return String(label ?? id);
};

/**
 * What people call the thing at an address: the gear's own name, else that of its stage, axle or shaft; else the address. Where
 * several stages of the build bear one name, that of the axle, branch or position that it belongs to stands before it.
 *
 * @param find of the same build, where many are asked for
 * @param told how two names are put together
 *
 * @example
 * const { build } = buildFromAttributes({ stages: "Spur: 15 to 62", front: "Ring: 13 to 38", rear: "Ring: 12 to 35" });
 * labelAt(build!, "front-ring.driver"); // => "front: Ring"
 * labelAt(build!, "spur.driver"); // => "Spur"
 */
export function labelAt(
  build: Build,
  address: string,
  find: Finder = oneIn(build),
  told = (owner: string, name: string): string => `${owner}: ${name}`,
): string {
  const [id, field] = address.split(".") as [string, string?];
  const thing = find.value(id) as Loose | undefined;
  const key = field !== undefined && thing?.[`${field}Label`] ? `${field}Label` : "label";
  const name = thing?.[key];
  if (typeof name !== "string" || !name) return address;
  const owner = find(id)?.stage ? ownerAt(find(id)!.pointer) : "";
  const isShared =
    owner &&
    stagesOf(build).some(
      ({ stage, pointer }) => (stage as unknown as Loose)[key] === name && ownerAt(pointer) !== owner,
    );
  return isShared ? told(ownerName(build, owner), name) : name;
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
