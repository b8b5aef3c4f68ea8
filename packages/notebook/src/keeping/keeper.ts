import { revived, type Notebook } from "../model/index.js";
import { allKept, keptOne, openDatabase, removeKept, write, type Aside, type Database, type Kept } from "./database.js";
import { deskFor, type Desk } from "./desk.js";
import {
  dropJournal,
  type Journal,
  journalIn,
  journalOf,
  keyOf,
  readJournal,
  replayed,
  writeJournal,
} from "./journal.js";

/** What can be said of a notebook's keeping. */
export type Keeping =
  /** Nothing has been edited yet that is not kept. */
  | { readonly is: "saved"; readonly at: string | undefined }
  | { readonly is: "saving" }
  /** Another tab writes; this one follows. */
  | { readonly is: "following" }
  /** The device is full, since then. */
  | { readonly is: "full"; readonly since: string }
  /** The browser keeps nothing for this page, or stopped to. */
  | { readonly is: "nowhere"; readonly why: "absent" | "newer-page" | "older-page" | "failed"; readonly since: string };

/** Whoever shows a kept notebook. */
export interface Shown {
  /** The state of keeping is another. */
  keeping(keeping: Keeping): void;
  /** Another tab has written: this is how the notebook stands now. */
  replaced(notebook: Notebook): void;
  /** What was edited here came too late, and lies beside under this name. */
  aside(name: string): void;
}

/** As soon as this after an edit its write begins: whatever is 300 ms old is to be in the database. */
const soon = 120;

/** A page that is left, or loaded anew, may hold its place for a moment after the next one is there. */
const leaving = 150;

const hourOf = (iso: string): string => {
  const date = new Date(iso);
  return `${String(date.getHours()).padStart(2, "0")}:${String(date.getMinutes()).padStart(2, "0")}`;
};

/** Keeps one notebook: writes what is edited, follows where another tab writes, and says how it stands. */
export class Keeper {
  #database: Database | undefined;
  readonly #name: string;
  readonly #shown: Shown;
  readonly #clock: () => Date;
  #notebook: Notebook;
  /** What lies in the database, as far as this tab knows. */
  #saved: Notebook | undefined;
  #version = 0;
  #edit = "";
  /** What the page before this one may still have written. */
  #over: string | undefined;
  #desk: Desk | undefined;
  #isWriter = false;
  #isDirty = false;
  #isBegun = false;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #noting: ReturnType<typeof setTimeout> | undefined;
  #writing: Promise<void> | undefined;
  /** What is being written: whether it lies there nobody knows yet. */
  #underway: { readonly notebook: Notebook; readonly edit: string } | undefined;
  #failing: string | undefined;
  #keeping: Keeping = { is: "saved", at: undefined };
  readonly #channel: BroadcastChannel | undefined;
  /** Why there is no database, where there is none. */
  readonly #absent: "absent" | "older-page";

  constructor(
    name: string,
    database: Database | undefined,
    notebook: Notebook,
    shown: Shown,
    clock = () => new Date(),
    absent: "absent" | "older-page" = "absent",
  ) {
    this.#absent = absent;
    this.#name = name;
    this.#database = database;
    this.#notebook = notebook;
    this.#shown = shown;
    this.#clock = clock;
    if (!database) return;
    this.#channel = "BroadcastChannel" in globalThis ? new BroadcastChannel(name) : undefined;
    this.#channel?.addEventListener("message", this.#heard);
    document.addEventListener("visibilitychange", this.#hiding);
    addEventListener("pagehide", this.#hiding);
    addEventListener("storage", this.#left);
  }

  get isWriter(): boolean {
    return this.#isWriter;
  }

  get state(): Keeping {
    return this.#keeping;
  }

  /** How a notebook stands: what lies in the database and, where nobody else writes, what its journal adds. */
  async begin(kept: Kept | undefined): Promise<Notebook> {
    if (!this.#database) {
      this.#isWriter = true;
      this.#say({ is: "nowhere", why: this.#absent, since: this.#now() });
      return this.#notebook;
    }
    if (kept) this.#adopt(kept);
    await new Promise<void>((ready) => {
      this.#desk = deskFor(`${this.#name} ${this.#notebook.id}`, {
        got: () => void this.#sit().then(ready),
        lost: () => void this.#stand(),
        waiting: () =>
          void setTimeout(() => {
            if (this.#isWriter) return;
            this.#say({ is: "following" });
            ready();
          }, leaving),
      });
    });
    this.#isBegun = true;
    return this.#notebook;
  }

  /** Whoever waits for the beginning is told then, and edits nothing before. */
  #replaced(): void {
    if (this.#isBegun) this.#shown.replaced(this.#notebook);
  }

  /** Takes up what a page that went away has left in its journal; what that cannot follow is set aside. Writing it drops it. */
  async #takeUp(journal: Journal | undefined): Promise<void> {
    if (!journal) return;
    if (journal.edit === this.#edit) {
      // What is not written yet may be needed still.
      if (!this.#isDirty) dropJournal(this.#name, this.#notebook.id);
      return;
    }
    const isLate = journal.follows !== this.#version && journal.over !== this.#edit;
    this.#notebook = revived(replayed(this.#notebook, journal));
    this.#edit = journal.edit;
    this.#over = journal.over;
    this.#isDirty = true;
    if (!isLate) return this.#replaced();
    // Another tab has written since: what was here stands beside it, under a name.
    await this.#write({ follows: journal.follows, at: journal.at });
    if (this.#failing === undefined && this.#edit === journal.edit) this.#isDirty = false;
  }

  /** An edit was made here. */
  edited(notebook: Notebook): void {
    if (notebook === this.#notebook) return;
    this.#notebook = notebook;
    this.#isDirty = true;
    this.#edit = crypto.randomUUID?.() ?? String(Math.random()).slice(2);
    if (this.#database && this.#failing === undefined) this.#say({ is: "saving" });
    this.#writeSoon();
    // Not every page that goes away is told so.
    if (this.#isWriter) this.#noting ??= setTimeout(this.#note);
  }

  /** Writes what is not written yet. Never rejects: how it went is told. */
  async flush(): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    await this.#writing;
    if (!this.#isDirty || !this.#database) return;
    this.#writing = this.#write();
    await this.#writing;
  }

  /** Edits here from now on: another tab's are read first. */
  takeOver(): void {
    this.#desk?.take();
  }

  async close(): Promise<void> {
    await this.flush();
    this.#desk?.leave();
    this.#channel?.close();
    document.removeEventListener("visibilitychange", this.#hiding);
    removeEventListener("pagehide", this.#hiding);
    removeEventListener("storage", this.#left);
  }

  /** A newer page has closed the database under this one. */
  closed(): void {
    this.#database = undefined;
    this.#say({ is: "nowhere", why: "newer-page", since: this.#now() });
  }

  #now(): string {
    return this.#clock().toISOString();
  }

  #say(keeping: Keeping): void {
    this.#keeping = keeping;
    this.#shown.keeping(keeping);
  }

  #adopt({ notebook, version, edit, at }: Kept): void {
    this.#notebook = this.#saved = revived(notebook);
    this.#version = version;
    this.#edit = edit;
    this.#over = undefined;
    this.#at = at;
    this.#isDirty = false;
    this.#say({ is: "saved", at });
  }

  /** The place to write at is ours: begin with what lies there. */
  async #sit(lastWord?: Journal): Promise<void> {
    this.#isWriter = true;
    await this.#read();
    if (this.#isDirty) await this.flush();
    // The page that had the place is gone now: until then it may have written its journal.
    await this.#takeUp(lastWord ?? readJournal(this.#name, this.#notebook.id));
    if (this.#isDirty) await this.flush();
    else this.#say({ is: "saved", at: this.#saved ? this.#at : undefined });
  }

  /** Another tab has taken the place: what is not written yet is tried once more, and set aside where it is late. */
  async #stand(): Promise<void> {
    await this.flush();
    this.#isWriter = false;
    this.#say({ is: "following" });
  }

  #at: string | undefined;

  async #read(): Promise<void> {
    const database = this.#database;
    const kept = database && (await keptOne(database, this.#notebook.id).catch(() => undefined));
    if (!kept || kept.version === this.#version) return;
    if (this.#isDirty) {
      await this.#write();
      return;
    }
    this.#adopt(kept);
    if (!this.#isWriter) this.#say({ is: "following" });
    this.#replaced();
  }

  readonly #heard = ({ data }: MessageEvent): void => {
    const { id, version } = (data ?? {}) as { id?: unknown; version?: unknown };
    if (id !== this.#notebook.id || version === this.#version) return;
    void this.#read();
  };

  /** The last word of a page that is gone may come after its place. */
  readonly #left = ({ key, newValue }: StorageEvent): void => {
    const word = key === keyOf(this.#name, this.#notebook.id) ? journalIn(newValue) : undefined;
    if (this.#isWriter && word) void this.#sit(word);
  };

  readonly #hiding = (event: Event): void => {
    if (event.type === "visibilitychange" && document.visibilityState !== "hidden") return;
    this.#note();
    void this.flush();
  };

  /** Writes into the journal what is not in the database yet. */
  readonly #note = (): void => {
    clearTimeout(this.#noting);
    this.#noting = undefined;
    if (!this.#isDirty || !this.#database) return;
    const { notebook, edit } = this.#underway ?? {};
    const naming = { follows: this.#version, ...(edit && { over: edit }), edit: this.#edit, at: this.#now() };
    const before = notebook ? [this.#saved, notebook] : [this.#saved];
    writeJournal(this.#name, this.#notebook.id, journalOf(before, this.#notebook, naming));
  };

  #writeSoon(): void {
    if (!this.#database) return;
    this.#timer ??= setTimeout(() => void this.flush(), soon);
  }

  async #write({ follows = this.#version, at = this.#now() } = {}): Promise<void> {
    const [notebook, edit, over, database] = [this.#notebook, this.#edit, this.#over, this.#database!];
    const asideName = `${notebook.title}, other tab, ${hourOf(at)}`;
    this.#underway = { notebook, edit };
    try {
      const before = follows === this.#version ? this.#saved : undefined;
      const written = await write(database, notebook, { follows, over, edit, at, asideName, before });
      this.#failing = undefined;
      if (written.late) {
        this.#shown.aside(asideName);
        // Edited meanwhile: that is not there yet.
        if (this.#edit !== edit) return this.#writeSoon();
        dropJournal(this.#name, notebook.id);
        this.#adopt(written.kept);
        if (!this.#isWriter) this.#say({ is: "following" });
        this.#replaced();
        return;
      }
      this.#version = written.version;
      this.#over = undefined;
      this.#saved = notebook;
      this.#at = at;
      this.#channel?.postMessage({ id: notebook.id, version: written.version });
      if (this.#edit === edit) {
        this.#isDirty = false;
        dropJournal(this.#name, notebook.id);
        this.#say({ is: "saved", at });
      } else this.#writeSoon();
    } catch (error) {
      this.#failing ??= at;
      const { name } = error as DOMException;
      const isFull = name === "QuotaExceededError";
      if (this.#database)
        this.#say(
          isFull ? { is: "full", since: this.#failing } : { is: "nowhere", why: "failed", since: this.#failing },
        );
    } finally {
      this.#underway = undefined;
    }
  }
}

/** All notebooks of this page, and what lies beside them. */
export class Shelf {
  readonly name: string;
  readonly database: Database | undefined;
  #keeper: Keeper | undefined;

  readonly #absent: "absent" | "older-page";

  private constructor(name: string, database: Database | undefined, absent: "absent" | "older-page") {
    this.name = name;
    this.database = database;
    this.#absent = absent;
  }

  /** Opens the shelf; where the browser keeps nothing it is there all the same, and holds nothing. */
  static async open(name: string): Promise<Shelf> {
    const open: { shelf?: Shelf } = {};
    const opened = await openDatabase(name, { closed: () => open.shelf?.lost() }).catch((error: unknown) => error);
    // What a newer page has kept is left alone by an older one.
    const isOlder = opened instanceof DOMException && opened.name === "VersionError";
    const database = opened instanceof Error || opened instanceof DOMException ? undefined : (opened as Database);
    return (open.shelf = new Shelf(name, database, isOlder ? "older-page" : "absent"));
  }

  /** The database was closed under this page. */
  lost(): void {
    this.#keeper?.closed();
  }

  async all(): Promise<readonly Kept[]> {
    return this.database ? allKept(this.database).catch(() => []) : [];
  }

  async aside(of: string): Promise<readonly Aside[]> {
    return this.database ? this.database.getAllFromIndex("aside", "of", of).catch(() => []) : [];
  }

  async one(id: string): Promise<Kept | undefined> {
    return this.database && keptOne(this.database, id).catch(() => undefined);
  }

  /**
   * Lays a state of a notebook aside under a name.
   *
   * @throws DOMException where the browser does not take it, or keeps nothing
   */
  async setAside(notebook: Notebook, name: string): Promise<void> {
    const at = new Date().toISOString();
    if (!this.database) throw new DOMException("Nothing is kept here.", "InvalidStateError");
    await this.database.put("aside", { key: `${notebook.id} ${at}`, of: notebook.id, name, at, notebook });
  }

  async remove(id: string): Promise<void> {
    if (this.database) await removeKept(this.database, id);
  }

  /** Keeps a notebook from now on; answers with how it stands. */
  async keep(notebook: Notebook, shown: Shown): Promise<{ keeper: Keeper; notebook: Notebook }> {
    await this.#keeper?.close();
    const kept = await this.one(notebook.id);
    const keeper = new Keeper(this.name, this.database, notebook, shown, undefined, this.#absent);
    this.#keeper = keeper;
    return { keeper, notebook: await keeper.begin(kept) };
  }
}
