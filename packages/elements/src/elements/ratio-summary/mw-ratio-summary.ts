import { html, nothing, svg, type SVGTemplateResult, type TemplateResult } from "lit/html.js";
import { saySummary, type BlockTable, type SaidSummary } from "@meshwright/calc/article";
import type { OutputEvaluation } from "@meshwright/calc/evaluate";
import { Picture, block, drawing, hatching, linesOf, roomFor, round, table } from "../../shared/drawn/index.js";
import { properties } from "../../shared/element/index.js";
import { fill } from "../../shared/words/index.js";
import { styles } from "./styles.js";

/**
 * What the drive comes to at each output: its stages, the groups' subtotals, the total, and where that stands in the range
 * that the builder likes. A fallback table stands inside.
 *
 * @attr of - one output only
 * @attr at - `article` or an alternative's id
 * @csspart root - all that it draws
 * @csspart table - the table
 * @csspart range - the picture
 * @csspart standings - the range, and where each output stands in it, in words
 * @csspart exact - the totals as fractions
 */
export class MwRatioSummary extends Picture {
  static override readonly tag = "mw-ratio-summary";
  static override styles = [properties, block, drawing, table, styles];
  static override properties = { of: {}, at: {} };

  declare of: string | null;
  declare at: string | null;

  #scale: readonly [number, number] | undefined;

  /**
   * What the picture reaches from and to. While somebody tries one count after the other it stays, so that what moves is the mark
   * and not the scale; what lies beyond widens it. The author's own numbers begin anew.
   */
  #scaleFor([least, most]: readonly [number, number]): readonly [number, number] {
    const margin = (most - least) * 0.12 || 1;
    const wanted = [least - margin, most + margin] as const;
    const held = this.at || !this.store?.changed ? undefined : this.#scale;
    const fits = held && least >= held[0] && most <= held[1];
    this.#scale = !held ? wanted : fits ? held : [Math.min(held[0], wanted[0]), Math.max(held[1], wanted[1])];
    return this.#scale;
  }

  /** Where each output stands in the range. */
  #range({ outputs, standings, range: told }: SaidSummary): TemplateResult | typeof nothing {
    const { width } = this;
    const em = this.em * 0.86;
    const target = this.evaluation(this.at)?.build.target;
    const shown = outputs.filter(({ id }) => standings.has(id));
    if (!target || !told || !shown.length) return nothing;
    const before = (this.at ? undefined : this.evaluation("article")?.outputs) ?? [];
    const endsOf = (output?: OutputEvaluation): readonly number[] =>
      output?.bounds ? [output.bounds.low.toNumber(), output.bounds.high.toNumber()] : [];
    const limits = [Number(target.from), Number(target.to)];
    const all = [...limits, ...shown.flatMap(endsOf), ...before.flatMap(endsOf)];
    const [first, end] = this.#scaleFor([Math.min(...all), Math.max(...all)]);
    const figures = shown.map(({ id }) => this.textOf({ figure: "reduction", of: id, drive: "straight-on" }, this.at)!);
    const beside = Math.max(...shown.map(({ label }, n) => roomFor(label + figures[n]!) + 1.4)) * em;
    const stacked = beside > width * 0.4;
    const left = stacked ? em : beside;
    const at = (value: number): number => this.x(left + ((value - first) / (end - first)) * (width - left - em));
    // Above its line, a label has as many lines as it needs.
    const labels = shown.map(({ label }, n) =>
      stacked ? linesOf(`${label} ${figures[n]!}`, (width / em) * 0.92) : [`${label} ${figures[n]!}`],
    );
    let last = (stacked ? -0.9 : -0.7) * em;
    const ys = labels.map((lines) => (last += (stacked ? 1.8 + 1.3 * lines.length : 2) * em));
    const bottom = round(last + 0.9 * em);
    const [from, to] = limits.map(at) as [number, number];
    // Where the ends are close, what they are called gives way to both sides.
    const isNarrow = Math.abs(to - from) < (told.ends.reduce((sum, end) => sum + roomFor(end), 0) / 2 + 0.6) * em;
    const lines = shown.map((output, n): SVGTemplateResult => {
      const y = round(ys[n]!);
      const [low, high] = endsOf(output) as [number, number];
      const past = endsOf(before.find(({ id }) => id === output.id));
      const head = (value: number) =>
        `M${at(value)} ${round(y - 0.15 * em)}l${round(0.42 * em)} ${round(-0.75 * em)}h${round(-0.84 * em)}z`;
      const tick = (value: number) => `M${at(value)} ${round(y - 0.8 * em)}V${y}`;
      const place = this.x(stacked ? 0 : left - 0.9 * em);
      const said = labels[n]!;
      return svg`${said.map((line, row) => {
        const isLast = row === said.length - 1 && line.endsWith(figures[n]!);
        const head = isLast ? line.slice(0, -figures[n]!.length) : line;
        return svg`<text x=${place} y=${round(stacked ? y - (1.1 + 1.3 * (said.length - 1 - row)) * em : y + 0.32 * em)} text-anchor=${stacked ? "start" : "end"}>${head}${isLast ? svg`<tspan class="figure">${figures[n]}</tspan>` : nothing}</text>`;
      })}
        <path class="thin" d="M${this.x(left)} ${y}H${this.x(width - em)}" />
        <path class="span" d="M${from} ${y}H${to}" />
        ${past.length && past[0] !== low ? svg`<path class="end" d=${head(past[0]!)} />` : nothing}
        ${low < high ? svg`<path d=${hatching(at(low), at(high), y - 0.7 * em, 0.55 * em) + tick(low) + tick(high)} />` : svg`<path class="ink" d=${head(low)} />`}`;
    });
    const { followed, ended } = this.words;
    const stand = fill(
      ended,
      [...standings.values()].reduce((before, next) => fill(followed, before, next)),
    );
    return html`<p class="few" aria-hidden="true">${this.figureWords.total}</p>
      <svg
        part="range"
        role="img"
        aria-label="${stand} ${told.sentence}"
        width=${width}
        height=${round(bottom + 1.3 * em)}
      >
        <path d="M${from} ${round(0.5 * em)}V${bottom}M${to} ${round(0.5 * em)}V${bottom}" />
        ${limits.map((limit, n) => svg`<text x=${at(limit)} y=${round(bottom + 0.95 * em)} text-anchor=${isNarrow ? (n ? "start" : "end") : "middle"}>${told.ends[n]}</text>`)}
        ${lines}
      </svg>
      <p class="few" part="standings" aria-hidden="true">${told.sentence} ${stand}</p>`;
  }

  protected override render(): TemplateResult {
    const said = this.says((speaker) => saySummary(speaker, { of: this.of }), this.at);
    if (!said) return this.fallback(false);
    const words = this.figureWords;
    const [{ heads, rows }] = said.tables as [BlockTable];
    return html`<div class="root" part="root">
        ${this.whose(this.at)} ${this.width ? this.#range(said) : nothing}
        <div class="scroll">
          <table part="table">
            <thead>
              <tr>
                <th scope="col">
                  <span class="line"><span>${heads[0]}</span><span>${words.gears}</span></span>
                </th>
                ${heads.slice(1).map((head) => html`<th scope="col">${head}</th>`)}
              </tr>
            </thead>
            <tbody>
              ${rows.map(
                ({ head, beside, kind, texts }) =>
                  html`<tr class=${kind ?? ""}>
                    <th scope="row">
                      ${
                        kind === "total"
                          ? head
                          : html`<span class="line"><span>${head}</span><span class="teeth">${beside}</span></span>`
                      }
                    </th>
                    ${texts.map((text) => html`<td>${text}</td>`)}
                  </tr>`,
              )}
            </tbody>
          </table>
        </div>
        <details part="exact">
          <summary>${words.exact}</summary>
          ${said.fractions.map((fraction) => html`<p>${fraction}</p>`)}
        </details>
      </div>
      ${this.fallback()}`;
  }
}
