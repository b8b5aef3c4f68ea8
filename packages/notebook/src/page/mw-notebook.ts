import { html, LitElement, nothing, type TemplateResult } from "lit";
import type { Change, ChangeSet } from "@meshwright/calc/drivetrain";
import { page, type BuildHolder } from "@meshwright/elements/store";
import {
  actsOnce,
  evaluationOf,
  sheet,
  untilLetGo,
  watchHands,
  type ComesBack,
  type NotebookPage,
} from "../frame/index.js";
import type { MwNotebookDrivetrain } from "../drivetrain/index.js";
import {
  databaseName,
  isInTabOnly,
  keepingText,
  Shelf,
  whenText,
  type Aside,
  type Keeper,
  type Keeping,
  type Kept,
} from "../keeping/index.js";
import {
  broughtTo,
  carriedIn,
  fileText,
  followingText,
  merging,
  newNotebook,
  openFile,
  openText,
  rename,
  revived,
  Session,
  totalsText,
  type Brought,
  type Carried,
  type Following,
  type Merging,
  type Notebook,
  type Opened,
  type PostNode,
  type WithNotebook,
} from "../model/index.js";
import { withLastWords } from "../writing/index.js";
import { savePanel, shelfPanel } from "./dialog.js";
import {
  fieldCalled,
  fieldOf,
  isEnteredByLeaving,
  isHalfTyped,
  leaveOpen,
  takeLeftOpen,
  typedIn,
  type Field,
  type HalfTyped,
} from "./half-typed.js";
import { besidePanel, broughtPanel, mergePanel } from "./merge-panel.js";
import { paper } from "./styles.js";

const parts = [
  ["drivetrain", "Drivetrain"],
  ["parts", "Parts"],
  ["buy", "To buy"],
  ["workshop", "Workshop"],
  ["post", "Post"],
] as const;

const freshId = (): string => crypto.randomUUID?.() ?? `n${Math.random().toString(36).slice(2)}`;

/** How it is kept, with since when where that is known. */
const keepingLine = (keeping: Keeping): string =>
  keepingText(keeping) + (keeping.is === "saved" && keeping.at ? `, ${whenText(keeping.at)}` : "");

/** A figure that loses its answer with an edit keeps what it said last. */
const keepingLastWords: Following = (before, { post, build }) => {
  // A post that came along says itself what it said last.
  if (!post || before.post !== post || !build || !before.build || before.build === build) return {};
  const kept = withLastWords(post, before.build, build);
  return kept === post ? {} : { post: kept };
};

/** Longer than this a write is not done in passing. */
const slow = 500;

/** Whether there is more in a notebook than the first question. */
const hasMore = ({ build, shelf, post }: Notebook): boolean => !!(build ?? shelf ?? post);

/** Where the address says which notebook this tab has: a reloaded tab shows its own, and no other tab's. */
const idFromAddress = (): string | undefined => /^#notebook-([\w-]{4,80})$/.exec(location.hash)?.[1];

/** The drivetrain that an address carries. */
const linkFromAddress = (): string | undefined => /^#build-([\w-]{4,})$/.exec(location.hash)?.[1];

const mostTold = 30;

/** What is to be told of a notebook that was opened: what was left out of it, and what is odd in it. */
function openedMessage({ left, findings }: WithNotebook): TemplateResult | undefined {
  const listed = (sentences: readonly string[]): TemplateResult =>
    html`<ul>
      ${sentences.slice(0, mostTold).map((sentence) => html`<li>${sentence}</li>`)}
      ${sentences.length > mostTold ? html`<li>and ${sentences.length - mostTold} more</li>` : nothing}
    </ul>`;
  const odd = findings.map(({ at, message }) => (at ? `${at}: ${message}` : message));
  if (!left.length && !odd.length) return undefined;
  return html`Opened.
  ${left.length ? html`Left out, because this page cannot read it; the file still has it: ${listed(left)}` : nothing}
  ${odd.length ? html`To look at: ${listed(odd)}` : nothing}`;
}

/**
 * The builder's notebook: drivetrain, parts, order, workshop and post on one page, kept in this browser.
 *
 * @attr example - the address of a drivetrain to open a copy of
 * @attr offline - the address of the worker that keeps this page for when there is no line
 */
export class MwNotebook extends LitElement {
  static readonly tag = "mw-notebook";
  static override styles = [sheet, paper];
  static override properties = {
    example: {},
    offline: {},
    session: { state: true },
    keeping: { state: true },
    panel: { state: true },
    message: { state: true },
    isBegun: { state: true },
    isDropping: { state: true },
  };

  declare example: string | null;
  declare offline: string | null;
  declare private session: Session;
  declare private keeping: Keeping;
  declare private panel: "save" | "shelf" | "beside" | "merge" | "brought" | "" | undefined;
  declare private message: TemplateResult | string | undefined;
  declare private isBegun: boolean;
  declare private isDropping: boolean;

  #drawn: Record<string, unknown> = {};

  #shelf: Shelf | undefined;
  #keeper: Keeper | undefined;
  #all: readonly Kept[] = [];
  #aside: readonly Aside[] = [];
  /** The notebook that something was opened beside. */
  #yours: Notebook | undefined;
  #merging: Merging | undefined;
  #mergeFault: string | undefined;
  #carried: Carried | undefined;
  #brought: Brought | undefined;
  /** The fields that were typed in, each until what stands there is entered. */
  readonly #typed = new Set<Field>();

  constructor() {
    super();
    this.keeping = { is: "saved", at: undefined };
    this.isBegun = false;
    this.#follow(new Session(newNotebook(freshId()), undefined, keepingLastWords));
  }

  override connectedCallback(): void {
    super.connectedCallback();
    watchHands();
    this.addEventListener("keydown", this.#pressed, { capture: true });
    addEventListener("hashchange", this.#addressed);
    addEventListener("pagehide", this.#leaving);
    document.addEventListener("visibilitychange", this.#leaving);
    if (this.offline && /^https?:$/.test(location.protocol)) void this.#stayOffline(this.offline);
    this.#began = this.#begin();
  }

  async #stayOffline(worker: string): Promise<void> {
    try {
      await navigator.serviceWorker?.register(new URL(worker, document.baseURI), { updateViaCache: "none" });
    } catch {
      // In a frame that is shut off even asking for it is refused: the notebook works, and tells what it cannot keep.
    }
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.removeEventListener("keydown", this.#pressed, { capture: true });
    removeEventListener("hashchange", this.#addressed);
    removeEventListener("pagehide", this.#leaving);
    document.removeEventListener("visibilitychange", this.#leaving);
    removeEventListener("beforeunload", this.#asksToStay);
    void this.#keeper?.close();
  }

  protected override scheduleUpdate(): void | Promise<unknown> {
    const free = untilLetGo();
    return free ? free.then(() => super.scheduleUpdate()) : super.scheduleUpdate();
  }

  /** The first questions go when the drivetrain comes: whoever was in them goes on at its heading. */
  #wasAsked: Element | null = null;

  protected override willUpdate(): void {
    const start = this.renderRoot?.querySelector("mw-notebook-start");
    this.#wasAsked = start?.matches(":focus-within") ? start : null;
  }

  protected override updated(): void {
    if (!this.#wasAsked || this.#wasAsked.isConnected) return;
    this.renderRoot.querySelector<HTMLElement>("#drivetrain h2")?.focus({ preventScroll: true });
  }

  // Keeping

  #follow(session: Session): void {
    this.session = session;
    session.watchers.add(this.#changed);
  }

  readonly #changed = ({ notebook }: Session): void => {
    this.#keeper?.edited(notebook);
    this.#guard();
    // While the post is written nothing else changes.
    const { post: _, ...rest } = notebook;
    const before = this.#drawn;
    this.#drawn = rest;
    if (Object.keys({ ...before, ...rest }).some((key) => before[key] !== (rest as Record<string, unknown>)[key]))
      this.requestUpdate();
  };

  /** Done once the notebook that this tab has is open: what is brought along before waits for it, and is not lost under it. */
  #began: Promise<void> | undefined;

  async #begin(): Promise<void> {
    this.#shelf ??= await Shelf.open(databaseName(location.href));
    const link = linkFromAddress();
    if (link) return this.#arrive(link);
    const id = idFromAddress();
    const [latest] = id ? [] : await this.#shelf.all();
    const asked = new URLSearchParams(location.search);
    const isFresh = asked.has("new") || asked.has("open");
    const kept = id ?? (isFresh ? undefined : latest?.id);
    await this.#open(kept ? newNotebook(kept) : this.session.notebook);
    if (new URLSearchParams(location.search).get("open") === "example" && !this.session.build)
      await this.#openExample();
    await this.#comeBack();
  }

  /** A drivetrain came in the address: out of an article, from the card's code, or back from the bench. */
  async #arrive(link: string): Promise<void> {
    const carried = await carriedIn(link, freshId());
    if (typeof carried === "string") {
      await this.#open(newNotebook(freshId()));
      this.message = carried;
      return;
    }
    const { notebook, from } = carried;
    if (from && (await this.#shelf!.one(from))) {
      await this.#open(newNotebook(from));
      this.#carried = carried;
      this.#brought = broughtTo(this.session.notebook, carried);
      this.panel = "brought";
      return;
    }
    await this.#open(newNotebook(notebook.id));
    await this.#fill(notebook, await this.#freeTitle(notebook.title));
    const told = [...carried.left];
    if (from) void this.#go("workshop");
    else told.unshift("Taken out of an article. It is yours now: what you change here changes nothing there.");
    if (told.length) this.message = told.join(" ");
  }

  /** A tab that was thrown away comes back as it was: the place, what was chosen, what was typed and not entered. */
  async #comeBack(): Promise<void> {
    const left = takeLeftOpen(this.session.notebook.id);
    if (!left) return;
    await this.#whole();
    if (left.chosen) this.choose(left.chosen);
    if (left.sheet) await this.#parts?.comeBack(left.sheet);
    if (left.typed.length) this.#remind(left.typed);
    setTimeout(() => scrollTo({ top: left.scroll }), 50);
  }

  get #parts(): (NotebookPage & ComesBack) | null {
    return this.renderRoot.querySelector<NotebookPage & ComesBack>("mw-notebook-parts");
  }

  /** What was typed and not entered is no part of the notebook until somebody says so. */
  #remind(typed: readonly HalfTyped[]): void {
    const list = (some: readonly HalfTyped[]): TemplateResult =>
      html`${some.map(({ label, text }, n) => html`${n ? "; " : ""}“${text}”, ${label}`)}.`;
    const enter = (): void => {
      const gone = typed.filter(({ label, text }) => {
        const field = fieldCalled(this.renderRoot, label);
        if (!field) return true;
        field.focus();
        field.value = text;
        for (const type of ["input", "change"]) field.dispatchEvent(new Event(type, { bubbles: true, composed: true }));
        return false;
      });
      this.message = gone.length
        ? html`Its place is not open now, and so it was not entered: ${list(gone)}`
        : undefined;
    };
    this.message = html`Typed and not entered: ${list(typed)}
      <button type="button" @click=${enter}>
        ${typed.length > 1 ? "Put it back where it was typed" : "Enter it"}
      </button>`;
  }

  readonly #typing = (event: Event): void => {
    const field = fieldOf(event);
    if (!field || this.#typed.has(field)) return;
    this.#typed.add(field);
    if (!isEnteredByLeaving(field)) return;
    // Asked of the field itself: what goes on inside one part of the page is not told outside of it.
    const gone = new AbortController();
    const left = (): void => {
      gone.abort();
      this.#typed.delete(field);
    };
    for (const type of ["change", "blur"]) field.addEventListener(type, left, { signal: gone.signal });
  };

  readonly #leaving = (event: Event): void => {
    if (event.type === "visibilitychange" && document.visibilityState !== "hidden") return;
    const chosen = this.renderRoot.querySelector<MwNotebookDrivetrain>("mw-notebook-drivetrain")?.isShowing ?? "";
    const typed = [...this.#typed].flatMap((field) => typedIn(field) ?? []);
    leaveOpen(this.session.notebook.id, { scroll: scrollY, chosen, typed, sheet: this.#parts?.leftOpen });
  };

  #isInTabOnly = false;
  /** What a file holds that was saved of it last. */
  #outside: Notebook | undefined;

  /** A tab that has what is nowhere else does not go without a question; any other goes at once. */
  #guard(): void {
    const { notebook } = this.session;
    const isAsked = this.#isInTabOnly && hasMore(notebook) && notebook !== this.#outside;
    if (isAsked) addEventListener("beforeunload", this.#asksToStay);
    else removeEventListener("beforeunload", this.#asksToStay);
  }

  readonly #asksToStay = (event: BeforeUnloadEvent): void => event.preventDefault();

  readonly #savedOutside = (): void => {
    this.#outside = this.session.notebook;
    this.#guard();
  };

  /** What is on its way for a moment is no news; what was said already is not said again. */
  readonly #kept = (keeping: Keeping): void => {
    clearTimeout(this.#slow);
    this.session.isFollowing = keeping.is === "following";
    this.#isInTabOnly = isInTabOnly(keeping);
    this.#guard();
    const show = (): void => {
      this.keeping = keeping;
    };
    if (keeping.is === "saving" && this.keeping.is === "saved") this.#slow = setTimeout(show, slow);
    else if (keepingLine(keeping) !== keepingLine(this.keeping)) show();
  };

  #slow: ReturnType<typeof setTimeout> | undefined;

  async #open(notebook: Notebook): Promise<void> {
    const name = `#notebook-${notebook.id}`;
    try {
      if (location.hash !== name) history.replaceState(history.state, "", name);
    } catch {
      // The address is for coming back: where a page may not write it, the list of notebooks leads there.
    }
    const shown = {
      keeping: this.#kept,
      replaced: (other: Notebook) => {
        this.session.open(other);
        this.isBegun ||= hasMore(other);
      },
      aside: (asideName: string) => {
        this.message = `Another tab was quicker. What was here lies beside, as “${asideName}”: see Notebooks.`;
        void this.#look();
      },
    };
    let began;
    try {
      began = await this.#shelf!.keep(notebook, shown);
    } catch (error) {
      // What cannot be read stays where it lies, as it is.
      this.message = (error as Error).message;
      return this.#open(newNotebook(freshId()));
    }
    const { keeper, notebook: now } = began;
    this.#keeper = keeper;
    this.session.open(now);
    this.isBegun = hasMore(now);
    await this.#look();
  }

  async #look(): Promise<void> {
    if (!this.#shelf) return;
    this.#all = await this.#shelf.all();
    this.#aside = await this.#shelf.aside(this.session.notebook.id);
    this.requestUpdate();
  }

  readonly #addressed = (): void => {
    const link = linkFromAddress();
    if (link) return void this.#arrive(link);
    const id = idFromAddress();
    if (id && id !== this.session.notebook.id) void this.#open(newNotebook(id));
  };

  /** A title that none of the notebooks here has: "Limpet (2)". */
  async #freeTitle(title: string): Promise<string> {
    await this.#keeper?.flush();
    await this.#look();
    const plain = title.replace(/ \(\d+\)$/, "");
    const others = this.#all.filter(({ id, notebook }) => id !== this.session.notebook.id || notebook.build);
    const taken = new Set(others.map(({ notebook }) => notebook.title));
    for (let n = 1; ; n++) {
      const one = n === 1 ? plain : `${plain} (${n})`;
      if (!taken.has(one)) return one;
    }
  }

  /** Opens a notebook beside this one, which stays as it is. */
  async #beside(notebook: Notebook): Promise<void> {
    const yours = this.session.notebook;
    const title = await this.#freeTitle(notebook.title);
    await this.#open(newNotebook(freshId()));
    await this.#fill(notebook, title);
    this.#yours = yours;
    this.panel = "beside";
  }

  /** Lays a notebook aside under a name. Says whether the browser took it. */
  async #setAside(notebook: Notebook, name: string): Promise<boolean> {
    try {
      await this.#shelf!.setAside(notebook, name);
      return true;
    } catch {
      return false;
    }
  }

  /** What was opened takes the place of the notebook that it was opened beside, which is set aside. */
  async #replace(): Promise<void> {
    const opened = this.session.notebook;
    await this.#open(newNotebook(this.#yours!.id));
    const yours = this.session.notebook;
    const name = `${yours.title}, before ${whenText(new Date().toISOString())}`;
    const stays = async (why: string): Promise<void> => {
      await this.#open(newNotebook(opened.id));
      this.message = `Nothing was replaced: ${why}`;
    };
    if (this.session.isFollowing)
      return stays(`“${yours.title}” is being edited in another tab. Close it there first.`);
    if (!(await this.#setAside(yours, name)))
      return stays(`“${yours.title}” could not be set aside, for this device is full or keeps nothing.`);
    const { format: _format, id: _id, ...fields } = opened;
    const gone = Object.fromEntries(Object.keys(this.session.notebook).map((key) => [key, undefined]));
    this.session.put(
      { ...gone, format: yours.format, id: yours.id, ...fields, title: yours.title } as object,
      `Replaced by ${opened.title}`,
    );
    await this.#keeper?.flush();
    await this.#shelf!.remove(opened.id);
    await this.#look();
    this.panel = "";
    this.message = `Replaced. What was here is set aside as “${name}”: see Notebooks.`;
  }

  #compare(): void {
    this.#merging = merging(this.#yours!, this.session.notebook);
    this.#mergeFault = undefined;
    this.panel = "merge";
  }

  /** A third notebook of two; both stay. */
  async #merge(answers: Parameters<Merging["make"]>[0]): Promise<void> {
    const made = this.#merging!.make(answers, freshId());
    if (typeof made === "string") {
      this.#mergeFault = made;
      this.requestUpdate();
      return;
    }
    const title = await this.#freeTitle(made.title);
    await this.#open(newNotebook(made.id));
    await this.#fill(made, title);
    this.panel = "";
    this.message = `${title}: both notebooks stay as they were.`;
  }

  readonly #takeBrought = (): void => {
    if (!this.session.put(this.#brought!.fields, "What was measured taken in"))
      return void (this.message = followingText);
    this.panel = "";
    void this.#go("workshop");
  };

  /** What was opened becomes the notebook that is open, which is empty. */
  async #fill(notebook: Notebook, title: string): Promise<void> {
    const { format: _format, id: _id, ...fields } = notebook;
    this.session.put({ ...fields, title }, `${title} opened`);
    this.isBegun = hasMore(this.session.notebook);
    await this.#keeper?.flush();
    await this.#look();
  }

  /** A post of which not all is known here: it is set aside as it was found, and only then goes on without. */
  readonly #oddPost = async ({
    detail: { post, unknown },
  }: CustomEvent<{ readonly post: PostNode; readonly unknown: readonly string[] }>): Promise<void> => {
    // Whoever follows writes nothing over.
    if (this.keeping.is === "following") return;
    const found = this.session.notebook;
    const name = `${found.title}, as it was found, ${whenText(new Date().toISOString())}`;
    const what = `The post holds what this page does not know: ${unknown.map((one) => `“${one}”`).join(", ")}. Its text stays as text.`;
    if (!(await this.#setAside(found, name))) {
      this.message = `${what} The notebook as it was found could not be set aside: save a file of it before you write in the post.`;
      return;
    }
    // Whoever has written in it meanwhile has written in what was shown.
    if (this.session.notebook.post === found.post) this.session.note({ post });
    this.message = `${what} The notebook as it was found is set aside as “${name}”: see Notebooks.`;
    await this.#look();
  };

  // Ways in

  async #openExample(): Promise<void> {
    // The notebook in one file brings its example along.
    const inside = (globalThis as { meshwrightExample?: string }).meshwrightExample;
    if (inside) return this.#takeIn(openText(inside, freshId()));
    try {
      const answer = await fetch(new URL(this.example ?? "limpet.json", document.baseURI));
      if (!answer.ok) throw new Error(String(answer.status));
      this.#takeIn(openText(await answer.text(), freshId()));
    } catch {
      this.message = "The example could not be loaded. Open a file, or begin with two gears.";
    }
  }

  #takeIn(opened: Opened): void {
    this.message = undefined;
    if (opened.kind === "refused") this.message = opened.why;
    else if (opened.kind === "notebook") {
      const { notebook } = opened;
      if (hasMore(this.session.notebook) || this.session.isFollowing) void this.#beside(notebook);
      else void this.#freeTitle(notebook.title).then((title) => this.#fill(notebook, title));
      this.message = openedMessage(opened);
    } else this.#dispatchTo(opened.kind, opened.text);
    this.panel = "";
  }

  /** A sheet goes to the parts, a post to the post. */
  #dispatchTo(kind: "sheet" | "post", text: string): void {
    if (this.session.isFollowing) return void (this.message = followingText);
    this.isBegun = true;
    const tag = kind === "sheet" ? "mw-notebook-parts" : "mw-notebook-post";
    void this.updateComplete.then(async () => {
      if (kind === "post" && !(await this.#postLiesAside())) return;
      const part = this.renderRoot.querySelector<NotebookPage & { takeIn(text: string | ArrayBuffer): void }>(tag);
      await part?.ready();
      part?.takeIn(text);
      part?.scrollIntoView();
    });
  }

  /** Whether a post can be opened in the place of what is written here: that lies aside then, beyond a reload. */
  async #postLiesAside(): Promise<boolean> {
    const found = this.session.notebook;
    const isWritten = found.post?.content?.some(({ type, content = [] }) => type !== "paragraph" || content.length > 0);
    if (!isWritten) return true;
    const name = `${found.title}, before another post was opened, ${whenText(new Date().toISOString())}`;
    if (!(await this.#setAside(found, name))) {
      this.message = "Nothing was opened: the post that is here could not be set aside. Save a file of it first.";
      return false;
    }
    await this.#look();
    this.message = `The post that was here is set aside as “${name}”: see Notebooks.`;
    return true;
  }

  readonly #pick = (): void => {
    const input = document.createElement("input");
    input.type = "file";
    input.addEventListener("change", () => void this.#read(input.files?.[0]));
    input.click();
  };

  async #read(file: File | undefined): Promise<void> {
    if (!file) return;
    await this.#began?.catch(() => undefined);
    // What is far too large is not even read.
    const bytes =
      file.size > 2e7 ? new Uint8Array(file.size > 1e9 ? 1e9 : file.size) : new Uint8Array(await file.arrayBuffer());
    this.#takeIn(openFile(bytes, freshId(), file.name));
  }

  readonly #way = ({ detail }: CustomEvent<string>): void => {
    if (detail === "example") void this.#openExample();
    else if (detail === "file") this.#pick();
    else this.#dispatchTo("sheet", "");
  };

  readonly #dragged = (event: DragEvent): void => {
    if (!event.dataTransfer?.types.includes("Files")) return;
    event.preventDefault();
    this.isDropping = true;
  };

  readonly #dropped = (event: DragEvent): void => {
    this.isDropping = false;
    const [file] = event.dataTransfer?.files ?? [];
    if (!file) return;
    event.preventDefault();
    void this.#read(file);
  };

  // Edits

  /** An element has changed the drivetrain: the notebook takes it over, with its name. */
  readonly #elementChanged = (event: Event): void => {
    event.stopPropagation();
    const { detail } = event as CustomEvent<ChangeSet | Change>;
    // The page that it stands on holds what it made.
    const holder = event.composedPath().find((one) => page().holders.has(one as BuildHolder)) as
      BuildHolder | undefined;
    const build = holder?.store.build;
    if (build) this.session.take(build, detail);
  };

  readonly #undo = (): void => {
    this.session.undo();
  };

  readonly #redo = (): void => {
    this.session.redo();
  };

  readonly #pressed = (event: KeyboardEvent): void => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || !/^[zy]$/i.test(event.key)) return;
    const [inner] = event.composedPath() as HTMLElement[];
    // In the post, and while something is typed, undoing is the text's.
    if (inner?.isContentEditable || inner?.closest?.("[contenteditable], textarea")) return;
    if (inner instanceof HTMLInputElement && isHalfTyped(inner)) return;
    event.preventDefault();
    event.stopPropagation();
    if (/^y$/i.test(event.key) || event.shiftKey) this.#redo();
    else this.#undo();
  };

  readonly #named = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    const title = input.value.trim();
    if (!title || title === this.session.notebook.title) return void (input.value = this.session.notebook.title);
    const [refusal] = rename(this.session, title);
    if (refusal) this.message = refusal.message;
    input.value = this.session.notebook.title;
  };

  readonly #begun = (): void => {
    this.isBegun = true;
  };

  /** Chooses something in the line, from elsewhere on the page. */
  choose(of: string): void {
    this.renderRoot.querySelector<MwNotebookDrivetrain>("mw-notebook-drivetrain")?.choose(of);
  }

  // Drawing

  #keepingLine(): TemplateResult {
    const { keeping, session } = this;
    const copy = (): void => void navigator.clipboard?.writeText(fileText(session.notebook));
    return html`<p class="keeping ${isInTabOnly(keeping) ? "lost" : ""}" role="status">
      ${keepingLine(keeping)}
      ${keeping.is === "following" ? html`<button type="button" @click=${() => this.#keeper?.takeOver()}>Edit here instead</button>` : nothing}
      ${
        isInTabOnly(keeping)
          ? html`<button type="button" @click=${copy}>Copy as text</button>
              <button type="button" @click=${() => (this.panel = "save")}>Save a file</button>
              <button type="button" @click=${() => void this.#keeper?.flush()}>Try again</button>`
          : nothing
      }
    </p>`;
  }

  #header(): TemplateResult {
    const { session } = this;
    const { undoName, redoName, notebook } = session;
    return html`<header>
      <h1>
        <input
          aria-label="Name of this notebook"
          .value=${notebook.title}
          autocomplete="off"
          ?readonly=${session.isFollowing}
          @change=${this.#named}
        />
      </h1>
      <div class="does">
        ${undoName ? html`<button type="button" class="undo" @click=${this.#undo}>Undo: ${undoName}</button>` : nothing}
        ${redoName ? html`<button type="button" class="redo" @click=${this.#redo}>Again: ${redoName}</button>` : nothing}
        <button
          type="button"
          aria-expanded=${String(this.panel === "shelf")}
          @click=${() => (this.panel = this.panel === "shelf" ? "" : "shelf")}
        >
          Notebooks
        </button>
        <button
          type="button"
          aria-expanded=${String(this.panel === "save")}
          @click=${() => (this.panel = this.panel === "save" ? "" : "save")}
        >
          Save a file
        </button>
      </div>
      ${this.#keepingLine()}
    </header>`;
  }

  #panel(): TemplateResult | typeof nothing {
    const close = (): void => void (this.panel = "");
    const totalsOf = (one: Notebook | undefined): string | undefined => one?.build && totalsText(one.build);
    const isOfTwo = this.panel === "beside" || this.panel === "merge";
    const totals = isOfTwo
      ? ([totalsOf(this.#yours), totalsOf(this.session.notebook)] as const)
      : ([undefined, undefined] as const);
    if (this.panel === "save") return savePanel(this.session, close, this.#savedOutside);
    if (this.panel === "beside")
      return besidePanel(this.#yours!.title, this.session.notebook.title, totals, {
        compare: () => this.#compare(),
        replace: () => void this.#replace(),
        close,
      });
    if (this.panel === "merge")
      return mergePanel(
        this.#merging!,
        { yours: this.#yours!.title, theirs: this.session.notebook.title, totals, fault: this.#mergeFault },
        { make: (answers) => void this.#merge(answers), close },
      );
    if (this.panel === "brought")
      return broughtPanel(this.#brought!, {
        take: this.#takeBrought,
        apart: () => void this.#beside({ ...this.#carried!.notebook }),
        close,
      });
    if (this.panel !== "shelf") return nothing;
    const all = this.#all.map(({ id, notebook, at }) => ({ id, title: notebook.title, at: whenText(at) }));
    return shelfPanel(all, this.#aside, {
      open: (id) => void this.#open(newNotebook(id)).then(close),
      openAside: (key) => {
        const found = this.#aside.find((one) => one.key === key);
        if (found) void this.#beside(revived({ ...found.notebook, title: found.name })).then(close);
      },
      fresh: () => void this.#open(newNotebook(freshId())).then(close),
      file: this.#pick,
      close,
    });
  }

  #totals(): TemplateResult {
    const { build } = this.session;
    if (!build) return html`<p class="totals"></p>`;
    const target = build.target;
    const out = evaluationOf(build).outputs.filter(({ standing }) => standing && standing !== "inside");
    const range = target ? `, ${out.length ? "not all" : "inside"} ${String(target.from)} to ${String(target.to)}` : "";
    return html`<p class="totals" aria-live="polite"><b>${totalsText(build)}</b>${range}</p>`;
  }

  /** Draws every page, also what is out of sight: a page has its height then. */
  async #whole(): Promise<void> {
    await this.updateComplete;
    const pages = this.renderRoot.querySelectorAll<NotebookPage>("section > div > *");
    await Promise.all([...pages].map((one) => one.ready?.()));
  }

  async #go(name: string): Promise<void> {
    await this.#whole();
    const section = this.renderRoot.querySelector<HTMLElement>(`#${name}`);
    section?.scrollIntoView();
    section?.querySelector<HTMLElement>("h2")?.focus({ preventScroll: true });
  }

  #strip(): TemplateResult {
    return html`<div class="strip">
      <nav aria-label="Contents">
        ${parts.map(
          ([id, text]) =>
            html`<a
              href=${`#${id}`}
              @click=${(event: Event) => {
                event.preventDefault();
                void this.#go(id);
              }}
              >${text}</a
            >`,
        )}
      </nav>
      <select aria-label="Contents" ${actsOnce((id) => void this.#go(id))}>
        <option value="">Contents</option>
        ${parts.map(([id, text]) => html`<option value=${id}>${text}</option>`)}
      </select>
      ${this.#totals()}
    </div>`;
  }

  #section(id: string, title: string, content: TemplateResult): TemplateResult {
    return html`<section id=${id} aria-labelledby=${`${id}-title`}>
      <h2 id=${`${id}-title`} tabindex="-1">${title}</h2>
      <div>${content}</div>
    </section>`;
  }

  #pages(): TemplateResult {
    const { session } = this;
    if (!this.isBegun)
      return html`<mw-notebook-start
        .session=${session}
        @mw-notebook-begun=${this.#begun}
        @mw-notebook-way=${this.#way}
      ></mw-notebook-start>`;
    return html`${this.#strip()}
    ${this.#section(
      "drivetrain",
      "Drivetrain",
      session.build
        ? html`<mw-notebook-drivetrain .session=${session}></mw-notebook-drivetrain>`
        : html`<mw-notebook-start .session=${session} @mw-notebook-way=${this.#way}></mw-notebook-start>`,
    )}
    ${this.#section("parts", "Parts", html`<mw-notebook-parts .session=${session}></mw-notebook-parts>`)}
    ${this.#section("buy", "To buy", html`<mw-notebook-buy .session=${session}></mw-notebook-buy>`)}
    ${this.#section("workshop", "Workshop", html`<mw-notebook-workshop .session=${session}></mw-notebook-workshop>`)}
    ${this.#section("post", "Post", html`<mw-notebook-post .session=${session}></mw-notebook-post>`)}`;
  }

  protected override render(): TemplateResult {
    const isFollowing = this.keeping.is === "following";
    return html`<div
      class="book ${this.isDropping ? "dropping" : ""}"
      @mw-change=${this.#elementChanged}
      @mw-notebook-odd-post=${this.#oddPost}
      @input=${this.#typing}
      @dragover=${this.#dragged}
      @dragleave=${() => (this.isDropping = false)}
      @drop=${this.#dropped}
    >
      ${this.#header()} ${this.#panel()}
      ${this.message ? html`<div class="panel" role="alert">${this.message} <button type="button" @click=${() => (this.message = undefined)}>Close</button></div>` : nothing}
      <main><div ?inert=${isFollowing}>${this.#pages()}</div></main>
    </div>`;
  }
}
