import { html, type TemplateResult } from "lit";
import { working, Writer, type Working } from "@meshwright/calc/report";
import type { Bounded, Rounding } from "@meshwright/calc/exact";
import { block, properties } from "../../shared/element/index.js";
import { fill } from "../../shared/words/index.js";
import { scrolling, tables, ToolElement } from "../../shared/tools/index.js";

/**
 * The arithmetic, line by line: exact, and beside it what rounding at every step would have given and how far that drifts.
 *
 * @attr of one output only
 * @attr at `article` or an alternative's id
 * @csspart table each output's table
 */
export class MwWorking extends ToolElement {
  static override readonly tag = "mw-working";
  static override styles = [properties, block, tables];
  static override properties = { of: {}, at: {} };

  declare of: string | null;
  declare at: string | null;

  #exact(value: Bounded, writer: Writer): string {
    const one = (end: Bounded["low"]) => end.toFraction().replace(/\/1$/, "");
    return value.isExact ? one(value.low) : `${one(value.low)} ${writer.words.to} ${one(value.high)}`;
  }

  #table(one: Working, writer: Writer): TemplateResult {
    const { words, shop } = this;
    const { total, stepwise, drift } = one;
    const counts = (id: string) => this.textOf({ figure: "counts", of: id }, this.at);
    const told = drift ? (drift.sign ? shop.drift : shop.noDrift) : total ? shop.interval : "";
    const off = drift ? writer.number(drift, { percent: true, digits: 3, sign: "always" }) : "";
    return html`${scrolling(
        one.label,
        html`<table part="table">
          <caption>
            ${one.label}
          </caption>
          <thead>
            <tr>
              <th scope="col">${words.stage}</th>
              <th scope="col" class="wide">${words.gears}</th>
              <th scope="col" class="wide">${shop.exactly}</th>
              <th scope="col">${shop.decimal}</th>
              <th scope="col">${shop.upToHere}</th>
              <th scope="col">${shop.everyStep}</th>
            </tr>
          </thead>
          <tbody>
            ${one.steps.map(
              (step) =>
                html`<tr>
                  <th scope="row">
                    ${step.label}
                    <span class="narrow quiet">${counts(step.id)} · ${this.#exact(step.reduction, writer)}</span>
                  </th>
                  <td class="wide">${counts(step.id)}</td>
                  <td class="wide">${this.#exact(step.reduction, writer)}</td>
                  <td>${writer.number(step.reduction)}</td>
                  <td>${writer.number(step.running)}</td>
                  <td class="quiet">${step.stepwise ? writer.number(step.stepwise) : "–"}</td>
                </tr>`,
            )}
            ${
              total
                ? html`<tr class="total">
                    <th scope="row">${words.total} <span class="narrow">${this.#exact(total, writer)}</span></th>
                    <td class="wide"></td>
                    <td class="wide">${this.#exact(total, writer)}</td>
                    <td>${writer.number(total)}</td>
                    <td></td>
                    <td>${stepwise ? writer.number(stepwise) : "–"}</td>
                  </tr>`
                : ""
            }
          </tbody>
        </table>`,
        "kept",
      )}
      <p class="note">${fill(told, one.label, off)}</p>`;
  }

  protected override render(): TemplateResult {
    const evaluation = this.evaluation(this.at);
    if (!evaluation) return this.fallback(false);
    const rounding = evaluation.build.rounding as Rounding | undefined;
    const writer = new Writer({ rounding, locale: this.locale, words: this.words.figures });
    const shown = working(evaluation, rounding).filter((one) => !this.of || one.id === this.of);
    return html`<div class="root" part="root">${shown.map((one) => this.#table(one, writer))}</div>
      ${this.fallback()}`;
  }
}
