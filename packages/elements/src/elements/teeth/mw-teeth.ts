import { html, nothing, type TemplateResult } from "lit";
import { setText } from "@meshwright/calc/article";
import { changesOf, sameSet, setOf, type ChangeSet, type GearSet } from "@meshwright/calc/drivetrain";
import { Writer } from "@meshwright/calc/report";
import type { Stage } from "@meshwright/calc/stages";
import {
  announce,
  MeshwrightElement,
  nameOf,
  paperOf,
  properties,
  readCount,
  standsForValue,
  writeCount,
} from "../../shared/element/index.js";
import { fill } from "../../shared/words/index.js";
import { choicesFor, type Choice } from "./sets.js";
import { styles } from "./styles.js";

const highest = 1_000_000;
let narrow: MediaQueryList | undefined;
/** Where a thumb works: there is a strip of keys then, and no keyboard before it is asked for. */
const isNarrow = (): boolean =>
  !!(narrow ??= globalThis.matchMedia?.("(max-width: 560px), (pointer: coarse)"))?.matches;
const keyboard = (): string => (isNarrow() ? "none" : "numeric");
const steps: Readonly<Record<string, number>> = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 };

/**
 * A tooth count in a sentence that a reader can change; or, where two gears are sold as a set, a choice among the sets that
 * can be had.
 *
 * @attr of the address: `primary.driver`, `row.teeth.1`; for a set the stage's id, or either count
 * @attr label its name, where the gear's own is not the one to say
 * @attr min, max the counts that a reader may try; from 1 where not said
 * @attr free a set's counts may be changed one by one
 * @fires mw-change what the reader changed: new values by address
 * @csspart count the count · @csspart note the article's value · @csspart tray the keys
 */
export class MwTeeth extends MeshwrightElement {
  static override readonly tag = "mw-teeth";
  static override styles = [properties, styles];
  static override properties = {
    of: {},
    label: {},
    min: {},
    max: {},
    free: { type: Boolean },
    open: { state: true },
    draft: { state: true },
    message: { state: true },
  };

  declare of: string | null;
  declare label: string | null;
  declare min: string | number | null;
  declare max: string | number | null;
  declare free: boolean | null;
  declare private open: "tray" | "strip" | undefined;
  declare private draft: string | undefined;
  declare private message: string | undefined;

  /** What the store says at the address, and what the article says. */
  #value: unknown;
  #article: unknown;
  #fitted: GearSet | undefined;
  #choices: readonly Choice[] | undefined;
  #gesture: object | undefined;
  #wheeled = 0;
  /** Whether the field has been tapped since it has the focus. */
  #tapped = false;
  #asking = false;
  /** Where the tray is to stand: measured before it is there, because a page is laid out anew for every look after a change. */
  #place: { readonly sides: readonly string[]; readonly paper: string; readonly color: string } | undefined;

  get #address(): string {
    return this.of ?? "";
  }

  get #count(): number {
    return Number(this.store!.value(this.#address));
  }

  get #name(): string {
    return this.label || nameOf(this.current!, this.#address, this.words);
  }

  get #lowest(): number {
    return Math.max(1, Math.ceil(Number(this.min)) || 1);
  }

  get #highest(): number {
    return Math.min(highest, Math.floor(Number(this.max)) || highest);
  }

  /** Takes in what the store says; answers whether there is something else to draw: another count, or another one of its set. */
  #takeIn(): boolean {
    const { store } = this;
    const [value, article] = [store?.value(this.#address), store?.value(this.#address, "article")];
    const fitted = store && setOf(this.#stage());
    const other = this.#value !== value || this.#article !== article || !sameSet(this.#fitted, fitted);
    this.#value = value;
    this.#article = article;
    this.#fitted = fitted;
    return other;
  }

  override stateChanged(): void {
    if (this.#takeIn() || this.open) super.stateChanged();
  }

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (this.hasUpdated && (changed.has("open") || changed.has("message"))) this.#measure();
    this.#takeIn();
    this.#choices = this.current && !this.free ? choicesFor(this.current, this.#address) : undefined;
  }

  #write(value: number): string {
    return writeCount(value, this.locale);
  }

  // Requests

  #ask(changes: ChangeSet, gesture?: unknown): void {
    const findings = this.change(changes, gesture);
    this.draft = undefined;
    this.message = findings.length ? fill(this.words.kept, findings[0]!.message, this.#text()) : undefined;
    const root = this.renderRoot as ShadowRoot;
    announce(root, () => this.message ?? this.#outcome());
  }

  /** Takes a count, or says why not and keeps the last good one. */
  #take(value: number | undefined, gesture?: unknown): void {
    const { words } = this;
    if (value !== undefined && value >= this.#lowest && value <= this.#highest) {
      this.message = undefined;
      this.draft = undefined;
      if (value !== this.#count) this.#ask(this.#changes(value), gesture);
      return;
    }
    this.draft = undefined;
    const over = value !== undefined && value > this.#highest;
    this.message = fill(
      over ? words.most : words.wholeOnly,
      this.#write(over ? this.#highest : this.#lowest),
      this.#text(),
    );
    announce(this.renderRoot as ShadowRoot, () => this.message ?? "");
  }

  /** The stage that the address belongs to. */
  #stage(): Stage | undefined {
    const value = this.store!.value(this.#address.split(".")[0]!);
    return (value as Partial<Stage> | undefined)?.kind ? (value as Stage) : undefined;
  }

  /** Where the author lets a set's counts be any, the others of it come along: a set is never changed in part. */
  #changes(value: number): ChangeSet {
    const [id] = this.#address.split(".") as [string];
    const stage = this.#stage();
    return stage ? changesOf(stage, { [this.#address.slice(id.length + 1)]: value }) : { [this.#address]: value };
  }

  #step(by: number, gesture?: unknown): void {
    const from = (this.draft === undefined ? undefined : readCount(this.draft)) ?? this.#count;
    const to = from + by;
    // Ten at a time stops at the end; one more than the end is refused.
    this.#take(Math.abs(by) > 1 ? Math.min(Math.max(to, this.#lowest), this.#highest) : to, gesture);
  }

  #commit(): void {
    if (this.draft !== undefined) this.#take(readCount(this.draft));
  }

  /** What the change came to, for those who listen. */
  #outcome(): string {
    const outputs = this.evaluation()?.outputs ?? [];
    const figures = outputs.map(({ id, label }) =>
      fill(
        this.figureWords.standing,
        label,
        this.textOf({ figure: "reduction", of: id })!,
        this.textOf({ figure: "standing", of: id })!,
      ),
    );
    return [`${this.#name} ${this.#text()}`, ...figures].join(". ");
  }

  // Handlers

  readonly #focused = (event: FocusEvent): void => {
    if (this.open) return;
    this.open = isNarrow() ? "strip" : "tray";
    this.#tapped = false;
    (event.target as HTMLInputElement).select();
  };

  readonly #left = (event: FocusEvent): void => {
    if (this.#asking) return;
    (event.target as HTMLInputElement).inputMode = keyboard();
    this.#commit();
    this.open = undefined;
    if (!this.message) return;
    // Long enough to be read where nobody holds the focus any more.
    setTimeout(() => this.open || (this.message = undefined), 6000);
  };

  readonly #clicked = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    // The first tap brings the strip, the second one the keyboard, which comes with the focus.
    if (this.#tapped && this.open === "strip" && input.inputMode === "none") {
      this.#asking = true;
      input.inputMode = "numeric";
      input.blur();
      input.focus();
      this.#asking = false;
    }
    this.#tapped = true;
    if (this.draft === undefined) input.select();
  };

  readonly #typed = (event: InputEvent): void => {
    // Nothing of ours may look like a host's own field being typed in.
    event.stopPropagation();
    this.draft = (event.target as HTMLInputElement).value;
  };

  readonly #pressed = (event: KeyboardEvent): void => {
    const { key } = event;
    if (event.isComposing || event.keyCode === 229) return;
    if ((event.ctrlKey || event.metaKey) && key === "z" && this.draft === undefined) this.store?.undo();
    else if (event.ctrlKey || event.metaKey || event.altKey) return;
    else if (key in steps) {
      this.#gesture = event.repeat && this.#gesture ? this.#gesture : {};
      this.#step(steps[key]!, this.#gesture);
    } else if (key === "Home") this.#take(this.#lowest);
    else if (key === "End" && this.#highest < highest) this.#take(this.#highest);
    else if (key === "Enter") this.#commit();
    else if (key === "Escape" && (this.draft !== undefined || this.message)) this.draft = this.message = undefined;
    // A space means nothing in a count, and something in a summary around it.
    else if (key !== " ") return this.#ownKey(event);
    event.preventDefault();
    event.stopPropagation();
  };

  /** Keys that write or move the caret are no short cuts of the page's. */
  readonly #ownKey = (event: KeyboardEvent): void => {
    if (!/^(Tab|Escape|F\d+)$/.test(event.key)) event.stopPropagation();
  };

  /** The keys take no focus, and a link around the sentence is not followed. */
  readonly #refuse = (event: Event): void => event.preventDefault();

  readonly #undo = (): void => {
    this.store?.undo();
    this.message = undefined;
    announce(this.renderRoot as ShadowRoot, () => this.#outcome());
  };

  readonly #wheel = (): void => {
    this.#wheeled = performance.now();
  };

  readonly #chosen = (event: Event): void => {
    event.stopPropagation();
    const select = event.target as HTMLSelectElement;
    const { set } = this.#choices![select.selectedIndex]!;
    // Some browsers let the wheel turn a choice over.
    if (performance.now() - this.#wheeled > 100) this.#ask(changesOf(this.#stage()!, set));
    this.requestUpdate();
  };

  // Drawing

  /** A value as text: a count, or all counts of a set. */
  #text(value = this.#value): string {
    return typeof value === "object" ? this.#setText(setOf(value as Stage) ?? {}) : this.#write(Number(value));
  }

  #setText(set: GearSet): string {
    return setText(set, new Writer({ locale: this.locale, words: this.figureWords }));
  }

  protected override updated(changed: Map<PropertyKey, unknown>): void {
    super.updated(changed);
    const input = this.renderRoot.querySelector<HTMLInputElement & HTMLSelectElement>("input,select");
    if (input && this.draft === undefined) {
      const text = this.#text();
      const now = this.#choices?.findIndex(({ set }) => sameSet(set, this.#fitted)) ?? -1;
      if (now >= 0) input.selectedIndex = now;
      else if (input.value !== text) {
        input.value = text;
        if (this.open) input.select();
      }
    }
    const tray = this.renderRoot.querySelector<HTMLElement>(".tray");
    const place = this.#place;
    if (!tray || !place) return;
    this.#place = undefined;
    for (const side of ["start", "end", "under"]) tray.classList.toggle(side, place.sides.includes(side));
    tray.style.setProperty("--_page", place.paper);
    tray.style.color = place.color;
    if (this.open === "strip" && tray.showPopover && !tray.matches(":popover-open")) tray.showPopover();
  }

  #measure(): void {
    const around = this.renderRoot.querySelector(".root")?.getBoundingClientRect();
    if (!around || !(this.open || this.message)) return;
    const width = this.ownerDocument.documentElement.clientWidth;
    const near = around.left < 190 ? "start" : around.right > width - 190 ? "end" : "";
    const sides = this.open === "strip" ? [] : [near, around.top < 60 ? "under" : ""];
    const { color } = getComputedStyle(this);
    this.#place = { sides, paper: paperOf(this), color };
  }

  #tray(): TemplateResult | typeof nothing {
    const { open, message, words } = this;
    if (!open && !message) return nothing;
    const strip = open === "strip";
    return html`<span
      class=${strip ? "tray strip" : "tray"}
      part="tray"
      popover=${strip ? "manual" : nothing}
      @pointerdown=${this.#refuse}
      @mousedown=${this.#refuse}
      >${
        open
          ? html`<button
                class="wide"
                type="button"
                tabindex="-1"
                ?disabled=${!this.store?.canUndo}
                @click=${this.#undo}
              >
                ${words.undo}</button
              ><span class="name" aria-hidden="true">${this.#name} <b>${this.#text()}</b></span
              ><button
                type="button"
                tabindex="-1"
                aria-label="${words.less}: ${this.#name}"
                @click=${() => this.#step(-1)}
              >
                −</button
              ><button
                type="button"
                tabindex="-1"
                aria-label="${words.more}: ${this.#name}"
                @click=${() => this.#step(1)}
              >
                +
              </button>`
          : nothing
      }${message ? html`<span class="message" id="message">${message}</span>` : nothing}</span
    >`;
  }

  #control(text: string, choices: readonly Choice[] | undefined): TemplateResult {
    const { words } = this;
    if (choices)
      return html`<select
        aria-label=${fill(words.set, this.#name)}
        @change=${this.#chosen}
        @input=${this.#stop}
        @wheel=${{ handleEvent: this.#wheel, passive: true }}
      >
        ${choices.map(({ set, name }) => html`<option>${this.#setText(set)}${name ? ` · ${name}` : nothing}</option>`)}
      </select>`;
    return html`<input
      type="text"
      role="spinbutton"
      inputmode=${keyboard()}
      autocomplete="off"
      autocorrect="off"
      spellcheck="false"
      enterkeyhint="done"
      aria-label=${fill(words.teeth, this.#name)}
      aria-valuenow=${this.#count}
      aria-valuemin=${this.#lowest}
      aria-valuemax=${this.#highest < highest ? this.#highest : nothing}
      aria-valuetext=${text}
      aria-invalid=${this.message ? "true" : nothing}
      aria-describedby=${this.message ? "message" : nothing}
      @focus=${this.#focused}
      @blur=${this.#left}
      @click=${this.#clicked}
      @input=${this.#typed}
      @change=${this.#stop}
      @keydown=${this.#pressed}
      @keypress=${this.#ownKey}
      @keyup=${this.#ownKey}
    />`;
  }

  readonly #stop = (event: Event): void => event.stopPropagation();

  protected override render(): TemplateResult {
    const value = this.#value;
    const choices = this.#choices;
    if (typeof value !== "number" && !(value && choices)) return this.fallback(false);
    const article = this.#article;
    const text = this.#text();
    const published = article === undefined ? "" : this.#text(article);
    const changed = published !== "" && published !== text;
    const { draft } = this;
    return html`<span
        class="root ${changed ? "changed" : ""} ${draft === undefined ? "" : "typing"}"
        part="count"
        @click=${this.#refuse}
        ><span class="text" aria-hidden="true">${draft === undefined ? text : draft || "\u2002"}</span
        >${choices?.length === 1 ? nothing : this.#control(text, choices)}${this.#tray()}</span
      >${changed ? html` <span class="note" part="note">${fill(this.words.article, published)}</span>` : nothing}${this.fallback(
        standsForValue(this, published || text),
      )}`;
  }
}
