import { html, nothing, type TemplateResult } from "lit/html.js";
import { css } from "../element/index.js";

/** Fields with what they are called above them and their unit behind. */
export const fields = css`
  .fields {
    display: flex;
    flex-wrap: wrap;
    gap: 0.7em 1.4em;
    border: 0;
    margin: 0 0 0.8em;
    padding: 0;
    min-width: 0;
  }
  .fields legend {
    padding: 0 0 0.3em;
    color: var(--_second);
    font-size: 0.93em;
  }
  .field {
    flex: 0 1 auto;
    min-width: min(8em, 100%);
    max-width: 100%;
  }
  .field > label,
  .hint {
    overflow-wrap: anywhere;
    display: block;
    color: var(--_second);
    font-size: 0.86em;
  }
  .tick {
    display: inline-flex;
    align-items: baseline;
    gap: 0.45em;
    min-height: 24px;
  }
  .field input {
    font: inherit;
    font-size: max(1em, 16px);
    color: inherit;
    background: none;
    border: 0;
    border-bottom: 1.5px dotted var(--_accent);
    border-radius: 0;
    padding: 0.1em 0;
    width: 7em;
    min-height: 24px;
    font-variant-numeric: lining-nums tabular-nums;
  }
  .field input[aria-invalid="true"] {
    border-bottom: 2px solid var(--_fault);
  }
  .field select {
    max-width: 100%;
  }
  option {
    color: CanvasText;
    background: Canvas;
  }
  .field .fault {
    margin: 0.1em 0 0;
    max-width: 22em;
    font-size: 0.86em;
  }
  .result {
    margin: 0.4em 0;
  }
  @media (pointer: coarse) {
    .field input,
    .field select,
    .tick {
      min-height: 36px;
    }
  }
`;

/** One field that is typed into. */
export interface Field {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  /** What stands behind it. */
  readonly unit?: string | undefined;
  readonly hint?: string | undefined;
  /** What is wrong with what stands in it. */
  readonly fault?: string | undefined;
  readonly inputmode?: "decimal" | "numeric" | "text";
}

/** A field; what is typed arrives by its name, and what is wrong with it stands below. */
export const field = (
  { name, label, value, unit, hint, fault, inputmode = "decimal" }: Field,
  typed: (event: Event) => void,
): TemplateResult =>
  html`<div class="field">
    <label for=${name}>${label}</label>
    <input
      id=${name}
      name=${name}
      type="text"
      inputmode=${inputmode}
      autocomplete="off"
      spellcheck="false"
      .value=${value}
      aria-invalid=${fault ? "true" : nothing}
      aria-describedby=${[hint && `${name}-hint`, fault && `${name}-fault`].filter(Boolean).join(" ") || nothing}
      @input=${typed}
      @change=${typed}
    />
    ${unit ?? nothing} ${hint ? html`<span class="hint" id="${name}-hint">${hint}</span>` : nothing}
    ${fault ? html`<p class="fault" id="${name}-fault">${fault}</p>` : nothing}
  </div>`;

/** A list of which one is chosen. */
export const choice = (
  { name, label, value }: Pick<Field, "name" | "label" | "value">,
  options: readonly (readonly [value: string, text: string])[],
  chosen: (event: Event) => void,
): TemplateResult =>
  html`<div class="field">
    <label for=${name}>${label}</label>
    <select id=${name} name=${name} @input=${(event: Event) => event.stopPropagation()} @change=${chosen}>
      ${options.map(([one, text]) => html`<option value=${one} ?selected=${one === value}>${text}</option>`)}
    </select>
  </div>`;
