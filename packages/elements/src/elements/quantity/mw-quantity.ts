import { html, nothing, type TemplateResult } from "lit/html.js";
import { quantityText, sayQuantity, steppedQuantity, typedQuantity } from "@meshwright/calc/article";
import { announce, nameIn, standingTexts, type Told } from "../../shared/drawn/index.js";
import { inSentence, more, paperOf, properties, standsForValue } from "../../shared/element/index.js";
import { fill } from "../../shared/words/index.js";
import { ToolElement } from "../../shared/tools/index.js";
import { styles } from "./styles.js";

const steps: Readonly<Record<string, number>> = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 };

/**
 * One value in a sentence that a reader can change, with its digits and its unit as they were typed: a tyre, a printed ratio, a
 * number of cells, kV, the end of a slot, or a range. A length may be typed in any unit, and stays in it.
 *
 * @attr of - the address: `front.wheel.diameter`, `hub.value`, `battery.cells`, `target`, `target.from`
 * @attr label - its name, where what it is called is not the one to say
 * @fires {CustomEvent<ChangeSet | Change>} mw-change - what the reader changed: new values by address
 * @csspart quantity - the value
 * @csspart tray - the keys
 */
export class MwQuantity extends ToolElement {
  static override readonly tag = "mw-quantity";
  static override styles = [properties, inSentence, styles];
  static override properties = {
    of: {},
    label: {},
    open: { state: true },
    draft: { state: true },
    message: { state: true },
  };

  declare of: string | null;
  declare label: string | null;
  declare private open: boolean | undefined;
  declare private draft: string | undefined;
  declare private message: Told | undefined;

  #gesture: object | undefined;

  get #address(): string {
    return this.of ?? "";
  }

  get #name(): string {
    return this.label || nameIn(this.current!, this.#address, this.locale);
  }

  /** The value as it stands, or as the article has it, as a text. */
  #text(of: "" | "article" = ""): string {
    return quantityText(this.store!.value(this.#address, of), this.speaker()!.writer);
  }

  // Requests

  /** Takes what was typed, or says why not and keeps the last good one. */
  #take(text: string, gesture?: unknown): void {
    const { current: build, reports } = this;
    const typed = typedQuantity({ build: build!, reports }, this.#address, text);
    const refusal = "fault" in typed ? () => typed.fault : this.told(this.change(typed.changes, gesture)[0]);
    this.draft = undefined;
    this.message = refusal && (() => fill(this.words.kept, refusal(), this.#text()));
    announce(this.renderRoot as ShadowRoot, () => this.message?.() ?? this.#outcome());
  }

  #step(by: number, gesture?: unknown): void {
    const next = steppedQuantity(this.draft ?? this.store!.value(this.#address), by);
    if (next !== undefined) this.#take(next, gesture);
  }

  #commit(): void {
    const { draft } = this;
    if (draft === undefined) return;
    if (draft.trim() === "" || draft === this.#text()) this.draft = undefined;
    else this.#take(draft);
  }

  /** What the change came to, for those who listen. */
  #outcome(): string {
    return [`${this.#name} ${this.#text()}`, ...standingTexts(this.store!, this.locale)].join(". ");
  }

  // Handlers

  readonly #focused = (event: FocusEvent): void => {
    this.open = true;
    (event.target as HTMLInputElement).select();
  };

  /** What Escape has closed comes back. */
  readonly #clicked = (): void => void (this.open = true);

  readonly #left = (): void => {
    const { message } = this;
    this.#commit();
    this.open = undefined;
    if (this.message === message) this.message = undefined;
    // What is refused as it is left is there long enough to be read.
    else setTimeout(() => this.open || (this.message = undefined), 6000);
  };

  readonly #typed = (event: Event): void => {
    // Nothing of ours may look like a host's own field being typed in.
    event.stopPropagation();
    this.draft = (event.target as HTMLInputElement).value;
    this.message = undefined;
  };

  readonly #pressed = (event: KeyboardEvent): void => {
    const { key } = event;
    if (event.isComposing || event.keyCode === 229) return;
    if ((event.ctrlKey || event.metaKey) && key === "z" && this.draft === undefined) this.store?.undo();
    else if (event.ctrlKey || event.metaKey || event.altKey) return;
    else if (key in steps) {
      this.#gesture = event.repeat && this.#gesture ? this.#gesture : {};
      this.#step(steps[key]!, this.#gesture);
    } else if (key === "Enter") {
      this.#commit();
      // What is typed next takes its place.
      if (this.open) (event.target as HTMLInputElement).select();
    } else if (key === "Escape" && (this.open || this.message)) this.draft = this.message = this.open = undefined;
    else return this.#ownKey(event);
    event.preventDefault();
    event.stopPropagation();
  };

  /** Keys that write or move the caret are no short cuts of the page's. */
  readonly #ownKey = (event: KeyboardEvent): void => {
    if (!/^(Tab|Escape|F\d+)$/.test(event.key)) event.stopPropagation();
  };

  /** The keys take no focus, and a link around the sentence is not followed. */
  readonly #refuse = (event: Event): void => event.preventDefault();

  readonly #stop = (event: Event): void => event.stopPropagation();

  // Drawing

  protected override updated(changed: Map<PropertyKey, unknown>): void {
    super.updated(changed);
    this.#mark();
    const input = this.renderRoot.querySelector("input");
    if (input && this.draft === undefined && input.value !== this.#text()) {
      input.value = this.#text();
      if (this.open) input.select();
    }
    const tray = this.renderRoot.querySelector<HTMLElement>(".tray");
    if (!tray || !(changed.has("open") || changed.has("message"))) return;
    tray.style.setProperty("--_page", paperOf(this));
    tray.style.color = getComputedStyle(this).color;
  }

  /** Marks the value while it is another than the article's. */
  #mark(): void {
    const root = this.renderRoot.querySelector<HTMLElement>(".root");
    const isThere = root && this.store?.value(this.#address, "article") !== undefined;
    const published = isThere ? this.#text("article") : undefined;
    if (root) more().mark?.(this, root, published === this.#text() ? undefined : published);
  }

  #tray(): TemplateResult | typeof nothing {
    const { open, message, words } = this;
    const canStep = open && steppedQuantity(this.store!.value(this.#address), 1) !== undefined;
    if (!canStep && !message) return nothing;
    const key = (label: string, sign: string, by: number): TemplateResult =>
      html`<button type="button" tabindex="-1" aria-label="${label}: ${this.#name}" @click=${() => this.#step(by)}>
        ${sign}
      </button>`;
    return html`<span class="tray" part="tray" @pointerdown=${this.#refuse} @mousedown=${this.#refuse}
      >${canStep ? html`${key(words.less, "−", -1)}${key(words.more, "+", 1)}` : nothing}${
        message ? html`<span class="message" id="message">${message()}</span>` : nothing
      }</span
    >`;
  }

  protected override render(): TemplateResult {
    const text = this.says((speaker) => {
      const said = sayQuantity(speaker, { of: this.of });
      return typeof said === "string" ? { said } : said;
    })?.said;
    if (text === undefined) return this.fallback(false);
    const published = this.store!.value(this.#address, "article") === undefined ? "" : this.#text("article");
    const changed = published !== "" && published !== text;
    const { draft } = this;
    return html`<span
        class="root over ${changed ? "changed" : ""} ${draft === undefined ? "" : "typing"}"
        part="quantity"
        @click=${this.#refuse}
        ><span class="text" aria-hidden="true">${draft === undefined ? text : draft || "\u2002"}</span
        ><input
          type="text"
          autocomplete="off"
          autocorrect="off"
          spellcheck="false"
          enterkeyhint="done"
          aria-label=${this.#name}
          aria-invalid=${this.message ? "true" : nothing}
          aria-describedby=${this.message ? "message" : nothing}
          @focus=${this.#focused}
          @click=${this.#clicked}
          @blur=${this.#left}
          @input=${this.#typed}
          @change=${this.#stop}
          @keydown=${this.#pressed}
          @keypress=${this.#ownKey}
          @keyup=${this.#ownKey}
        />${this.#tray()}</span
      >${this.fallback(standsForValue(this, published || text))}`;
  }
}
