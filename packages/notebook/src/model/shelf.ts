import { oneIn, type Build, type Change, type Part } from "@meshwright/calc/drivetrain";
import type { Finding } from "@meshwright/calc/stages";
import type { Fields } from "./notebook.js";
import type { Session } from "./session.js";

/** The parts of a notebook, whether there is a drivetrain or not. */
export const partsOf = ({ build, shelf }: Pick<Fields, "build" | "shelf">): readonly Part[] =>
  build?.parts ?? shelf ?? [];

const set = (session: Session, parts: readonly Part[], name: string): readonly Finding[] => {
  if (session.build)
    return session.change([{ set: "parts", to: parts.length ? parts : null }] as readonly Change[], name);
  session.put({ shelf: parts }, name);
  return [];
};

/** An id that nothing has. */
function freePart(id: string, build: Build | undefined, taken: ReadonlySet<string>): string {
  const find = build && oneIn(build);
  for (let n = 1; ; n++) {
    const one = n === 1 ? id : `${id}-${n}`;
    if (!taken.has(one) && !find?.(one)) return one;
  }
}

/**
 * Puts parts of a sheet on the shelf. What has the id of a part that lies there and came from a sheet before takes its place;
 * what speaks of a stage that the drivetrain does not have lies there without it.
 *
 * @returns what stands against it, and how many lost the name of their stage
 */
export function shelve(
  session: Session,
  read: readonly Part[],
  name: string,
): { readonly findings: readonly Finding[]; readonly unplaced: number } {
  const { build } = session;
  const find = build && oneIn(build);
  const before = partsOf(session.notebook);
  const known = new Map(before.map((part) => [part.id, part]));
  const taken = new Set<string>();
  let unplaced = 0;
  const parts = new Map(known);
  for (const { stage, ...part } of read) {
    const isOwn = known.has(part.id) && !taken.has(part.id);
    const id = isOwn ? part.id : freePart(part.id, build, new Set([...parts.keys(), ...taken]));
    taken.add(id);
    const isPlaced = stage !== undefined && find?.(stage) !== undefined;
    if (stage !== undefined && !isPlaced) unplaced++;
    parts.set(id, { ...part, id, ...(isPlaced && { stage }) });
  }
  return { findings: set(session, [...parts.values()], name), unplaced };
}

/** Changes one part. */
export function withPart(session: Session, part: Part, name: string): readonly Finding[] {
  const parts = partsOf(session.notebook);
  const isNew = !parts.some(({ id }) => id === part.id);
  const id = isNew ? freePart(part.id, session.build, new Set(parts.map((one) => one.id))) : part.id;
  return set(session, isNew ? [...parts, { ...part, id }] : parts.map((one) => (one.id === id ? part : one)), name);
}

/** Takes one part off the shelf. */
export function withoutPart(session: Session, { id, name }: Part): readonly Finding[] {
  return set(
    session,
    partsOf(session.notebook).filter((one) => one.id !== id),
    `${name ?? id} taken off the shelf`,
  );
}
