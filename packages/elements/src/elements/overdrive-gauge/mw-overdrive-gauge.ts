import { html, nothing, svg, type SVGTemplateResult, type TemplateResult } from "lit";
import type { Comparison, ComparisonBase, Scope } from "@meshwright/calc/evaluate";
import { turningRadius } from "@meshwright/calc/motion";
import { Writer } from "@meshwright/calc/report";
import {
  arrow,
  block,
  drawing,
  hatching,
  Picture,
  properties,
  roomFor,
  round,
  writeCount,
} from "../../shared/element/index.js";
import { fill } from "../../shared/words/index.js";
import { styles } from "./styles.js";

const bases: readonly ComparisonBase[] = ["with", "of", "mean"];
const scopes: readonly Scope[] = ["tyres", "gears"];
/** Below this a gap is drawn enlarged as well. */
const small = 0.05;
const steps = [2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000];

/**
 * Front against rear as lengths of ground, rolled for the same turns of what they share. What it is measured against, and
 * whether the tyres count, stand in words and can be changed.
 *
 * @attr of, with the two outputs; else those that the build compares
 * @attr base `with` (default), `of` or `mean` · @attr scope `tyres` (default where both wheels are given) or `gears`
 * @attr at `article` or an alternative's id
 * @csspart ground the picture · @csspart basis the words below it · @csspart fault axles that oppose each other
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

  /** The last turning circle's radius as text, by what it came from. */
  #circleOf: readonly [string, string | undefined] | undefined;

  #query(figure: string, base: ComparisonBase, scope: Scope): string {
    return this.textOf({ figure, of: this.of ?? undefined, with: this.with ?? undefined, base, scope }, this.at) ?? "";
  }

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
  #opposed(pair: Comparison): TemplateResult {
    const { width, along, words } = this;
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
        words.oppose,
        5.2 * em,
        svg`<path d="M${middle} ${round(0.3 * em)}V${round(4.9 * em)}" />${line(pair.of.label, 1, 1.4 * em)}${line(pair.with.label, -1, 3.8 * em)}`,
      )}
      <p class="fault" part="fault">${words.oppose}</p>`;
  }

  /** Both lengths from a common start, the gap dimensioned. */
  #ground(pair: Comparison, base: ComparisonBase, scope: Scope): TemplateResult {
    const { width, along, words } = this;
    const em = this.em * 0.86;
    const x = (distance: number) => this.x(distance);
    const text = (at: number, y: number, anchor: string, words: string, kind = ""): SVGTemplateResult =>
      svg`<text class=${kind} x=${x(at)} y=${round(y)} text-anchor=${anchor}>${words}</text>`;
    const difference = pair.difference(scope, "with")!;
    const [low, high] = [1 + difference.low.toNumber(), 1 + difference.high.toNumber()];
    const size = Math.max(Math.abs(low - 1), Math.abs(high - 1));
    const farther = this.#query("farther", base, scope);
    const gap = low < 1 && high > 1 ? `${this.#query("leader", base, scope)}: ${farther}` : farther;
    // It stands in bold, which is wider, in wide types above all.
    const room = roomFor(gap) * 1.2 * em;

    const labels = [pair.of.label, pair.with.label];
    const beside = (Math.max(...labels.map(roomFor)) + 0.8) * em;
    const stacked = beside > width * 0.34;
    const start = stacked ? 1 : beside;
    const unit = (width - start - 1.2 * em) / Math.max(high, 1);
    const first = (stacked ? 2 : 1.2) * em;
    const second = first + (stacked ? 3 : 2.3) * em;
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
      fill(words.gap, labels[0]!, gap, labels[1]!),
      height,
      svg`<path d="M${x(start)} ${round(0.2 * em)}V${round(floor)}" />
        ${bars(end, start, 0.3 * em, first, second, floor)}
        ${labels.map((label, n) => text(stacked ? 0.5 * em : start - 0.6 * em, [first, second][n]! + (stacked ? -0.75 : 0.35) * em, stacked ? "start" : "end", label))}
        ${text(start, floor + em, stacked ? "start" : "middle", words.start, "few")}
        ${lower ?? nothing}`,
    );
    return html`${picture}${below ? html`<p class="gap" aria-hidden="true">${gap}</p>` : nothing}`;
  }

  /** The turning circle that it matches, where the wheelbase is known and the front is ahead. */
  #circle(pair: Comparison, scope: Scope): TemplateResult | typeof nothing {
    const { wheelbase } = this.evaluation(this.at)!.build;
    const gap = pair.difference(scope, "with");
    if (!wheelbase || !gap?.isExact) return nothing;
    const key = [gap.low, wheelbase, this.locale].join();
    // A root of long fractions is worth keeping: most changes leave the gap as it was.
    if (key !== this.#circleOf?.[0]) {
      const radius = turningRadius(gap.low, wheelbase);
      this.#circleOf = [key, radius && new Writer({ locale: this.locale }).length(radius, { unit: "m", digits: 2 })];
    }
    const text = this.#circleOf![1];
    return text ? html`<p part="circle">${fill(this.words.circle, text)}</p>` : nothing;
  }

  protected override render(): TemplateResult {
    const pair = this.evaluation(this.at)?.compare(this.of ?? undefined, this.with ?? undefined);
    if (!pair) return this.fallback(false);
    const { words } = this;
    const tyres = pair.difference("tyres") !== undefined;
    const wanted = this.choice?.scope ?? this.scope;
    const scope = scopes.find((one) => one === wanted && (tyres || one !== "tyres")) ?? (tyres ? "tyres" : "gears");
    const base = bases.find((one) => one === (this.choice?.base ?? this.base)) ?? "with";
    const { of, with: other } = pair;
    if (!pair.difference(scope)) return this.fallback(false);
    const named: readonly (readonly [string, string])[] = [
      ["with", other.label],
      ["of", of.label],
      ["mean", words.mean],
    ];
    if (pair.sameWay === false)
      return html`<div class="root" part="root">${this.width ? this.#opposed(pair) : nothing}</div>
        ${this.fallback()}`;
    const counting = tyres
      ? this.#select(
          "scope",
          words.scope,
          [
            ["tyres", words.tyres],
            ["gears", words.onlyGears],
          ],
          scope,
        )
      : words.onlyGears;
    return html`<div class="root" part="root">
        ${this.width ? this.#ground(pair, base, scope) : nothing}
        <p part="basis">
          ${words.scope} ${counting}${words.comma} ${words.base} ${this.#select("base", words.base, named, base)}
        </p>
        ${pair.by === "motor-speed" ? html`<p>${words.bySpeed}</p>` : nothing}${this.#circle(pair, scope)}
      </div>
      ${this.fallback()}`;
  }
}
