import { html, nothing, svg, type TemplateResult } from "lit";
import type { OutputEvaluation } from "@meshwright/calc/evaluate";
import { arrow, block, hatching, Picture, properties, roomFor, round } from "../base/index.js";
import { fill } from "../words/index.js";
import { rowsOf, type Row } from "./rows.js";
import { styles } from "./styles.js";

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
  static override styles = [properties, block, styles];
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
    const { width, em: text, along, words } = this;
    const target = this.evaluation(this.at)?.build.target;
    const shown = outputs.filter((output) => output.standing && output.bounds);
    if (!target || !shown.length) return nothing;
    const em = text * 0.82;
    const before = this.at ? [] : this.#outputs("article");
    const ends = shown.map(({ bounds }) => [bounds!.low.toNumber(), bounds!.high.toNumber()] as const);
    const limits = [Number(target.from), Number(target.to)];
    const past = before.flatMap(({ bounds }) => (bounds ? [bounds.low.toNumber()] : []));
    const all = [...limits, ...ends.flat(), ...past];
    const [least, most] = [Math.min(...all), Math.max(...all)];
    const labels = shown.map(({ id, label }) => `${label} ${this.#figure("reduction", id)}`);
    const beside = Math.max(...labels.map(roomFor)) * em + em;
    const stacked = beside > width * 0.4;
    const left = stacked ? em : beside;
    const margin = (most - least) * 0.12 || 1;
    const at = (value: number): number =>
      this.x(left + ((value - least + margin) / (most - least + 2 * margin)) * (width - left - em));
    const pitch = (stacked ? 3.1 : 2) * em;
    const lines = shown.map((_, n) => round((stacked ? 2.2 : 1.3) * em + n * pitch));
    const bottom = lines[lines.length - 1]! + 0.9 * em;
    const [from, to] = [at(limits[0]!), at(limits[1]!)];
    const summary = shown.map(({ id, label }) =>
      fill(words.range, label, this.#figure("reduction", id), this.#figure("standing", id)),
    );
    const range = this.textOf({ figure: "range" }, this.at)!;
    return html`<svg
      part="range"
      role="img"
      aria-label="${summary.join(". ")}. ${fill(words.from, range)}"
      width=${width}
      height=${round(bottom + 1.3 * em)}
      viewBox="0 0 ${width} ${round(bottom + 1.3 * em)}"
    >
      <path
        d="M${from} ${round(0.5 * em)}V${bottom}M${to} ${round(0.5 * em)}V${bottom}"
        stroke="currentColor"
        stroke-width="1.2"
      />
      ${limits.map(
        (limit, n) =>
          svg`<text x=${at(limit)} y=${round(bottom + 0.95 * em)} text-anchor="middle">${range.split(/[^\p{Nd}.,٫]+/u)[n]}</text>`,
      )}
      ${shown.map((output, n) => {
        const y = lines[n]!;
        const [low, high] = ends[n]!;
        const article = before.find(({ id }) => id === output.id)?.bounds;
        const moved = article && (article.low.toNumber() !== low || article.high.toNumber() !== high);
        const head = (x: number) =>
          `M${x} ${round(y - 0.15 * em)}l${round(0.42 * em)} ${round(-0.75 * em)}h${round(-0.84 * em)}z`;
        return svg`<text x=${this.x(stacked ? 0 : left - 0.9 * em)} y=${round(stacked ? y - 1.1 * em : y + 0.32 * em)} text-anchor=${stacked ? "start" : "end"}>${output.label} <tspan font-weight="600">${this.#figure("reduction", output.id)}</tspan></text>
          <path d="M${this.x(left)} ${y}H${this.x(width - em)}" stroke="currentColor" stroke-width="0.8" />
          <path d="M${from} ${y}H${to}" stroke="currentColor" stroke-width="3" opacity="0.45" />
          ${moved ? svg`<path d=${head(at(article.low.toNumber()))} fill="none" stroke="currentColor" stroke-width="1" stroke-dasharray="2 1.5" />` : nothing}
          ${
            low === high
              ? svg`<path d=${head(at(low))} fill="currentColor" />`
              : svg`<path d="${hatching(at(low), at(high), y - 0.7 * em, 0.55 * em)}M${at(low)} ${round(y - 0.8 * em)}V${y}M${at(high)} ${round(y - 0.8 * em)}V${y}" fill="none" stroke="currentColor" stroke-width="1" />`
          }`;
      })}
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
