import { html, nothing, svg, type SVGTemplateResult, type TemplateResult } from "lit/html.js";
import { sayGauge, type SaidGauge } from "@meshwright/calc/article";
import type { Comparison } from "@meshwright/calc/evaluate";
import { Picture, arrow, block, drawing, hatching, linesOf, roomFor, round } from "../../shared/drawn/index.js";
import { properties, writeCount } from "../../shared/element/index.js";
import { fill } from "../../shared/words/index.js";
import { styles } from "./styles.js";

/** Below this a gap is drawn enlarged as well. */
const small = 0.05;
const steps = [2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000];

/**
 * Front against rear as lengths of ground, rolled for the same turns of what they share. What it is measured against, and
 * whether the tyres count, stand in words and can be changed.
 *
 * @attr of - the axle that is ahead or behind; of the two that the build compares where not said
 * @attr with - the axle that it is compared with
 * @attr base - the id of one of the two (the second one where it is not said), or `mean`
 * @attr scope - `tyres` (default where both wheels are given) or `gears`
 * @attr at - `article` or an alternative's id
 * @csspart root - all that it draws
 * @csspart ground - the picture
 * @csspart basis - the words below it
 * @csspart note - what else there is to say
 * @csspart fault - axles that oppose each other
 */
export class MwOverdriveGauge extends Picture {
  static override readonly tag = "mw-overdrive-gauge";
  static override styles = [properties, block, drawing, styles];
  static override properties = { of: {}, with: {}, base: {}, scope: {}, at: {}, choice: { state: true } };

  declare of: string | null;
  declare with: string | null;
  declare base: string | null;
  declare scope: string | null;
  declare at: string | null;
  /** What the reader chose to look at, over what the author set. */
  declare private choice: { readonly base?: string; readonly scope?: string } | undefined;

  #choose(what: "base" | "scope", event: Event): void {
    event.stopPropagation();
    this.choice = { ...this.choice, [what]: (event.target as HTMLSelectElement).value };
  }

  #select(
    what: "base" | "scope",
    label: string,
    options: readonly (readonly [string, string])[],
    now: string,
  ): TemplateResult {
    return html`<select
      aria-label=${label}
      @input=${(event: Event) => event.stopPropagation()}
      @change=${(event: Event) => this.#choose(what, event)}
    >
      ${options.map(([value, text]) => html`<option value=${value} ?selected=${value === now}>${text}</option>`)}
    </select>`;
  }

  #picture(label: string, height: number, drawing: SVGTemplateResult): TemplateResult {
    return html`<svg part="ground" role="img" aria-label=${label} width=${this.width} height=${Math.ceil(height)}>
      ${drawing}
    </svg>`;
  }

  /** Two axles that turn against each other, as arrows from the middle. */
  #opposed(pair: Comparison, fault: string): TemplateResult {
    const { width, along } = this;
    const em = this.em * 0.86;
    const middle = round(width / 2);
    const reach = Math.min(middle - em, 16 * em);
    const line = (label: string, way: number, y: number): SVGTemplateResult => {
      const end = middle + way * along * reach;
      return svg`<text x=${round(middle - way * along * 0.5 * em)} y=${round(y + 0.35 * em)} text-anchor=${way > 0 ? "end" : "start"}>${label}</text>
        <path class="bar" d="M${middle} ${round(y)}H${round(end - way * along * 0.6 * em)}" />
        <path class="ink" d=${arrow(end, y, way * along, em)} />`;
    };
    return html`${this.#picture(
        fault,
        5.2 * em,
        svg`<path d="M${middle} ${round(0.3 * em)}V${round(4.9 * em)}" />${line(pair.of.label, 1, 1.4 * em)}${line(pair.with.label, -1, 3.8 * em)}`,
      )}
      <p class="fault" part="fault">${fault}</p>`;
  }

  /** Both lengths from a common start, the gap dimensioned. */
  #ground({ pair, scope, gap, sentence }: SaidGauge): TemplateResult {
    const { width, along, words } = this;
    const em = this.em * 0.86;
    const x = (distance: number) => this.x(distance);
    const text = (at: number, y: number, anchor: string, words: string, kind = ""): SVGTemplateResult =>
      svg`<text class=${kind} x=${x(at)} y=${round(y)} text-anchor=${anchor}>${words}</text>`;
    const difference = pair.difference(scope, "with")!;
    const [low, high] = [1 + difference.low.toNumber(), 1 + difference.high.toNumber()];
    const size = Math.max(Math.abs(low - 1), Math.abs(high - 1));
    // It stands in bold, which is wider, in wide types above all.
    const room = roomFor(gap) * 1.2 * em;

    const labels = [pair.of.label, pair.with.label];
    const beside = (Math.max(...labels.map(roomFor)) + 0.8) * em;
    const stacked = beside > width * 0.34;
    const start = stacked ? 1 : beside;
    const unit = (width - start - 1.2 * em) / Math.max(high, 1);
    // Above its bar, a label has as many lines as it needs.
    const lines = labels.map((label) => (stacked ? linesOf(label, (width / em) * 0.94 - 0.5) : [label]));
    const [more, further] = lines.map((one) => (one.length - 1) * 1.3 * em) as [number, number];
    const first = (stacked ? 2 : 1.2) * em + more;
    const second = first + (stacked ? 3 : 2.3) * em + further;
    const floor = second + 1.3 * em;

    /** Both bars with their ends, on a scale of lengths; what is not known of the first is hatched. */
    const bars = (
      scale: (length: number) => number,
      from: number,
      top: number,
      y: number,
      under: number,
      bottom: number,
    ) => {
      const thick = 0.3 * em;
      const tick = (length: number) => `M${x(scale(length))} ${round(y - thick * 1.5)}v${round(thick * 3)}`;
      return svg`<path class="end" d=${[low, high, 1].map((length) => `M${x(scale(length))} ${round(top)}V${round(bottom)}`).join("")} />
        <path class="bar" d="M${x(from)} ${round(y)}H${x(scale(low))}" />
        <path class="bar faint" d="M${x(from)} ${round(under)}H${x(scale(1))}" />
        ${low < high ? svg`<path d=${hatching(x(scale(low)), x(scale(high)), y - thick * 1.2, thick * 2.4) + tick(low) + tick(high)} />` : nothing}`;
    };
    /** A dimension between two ends, the gap beside it; where that has no room, below the picture. */
    const dimension = (y: number, one: number, other: number, left: number) => {
      const [near, far] = [Math.min(one, other), Math.max(one, other)];
      // Where arrows do not fit between, they point from outside.
      const outside = far - near > 1.6 * em ? 0 : em;
      const way = outside ? along : -along;
      const before = near - outside - 0.4 * em;
      below = before - room < left;
      return svg`<path class="thin" d="M${x(near - outside)} ${round(y)}H${x(far + outside)}" />
        <path class="ink" d=${arrow(x(near), y, way, 0.55 * em) + arrow(x(far), y, -way, 0.55 * em)} />
        ${below ? nothing : text(before, y + 0.35 * em, "end", gap, "figure")}`;
    };

    let below = !size;
    let lower: SVGTemplateResult | undefined;
    let height = floor + 1.4 * em;
    const end = (length: number) => start + length * unit;
    const span = [low, low < high ? high : 1] as const;
    if (size && size < small) {
      // The end again in a frame, as many times as large as fits, in round steps.
      const frame = Math.min(width * 0.6, 18 * em);
      const left = width - frame - 1;
      const factor = steps.findLast((step) => size * unit * step <= frame * 0.45) ?? 2;
      const top = floor + 0.2 * em;
      const caption = fill(words.enlarged, writeCount(factor, this.locale));
      // Beside the frame, where that leaves the word at the start alone; else below.
      const captionFits = left - start - (roomFor(caption) + roomFor(words.start) + 1) * em > 0;
      const enlarged = (length: number) => left + frame * 0.94 + (length - Math.max(high, 1)) * unit * factor;
      lower = svg`<rect x=${Math.min(x(left), x(width - 1))} y=${round(top)} width=${round(frame)} height=${round(4.3 * em)} />
        ${bars(enlarged, left + 0.3 * em, top + 0.3 * em, top + 0.9 * em, top + 2 * em, top + 3.5 * em)}
        ${dimension(top + 3.3 * em, enlarged(span[0]), enlarged(span[1]), left)}
        ${captionFits ? text(left - 0.6 * em, top + em, "end", caption, "few") : text(width, top + 5.3 * em, "end", caption, "few")}`;
      height = top + (captionFits ? 4.5 : 5.7) * em;
    } else if (size) {
      lower = dimension(floor + 0.6 * em, end(span[0]), end(span[1]), start + 4 * em);
    }
    const picture = this.#picture(
      sentence,
      height,
      svg`<path d="M${x(start)} ${round(0.2 * em)}V${round(floor)}" />
        ${bars(end, start, 0.3 * em, first, second, floor)}
        ${lines.map((all, n) => all.map((line, row) => text(stacked ? 0.5 * em : start - 0.6 * em, [first, second][n]! + (stacked ? -0.75 - 1.3 * (all.length - 1 - row) : 0.35) * em, stacked ? "start" : "end", line)))}
        ${text(start, floor + em, stacked ? "start" : "middle", words.start, "few")}
        ${lower ?? nothing}`,
    );
    return html`${picture}${below ? html`<p class="gap" aria-hidden="true">${gap}</p>` : nothing}`;
  }

  protected override render(): TemplateResult {
    const { of, with: other, choice } = this;
    const said = this.says(
      (speaker) =>
        sayGauge(speaker, {
          of,
          with: other,
          base: choice?.base ?? this.base,
          scope: choice?.scope ?? this.scope,
        }),
      this.at,
    );
    if (!said) return this.fallback(false);
    const { pair, base, scope, percentages, notes, opposed } = said;
    if (opposed)
      return html`<div class="root" part="root">
          ${this.whose(this.at)}${this.width ? this.#opposed(pair, opposed) : nothing}
        </div>
        ${this.fallback()}`;
    const { figureWords, words } = this;
    const named: readonly (readonly [string, string])[] = [
      [pair.with.id, pair.with.label],
      [pair.of.id, pair.of.label],
      ["mean", figureWords.mean],
    ];
    const counting =
      percentages.tyres === undefined
        ? figureWords.gearsAlone
        : this.#select(
            "scope",
            figureWords.scope,
            [
              ["tyres", figureWords.tyres],
              ["gears", figureWords.gearsAlone],
            ],
            scope,
          );
    return html`<div class="root" part="root">
        ${this.whose(this.at)} ${this.width ? this.#ground(said) : nothing}
        <p part="basis">
          ${figureWords.scope} ${counting}${words.comma} ${figureWords.base}
          ${this.#select("base", figureWords.base, named, base)}
        </p>
        ${notes.map((note) => html`<p part="note">${note}</p>`)}
      </div>
      ${this.fallback()}`;
  }
}
