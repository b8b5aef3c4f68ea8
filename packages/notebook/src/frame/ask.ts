import { html, nothing, type TemplateResult } from "lit";
import { answerFault, blanksOf, isAnswered, type Asking, type Blank } from "../model/index.js";

/** A question with its blanks, while it is being answered. */
export class Ask {
  readonly answers: Record<string, string> = {};
  #left = new Set<string>();
  readonly asking: Asking;
  readonly #on: { readonly typed: () => void; readonly done?: (ask: Ask) => void };

  /**
   * @param on told when something was typed, and when the last blank was filled and left
   * @param instead the question in whose place this one is asked: what both ask for is answered
   */
  constructor(asking: Asking, on: { readonly typed: () => void; readonly done?: (ask: Ask) => void }, instead?: Ask) {
    this.asking = asking;
    this.#on = on;
    for (const { name } of blanksOf(asking)) if (instead?.answers[name]) this.answers[name] = instead.answers[name];
  }

  get isAnswered(): boolean {
    return isAnswered(this.asking, this.answers);
  }

  /** The blank that keeps what was typed into the others from being an answer. */
  get lacking(): Blank | undefined {
    const isBegun = Object.values(this.answers).some((text) => text.trim());
    return isBegun
      ? blanksOf(this.asking).find((blank) => answerFault(blank, this.answers[blank.name] ?? ""))
      : undefined;
  }

  #blank(blank: Blank, prefix: string, of: string): TemplateResult {
    const { name, label, takes } = blank;
    const text = this.answers[name] ?? "";
    const fault = this.#left.has(name) && text ? answerFault(blank, text) : undefined;
    const typed = (event: Event): void => {
      this.answers[name] = (event.target as HTMLInputElement).value;
      this.#on.typed();
    };
    const left = (event: Event): void => {
      this.answers[name] = (event.target as HTMLInputElement).value;
      this.#left.add(name);
      if (this.isAnswered) this.#on.done?.(this);
      else this.#on.typed();
    };
    const pressed = (event: KeyboardEvent): void => {
      const by = takes === "count" ? { ArrowUp: 1, ArrowDown: -1 }[event.key] : undefined;
      const input = event.target as HTMLInputElement;
      if (by && /^\d+$/.test(input.value)) {
        input.value = String(Math.max(1, Number(input.value) + by));
        typed(event);
        event.preventDefault();
      }
    };
    return html`<input
        class=${takes === "count" ? "count blank" : "short blank"}
        inputmode=${takes === "count" ? "numeric" : takes === "counts" ? nothing : "decimal"}
        autocomplete="off"
        spellcheck="false"
        name=${prefix + name}
        aria-label=${of ? `${of}: ${label.charAt(0).toLowerCase()}${label.slice(1)}` : label}
        aria-invalid=${fault ? "true" : nothing}
        .value=${text}
        @input=${typed}
        @change=${left}
        @keydown=${pressed}
      />${fault ? html`<span class="fault" role="alert"> ${fault} </span>` : nothing}`;
  }

  /**
   * The sentence, with its blanks in it.
   *
   * @param of what it is asked of, where it is asked more than once
   */
  render(prefix = "", of = ""): TemplateResult {
    return html`${this.asking.sentence.map((piece) =>
      typeof piece === "string" ? piece : this.#blank(piece, prefix, of),
    )}`;
  }

  /** How many blanks there are. */
  get length(): number {
    return blanksOf(this.asking).length;
  }
}
