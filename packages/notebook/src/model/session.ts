import type { Build, Change, ChangeSet } from "@meshwright/calc/drivetrain";
import { errorOf, type Finding } from "@meshwright/calc/stages";
import { editedWithWays } from "./kept-ways.js";
import { stepName } from "./names.js";
import type { Fields, Notebook } from "./notebook.js";

/** One edit that can be taken back: the fields that it touched, before and after; undefined where there was none. */
interface Step {
  readonly name: string;
  readonly before: Partial<Fields>;
  readonly after: Partial<Fields>;
}

const isList = (request: ChangeSet | readonly Change[]): request is readonly Change[] => Array.isArray(request);

/** Why nothing can be changed in a tab that follows. */
export const followingText =
  "This notebook is being edited in another tab, and nothing was changed here. Press “Edit here instead” first.";

const mostSteps = 300;
const mostLines = 500;
const mostDays = 7;

/** The day of a calendar where the page stands. */
function dayOf(date: Date): string {
  const here = date.getTime() - date.getTimezoneOffset() * 60_000;
  return Number.isFinite(here) ? new Date(here).toISOString().slice(0, 10) : "";
}

/** A notebook with fields set; what is undefined is taken away. */
export function withFields(notebook: Notebook, fields: Partial<Fields>): Notebook {
  const next: Record<string, unknown> = { ...notebook, ...fields };
  for (const key of Object.keys(fields)) if (next[key] === undefined) delete next[key];
  return next as unknown as Notebook;
}

/** How fields stand, by the names of some: undefined where there is none. */
const standing = (notebook: Notebook, fields: Partial<Fields>): Partial<Fields> =>
  Object.fromEntries(Object.keys(fields).map((key) => [key, notebook[key as keyof Fields]]));

/** What else becomes another with an edit, and is no step of its own. */
export type Following = (before: Notebook, after: Notebook) => Partial<Fields>;

/**
 * A notebook while it is worked on: the one place that it is changed in. Every edit is a step with a name and can be taken
 * back; whoever shows the notebook or keeps it watches.
 */
export class Session {
  readonly watchers = new Set<(session: Session) => void>();
  /** What went along with stages that the last change took away. */
  notes: readonly Finding[] = [];
  /** Another tab edits the notebook: this one shows what comes from there, and every edit is refused. */
  isFollowing = false;
  #now: Notebook;
  #past: Step[] = [];
  #undone: Step[] = [];
  #clock: () => Date;
  #following: Following;

  constructor(notebook: Notebook, clock: () => Date = () => new Date(), following: Following = () => ({})) {
    this.#now = notebook;
    this.#clock = clock;
    this.#following = following;
  }

  get notebook(): Notebook {
    return this.#now;
  }

  get build(): Build | undefined {
    return this.#now.build;
  }

  /** What Undo would take back. */
  get undoName(): string | undefined {
    return this.isFollowing ? undefined : this.#past.at(-1)?.name;
  }

  get redoName(): string | undefined {
    return this.isFollowing ? undefined : this.#undone.at(-1)?.name;
  }

  /** The day, as the notebook writes days. */
  get today(): string {
    return dayOf(this.#clock());
  }

  /**
   * Changes the drivetrain: new values by address, or changes one after the other. What names a stage that goes away goes with
   * it, and `notes` says what that was.
   *
   * @param also other fields that belong to the same step
   * @returns what stands against it; nothing where it was done
   */
  change(request: ChangeSet | readonly Change[], name?: string, also: Partial<Fields> = {}): readonly Finding[] {
    if (this.isFollowing) return [{ ...errorOf("meaning", "no-build", ""), message: followingText }];
    const before = this.#now.build;
    if (!before) return [errorOf("meaning", "no-build", "")];
    const requests = isList(request) ? request.map((one) => ("set" in one ? { [one.set]: one.to } : one)) : [request];
    let build = before;
    const notes: Finding[] = [];
    for (const one of requests) {
      const now = editedWithWays(build, one);
      if (!now.ok) return now.findings.filter(({ severity }) => severity === "error");
      build = now.build;
      notes.push(...now.gone);
    }
    if (build === before && !Object.keys(also).length) return [];
    this.put({ ...also, build }, name ?? stepName(before, build, requests[0]!));
    this.notes = notes;
    return [];
  }

  /** Takes over a drivetrain that an element of the page made out of this one, and what was asked of the element. */
  take(build: Build, request: ChangeSet | Change): void {
    const before = this.#now.build;
    if (build !== before) this.put({ build }, before ? stepName(before, build, request) : "Drivetrain begun");
  }

  /** Sets fields of the notebook as one step; says whether it was done. */
  put(fields: Partial<Fields>, name: string): boolean {
    if (this.isFollowing) return false;
    const { build, log, days = [] } = this.#now;
    const latest = log?.at(-1)?.at;
    const last = latest && dayOf(new Date(latest));
    // The first edit of a day leaves what stood the evening before where it can be had again.
    const isNewDay = build && last && last < this.today && days.at(-1)?.build !== build;
    const after = isNewDay ? { ...fields, days: [...days, { date: last, build }].slice(-mostDays) } : fields;
    this.#past.push({ name, before: standing(this.#now, after), after });
    if (this.#past.length > mostSteps) this.#past.shift();
    this.#undone = [];
    this.#set(after, name);
    return true;
  }

  /** Sets what has an undo of its own, or none: the post while it is written, a column's meaning. */
  note(fields: Partial<Fields>): void {
    if (!this.isFollowing) this.#set(fields);
  }

  /** Takes the last step back, and says which it was. */
  undo(): string | undefined {
    const step = this.isFollowing ? undefined : this.#past.pop();
    if (!step) return undefined;
    // What has an undo of its own has gone on since: it comes back with the step.
    this.#undone.push({ ...step, after: standing(this.#now, step.before) });
    this.#set(step.before, `Taken back: ${step.name}`);
    return step.name;
  }

  /** Does again what was taken back last. */
  redo(): string | undefined {
    const step = this.isFollowing ? undefined : this.#undone.pop();
    if (!step) return undefined;
    this.#past.push({ ...step, before: standing(this.#now, step.after) });
    this.#set(step.after, step.name);
    return step.name;
  }

  /** Another notebook, or another tab's state of this one: there is nothing to take back. */
  open(notebook: Notebook): void {
    this.#past = [];
    this.#undone = [];
    this.#now = notebook;
    this.#tell();
  }

  #set(fields: Partial<Fields>, what?: string): void {
    this.notes = [];
    const line = { at: this.#clock().toISOString(), what: what ?? "" };
    const log = what === undefined ? this.#now.log : [...(this.#now.log ?? []).slice(1 - mostLines), line];
    const before = this.#now;
    const after = withFields(before, { ...fields, ...(log && { log }) });
    this.#now = withFields(after, this.#following(before, after));
    this.#tell();
  }

  #tell(): void {
    for (const watcher of this.watchers) watcher(this);
  }
}
