import { html, nothing, type TemplateResult } from "lit";
import { electricalFindings, speedsOf, speedSymbols, type Loaded, type WheelSpeed } from "@meshwright/calc/motion";
import { Writer } from "@meshwright/calc/report";
import { bounded, type Rounding } from "@meshwright/calc/exact";
import type { OutputEvaluation } from "@meshwright/calc/evaluate";
import { block, properties } from "../../shared/element/index.js";
import { fill } from "../../shared/words/index.js";
import { scrolling, tables, ToolElement } from "../../shared/tools/index.js";

/** "0.8 to 0.9", or one number: what load leaves of the free speed. */
function loadedFrom(text: string | null): Loaded | undefined {
  const [, from, to] = /^\s*([\d.]+)(?:\s*to\s*([\d.]+))?\s*$/.exec(text ?? "") ?? [];
  const good = (share: string) => Number(share) > 0 && Number(share) <= 1;
  return from && good(from) && good(to ?? from) ? { from, to: to ?? from } : undefined;
}

/**
 * Travel, wheel turns and ground speed of each output, at nominal volts, at full charge, and loaded where the author says
 * what load leaves; with all that this takes for granted, and the cautions.
 *
 * @attr of one output only
 * @attr unit `km/h` (default), `m/s`, `mph` or `ft/s`
 * @attr loaded the share of the free speed that is left under load, "0.8 to 0.9": none is assumed
 * @csspart table each output's table · @csspart cautions the cautions
 */
export class MwWheelSpeed extends ToolElement {
  static override readonly tag = "mw-wheel-speed";
  static override styles = [properties, block, tables];
  static override properties = { of: {}, unit: {}, loaded: {} };

  declare of: string | null;
  declare unit: string | null;
  declare loaded: string | null;

  #row(name: string, speed: WheelSpeed | undefined, writer: Writer): TemplateResult | typeof nothing {
    if (!speed) return nothing;
    const unit = Object.hasOwn(speedSymbols, this.unit ?? "") ? this.unit! : "km/h";
    return html`<tr>
      <th scope="row">${name}</th>
      <td>${writer.number(speed.motorRpm, { digits: 0 })}</td>
      <td>${writer.number(speed.wheelRpm, { digits: 0 })}</td>
      <td>${writer.number(speed[speedSymbols[unit]!], { digits: 1, unit })}</td>
    </tr>`;
  }

  #table(output: OutputEvaluation, writer: Writer): TemplateResult {
    const { shop } = this;
    const build = this.current!;
    const share = loadedFrom(this.loaded);
    const { notKnown, nominal, full, loaded } = speedsOf(build, output, share);
    const volts = (speed: WheelSpeed | undefined) => (speed ? writer.number(speed.volts, { unit: "V" }) : "");
    const left = share ? writer.number(bounded(share.from, share.to), { percent: true, digits: 0 }) : "";
    const assumed = [...new Set([nominal, full, loaded].flatMap((speed) => speed?.assumptions ?? []))];
    if (notKnown) return html`<p>${output.label}: ${shop.notKnown[notKnown]}</p>`;
    return html`${scrolling(
        output.label,
        html`<table part="table">
          <caption>
            ${output.label}
          </caption>
          <thead>
            <tr>
              <th scope="col">${shop.state}</th>
              <th scope="col">${shop.motorRpm}</th>
              <th scope="col">${shop.wheelRpm}</th>
              <th scope="col">${shop.ground}</th>
            </tr>
          </thead>
          <tbody>
            ${this.#row(fill(shop.nominal, volts(nominal)), nominal, writer)}
            ${this.#row(fill(shop.full, volts(full)), full, writer)}
            ${this.#row(fill(shop.loaded, left), loaded, writer)}
          </tbody>
        </table>`,
        "kept",
      )}
      <p class="note">
        ${shop.travel}: ${this.textOf({ figure: "travel", of: output.id })}. ${shop.ideal} ${shop.assumes}:
        ${assumed.map((one) => shop.assumptions[one]).join(", ")}.
      </p>`;
  }

  protected override render(): TemplateResult {
    const evaluation = this.evaluation();
    if (!evaluation) return this.fallback(false);
    const { build } = evaluation;
    const writer = new Writer({
      rounding: build.rounding as Rounding | undefined,
      locale: this.locale,
      words: this.words.figures,
    });
    const shown = evaluation.outputs.filter(({ id }) => !this.of || id === this.of);
    return html`<div class="root" part="root">
        ${shown.map((output) => this.#table(output, writer))}
        ${electricalFindings(build).map(({ message }) => html`<p class="fault">${message}</p>`)}
        <ul class="note" part="cautions">
          ${this.shop.cautions.map((caution) => html`<li>${caution}</li>`)}
        </ul>
      </div>
      ${this.fallback()}`;
  }
}
