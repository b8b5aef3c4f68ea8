import { html, type TemplateResult } from "lit/html.js";
import { saySpeeds, type SaidSpeed } from "@meshwright/calc/article";
import { properties } from "../../shared/element/index.js";
import { block } from "../../shared/drawn/index.js";
import { scrolling, tables, ToolElement } from "../../shared/tools/index.js";

/**
 * Travel, wheel turns and ground speed of each output, at nominal volts, at full charge, and loaded where the author says
 * what load leaves; with all that this takes for granted, and the cautions.
 *
 * @attr of - one output only
 * @attr unit - `km/h` (default), `m/s`, `mph` or `ft/s`
 * @attr loaded - the share of the free speed that is left under load, "0.8 to 0.9": none is assumed
 * @csspart root - all that it draws
 * @csspart table - each output's table
 * @csspart cautions - the cautions
 */
export class MwWheelSpeed extends ToolElement {
  static override readonly tag = "mw-wheel-speed";
  static override styles = [properties, block, tables];
  static override properties = { of: {}, unit: {}, loaded: {} };

  declare of: string | null;
  declare unit: string | null;
  declare loaded: string | null;

  #speed({ label, table, note }: SaidSpeed): TemplateResult {
    if (!table) return html`<p>${note}</p>`;
    return html`${scrolling(
        label,
        html`<table part="table">
          <caption>
            ${label}
          </caption>
          <thead>
            <tr>
              ${table.heads.map((head) => html`<th scope="col">${head}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${table.rows.map(
              ({ head, texts }) =>
                html`<tr>
                  <th scope="row">${head}</th>
                  ${texts.map((text) => html`<td>${text}</td>`)}
                </tr>`,
            )}
          </tbody>
        </table>`,
        "kept",
      )}
      <p class="note">${note}</p>`;
  }

  protected override render(): TemplateResult {
    const { of, unit, loaded } = this;
    const said = this.says((speaker) => saySpeeds(speaker, { of, unit, loaded }));
    if (!said) return this.fallback(false);
    return html`<div class="root" part="root">
        ${this.whose()} ${said.speeds.map((speed) => this.#speed(speed))}
        ${said.faults.map(({ message }) => html`<p class="fault">${message}</p>`)}
        <ul class="note" part="cautions">
          ${said.cautions.map((caution) => html`<li>${caution}</li>`)}
        </ul>
      </div>
      ${this.fallback()}`;
  }
}
