import { html, nothing, type TemplateResult } from "lit/html.js";
import { sayParts } from "@meshwright/calc/article";
import { properties } from "../../shared/element/index.js";
import { block } from "../../shared/drawn/index.js";
import { scrolling, tables, ToolElement } from "../../shared/tools/index.js";

/**
 * Every part of the build as it stands, by stage, with quantities, makers, sources and the dates at which they were looked
 * up.
 *
 * @attr at - `article` or an alternative's id
 * @csspart root - all that it draws
 * @csspart table - the table
 */
export class MwPartsList extends ToolElement {
  static override readonly tag = "mw-parts-list";
  static override styles = [properties, block, tables];
  static override properties = { at: {} };

  declare at: string | null;

  protected override render(): TemplateResult {
    const said = this.says(sayParts, this.at);
    if (!said) return this.fallback(false);
    const [table] = said.tables;
    return html`<div class="root" part="root">
        ${this.whose(this.at)}
        ${scrolling(
          table!.caption!,
          html`<table part="table">
            <thead>
              <tr>
                ${said.heads.map((head, n) => html`<th scope="col" class=${["", "", "words"][n] ?? "words wide"}>${head}</th>`)}
              </tr>
            </thead>
            <tbody>
              ${said.rows.map(({ head, first, need: { part }, pitch, checked, texts }) => {
                const [pieces, name, maker] = texts;
                return html`<tr>
                  <th scope="row">${first ? head : html`<span class="heard">${head}</span>`}</th>
                  <td>${pieces}</td>
                  <td class="words">
                    ${part ? name : html`<span class="quiet">${name}</span>`}
                    ${pitch ? html`<span class="quiet">${pitch}</span>` : nothing}
                    <span class="narrow quiet"
                      >${[part?.maker, part?.source, checked].filter(Boolean).join(" · ")}</span
                    >
                  </td>
                  <td class="words wide">${maker}</td>
                  <td class="words wide">
                    ${part?.source ?? (checked ? nothing : "–")} <span class="quiet">${checked}</span>
                  </td>
                </tr>`;
              })}
            </tbody>
          </table>`,
        )}
      </div>
      ${this.fallback()}`;
  }
}
