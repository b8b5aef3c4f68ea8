import { css, html, nothing, type TemplateResult } from "lit";
import { labelAt, oneIn, stagesOf } from "@meshwright/calc/drivetrain";
import { NotebookPage, onceSeen, sheet, type NotebookPanel, type NotebookPart } from "../frame/index.js";
import { countedAgain } from "../model/index.js";
import { lineOfDrive, type Chosen, type MwNotebookLine, type Spot } from "./mw-notebook-line.js";

/** A count that was changed, until somebody says whether the part was swapped or counted again. */
interface Recount {
  readonly address: string;
  readonly before: unknown;
  readonly after: unknown;
}

/** The line of drive, and below it what is chosen in it. */
export class MwNotebookDrivetrain extends NotebookPage {
  static readonly tag = "mw-notebook-drivetrain";
  static override styles = [
    sheet,
    css`
      .chosen {
        padding-top: 1.2em;
      }
      .asked {
        border-inline-start: 2px solid var(--accent);
        padding-inline-start: 0.8em;
      }
    `,
  ];
  static override properties = {
    chosen: { state: true },
    spot: { state: true },
    replaces: { state: true },
    recount: { state: true },
    isWhole: { state: true },
  };

  /** A notebook opens with it. */
  protected override isSeen = true;
  declare private chosen: Chosen;
  declare private spot: Spot | undefined;
  declare private replaces: string | undefined;
  declare private recount: Recount | undefined;
  /** The line comes first: both at once would hold the page. */
  declare private isWhole: boolean;

  constructor() {
    super();
    this.chosen = "";
    this.isWhole = false;
  }

  override connectedCallback(): void {
    this.id = lineOfDrive;
    super.connectedCallback();
  }

  protected override firstUpdated(): void {
    onceSeen(() => {
      this.isWhole = true;
    });
  }

  get #opened(): NotebookPart | null {
    return this.renderRoot.querySelector<NotebookPart>(".panel > *");
  }

  /** With what is chosen in it, wherever that stands. */
  override async ready(): Promise<void> {
    this.isWhole = true;
    await super.ready();
    await (this.#opened as Partial<NotebookPanel> | null)?.ready?.();
  }

  /** What is chosen now. */
  get isShowing(): Chosen {
    return this.chosen;
  }

  /**
   * Chooses a stage, an axle, the motor, the split; nothing: the whole.
   *
   * @param isPointed it was pointed at in the line, where the focus stays: a count may be about to be typed
   */
  choose(of: Chosen, isPointed = false): void {
    this.chosen = of;
    this.spot = this.replaces = undefined;
    if (!isPointed && of) void this.#focusPanel();
  }

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    super.willUpdate(changed);
    const { build, chosen } = this;
    // What was taken back is asked about no longer.
    if (this.recount && (!build || oneIn(build).value(this.recount.address) !== this.recount.after)) this.#asksLater();
    // What is gone is not chosen any more.
    const isThere =
      !chosen ||
      chosen === "motor" ||
      chosen === "centre" ||
      (build &&
        (build.outputs.some(({ id }) => id === chosen) || stagesOf(build).some(({ stage }) => stage.id === chosen)));
    if (!isThere) this.chosen = "";
  }

  readonly #chosen = (event: Event): void => {
    const { detail } = event as CustomEvent<Chosen>;
    const from = event.composedPath()[0] as HTMLElement;
    this.choose(detail, from.localName === "mw-notebook-line" && (from as MwNotebookLine).isPointing);
  };

  readonly #letIn = ({ detail }: CustomEvent<Spot>): void => {
    this.spot = detail;
    this.replaces = undefined;
    void this.#focusPanel();
  };

  readonly #replace = ({ detail }: CustomEvent<string>): void => {
    this.replaces = detail;
    this.spot = undefined;
    void this.#focusPanel();
  };

  /** Its own heading is where a screen reader goes on. */
  async #focusPanel(): Promise<void> {
    await this.ready();
    const panel = this.#opened;
    await panel?.updateComplete;
    const heading = panel?.renderRoot.querySelector<HTMLElement>("h2");
    heading?.focus({ preventScroll: true });
    heading?.scrollIntoView({ block: "nearest" });
  }

  readonly #let = ({ detail }: CustomEvent<string | undefined>): void => {
    this.spot = this.replaces = undefined;
    if (detail) this.choose(detail);
  };

  readonly #counted = ({ detail }: CustomEvent<Recount>): void => {
    const { versions, bench } = this.session.notebook;
    // There is nothing of the past that would be believed wrong.
    const isAsked = versions?.length || bench?.length || this.build?.measurements?.length;
    // Spun through several counts, it is one question.
    const before = this.recount?.address === detail.address ? this.recount.before : detail.before;
    this.recount = isAsked && before !== detail.after ? { ...detail, before } : undefined;
  };

  /** A count that was changed in the line or in a finder: what it was stands in the notebook until this event has gone up. */
  readonly #elementChanged = (event: Event): void => {
    const { detail } = event as CustomEvent<Record<string, unknown>>;
    const [address, ...others] = Object.keys(detail);
    const after = address && detail[address];
    const before = address && this.build ? oneIn(this.build).value(address) : undefined;
    if (address && !others.length && typeof after === "number" && typeof before === "number")
      this.#counted(new CustomEvent("count", { detail: { address, before, after } }));
  };

  /** A change in an element is told before the notebook has taken it over. */
  #asksLater(): void {
    const asked = this.recount;
    queueMicrotask(() => {
      const { build, recount } = this;
      if (recount && recount === asked && (!build || oneIn(build).value(recount.address) !== recount.after))
        this.recount = undefined;
    });
  }

  readonly #again = (): void => {
    const { address, before, after } = this.recount!;
    const fields = countedAgain(this.session.notebook, address, before, after);
    this.session.put(fields, `${labelAt(this.build!, address)} counted again: ${String(after)}`);
    this.recount = undefined;
  };

  #asked(): TemplateResult | typeof nothing {
    const { recount, build } = this;
    if (!recount || !build) return nothing;
    const { address, before, after } = recount;
    return html`<p class="asked" role="status">
      ${labelAt(build, address)} is ${String(after)}, was ${String(before)}. Swapped, or counted again?
      <button type="button" @click=${() => (this.recount = undefined)}>Swapped: the past stays</button>
      <button type="button" @click=${this.#again}>Counted again: it never was ${String(before)}</button>
    </p>`;
  }

  #panel(): TemplateResult {
    const { session, chosen, spot, replaces, build } = this;
    if (spot || replaces !== undefined)
      return html`<mw-notebook-let-in
        .session=${session}
        .spot=${spot}
        .replaces=${replaces}
        @mw-notebook-let=${this.#let}
      ></mw-notebook-let-in>`;
    if (chosen === "motor") return html`<mw-notebook-motor .session=${session}></mw-notebook-motor>`;
    if (chosen === "centre") return html`<mw-notebook-split .session=${session}></mw-notebook-split>`;
    if (build?.outputs.some(({ id }) => id === chosen))
      return html`<mw-notebook-axle .session=${session} .of=${chosen}></mw-notebook-axle>`;
    if (chosen) return html`<mw-notebook-stage .session=${session} .of=${chosen}></mw-notebook-stage>`;
    return html`<mw-notebook-whole .session=${session}></mw-notebook-whole>`;
  }

  protected override render(): TemplateResult {
    const { session, chosen } = this;
    return html`<div
      @mw-notebook-choose=${this.#chosen}
      @mw-notebook-let-in=${this.#letIn}
      @mw-notebook-replace=${this.#replace}
      @mw-notebook-count=${this.#counted}
      @mw-change=${this.#elementChanged}
    >
      <mw-notebook-line .session=${session} .chosen=${chosen}>
        <div class="chosen" slot="detail">
          ${session.notes.map(({ message }) => html`<p class="quiet" role="status">${message}</p>`)} ${this.#asked()}
          <div class="panel">${this.isWhole ? this.#panel() : nothing}</div>
        </div>
      </mw-notebook-line>
    </div>`;
  }
}
