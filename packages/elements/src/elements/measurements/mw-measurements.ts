import { html, nothing, type TemplateResult } from "lit/html.js";
import { sayMeasurements } from "@meshwright/calc/article";
import { block } from "../../shared/drawn/index.js";
import { properties } from "../../shared/element/index.js";
import { scrolling, tables, ToolElement } from "../../shared/tools/index.js";

/**
 * What was measured against what the build says, with the counts that it was measured with, whatever a reader has changed
 * since: agrees, disagrees and by how much
 * at least, or cannot tell, where one of both is known between two ends only.
 *
 * @attr of - one output only
 * @attr at - `article` or an alternative's id
 * @csspart root - all that it draws
 * @csspart table - the table
 */
export class MwMeasurements extends ToolElement {
  static override readonly tag = "mw-measurements";
  static override styles = [properties, block, tables];
  static override properties = { of: {}, at: {} };

  declare of: string | null;
  declare at: string | null;

  protected override render(): TemplateResult {
    // The author has measured what they built, and nobody what a reader makes of it.
    const published = this.at ? undefined : this.store?.article;
    const said = this.says((speaker) => sayMeasurements(speaker, { of: this.of }, published), this.at);
    if (!said) return this.fallback(false);
    const [table] = said.tables;
    return html`<div class="root" part="root">
        ${this.whose()}
        ${
          table
            ? scrolling(
                table.caption!,
                html`<table part="table">
                  <caption>
                    ${table.caption}
                  </caption>
                  <thead>
                    <tr>
                      ${said.heads.map((head, n) => html`<th scope="col" class=${n === 4 ? "words" : nothing}>${head}</th>`)}
                    </tr>
                  </thead>
                  <tbody>
                    ${said.rows.map(
                      ({ head, about, verdict, texts }) =>
                        html`<tr>
                          <th scope="row">
                            ${head} ${about ? html`<span class="quiet under">${about}</span>` : nothing}
                          </th>
                          ${texts.map((text, n) => html`<td class=${n < 3 ? nothing : verdict === "disagrees" ? "words fault" : "words"}>${text}</td>`)}
                        </tr>`,
                    )}
                  </tbody>
                </table>`,
              )
            : html`<p>${said.notes[0]}</p>`
        }
      </div>
      ${this.fallback()}`;
  }
}
