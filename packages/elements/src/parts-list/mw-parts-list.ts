import { html, nothing, type TemplateResult } from "lit";
import { needsOf, type Need } from "@meshwright/calc/parts";
import type { Part } from "@meshwright/calc/build";
import { block, properties } from "../base/index.js";
import { dateText, partName, partsOf, tables, WorkshopElement } from "../workshop/index.js";

/**
 * Every part of the build as it stands, by stage, with quantities, makers, sources and the dates at which they were looked
 * up.
 *
 * @attr at `article` or an alternative's id
 * @csspart table the table
 */
export class MwPartsList extends WorkshopElement {
  static override readonly tag = "mw-parts-list";
  static override styles = [properties, block, tables];
  static override properties = { at: {} };

  declare at: string | null;

  #what({ teeth, driver, driven, value, diameter }: Need): string {
    return String(teeth ?? (driver ? `${driver} ${this.words.to} ${driven}` : (value ?? diameter ?? "")));
  }

  #pitch({ module, diametralPitch }: Part): string {
    if (module !== undefined) return `${this.shop.module} ${module}`;
    return diametralPitch === undefined ? "" : `${diametralPitch} DP`;
  }

  protected override render(): TemplateResult {
    const evaluation = this.evaluation(this.at);
    if (!evaluation) return this.fallback(false);
    const { shop, locale } = this;
    const needs = needsOf(evaluation.build, partsOf(evaluation.build));
    const stages = new Map(
      evaluation.outputs.flatMap(({ steps }) => steps.map(({ stage }) => [stage.id, stage.label ?? stage.id])),
    );
    const place = (id: string) => stages.get(id) ?? evaluation.output(id)?.label ?? id;
    return html`<div class="root" part="root">
        <div class="scroll" tabindex="0" role="group" aria-label=${shop.partsByStage}>
          <table part="table">
            <thead>
              <tr>
                <th scope="col">${this.words.stage}</th>
                <th scope="col">${shop.pieces}</th>
                <th scope="col" class="words">${shop.part}</th>
                <th scope="col" class="words">${shop.maker}</th>
                <th scope="col" class="words">${shop.where}</th>
              </tr>
            </thead>
            <tbody>
              ${needs.map((need, n) => {
                const { part } = need;
                const first = needs[n - 1]?.stage !== need.stage;
                return html`<tr>
                  <th scope="row">
                    ${first ? place(need.stage) : html`<span class="heard">${place(need.stage)}</span>`}
                  </th>
                  <td>${need.pieces}</td>
                  <td class="words">
                    ${part ? partName(part) : html`<span class="quiet">${this.#what(need)}: ${shop.notListed}</span>`}
                    ${part && this.#pitch(part) ? html`<span class="quiet">${this.#pitch(part)}</span>` : nothing}
                  </td>
                  <td class="words">${part?.maker ?? "–"}</td>
                  <td class="words">
                    ${part?.source ?? "–"}${part?.price?.checked ? html` <span class="quiet">${dateText(part.price.checked, locale)}</span>` : nothing}
                  </td>
                </tr>`;
              })}
            </tbody>
          </table>
        </div>
      </div>
      ${this.fallback()}`;
  }
}
