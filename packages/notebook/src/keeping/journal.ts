import type { Build } from "@meshwright/calc/drivetrain";
import { type Notebook, withFields, type Fields } from "../model/index.js";

// What was not written yet when the page hides goes into localStorage, which is written at once: no more than what differs
// from what lies in the database. It is replayed when the notebook is opened, if it follows what lies there.

/** What differs from the version that it follows. */
export interface Journal {
  readonly follows: number;
  readonly edit: string;
  readonly at: string;
  /** Fields of the notebook that are other; null where one is gone. */
  readonly fields: Readonly<Record<string, unknown>>;
  /** Fields of the build that are other, where there is a build before and after. */
  readonly build?: Readonly<Record<string, unknown>>;
}

const keyOf = (database: string, id: string): string => `${database} ${id}`;

const same = (one: unknown, other: unknown): boolean => one === other || JSON.stringify(one) === JSON.stringify(other);

/** The fields by which one object differs from another, null for those that are gone. */
function differing(before: object, after: object, except: readonly string[] = []): Record<string, unknown> {
  const [was, is] = [before, after] as Record<string, unknown>[];
  const keys = [...new Set([...Object.keys(was!), ...Object.keys(is!)])].filter((key) => !except.includes(key));
  return Object.fromEntries(keys.filter((key) => !same(was![key], is![key])).map((key) => [key, is![key] ?? null]));
}

/** What leads from one state of a notebook to another. */
export function journalOf(
  before: Notebook | undefined,
  after: Notebook,
  naming: Pick<Journal, "follows" | "edit" | "at">,
): Journal {
  const was = before ?? { format: after.format, id: after.id, title: "" };
  if (!was.build || !after.build) return { ...naming, fields: differing(was, after) };
  return { ...naming, fields: differing(was, after, ["build"]), build: differing(was.build, after.build) };
}

const without = (fields: Readonly<Record<string, unknown>>): Record<string, unknown> =>
  Object.fromEntries(Object.entries(fields).map(([key, value]) => [key, value ?? undefined]));

/** The state that a journal leads to. */
export function replayed(before: Notebook, journal: Journal): Notebook {
  const { build } = journal;
  const next = withFields(before, without(journal.fields) as Partial<Fields>);
  if (!build || !next.build) return next;
  const made: Record<string, unknown> = { ...next.build, ...build };
  for (const [key, value] of Object.entries(build)) if (value === null) delete made[key];
  return withFields(next, { build: made as unknown as Build });
}

/** Writes a journal; says whether it could be. */
export function writeJournal(database: string, id: string, journal: Journal): boolean {
  try {
    localStorage.setItem(keyOf(database, id), JSON.stringify(journal));
    return true;
  } catch {
    return false;
  }
}

export function readJournal(database: string, id: string): Journal | undefined {
  try {
    const journal = JSON.parse(localStorage.getItem(keyOf(database, id)) ?? "null") as Journal | null;
    return journal && typeof journal.follows === "number" && typeof journal.fields === "object" ? journal : undefined;
  } catch {
    return undefined;
  }
}

export function dropJournal(database: string, id: string): void {
  try {
    localStorage.removeItem(keyOf(database, id));
  } catch {
    // A browser that keeps nothing has nothing to drop.
  }
}
