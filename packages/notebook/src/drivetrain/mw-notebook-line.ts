import { css, html, nothing, type TemplateResult } from "lit";
import { changesOf, type Output } from "@meshwright/calc/drivetrain";
import { displays, type Stage } from "@meshwright/calc/stages";
import { NotebookPart, sheet } from "../frame/index.js";

/** What is chosen in the line: a stage's or an axle's id, `motor`, `centre`, or nothing. */
export type Chosen = string;

/** Where something is to be let in. */
export interface Spot {
  readonly into: string | undefined;
  readonly at: number;
}

/**
 * The drivetrain as a list from the motor to the wheels: every count changeable where it stands, a mark in between that lets
 * something in, totals at the end of every axle.
 *
 * @fires mw-notebook-choose what was chosen
 * @fires mw-notebook-let-in where something is to be let in
 * @fires mw-notebook-count an address, what it was, and what it is now
 */
export class MwNotebookLine extends NotebookPart {
  static readonly tag = "mw-notebook-line";
  static override styles = [
    sheet,
    css`
      ol {
        list-style: none;
        display: flex;
        flex-wrap: wrap;
        align-items: end;
        gap: 0.5em 0;
        margin: 0;
        padding: 0;
      }
      .staff {
        display: grid;
        grid-template-columns: minmax(0, 1fr) max-content;
        gap: 0 1.4em;
        align-items: end;
        padding: 0.5em 0 0.55em;
        border-bottom: 1px solid var(--hair);
      }
      .staff > p {
        grid-column: 1 / -1;
        margin: 0 0 0.1em;
        color: var(--second);
        font-size: 0.86em;
        font-style: italic;
      }
      li {
        display: grid;
        justify-items: center;
        border-bottom: 2px solid currentColor;
        padding: 0 0.1em 0.15em;
      }
      li.mark {
        align-self: end;
        border-bottom-color: var(--second);
      }
      li > button {
        border-color: transparent;
        font-style: italic;
        margin: 0;
        padding: 0.1em 0.45em;
      }
      li > button:hover {
        border-color: currentColor;
      }
      li > button[aria-current="true"] {
        border-color: transparent;
        box-shadow: inset 0 -2px 0 currentColor;
        font-weight: 600;
      }
      .mark button {
        color: var(--accent);
        border: 1px solid var(--hair);
        border-radius: 50%;
        width: 26px;
        min-height: 26px;
        padding: 0;
        text-align: center;
        font-style: normal;
        margin: 0 0.35em 0.2em;
        line-height: 1;
      }
      .counts {
        white-space: nowrap;
        padding: 0 0.45em;
      }
      .total {
        text-align: end;
        line-height: 1.2;
      }
      .total b {
        font-size: 1.35em;
        font-weight: 600;
      }
      @media (pointer: coarse) {
        .mark button {
          width: 44px;
          min-height: 44px;
        }
      }
      @media (max-width: 760px) {
        .staff {
          grid-template-columns: minmax(0, 1fr);
        }
        .total {
          text-align: start;
          padding-top: 0.3em;
        }
      }
    `,
  ];
  static override properties = { chosen: {} };

  declare chosen: Chosen;

  #tell(type: string, detail: unknown): void {
    this.dispatchEvent(new CustomEvent(`mw-notebook-${type}`, { detail, bubbles: true, composed: true }));
  }

  #name(of: Chosen, text: string): TemplateResult {
    return html`<button
      type="button"
      aria-current=${this.chosen === of ? "true" : "false"}
      @click=${() => this.#tell("choose", this.chosen === of ? "" : of)}
    >
      ${text}
    </button>`;
  }

  #mark(spot: Spot, after: string): TemplateResult {
    return html`<li class="mark">
      <button type="button" aria-label=${`Let something in after ${after}`} @click=${() => this.#tell("let-in", spot)}>
        +
      </button>
    </li>`;
  }

  #stage(stage: Stage, into: string | undefined, index: number): TemplateResult {
    const name = stage.label ?? stage.id;
    const pieces = displays[stage.kind](stage);
    const counts = pieces.map((piece) => {
      if ("field" in piece && piece.field !== undefined) {
        const address = `${stage.id}.${piece.field}`;
        const isCount = typeof piece.value === "number";
        return this.field(address, {
          label: `${name}: ${piece.field.replace(".", " ")}`,
          takes: isCount ? "count" : "text",
          size: isCount ? "count" : "short",
          change: (value) => changesOf(stage, { [piece.field!]: value }),
          done: (before, after) => this.#tell("count", { address, before, after }),
        });
      }
      const word = (piece as { word?: string }).word;
      return word === "drives" ? html` <span aria-hidden="true">→</span> ` : nothing;
    });
    return html`<li data-stage=${stage.id}>${this.#name(stage.id, name)}<span class="counts">${counts}</span></li>
      ${this.#mark({ into, at: index + 1 }, name)}`;
  }

  #staff(
    label: string,
    list: readonly Stage[],
    into: string | undefined,
    before: unknown,
    end: unknown,
  ): TemplateResult {
    return html`<div class="staff">
      <p>${label}</p>
      <ol aria-label=${`${label}, in the order of drive`}>
        ${before} ${this.#mark({ into, at: 0 }, into === undefined ? "the motor" : "the split")}
        ${list.map((stage, index) => this.#stage(stage, into, index))}
      </ol>
      ${end}
    </div>`;
  }

  #axle(output: Output): TemplateResult {
    const { id, label = id, stages, wheel } = output;
    const total = this.figure({ figure: "reduction", of: id });
    const standing = this.figure({ figure: "standing", of: id });
    const size = wheel?.diameter ?? wheel?.loadedDiameter ?? "wheels";
    return this.#staff(
      label,
      stages,
      id,
      nothing,
      html`<div class="total" data-total=${id}>
        <b>${total ?? "not known"}</b> ${this.#name(id, size)}
        ${standing ? html`<br /><span class="quiet">${standing}</span>` : nothing}
      </div>`,
    );
  }

  protected override render(): TemplateResult | typeof nothing {
    const { build } = this;
    if (!build) return nothing;
    const { motor, battery, outputs } = build;
    const known = [
      motor?.kv !== undefined && `${motor.kv} kV`,
      battery?.cells !== undefined && `${battery.cells} cells`,
    ];
    const split =
      outputs.length > 1
        ? html`<div class="total">
            ${this.#name("centre", build.centre?.kind === "differential" ? "centre differential" : "axles locked together")}
          </div>`
        : nothing;
    return html`${this.#staff(
      "From the motor",
      build.stages,
      undefined,
      html`<li>
        ${this.#name("motor", "motor")}<span class="counts quiet"
          >${known.filter(Boolean).join(", ") || "not known"}</span
        >
      </li>`,
      split,
    )}
    ${(build.branches ?? []).map((branch) => this.#staff(branch.label ?? branch.id, branch.stages, branch.id, nothing, nothing))}
    ${outputs.map((output) => this.#axle(output))}`;
  }
}
