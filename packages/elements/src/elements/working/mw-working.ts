import { html, nothing, type TemplateResult } from "lit/html.js";
import { sayWorking } from "@meshwright/calc/article";
import type { WorkingTable } from "@meshwright/calc/report";
import { properties } from "../../shared/element/index.js";
import { block } from "../../shared/drawn/index.js";
import { scrolling, tables, ToolElement } from "../../shared/tools/index.js";

/**
 * The arithmetic, line by line: exact, and beside it what rounding at every step would have given and how far that drifts.
 *
 * @attr of - one output only
 * @attr at - `article` or an alternative's id
 * @csspart root - all that it draws
 * @csspart table - each output's table
 */
export class MwWorking extends ToolElement {
  static override readonly tag = "mw-working";
  static override styles = [properties, block, tables];
  static override properties = { of: {}, at: {} };

  declare of: string | null;
  declare at: string | null;

  #row([head, counts, exact, ...figures]: readonly string[], isTotal: boolean): TemplateResult {
    const [decimal, running, stepwise] = figures;
    return html`<tr class=${isTotal ? "total" : nothing}>
      <th scope="row">
        ${head} <span class=${isTotal ? "narrow" : "narrow quiet"}>${counts ? `${counts} · ` : nothing}${exact}</span>
      </th>
      <td class="wide">${counts}</td>
      <td class="wide">${exact}</td>
      <td>${decimal}</td>
      <td>${running}</td>
      <td class=${isTotal ? nothing : "quiet"}>${stepwise}</td>
    </tr>`;
  }

  #table({ label, heads, rows, totals, note }: WorkingTable): TemplateResult {
    return html`${scrolling(
        label,
        html`<table part="table">
          <caption>
            ${label}
          </caption>
          <thead>
            <tr>
              ${heads.map((head, n) => html`<th scope="col" class=${n === 1 || n === 2 ? "wide" : nothing}>${head}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${rows.map((row, n) => this.#row(row, n >= rows.length - totals))}
          </tbody>
        </table>`,
        "kept",
      )}
      <p class="note">${note}</p>`;
  }

  protected override render(): TemplateResult {
    const said = this.says((speaker) => sayWorking(speaker, { of: this.of }), this.at);
    if (!said) return this.fallback(false);
    return html`<div class="root" part="root">
        ${this.whose(this.at)}${said.workings.map((one) => this.#table(one))}
      </div>
      ${this.fallback()}`;
  }
}
