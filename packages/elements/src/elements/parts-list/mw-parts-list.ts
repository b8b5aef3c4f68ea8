import { html, nothing, type TemplateResult } from "lit";
import { needsOf } from "@meshwright/calc/parts";
import { block, properties } from "../../shared/element/index.js";
import {
  dateText,
  needText,
  partName,
  partsOf,
  pitchText,
  scrolling,
  tables,
  ToolElement,
} from "../../shared/tools/index.js";

/**
 * Every part of the build as it stands, by stage, with quantities, makers, sources and the dates at which they were looked
 * up.
 *
 * @attr at `article` or an alternative's id
 * @csspart table the table
 */
export class MwPartsList extends ToolElement {
  static override readonly tag = "mw-parts-list";
  static override styles = [properties, block, tables];
  static override properties = { at: {} };

  declare at: string | null;

  protected override render(): TemplateResult {
    const evaluation = this.evaluation(this.at);
    if (!evaluation) return this.fallback(false);
    const { shop, locale } = this;
    const needs = needsOf(evaluation.build, partsOf(evaluation.build));
    const place = (id: string) => this.placeName(id, this.at);
    return html`<div class="root" part="root">
        ${scrolling(
          shop.partsByStage,
          html`<table part="table">
            <thead>
              <tr>
                <th scope="col">${this.words.stage}</th>
                <th scope="col">${shop.pieces}</th>
                <th scope="col" class="words">${shop.part}</th>
                <th scope="col" class="words wide">${shop.maker}</th>
                <th scope="col" class="words wide">${shop.where}</th>
              </tr>
            </thead>
            <tbody>
              ${needs.map((need, n) => {
                const { part } = need;
                const checked = part?.price?.checked && dateText(part.price.checked, locale);
                const first = needs[n - 1]?.stage !== need.stage;
                return html`<tr>
                  <th scope="row">
                    ${first ? place(need.stage) : html`<span class="heard">${place(need.stage)}</span>`}
                  </th>
                  <td>${need.pieces}</td>
                  <td class="words">
                    ${part ? partName(part) : html`<span class="quiet">${needText(need, this.words, shop, locale)}: ${shop.notListed}</span>`}
                    ${part && pitchText(part, shop) ? html`<span class="quiet">${pitchText(part, shop)}</span>` : nothing}
                    <span class="narrow quiet"
                      >${[part?.maker, part?.source, checked].filter(Boolean).join(" · ")}</span
                    >
                  </td>
                  <td class="words wide">${part?.maker ?? "–"}</td>
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
