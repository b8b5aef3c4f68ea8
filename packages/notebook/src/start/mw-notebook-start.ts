import { css, html, nothing, type TemplateResult } from "lit";
import { applyChanges } from "@meshwright/calc/document";
import type { Build } from "@meshwright/calc/drivetrain";
import { Ask, NotebookPart, sheet } from "../frame/index.js";
import {
  askings,
  axleChoices,
  begin,
  firstBuild,
  splitChange,
  stageFrom,
  totalsText,
  type Asking,
} from "../model/index.js";

const asking = (id: string): Asking => askings.find((one) => one.id === id)!;
const firstSentence: Asking = {
  ...asking("pair"),
  sentence: [
    "Its gear has ",
    ...asking("pair").sentence.slice(1, 2),
    " teeth and turns a gear with ",
    ...asking("pair").sentence.slice(3, 4),
    " teeth.",
  ],
};

/**
 * The empty notebook: a few questions, from the motor outwards, until there are totals.
 *
 * @fires mw-notebook-begun - the drivetrain is whole enough to go on with by itself
 * @fires mw-notebook-way - another way in was chosen: `example`, `file` or `paste`
 */
export class MwNotebookStart extends NotebookPart {
  static readonly tag = "mw-notebook-start";
  static override styles = [
    sheet,
    css`
      :host {
        padding-block: 1.2em 2em;
      }
      .question {
        font-size: 1.22em;
        line-height: 1.7;
      }
      .so-far {
        font-size: 1.22em;
        margin-top: 0.6em;
      }
      .so-far b {
        font-weight: 600;
      }
      .choices > span {
        align-self: center;
      }
      dl {
        display: grid;
        grid-template-columns: max-content 1fr;
        gap: 0.1em 1.2em;
        margin: 0 0 1em;
      }
      dt {
        color: var(--second);
      }
      dd {
        margin: 0;
      }
    `,
  ];
  static override properties = { axles: { state: true }, asks: { state: true } };

  /** The questions that are open: one, or one an axle. */
  declare private asks: readonly (readonly [into: string | undefined, ask: Ask])[];
  declare private axles: readonly string[];

  constructor() {
    super();
    this.axles = [];
    this.asks = [[undefined, this.#ask(firstSentence)]];
  }

  #ask(one: Asking, into?: string): Ask {
    const [, instead] = this.asks?.find(([place]) => place === into) ?? [];
    return new Ask(
      one,
      { typed: () => this.requestUpdate(), done: (ask) => this.#answered(ask, into) },
      instead?.isAnswered ? undefined : instead,
    );
  }

  /** Every blank of a question is filled: what it came to goes into the line. */
  #answered(ask: Ask, into: string | undefined): void {
    if (!this.asks.some(([, one]) => one === ask)) return;
    const { build, session } = this;
    if (!build) {
      const [refusal] = begin(session, stageFrom(ask.asking, ask.answers, undefined), session.notebook.title);
      this.blame("ask", refusal?.message);
      if (refusal) return;
    } else {
      const stage = stageFrom(
        ask.asking,
        ask.answers,
        build,
        into && ask.asking.id === "pair" ? "Ring and pinion" : undefined,
      );
      const list = into ? build.outputs.find(({ id }) => id === into)!.stages : build.stages;
      const place = into === undefined ? {} : { into };
      if (!this.ask("ask", [{ insert: stage, ...place, at: list.length }])) return;
    }
    const left = this.asks.filter(([, one]) => one !== ask);
    this.asks = left;
    // The next blank is in the next question; else the next step is chosen.
    void this.focusOn(left.length ? ".blank" : ".next button");
  }

  readonly #choose = (one: Asking): void => {
    if (!this.#settle()) return;
    this.asks = [[undefined, this.#ask(one)]];
    void this.focusOn(".blank");
  };

  /** Takes what was answered and not left yet. Says whether all of it is taken: what is refused stays, with what stands against it. */
  #settle(): boolean {
    for (const [into, ask] of this.asks) if (ask.isAnswered) this.#answered(ask, into);
    return !this.asks.some(([, ask]) => ask.isAnswered);
  }

  /** Whether something is answered in part: going on would lose it, so it is told, and asked for. */
  #isHalf(): boolean {
    for (const [into, ask] of this.asks) {
      const { name, label = "" } = ask.lacking ?? {};
      if (name === undefined) continue;
      const axle = this.build?.outputs.find(({ id }) => id === into)?.label;
      const of = axle ? `${axle}, ${label.charAt(0).toLowerCase()}${label.slice(1)}` : label;
      this.blame("ask", `${of}: fill it in, or empty what stands beside it.`);
      void this.focusOn(`[name="${into ? `${into}.` : ""}${name}"]`);
      return true;
    }
    this.blame("ask");
    return false;
  }

  readonly #split = (axles: readonly string[], title: string): void => {
    if (!this.#settle() || this.#isHalf() || !this.build || !this.ask("ask", splitChange(this.build, axles), title))
      return;
    this.axles = axles;
    this.asks = this.build.outputs.map(({ id }) => [id, this.#ask(asking("pair"), id)]);
    void this.focusOn(".blank");
  };

  readonly #another = (into: string, one: Asking): void => {
    this.asks = [...this.asks.filter(([id]) => id !== into), [into, this.#ask(one, into)]];
    void this.focusOn(`[name^="${into}."]`);
  };

  readonly #finish = (): void => {
    if (!this.#settle() || this.#isHalf()) return;
    this.dispatchEvent(new CustomEvent("mw-notebook-begun", { bubbles: true, composed: true }));
  };

  #way(way: string): void {
    this.dispatchEvent(new CustomEvent("mw-notebook-way", { detail: way, bubbles: true, composed: true }));
  }

  /** The drivetrain with what is being answered in it, to say what it comes to as it is typed. */
  get #preview(): Build | undefined {
    let build = this.build;
    for (const [into, ask] of this.asks) {
      if (!ask.isAnswered) continue;
      if (!build) {
        const first = firstBuild(stageFrom(ask.asking, ask.answers, undefined), "");
        build = first.ok ? first.build : undefined;
        continue;
      }
      const list = into ? build.outputs.find(({ id }) => id === into)?.stages : build.stages;
      const insert = stageFrom(ask.asking, ask.answers, build);
      const reading = applyChanges(build, [{ insert, ...(into && { into }), at: list?.length ?? 0 }]);
      if (reading.ok) build = reading.build;
    }
    return build;
  }

  #first(): TemplateResult {
    const [[, ask]] = this.asks as [[undefined, Ask]];
    const others = ["printed", "belt", "unknown"].map(asking);
    return html`<h2>A new drivetrain.</h2>
      <p class="question">What does the motor turn first? ${ask.render()}</p>
      ${ask.asking === firstSentence ? nothing : html`<p class="quiet">${ask.asking.hint}</p>`} ${this.fault("ask")}
      <p class="choices" aria-label="Or" role="group">
        <span>Or:&nbsp;</span>
        ${ask.asking === firstSentence ? nothing : html`<button type="button" @click=${() => this.#askFirst(firstSentence)}>Two gears I counted</button>`}
        ${others.map((one) => html`<button type="button" ?disabled=${one === ask.asking} @click=${() => this.#askFirst(one)}>${one.title}</button>`)}
      </p>`;
  }

  #askFirst(one: Asking): void {
    this.asks = [[undefined, this.#ask(one)]];
    void this.focusOn(".blank");
  }

  #ways(): TemplateResult {
    return html`<p class="choices" role="group" aria-label="Begin with something that is there">
      <button type="button" @click=${() => this.#way("example")}>Open an example</button>
      <button type="button" @click=${() => this.#way("file")}>Open a file</button>
      <button type="button" @click=${() => this.#way("paste")}>Paste a parts list</button>
    </p>`;
  }

  /** What else can be asked: whoever has taken one by mistake takes another. */
  #othersThan(ask: Ask | undefined, all: readonly Asking[]): readonly Asking[] {
    return all.filter((one) => one !== ask?.asking);
  }

  #open(): readonly TemplateResult[] {
    const { build, asks } = this;
    return asks.map(([into, ask]) => {
      const label = into && build?.outputs.find(({ id }) => id === into)?.label;
      return html`<p class="question">
          ${label ? html`<b>${label}.</b> ` : nothing}${ask.render(into ? `${into}.` : "", label)}
        </p>
        <p class="quiet">
          ${ask.asking.hint}
          ${into ? html`Or: ${this.#othersThan(ask, ["pair", "printed", "planetary", "worm", "unknown"].map(asking)).map((one) => html`<button type="button" @click=${() => this.#another(into, one)}>${label ? html`<span class="heard">${label}: </span>` : nothing}${one.title}</button>`)}` : nothing}
        </p>`;
    });
  }

  protected override render(): TemplateResult {
    const { build, asks, axles } = this;
    const preview = this.#preview;
    const isOpen = asks.some(([, ask]) => !ask.isAnswered);
    return html`${
        build
          ? html`<h2>A new drivetrain.</h2>
              ${this.#open()}${this.fault("ask")}`
          : this.#first()
      }
      <p class="so-far" role="status">
        ${preview ? html`<b>${totalsText(preview)}</b> so far${axles.length ? "." : html`. ${isOpen ? nothing : "What next?"}`}` : nothing}
      </p>
      ${
        preview && !axles.length
          ? html`<p class="choices next" role="group" aria-label=${isOpen ? "Or" : "What next?"}>
              ${isOpen ? html`<span>Or:&nbsp;</span>` : nothing}
              ${this.#othersThan(isOpen ? asks[0]?.[1] : undefined, askings).map((one) => html`<button type="button" title=${one.hint} @click=${() => this.#choose(one)}>${one.title}</button>`)}
            </p>`
          : nothing
      }
      ${
        preview && !axles.length
          ? html`<p class="choices next" role="group" aria-label="Which axles does it drive?">
              ${axleChoices.map((one) => html`<button type="button" @click=${() => this.#split(one.axles, one.title)}>${one.title}</button>`)}
            </p>`
          : nothing
      }
      ${
        preview
          ? html`<p class="choices next">
              <button type="button" @click=${this.#finish}>Then the wheels</button>
            </p>`
          : this.#ways()
      }`;
  }
}
