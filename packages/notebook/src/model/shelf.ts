import { readUnfinished, type Reading } from "@meshwright/calc/document";
import { oneIn, type Build, type Change, type Part } from "@meshwright/calc/drivetrain";
import type { SheetParts } from "@meshwright/calc/parts";
import type { Finding } from "@meshwright/calc/stages";
import type { Fields } from "./notebook.js";
import { isSame, Known, updated } from "./same-part.js";
import type { Session } from "./session.js";

/** The parts of a notebook, whether there is a drivetrain or not. */
export const partsOf = ({ build, shelf }: Pick<Fields, "build" | "shelf">): readonly Part[] =>
  build?.parts ?? shelf ?? [];

/** Parts without a drivetrain are read as a drivetrain reads them. */
export const readShelf = (parts: unknown): Reading =>
  readUnfinished({ format: "meshwright-build/1", outputs: [{ id: "wheels", stages: [] }], parts });

const set = (session: Session, parts: readonly Part[], name: string): readonly Finding[] => {
  if (session.build)
    return session.change([{ set: "parts", to: parts.length ? parts : null }] as readonly Change[], name);
  const reading = readShelf(parts);
  if (!reading.ok) return reading.findings.filter(({ severity }) => severity === "error");
  session.put({ shelf: parts.length ? reading.build.parts : undefined }, name);
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

/** What came of a sheet. */
interface Shelved {
  /** What stands against it: then nothing was done. */
  readonly findings: readonly Finding[];
  /** How many parts of the sheet are new, say something else than before, and were there just so. */
  readonly added: number;
  readonly updated: number;
  readonly left: number;
  /** How many lost the name of their stage. */
  readonly unplaced: number;
}

/**
 * Puts parts of a sheet on the shelf. An id that the sheet itself gives says which part is meant; without one it is the part of
 * the same name or number of which nothing differs, and what differs is another part, with an id of its own. What the builder has
 * set on a part stays where the sheet does not speak of it. What speaks of a stage that the drivetrain does not have lies there
 * without it.
 *
 * @param read the sheet, as `partsFromSheet` gives it
 * @param name what Undo calls it
 */
export function shelve(session: Session, read: Pick<SheetParts, "parts" | "rows">, name: string): Shelved {
  const { build } = session;
  const find = build && oneIn(build);
  const before = partsOf(session.notebook);
  const byId = new Map(before.map((part) => [part.id, part]));
  const parts = new Map(byId);
  const known = new Known(before);
  const isGiven = (n: number): boolean => {
    const { id } = read.parts[n]!;
    return read.rows[n]!.hasOwnId && (byId.has(id) || !find?.(id));
  };
  read.parts.forEach(({ id }, n) => {
    if (isGiven(n) && byId.has(id)) known.leaveOut(byId.get(id)!);
  });
  const given = new Set(read.parts.flatMap(({ id }, n) => (isGiven(n) ? [id] : [])));
  const counts = { added: 0, updated: 0, left: 0, unplaced: 0 };
  read.parts.forEach((row, n) => {
    const { stage, ...bare } = row;
    const isPlaced = stage !== undefined && find?.(stage) !== undefined;
    if (stage !== undefined && !isPlaced) counts.unplaced++;
    const part: Part = { ...bare, ...(isPlaced && { stage }) };
    const was = isGiven(n) ? byId.get(part.id) : known.find(part);
    if (!was) {
      const id = isGiven(n) ? part.id : freePart(part.id, build, new Set([...parts.keys(), ...given]));
      parts.set(id, { ...part, id });
      counts.added++;
      return;
    }
    const now = updated(was, { ...part, id: was.id });
    parts.set(was.id, now);
    counts[isSame(was, now) ? "left" : "updated"]++;
  });
  return { findings: set(session, [...parts.values()], name), ...counts };
}

/** Puts one part on the shelf, beside whatever lies there. */
export function addPart(session: Session, part: Omit<Part, "id">, name: string): readonly Finding[] {
  const parts = partsOf(session.notebook);
  const words = (part.name ?? part.is)
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .slice(0, 40)
    .replace(/^-|-$/g, "");
  const id = freePart(`part-${words || part.is}`, session.build, new Set(parts.map((one) => one.id)));
  return set(session, [...parts, { ...part, id }], name);
}

/** Changes one part that lies on the shelf. */
export function withPart(session: Session, part: Part, name: string): readonly Finding[] {
  const parts = partsOf(session.notebook);
  return set(
    session,
    parts.map((one) => (one.id === part.id ? part : one)),
    name,
  );
}

/** Takes one part off the shelf. */
export function withoutPart(session: Session, { id, name }: Part): readonly Finding[] {
  return set(
    session,
    partsOf(session.notebook).filter((one) => one.id !== id),
    `${name ?? id} taken off the shelf`,
  );
}
