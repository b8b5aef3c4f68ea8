import { html, nothing, svg, type SVGTemplateResult, type TemplateResult } from "lit";
import type { OutputEvaluation } from "@meshwright/calc/evaluate";
import { block, drawing, hatching, Picture, properties, roomFor, round, table } from "../../shared/element/index.js";
import { fill } from "../../shared/words/index.js";
import { rowsOf, type Row } from "./rows.js";
import { styles } from "./styles.js";

const rangeGap = /[^\p{Nd}.,٫]+/u;

/**
 * What the drive comes to at each output: its stages, the groups' subtotals, the total, and where that stands in the range
 * that the builder likes. A fallback table stands inside.
 *
 * @attr of one output only
 * @attr at `article` or an alternative's id
 * @csspart table the table · @csspart range the picture
 */
export class MwRatioSummary extends Picture {
  static override readonly tag = "mw-ratio-summary";
  static override styles = [properties, block, drawing, table, styles];
  static override properties = { of: {}, at: {} };

  declare of: string | null;
  declare at: string | null;

  #outputs(at = this.at): readonly OutputEvaluation[] {
    return this.evaluation(at)?.outputs.filter((output) => !this.of || output.id === this.of) ?? [];
  }

  #figure(figure: string, of: string, group?: string): string {
    return this.textOf({ figure, of, group }, this.at) ?? "";
  }

  /** Where each output stands in the range. */
  #range(outputs: readonly OutputEvaluation[]): TemplateResult | typeof nothing {
    const { width, words } = this;
    const em = this.em * 0.86;
    const target = this.evaluation(this.at)?.build.target;
    const shown = outputs.filter((output) => output.standing && output.bounds);
    if (!target || !shown.length) return nothing;
    const before = this.at ? [] : this.#outputs("article");
    const endsOf = (output?: OutputEvaluation): readonly number[] =>
      output?.bounds ? [output.bounds.low.toNumber(), output.bounds.high.toNumber()] : [];
    const limits = [Number(target.from), Number(target.to)];
    const all = [...limits, ...shown.flatMap(endsOf), ...before.flatMap(endsOf)];
    const [least, most] = [Math.min(...all), Math.max(...all)];
    const margin = (most - least) * 0.12 || 1;
    const figures = shown.map(({ id }) => this.#figure("reduction", id));
    const beside = Math.max(...shown.map(({ label }, n) => roomFor(label + figures[n]!) + 1.4)) * em;
    const stacked = beside > width * 0.4;
    const left = stacked ? em : beside;
    const at = (value: number): number =>
      this.x(left + ((value - least + margin) / (most - least + 2 * margin)) * (width - left - em));
    const pitch = (stacked ? 3.1 : 2) * em;
    const top = (stacked ? 2.2 : 1.3) * em;
    const bottom = round(top + (shown.length - 1) * pitch + 0.9 * em);
    const [from, to] = limits.map(at);
    const range = this.textOf({ figure: "range" }, this.at)!;
    const lines = shown.map((output, n): SVGTemplateResult => {
      const y = round(top + n * pitch);
      const [low, high] = endsOf(output) as [number, number];
      const past = endsOf(before.find(({ id }) => id === output.id));
      const head = (value: number) =>
        `M${at(value)} ${round(y - 0.15 * em)}l${round(0.42 * em)} ${round(-0.75 * em)}h${round(-0.84 * em)}z`;
      const tick = (value: number) => `M${at(value)} ${round(y - 0.8 * em)}V${y}`;
      return svg`<text x=${this.x(stacked ? 0 : left - 0.9 * em)} y=${round(stacked ? y - 1.1 * em : y + 0.32 * em)} text-anchor=${stacked ? "start" : "end"}>${output.label} <tspan class="figure">${figures[n]}</tspan></text>
        <path class="thin" d="M${this.x(left)} ${y}H${this.x(width - em)}" />
        <path class="span" d="M${from} ${y}H${to}" />
        ${past.length && past[0] !== low ? svg`<path class="end" d=${head(past[0]!)} />` : nothing}
        ${low < high ? svg`<path d=${hatching(at(low), at(high), y - 0.7 * em, 0.55 * em) + tick(low) + tick(high)} />` : svg`<path class="ink" d=${head(low)} />`}`;
    });
    const summary = shown.map(({ id, label }, n) =>
      fill(words.range, label, figures[n]!, this.#figure("standing", id)),
    );
    return html`<svg
      part="range"
      role="img"
      aria-label="${summary.join(". ")}. ${fill(words.from, range)}"
      width=${width}
      height=${round(bottom + 1.3 * em)}
    >
      <path d="M${from} ${round(0.5 * em)}V${bottom}M${to} ${round(0.5 * em)}V${bottom}" />
      ${limits.map((limit, n) => svg`<text x=${at(limit)} y=${round(bottom + 0.95 * em)} text-anchor="middle">${range.split(rangeGap)[n]}</text>`)}
      ${lines}
    </svg>`;
  }

  #cells(row: Row, outputs: readonly OutputEvaluation[]): readonly TemplateResult[] {
    return outputs.map((output, n) => {
      const { group } = row;
      if (row.subtotal)
        return html`<td>
          ${output.groups.some((one) => one.group === group) ? this.#figure("reduction", output.id, group) : nothing}
        </td>`;
      return html`<td>${row.stages[n] ? this.#figure("reduction", row.stages[n]) : nothing}</td>`;
    });
  }

  protected override render(): TemplateResult {
    const outputs = this.#outputs();
    if (!outputs.length) return this.fallback(false);
    const { words } = this;
    return html`<div class="root" part="root">
        ${this.width ? this.#range(outputs) : nothing}
        <div class="scroll">
          <table part="table">
            <thead>
              <tr>
                <th scope="col">
                  <span class="line"><span>${words.stage}</span><span>${words.gears}</span></span>
                </th>
                ${outputs.map((output) => html`<th scope="col">${output.label}</th>`)}
              </tr>
            </thead>
            <tbody>
              ${rowsOf(outputs).map((row) => {
                const teeth = new Set(row.stages.flatMap((id) => (id ? this.#figure("counts", id) : [])));
                return html`<tr class=${row.subtotal ? "subtotal" : ""}>
                  <th scope="row">
                    <span class="line"
                      ><span
                        >${row.subtotal ? row.label.charAt(0).toLocaleUpperCase(this.locale) + row.label.slice(1) : row.label}</span
                      ><span class="teeth">${[...teeth].join(" · ")}</span></span
                    >
                  </th>
                  ${this.#cells(row, outputs)}
                </tr>`;
              })}
              <tr class="total">
                <th scope="row">${words.total}</th>
                ${outputs.map((output) => html`<td>${this.#figure("reduction", output.id)}</td>`)}
              </tr>
            </tbody>
          </table>
        </div>
        <details part="exact">
          <summary>${words.exact}</summary>
          ${outputs.map((output) => html`<p>${output.label}: ${this.#figure("fraction", output.id)}</p>`)}
        </details>
      </div>
      ${this.fallback()}`;
  }
}
