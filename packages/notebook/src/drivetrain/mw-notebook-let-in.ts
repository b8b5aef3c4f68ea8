import { css, html, nothing, type TemplateResult } from "lit";
import type { Build } from "@meshwright/calc/drivetrain";
import { actsOnce, Ask, NotebookPart, sheet } from "../frame/index.js";
import { askings, axleChange, putOn, stageFrom, type Asking } from "../model/index.js";
import type { Spot } from "./mw-notebook-line.js";

/** Which gear is which, as a small picture: the driver on the left. */
const picture = (id: string): TemplateResult | typeof nothing => {
  const drawn: Record<string, TemplateResult> = {
    pair: html`<svg viewBox="0 0 64 40">
      <circle cx="16" cy="20" r="9" />
      <circle cx="43" cy="20" r="17" />
      <text x="16" y="37">drives</text>
    </svg>`,
    row: html`<svg viewBox="0 0 88 40">
      <circle cx="14" cy="20" r="9" />
      <circle cx="36" cy="20" r="12" />
      <circle cx="65" cy="20" r="16" />
    </svg>`,
    printed: html`<svg viewBox="0 0 64 40">
      <rect x="14" y="8" width="36" height="24" />
      <path d="M2 20h12M50 20h12" />
    </svg>`,
    unknown: html`<svg viewBox="0 0 64 40">
      <rect x="14" y="8" width="36" height="24" stroke-dasharray="3 2" />
      <path d="M2 20h12M50 20h12" />
    </svg>`,
    belt: html`<svg viewBox="0 0 64 40">
      <circle cx="14" cy="20" r="7" />
      <circle cx="46" cy="20" r="13" />
      <path d="M12 13L43 7M12 27L43 33" />
    </svg>`,
    worm: html`<svg viewBox="0 0 64 40">
      <circle cx="32" cy="24" r="14" />
      <path d="M8 7h48M12 4l4 6M22 4l4 6M32 4l4 6M42 4l4 6" />
    </svg>`,
    planetary: html`<svg viewBox="0 0 64 40">
      <circle cx="32" cy="20" r="18" />
      <circle cx="32" cy="20" r="6" />
      <circle cx="32" cy="8" r="5" />
      <circle cx="42" cy="26" r="5" />
      <circle cx="22" cy="26" r="5" />
    </svg>`,
    lever: html`<svg viewBox="0 0 64 40">
      <circle cx="16" cy="12" r="6" />
      <circle cx="32" cy="12" r="10" />
      <circle cx="16" cy="30" r="8" />
      <circle cx="32" cy="30" r="8" />
      <path d="M44 30L56 8" />
    </svg>`,
  };
  return drawn[id] ?? nothing;
};

/**
 * Lets something into the line, or puts another thing in the place of a stage: what it is, then the one sentence that asks for
 * it.
 *
 * @fires mw-notebook-let - the id of what was let in; nothing where it was given up
 */
export class MwNotebookLetIn extends NotebookPart {
  static readonly tag = "mw-notebook-let-in";
  static override styles = [
    sheet,
    css`
      svg {
        height: 40px;
        vertical-align: middle;
        margin-inline-end: 0.8em;
        fill: none;
        stroke: currentColor;
        stroke-width: 1.1;
      }
      text {
        font-size: 9px;
        fill: currentColor;
        stroke: none;
        text-anchor: middle;
      }
      .sentence {
        font-size: 1.1em;
        line-height: 1.8;
      }
    `,
  ];
  static override properties = { spot: { attribute: false }, replaces: {}, asked: { state: true } };

  declare spot: Spot | undefined;
  /** The id of the stage that is to be another thing. */
  declare replaces: string | undefined;
  declare private asked: Ask | undefined;

  /** Another place is another question. */
  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    super.willUpdate(changed);
    if (changed.has("spot") || changed.has("replaces")) this.asked = undefined;
  }

  #done(id?: string): void {
    this.asked = undefined;
    this.dispatchEvent(new CustomEvent("mw-notebook-let", { detail: id, bubbles: true, composed: true }));
  }

  readonly #choose = (asking: Asking): void => {
    const update = (): void => this.requestUpdate();
    this.asked = new Ask(asking, { typed: update, done: update }, this.asked);
    void this.focusOn(".blank");
  };

  readonly #put = (event?: Event): void => {
    event?.preventDefault();
    const { asked, build, spot, replaces } = this;
    if (!asked?.isAnswered || !build) return;
    const stage = stageFrom(asked.asking, asked.answers, build);
    if (replaces !== undefined) {
      const before = this.#stage(build, replaces);
      const { label, group, per } = before;
      const next = { ...stage, id: replaces, ...(label && { label }), ...(group && { group }), ...(per && { per }) };
      if (this.ask("put", { [replaces]: next }, `${label ?? replaces}: ${asked.asking.title.toLowerCase()}`))
        this.#done(replaces);
    } else if (
      spot &&
      this.ask("put", [{ insert: stage, ...(spot.into !== undefined && { into: spot.into }), at: spot.at }])
    )
      this.#done(stage.id);
  };

  #stage(build: Build, id: string) {
    const lists = [
      build.stages,
      ...(build.branches ?? []).map(({ stages }) => stages),
      ...build.outputs.map(({ stages }) => stages),
    ];
    return lists.flat().find((one) => one.id === id)!;
  }

  readonly #axle = (): void => {
    const input = this.renderRoot.querySelector<HTMLInputElement>("[name=axle]")!;
    const changes = axleChange(this.build!, input.value);
    const outputs = (changes[0] as { to: readonly { id: string; label: string }[] }).to;
    if (this.ask("put", changes, `${outputs.at(-1)!.label} put in`)) this.#done(outputs.at(-1)!.id);
  };

  readonly #assembly = (value: string): void => {
    const [refusal] = putOn(this.session, value);
    this.blame("put", refusal?.message);
    if (!refusal) this.#done(this.build!.outputs.at(-1)!.id);
  };

  protected override render(): TemplateResult {
    const { asked, replaces } = this;
    const { assemblies = [] } = this.session.notebook;
    return html`<h2 tabindex="-1">${replaces === undefined ? "What is there?" : "What is it instead?"}</h2>
      <p class="choices" role="group" aria-label="What is there?">
        ${askings.map((one) => html`<button type="button" aria-pressed=${String(asked?.asking === one)} @click=${() => this.#choose(one)}>${one.title}</button>`)}
        <button type="button" @click=${() => this.#done()}>Nothing</button>
      </p>
      ${
        asked
          ? html`<form @submit=${this.#put}>
              <p class="quiet">${picture(asked.asking.id)}${asked.asking.hint}</p>
              <p class="sentence">${asked.render()}</p>
              <p><button type="submit" ?disabled=${!asked.isAnswered}>Put it in</button></p>
            </form>`
          : nothing
      }
      ${
        replaces === undefined && !asked
          ? html`<p>
              Another axle, called
              <input class="short" name="axle" aria-label="Name of the axle" placeholder="middle" autocomplete="off" />
              <button type="button" @click=${this.#axle}>Put it in</button>
              ${
                assemblies.length
                  ? html`or
                      <select aria-label="An assembly from the shelf" ${actsOnce(this.#assembly)}>
                        <option value="">one from the shelf …</option>
                        ${assemblies.map(({ name }) => html`<option>${name}</option>`)}
                      </select>`
                  : nothing
              }
            </p>`
          : nothing
      }
      ${this.fault("put")}`;
  }
}
