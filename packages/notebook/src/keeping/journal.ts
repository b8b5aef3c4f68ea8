import type { Build } from "@meshwright/calc/drivetrain";
import { type Notebook, withFields, type Fields } from "../model/index.js";

// What is not in the database yet goes into localStorage, which is written at once: no more than what differs from what lies
// there. Whoever has the place to write next replays it, if it follows what lies in the database.

/** What differs from the version that it follows. */
export interface Journal {
  readonly follows: number;
  /** An edit that was being written meanwhile: it lies there or not, and this follows it as well. */
  readonly over?: string;
  readonly edit: string;
  readonly at: string;
  /** Fields of the notebook that are other; null where one is gone. */
  readonly fields: Readonly<Record<string, unknown>>;
  /** Fields of the build that are other, where there is a build before and after. */
  readonly build?: Readonly<Record<string, unknown>>;
}

/** Under which name a journal lies in localStorage. */
export const keyOf = (database: string, id: string): string => `${database} ${id}`;

const same = (one: unknown, other: unknown): boolean => one === other || JSON.stringify(one) === JSON.stringify(other);

/** The fields by which an object differs from any of others, null for those that are gone. */
function differing(others: readonly object[], after: object, except: readonly string[] = []): Record<string, unknown> {
  const [is, ...were] = [after, ...others] as Record<string, unknown>[];
  const keys = new Set([is!, ...were].flatMap((one) => Object.keys(one)).filter((key) => !except.includes(key)));
  const changed = [...keys].filter((key) => !were.every((was) => same(was[key], is![key])));
  return Object.fromEntries(changed.map((key) => [key, is![key] ?? null]));
}

/**
 * What leads to a state of a notebook, from what lies in the database.
 *
 * @param before what is known to lie there, and what may, if that was being written
 */
export function journalOf(
  before: readonly (Notebook | undefined)[],
  after: Notebook,
  naming: Pick<Journal, "follows" | "over" | "edit" | "at">,
): Journal {
  const were = before.map((one) => one ?? { format: after.format, id: after.id, title: "" });
  const builds = were.flatMap(({ build }: Partial<Notebook>) => build ?? []);
  if (!after.build || builds.length < were.length) return { ...naming, fields: differing(were, after) };
  return { ...naming, fields: differing(were, after, ["build"]), build: differing(builds, after.build) };
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

/** A journal as it lies in localStorage; nothing where that is none. */
export function journalIn(text: string | null): Journal | undefined {
  try {
    const journal = JSON.parse(text ?? "null") as Journal | null;
    return journal && typeof journal.follows === "number" && typeof journal.fields === "object" ? journal : undefined;
  } catch {
    return undefined;
  }
}

export function readJournal(database: string, id: string): Journal | undefined {
  try {
    return journalIn(localStorage.getItem(keyOf(database, id)));
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
