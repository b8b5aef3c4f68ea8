import { html, nothing, type TemplateResult } from "lit";
import { buildFromAttributes, readUnfinished, type Reading } from "@meshwright/calc/document";
import { changesOf, labelAt, stagesOf, type Build } from "@meshwright/calc/drivetrain";
import { textOf } from "@meshwright/calc/parts";
import type { Node } from "prosemirror-model";
import { actsOnce, download, NotebookPage, sheet } from "../frame/index.js";
import { fileName, type Notebook, type PostNode } from "../model/index.js";
import {
  blocks,
  candidatesOf,
  figureSay,
  figureText,
  idsOf,
  matchesIn,
  postFromPage,
  postOf,
  readPost,
  renameIn,
  wouldRead,
  type Candidate,
  type FigureAttrs,
  type Match,
  type Picture,
} from "../writing/index.js";
import { commands, PostEditor } from "./editor.js";
import type { Framed } from "../embed/index.js";
import { framingOf, frameView, type Framing } from "./frame-view.js";
import { picturesView, pngOf } from "./pictures-view.js";
import { publishView, scriptBeside, type Publishing, type Script } from "./publish.js";
import { written } from "./styles.js";

/** A post of which not all is known here: what is, and the names of what is not. */
interface OddPost {
  readonly post: PostNode;
  readonly unknown: readonly string[];
}

/** The drivetrain that an element of a page holds, or what is wrong with it. */
function buildIn(holder: Element): Reading {
  const json = holder.getAttribute("json") ?? holder.querySelector('script[type$="json"]')?.textContent;
  return json
    ? readUnfinished(json)
    : buildFromAttributes(Object.fromEntries([...holder.attributes].map(({ name, value }) => [name, value])));
}

/** "Left out, as a post runs nothing here: 2 scripts, 1 style sheet." */
const toldOfLeft = (left: ReadonlyMap<string, number>): string | undefined =>
  left.size
    ? `Left out, for a post runs nothing here: ${[...left].map(([what, n]) => `${n} × ${what}`).join(", ")}.`
    : undefined;

/** Nothing is offered while somebody types. */
const pause = 700;

/** The post: written here or pasted, its numbers tied to the drivetrain, handed out for wherever it goes. */
export class MwNotebookPost extends NotebookPage {
  static readonly tag = "mw-notebook-post";
  static override styles = [sheet, written];
  static override properties = {
    found: { state: true },
    at: { state: true },
    chosen: { state: true },
    over: { state: true },
    publishing: { state: true },
    script: { state: true },
    said: { state: true },
    framing: { state: true },
    isFraming: { state: true },
    pictureSaid: { state: true },
  };

  declare private found: readonly Match[];
  /** Which match is looked at; none while nobody goes through them. */
  declare private at: number | undefined;
  declare private chosen: Candidate | undefined;
  /** What was typed over a figure. */
  declare private over: { readonly at: number; readonly attrs: FigureAttrs; readonly text: string } | undefined;
  declare private publishing: Publishing;
  declare private script: Script | undefined;
  declare private said: string | undefined;
  /** The frame for hosts without scripts, once it has been measured. */
  declare private framing: Framing | undefined;
  declare private isFraming: boolean;
  declare private pictureSaid: string | undefined;
  #framed: Framed = "drive-line";
  #editor: PostEditor | undefined;
  #kept: PostNode | undefined;
  /** The notebook that the post is of. */
  #of: string | undefined;
  #drawnFor: Build | undefined;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    super();
    this.found = [];
    this.publishing = { file: undefined, place: undefined };
  }

  protected override isAffected(before: Partial<Notebook>, after: Notebook): boolean {
    return before.build !== after.build || before.onlyText !== after.onlyText || after.post !== this.#kept;
  }

  protected override firstUpdated(): void {
    this.#kept = this.session.notebook.post;
    this.#of = this.session.notebook.id;
    this.#editor = new PostEditor(this.renderRoot.querySelector<HTMLElement>(".editor")!, this.#read(), {
      textOf: (attrs) => this.build && figureText(this.build, attrs),
      sayOf: (attrs) => (this.build && figureSay(this.build, attrs)) ?? "a figure",
      changed: (doc) => {
        this.#kept = doc.toJSON() as PostNode;
        this.session.note({ post: this.#kept });
        this.#look();
      },
      overtyped: (at, attrs, text) => {
        this.over = { at, attrs, text };
        void this.focusOn("[name=over]");
      },
    });
    this.#look();
  }

  protected override updated(): void {
    const { post, id } = this.session.notebook;
    if (post !== this.#kept || id !== this.#of) {
      const isSame = id === this.#of;
      this.#kept = post;
      this.#of = id;
      if (isSame) this.#editor?.follow(this.#read());
      else this.#editor?.open(this.#read());
      this.#look();
    }
    if (this.build !== this.#drawnFor) {
      this.#drawnFor = this.build;
      this.#editor?.refresh();
      this.#look();
    }
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#timer);
  }

  /** Looks for numbers that match, once nobody types any more. */
  #look(now = false): void {
    clearTimeout(this.#timer);
    const look = (): void => {
      const { build } = this;
      const found = build && this.#editor ? matchesIn(this.#editor.doc, build, this.session.notebook.onlyText) : [];
      if (found.length || this.found.length) this.found = found;
      if (this.at !== undefined && !this.found.length) this.at = undefined;
    };
    if (now) look();
    else this.#timer = setTimeout(look, pause);
  }

  /** The post as it lies there. Where not all of it is known here, whoever keeps the notebook is told before anything is written over. */
  #read(): Node {
    const { post } = this.session.notebook;
    const { doc, unknown } = readPost(post);
    if (post && unknown.length)
      this.dispatchEvent(
        new CustomEvent<OddPost>("mw-notebook-odd-post", {
          detail: { post: doc.toJSON() as PostNode, unknown },
          bubbles: true,
          composed: true,
        }),
      );
    return doc;
  }

  /** Takes in a post that was opened as a file, as one step; its drivetrain too, where there is none here. */
  takeIn(source: string | ArrayBuffer): void {
    const text = typeof source === "string" ? source : textOf(source).text;
    const page = new DOMParser().parseFromString(text, "text/html");
    const holder = page.querySelector("mw-build");
    const reading = holder && buildIn(holder);
    holder?.remove();
    const here = reading?.ok && this.build ? idsOf(this.build, reading.build, holder!.getAttribute("seal")) : undefined;
    if (here) renameIn(page.body, here);
    const { doc, left } = postFromPage(page.body, holder?.id || null);
    const build = reading?.ok && !this.build ? reading.build : undefined;
    this.#kept = doc.toJSON() as PostNode;
    this.#editor?.replace(doc);
    this.session.put(
      { post: this.#kept, ...(build && { build, ...(build.title && { title: build.title }) }) },
      build ? "Post opened with its drivetrain" : "Post opened",
    );
    this.over = undefined;
    this.at = undefined;
    const isTaken = build !== undefined || here !== undefined;
    const told = [isTaken ? undefined : this.#toldOfDrivetrain(holder, reading), toldOfLeft(left)].filter(Boolean);
    this.said = told.length ? told.join(" ") : undefined;
    this.#editor?.refresh();
    this.#look(true);
    this.requestUpdate();
  }

  /** What became of the drivetrain that a post brings along, where that is not plain to see. */
  #toldOfDrivetrain(holder: Element | null, reading: Reading | null): string | undefined {
    const src = holder?.getAttribute("src");
    if (src) return `The drivetrain of this post lies in another file, ${src}: open that as well.`;
    if (reading && !reading.ok)
      return `The drivetrain of this post cannot be read: ${reading.findings.find(({ severity }) => severity === "error")?.message ?? "it is cut off."}`;
    if (!reading)
      return this.build ? undefined : "This post brings no drivetrain. Its figures come to life once there is one.";
    return "This post brings a drivetrain of its own, which was not taken in: its figures follow the one that is here. To have its own, begin another notebook and open the post there.";
  }

  // Numbers that match

  #turn(at: number): void {
    if (at >= this.found.length) {
      this.at = undefined;
      return;
    }
    this.at = at;
    this.chosen = this.found[at]?.preselected;
    void this.focusOn(".match h3");
  }

  readonly #take = (): void => {
    const match = this.found[this.at!];
    if (!match || !this.chosen) return;
    const { tag, ask } = this.chosen;
    this.#editor!.putFigure({ tag, ask }, match.from, match.to);
    this.#look(true);
    this.#turn(this.at!);
  };

  readonly #refuse = (): void => {
    const { key } = this.found[this.at!]!;
    this.session.note({ onlyText: [...(this.session.notebook.onlyText ?? []), key] });
    this.#look(true);
    this.#turn(this.at!);
  };

  /** All that are no whole numbers, each as its likeliest figure; from the end, so that places stay right. */
  readonly #takeAll = (): void => {
    for (const { preselected, from, to } of [...this.found].reverse())
      if (preselected) this.#editor!.putFigure({ tag: preselected.tag, ask: preselected.ask }, from, to);
    this.#look(true);
    this.#turn(0);
  };

  #margin(): TemplateResult | typeof nothing {
    const { found, at } = this;
    if (!found.length || at !== undefined) return nothing;
    return html`<p role="status">
      ${found.length === 1 ? "One number matches" : `${found.length} numbers match`} your drivetrain.
      <button type="button" class="through" @click=${() => this.#turn(0)}>Go through them.</button>
    </p>`;
  }

  #match(): TemplateResult | typeof nothing {
    const match = this.at === undefined ? undefined : this.found[this.at];
    const { build, chosen } = this;
    if (!match || !build) return nothing;
    const sure = this.found.filter(({ preselected }) => preselected).length;
    return html`<div class="match" role="group" aria-label="A number that matches">
      <h3 tabindex="-1">${match.before}<mark>${match.text}</mark>${match.after}</h3>
      ${match.choices.map((choice, n) => {
        const example = wouldRead(build, match, choice);
        return html`<label
          ><input
            type="radio"
            name="choice"
            .value=${String(n)}
            .checked=${chosen === choice}
            @change=${() => (this.chosen = choice)}
          />
          ${choice.say}${example ? html`<br /><span class="quiet">${example}</span>` : nothing}</label
        >`;
      })}
      <p>
        <button type="button" class="take" ?disabled=${!chosen} @click=${this.#take}>Tie it to the drivetrain</button>
        <button type="button" class="refuse" @click=${this.#refuse}>Only this text</button>
        <button type="button" @click=${() => this.#turn(this.at! + 1)}>Later</button>
        ${sure > 1 ? html`<button type="button" class="all" @click=${this.#takeAll}>All ${sure} that can be nothing else</button>` : nothing}
        <button type="button" @click=${() => (this.at = undefined)}>Enough</button>
      </p>
    </div>`;
  }

  // Typing over a figure

  #over(): TemplateResult | typeof nothing {
    const { over, build } = this;
    if (!over || !build) return nothing;
    const { at, attrs } = over;
    const of = attrs.ask.of ?? "";
    const isCount = attrs.tag === "mw-teeth";
    const close = (): void => {
      this.over = undefined;
      this.#editor?.view.focus();
    };
    const typed = (): string => this.renderRoot.querySelector<HTMLInputElement>("[name=over]")!.value.trim();
    const change = (): void => {
      const stage = stagesOf(build).find((place) => place.stage.id === of.split(".")[0])?.stage;
      const value = Number(typed());
      const request = stage ? changesOf(stage, { [of.slice(stage.id.length + 1)]: value }) : { [of]: value };
      if (this.ask("over", request)) close();
    };
    const only = (): void => {
      if (typed()) this.#editor?.putText(at, typed());
      close();
    };
    return html`<div class="match">
      <p>
        ${isCount ? labelAt(build, of) : "This figure"} reads ${figureText(build, attrs) ?? "nothing"}; instead
        <input class="short" name="over" aria-label="What it is to read" .value=${over.text} />
        ${isCount ? html`<button type="button" @click=${change}>Change the drivetrain</button>` : nothing}
        <button type="button" @click=${only}>Only this text</button>
        <button type="button" @click=${close}>Leave it</button>
      </p>
      ${this.fault("over")}
    </div>`;
  }

  // The bar

  #bar(): TemplateResult {
    const figures = this.build ? candidatesOf(this.build) : [];
    const put = (value: string): void => {
      const one = figures[Number(value)];
      if (one) this.#editor?.putFigure({ tag: one.tag, ask: one.ask });
      this.#editor?.view.focus();
    };
    const draw = (tag: string): void => this.#editor?.putBlock({ tag, ask: {} });
    const key = (name: string, text: TemplateResult | string, label: string) =>
      html`<button
        type="button"
        aria-label=${label}
        @mousedown=${(event: Event) => event.preventDefault()}
        @click=${() => this.#editor?.run(commands[name]!)}
      >
        ${text}
      </button>`;
    return html`<div class="bar" role="toolbar" aria-label="How it is written">
      ${key("text", "Text", "Text")} ${key("title", "Title", "Title")} ${key("heading", "Heading", "Heading")}
      ${key("quotation", "Quotation", "Quotation")} ${key("list", "List", "List")}
      ${key("strong", html`<b>b</b>`, "Bold")} ${key("em", html`<i>i</i>`, "Italic")}
      <select aria-label="Put in a figure" ${actsOnce(put)} ?disabled=${!figures.length}>
        <option value="">Put in a figure …</option>
        ${figures.map(({ text, say }, n) => html`<option value=${n}>${text}, ${say}</option>`)}
      </select>
      <select aria-label="Put in a picture or table" ${actsOnce(draw)} ?disabled=${!figures.length}>
        <option value="">Put in a picture or table …</option>
        ${Object.entries(blocks).map(([tag, text]) => html`<option value=${tag}>${text}</option>`)}
      </select>
    </div>`;
  }

  readonly #answer = (answers: Partial<Publishing>): void => {
    this.publishing = { ...this.publishing, ...answers };
    this.said = undefined;
    if (this.publishing.place === "frame" && this.publishing.file === "no") void this.#frame(this.#framed);
    if (answers.file === "yes" && !this.script)
      void scriptBeside().then((script) => {
        this.script = script;
      });
  };

  /** Measures the frame of the drivetrain as it stands, laid out beside the page. */
  async #frame(show: Framed): Promise<void> {
    const { build } = this;
    this.#framed = show;
    if (!build || this.isFraming) return;
    this.isFraming = true;
    this.framing = undefined;
    this.framing = await framingOf(build, show, document.body);
    this.isFraming = false;
    // What was chosen or changed meanwhile is measured next.
    if (this.#framed !== show || this.build !== build) void this.#frame(this.#framed);
  }

  readonly #frameView = (): TemplateResult => {
    const { build, framing } = this;
    if (framing && framing.of !== build) queueMicrotask(() => void this.#frame(this.#framed));
    return frameView(
      framing,
      { build: build!, show: this.#framed, isLooking: this.isFraming },
      { choose: (show) => void this.#frame(show), copy: (text) => void this.#copy(text), said: this.said },
    );
  };

  async #png(picture: Picture): Promise<void> {
    const png = await pngOf(picture);
    this.pictureSaid = png ? undefined : "This browser did not draw it; save it as SVG.";
    if (png) download(fileName(this.session.notebook, `${picture.name}.png`), png, "image/png");
  }

  readonly #copy = async (text: string): Promise<void> => {
    try {
      await navigator.clipboard.writeText(text);
      this.said = "Copied.";
    } catch {
      const out = this.renderRoot.querySelector<HTMLTextAreaElement>("#out");
      out?.select();
      this.said = "It could not be copied by itself; it is selected, so copy it by hand.";
    }
  };

  protected override render(): TemplateResult {
    const doc = this.#editor?.doc ?? postOf(this.session.notebook.post);
    return html`${this.#bar()}
      <div class="page">
        <div class="editor"></div>
        <div class="margin">${this.#margin()}</div>
      </div>
      ${this.#over()} ${this.#match()}
      ${this.said && !this.publishing.place ? html`<p role="status">${this.said}</p>` : nothing}
      ${publishView(doc, this.build, this.publishing, this.script, { answer: this.#answer, copy: (text) => void this.#copy(text), said: this.said, frame: this.#frameView })}
      ${this.build ? picturesView(this.session, { png: (picture) => void this.#png(picture), copy: (text) => void this.#copy(text), said: this.pictureSaid }) : nothing}`;
  }
}
