import { openDB, type DBSchema, type IDBPDatabase } from "idb";
import type { Build } from "@meshwright/calc/drivetrain";
import type { Notebook } from "../model/index.js";

/** A notebook as it lies in the database. */
export interface Kept {
  readonly id: string;
  /** Counts up with every write; who writes names the one that they follow. */
  readonly version: number;
  /** Which edit of which tab it holds. */
  readonly edit: string;
  /** ISO 8601, as the clock said. Never compared: clocks are set back. */
  readonly at: string;
  readonly notebook: Notebook;
  /** What is large lies apart. */
  readonly isLight?: true;
}

/** What came too late to be the notebook, kept beside it under a name. */
export interface Aside {
  readonly key: string;
  readonly of: string;
  /** "Limpet, other tab, 18:42". */
  readonly name: string;
  readonly at: string;
  readonly notebook: Notebook;
}

/** What of a notebook is large and seldom another: it lies apart, and is not written with every count. */
interface Apart {
  readonly id: string;
  readonly parts?: Build["parts"];
  readonly shelf?: Notebook["shelf"];
  readonly versions?: Notebook["versions"];
  readonly days?: Notebook["days"];
  readonly handed?: Notebook["handed"];
}

const apartOf = ({ id, build, shelf, versions, days, handed }: Notebook): Apart => ({
  id,
  ...(build?.parts && { parts: build.parts }),
  ...(shelf && { shelf }),
  ...(versions && { versions }),
  ...(days && { days }),
  ...(handed && { handed }),
});

const sameApart = (one: Apart, other: Apart): boolean =>
  (["parts", "shelf", "versions", "days", "handed"] as const).every((key) => one[key] === other[key]);

/** A notebook without what lies apart. */
function light(notebook: Notebook): Notebook {
  const { shelf: _shelf, versions: _versions, days: _days, handed: _handed, ...rest } = notebook;
  if (!rest.build) return rest;
  const { parts: _parts, ...build } = rest.build;
  return { ...rest, build };
}

/** The whole again. */
function joined(kept: Kept, apart: Apart | undefined): Kept {
  if (!apart || !kept.isLight) return kept;
  const { id: _, parts, ...rest } = apart;
  const { build } = kept.notebook;
  return {
    ...kept,
    notebook: { ...kept.notebook, ...rest, ...(build && { build: { ...build, ...(parts && { parts }) } }) },
  };
}

interface Schema extends DBSchema {
  notebooks: { key: string; value: Kept };
  apart: { key: string; value: Apart };
  aside: { key: string; value: Aside; indexes: { of: string } };
}

export type Database = IDBPDatabase<Schema>;

/** The notebooks of this page: files from disk share an origin, so each has a database of its own. */
export const databaseName = (address: string): string =>
  `meshwright notebooks ${new URL(address).pathname.replace(/\/index\.html$/, "/")}`;

/** What may happen to the connection while it is open. */
export interface Interrupted {
  /** A newer page wants to change the database: this connection is closed, and nothing more can be kept. */
  readonly closed: () => void;
}

/** Opens the database. Rejects where the browser keeps nothing for this page. */
export async function openDatabase(name: string, { closed }: Interrupted): Promise<Database> {
  if (!globalThis.indexedDB) throw new Error("no IndexedDB");
  return openDB<Schema>(name, 2, {
    upgrade(database, from) {
      if (from < 1) {
        database.createObjectStore("notebooks", { keyPath: "id" });
        database.createObjectStore("aside", { keyPath: "key" }).createIndex("of", "of");
      }
      database.createObjectStore("apart", { keyPath: "id" });
    },
    blocking(_current, _blocked, event) {
      (event.target as IDBDatabase).close();
      closed();
    },
    terminated: closed,
  });
}

/** What a write came to. */
export type Written = { readonly late: false; readonly version: number } | { readonly late: true; readonly kept: Kept };

/** Where a write stands: what it follows, and under which name it is set aside where it comes too late. */
export interface Writing {
  readonly follows: number;
  /** An edit that may have been written since by the page that this goes on for. */
  readonly over?: string | undefined;
  readonly edit: string;
  readonly at: string;
  readonly asideName: string;
  /** The notebook as it lies there, where that is known. */
  readonly before: Notebook | undefined;
}

/** A notebook as it lies there, whole. */
export async function keptOne(database: Database, id: string): Promise<Kept | undefined> {
  const transaction = database.transaction(["notebooks", "apart"]);
  const [kept, apart] = await Promise.all([
    transaction.objectStore("notebooks").get(id),
    transaction.objectStore("apart").get(id),
  ]);
  return kept && joined(kept, apart);
}

/** Takes a notebook away. */
export async function removeKept(database: Database, id: string): Promise<void> {
  const transaction = database.transaction(["notebooks", "apart"], "readwrite");
  await Promise.all([
    transaction.objectStore("notebooks").delete(id),
    transaction.objectStore("apart").delete(id),
    transaction.done,
  ]);
}

/**
 * Writes a notebook where it follows what lies there; else it is set aside. One transaction: whole, or not at all.
 */
export async function write(database: Database, notebook: Notebook, writing: Writing): Promise<Written> {
  const { follows, over, edit, at, asideName, before } = writing;
  const transaction = database.transaction(["notebooks", "apart", "aside"], "readwrite", { durability: "strict" });
  const notebooks = transaction.objectStore("notebooks");
  const kept = await notebooks.get(notebook.id);
  const isLate = kept !== undefined && kept.version !== follows && (over === undefined || kept.edit !== over);
  const version = (kept?.version ?? follows) + 1;
  if (isLate) {
    if (kept.edit !== edit)
      void transaction
        .objectStore("aside")
        .put({ key: `${notebook.id} ${edit}`, of: notebook.id, name: asideName, at, notebook })
        .catch(() => undefined);
  } else {
    const apart = apartOf(notebook);
    if (!before || !kept?.isLight || kept.version !== follows || !sameApart(apart, apartOf(before)))
      void transaction
        .objectStore("apart")
        .put(apart)
        .catch(() => undefined);
    void notebooks
      .put({ id: notebook.id, version, edit, at, notebook: light(notebook), isLight: true })
      .catch(() => undefined);
  }
  const late = isLate && kept.edit !== edit ? joined(kept, await transaction.objectStore("apart").get(kept.id)) : kept;
  // Not waiting for the page: it may be going away.
  transaction.commit();
  await transaction.done;
  // What is there already was written by this same edit, before a kill.
  if (isLate && kept.edit === edit) return { late: false, version: kept.version };
  return isLate ? { late: true, kept: late! } : { late: false, version };
}

/** Everything that is kept, without what lies apart, the one written last first. */
export async function allKept(database: Database): Promise<readonly Kept[]> {
  return (await database.getAll("notebooks")).sort((one, other) => (one.at < other.at ? 1 : -1));
}
