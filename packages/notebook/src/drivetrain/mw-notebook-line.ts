import { css, html, nothing, type TemplateResult } from "lit";
import { stagesOf, type Build } from "@meshwright/calc/drivetrain";
import type { Stage } from "@meshwright/calc/stages";
import type { MwDriveLine } from "@meshwright/elements";
import { actsOnce, NotebookPart, sheet } from "../frame/index.js";

/** What is chosen in the line: a stage's or an axle's id, `motor`, `centre`, or nothing. */
export type Chosen = string;

/** Where something is to be let in. */
export interface Spot {
  readonly into: string | undefined;
  readonly at: number;
}

/** Narrower than this the line stands upright. */
const narrow = 760;

/** The page that the line is drawn from: what is opened in it is drawn from another store, in its own time. */
export const lineOfDrive = "line-of-drive";

const nameOf = ({ label, id }: { readonly label?: string; readonly id: string }): string => label ?? id;

/** Every place at which something can be let in, with what stands before it. */
function spotsOf(build: Build): readonly (Spot & { readonly say: string })[] {
  const list = (stages: readonly Stage[], into: string | undefined, begins: string) => [
    { into, at: 0, say: begins },
    ...stages.map((stage, index) => ({
      into,
      at: index + 1,
      say: `after ${nameOf(stage)}${into === undefined ? "" : `, ${into}`}`,
    })),
  ];
  return [
    ...list(build.stages, undefined, "right after the motor"),
    ...(build.branches ?? []).flatMap((branch) => list(branch.stages, branch.id, `where ${nameOf(branch)} begins`)),
    ...build.outputs.flatMap((output) => list(output.stages, output.id, `where ${nameOf(output)} begins`)),
  ];
}

/**
 * The line of drive, and under it what cannot be pointed at in a picture: places to let something in, the motor, the split, the
 * axles, the whole.
 *
 * @fires mw-notebook-choose - what was chosen
 * @fires mw-notebook-let-in - where something is to be let in
 */
export class MwNotebookLine extends NotebookPart {
  static readonly tag = "mw-notebook-line";
  static override styles = [
    sheet,
    css`
      .under {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0.1em 0.2em;
        margin: 0.9em 0 0;
        padding-bottom: 0.6em;
        border-bottom: 1px solid var(--hair);
        max-width: none;
      }
      .under select {
        margin-inline-end: 1.2em;
      }
      .unit {
        margin-inline-start: auto;
      }
    `,
  ];
  static override properties = { chosen: {}, isNarrow: { state: true } };

  declare chosen: Chosen;
  /** Whether the line stands upright: what is chosen opens beneath itself then. */
  declare private isNarrow: boolean;
  readonly #sizes = new ResizeObserver(([entry]) => {
    this.isNarrow = entry!.contentRect.width < narrow;
  });
  /** Whether what is being told was pointed at in the picture. */
  isPointing = false;

  override connectedCallback(): void {
    super.connectedCallback();
    this.#sizes.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#sizes.disconnect();
  }

  #tell(type: string, detail: unknown): void {
    this.dispatchEvent(new CustomEvent(`mw-notebook-${type}`, { detail, bubbles: true, composed: true }));
  }

  /** The line names what it is made of by what it is; here a wheel is its axle. */
  readonly #pointed = (event: Event): void => {
    event.stopPropagation();
    const { key, stage } = (event as CustomEvent<{ key: string; stage?: string }>).detail;
    const [kind, id] = key.split(":");
    this.isPointing = true;
    this.#tell("choose", stage ?? (kind === "motor" ? "motor" : kind === "split" ? "centre" : (id ?? key)));
    this.isPointing = false;
  };

  /** With a stage chosen by its name: Delete takes it out, Insert lets something in behind it, Alt with an arrow moves it. */
  readonly #pressed = (event: KeyboardEvent): void => {
    const [inner] = event.composedPath() as HTMLElement[];
    const id = inner?.dataset?.name;
    const place =
      id === undefined ? undefined : this.build && stagesOf(this.build).find(({ stage }) => stage.id === id);
    if (!place) return;
    const { index, list, stage } = place;
    const by = event.altKey ? { ArrowLeft: -1, ArrowUp: -1, ArrowRight: 1, ArrowDown: 1 }[event.key] : undefined;
    if (event.key === "Delete") {
      const neighbour = list[index + 1] ?? list[index - 1];
      if (this.ask("line", [{ remove: stage.id }])) void this.#focusName(neighbour?.id);
    } else if (event.key === "Insert") {
      const spot = spotsOf(this.build!).find(({ into, at }) => at === index + 1 && this.#listAt(into) === list);
      if (spot) this.#tell("let-in", spot);
    } else if (by && index + by >= 0 && index + by < list.length)
      void (this.ask("line", [{ move: stage.id, at: index + by }]) && this.#focusName(stage.id));
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  /** The focus goes on with the stage, or with what has taken its place. */
  async #focusName(id: string | undefined): Promise<void> {
    const line = this.renderRoot.querySelector<MwDriveLine>("mw-drive-line")!;
    await new Promise((done) => setTimeout(done));
    await line.updateComplete;
    const root = line.shadowRoot!;
    const name = id === undefined ? null : root.querySelector<HTMLElement>(`[data-name="${CSS.escape(id)}"]`);
    (name ?? root.querySelector<HTMLElement>("[data-name]"))?.focus();
  }

  #listAt(into: string | undefined): readonly Stage[] | undefined {
    const { stages, branches = [], outputs } = this.build!;
    return into === undefined ? stages : [...branches, ...outputs].find(({ id }) => id === into)?.stages;
  }

  /** A mark on a shaft was pressed. */
  readonly #marked = (event: Event): void => {
    event.stopPropagation();
    const { into, at } = (event as CustomEvent<{ into?: string; at?: number }>).detail;
    this.#tell("let-in", { into, at: at ?? 0 });
  };

  readonly #letIn = (value: string): void => {
    const spot = spotsOf(this.build!)[Number(value)];
    if (spot) this.#tell("let-in", { into: spot.into, at: spot.at });
  };

  /** In which unit lengths are shown, all over the notebook. */
  #unit({ lengths }: Build): TemplateResult {
    const [to, text] = lengths === "in" ? [null, "Lengths in millimetres"] : ["in", "Lengths in inches"];
    return html`<button type="button" class="unit" @click=${() => this.ask("line", { lengths: to }, text)}>
      ${text}
    </button>`;
  }

  #name(of: Chosen, text: string): TemplateResult {
    return html`<button
      type="button"
      aria-pressed=${String(this.chosen === of)}
      @click=${() => this.#tell("choose", of)}
    >
      ${text}
    </button>`;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { build, chosen } = this;
    if (!build) return nothing;
    const isStage = stagesOf(build).some(({ stage }) => stage.id === chosen);
    const key = isStage ? chosen : build.outputs.some(({ id }) => id === chosen) ? `wheel:${chosen}` : "";
    // A wide line has what is chosen below itself, and what cannot be pointed at in a picture between.
    const isBeneath = this.isNarrow && !!key;
    return html`<div @keydown=${this.#pressed}>
        <mw-drive-line build=${lineOfDrive} open .chosen=${key} @mw-choose=${this.#pointed} @mw-insert=${this.#marked}
          >${isBeneath ? html`<slot name="detail" slot="detail"></slot>` : nothing}</mw-drive-line
        >
      </div>
      ${this.fault("line")}
      <p class="under">
        <select aria-label="Let something in" ${actsOnce(this.#letIn)}>
          <option value="">Let something in …</option>
          ${spotsOf(build).map(({ say }, n) => html`<option value=${n}>${say}</option>`)}
        </select>
        ${this.#name("", "The whole")} ${this.#name("motor", "Motor")}
        ${build.outputs.length > 1 ? this.#name("centre", "Where it splits") : nothing}
        ${build.outputs.map((output) => this.#name(output.id, nameOf(output)))} ${this.#unit(build)}
      </p>
      ${isBeneath ? nothing : html`<slot name="detail"></slot>`}`;
  }
}
