import { html, nothing, svg, type SVGTemplateResult, type TemplateResult } from "lit";
import type { Base, Comparison, Scope } from "@meshwright/calc/evaluate";
import { turningRadius } from "@meshwright/calc/motion";
import { Writer } from "@meshwright/calc/report";
import { arrow, block, hatching, Picture, properties, roomFor, round } from "../base/index.js";
import { fill } from "../words/index.js";
import { styles } from "./styles.js";

const bases: readonly Base[] = ["with", "of", "mean"];
const scopes: readonly Scope[] = ["tyres", "gears"];
/** Below this a gap is drawn enlarged as well. */
const small = 0.05;

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
  static override styles = [properties, block, styles];
  static override properties = { of: {}, with: {}, base: {}, scope: {}, at: {}, choice: { state: true } };

  declare of: string | null;
  declare with: string | null;
  declare base: string | null;
  declare scope: string | null;
  declare at: string | null;
  /** What the reader chose to look at, over what the author set. */
  declare private choice: { readonly base?: string; readonly scope?: string } | undefined;

  #query(figure: string, base: Base, scope: Scope): string {
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

  /** Two axles that turn against each other, as arrows from the middle. */
  #opposed(pair: Comparison): TemplateResult {
    const { width, along } = this;
    const em = this.em * 0.86;
    const middle = width / 2;
    const reach = Math.min(width / 2 - em, 16 * em);
    const line = (label: string, way: number, y: number): SVGTemplateResult => {
      const end = middle + way * along * reach;
      return svg`<text x=${round(middle - way * along * 0.5 * em)} y=${round(y + 0.35 * em)} text-anchor=${way > 0 ? "end" : "start"}>${label}</text>
        <path d="M${middle} ${y}H${round(end - way * along * 0.6 * em)}" stroke="currentColor" stroke-width=${round(0.3 * em)} />
        <path d=${arrow(end, y, way * along, em)} fill="currentColor" />`;
    };
    const height = round(5.2 * em);
    return html`<svg
        part="ground"
        role="img"
        aria-label=${this.words.oppose}
        width=${width}
        height=${height}
        viewBox="0 0 ${width} ${height}"
      >
        <path d="M${middle} ${round(0.3 * em)}V${round(4.9 * em)}" stroke="currentColor" />
        ${line(pair.of.label, 1, round(1.4 * em))} ${line(pair.with.label, -1, round(3.8 * em))}
      </svg>
      <p class="fault" part="fault">${this.words.oppose}</p>`;
  }

  /** Both lengths from a common start, the gap dimensioned. */
  #ground(pair: Comparison, base: Base, scope: Scope): TemplateResult {
    const { width, along, words } = this;
    const em = this.em * 0.86;
    const difference = pair.difference(scope, "with")!;
    const low = 1 + difference.low.toNumber();
    const high = 1 + difference.high.toNumber();
    const size = Math.max(Math.abs(low - 1), Math.abs(high - 1));
    const labels = [pair.of.label, pair.with.label];
    const beside = Math.max(...labels.map(roomFor)) * em + 0.8 * em;
    const stacked = beside > width * 0.34;
    const start = stacked ? 1 : beside;
    const longest = Math.max(high, 1);
    const unit = (width - start - 1.2 * em) / longest;
    const pitch = (stacked ? 3 : 2.3) * em;
    const first = round((stacked ? 2 : 1.2) * em);
    const rows = [first, round(first + pitch)] as const;
    const thick = round(0.3 * em);
    const floor = rows[1] + 1.3 * em;
    const enlarged = size < small && size > 0;
    const gap = this.#query("farther", base, scope);
    const x = (distance: number) => this.x(distance);
    const end = (length: number) => start + length * unit;

    const bar = (
      y: number,
      from: number,
      to: number,
      scale: (length: number) => number,
      faint: boolean,
    ): SVGTemplateResult =>
      svg`<path d="M${x(scale(from))} ${y}H${x(scale(to))}" stroke="currentColor" stroke-width=${thick} opacity=${faint ? 0.55 : nothing} />`;
    const doubt = (y: number, scale: (length: number) => number): SVGTemplateResult | typeof nothing =>
      low === high
        ? nothing
        : svg`<path d="${hatching(x(scale(low)), x(scale(high)), y - thick * 1.2, thick * 2.4)}M${x(scale(high))} ${round(y - thick * 1.5)}v${round(thick * 3)}M${x(scale(low))} ${round(y - thick * 1.5)}v${round(thick * 3)}" fill="none" stroke="currentColor" />`;
    /** A dimension between two ends, its figure beside it. */
    const dimension = (y: number, a: number, b: number, right: number): SVGTemplateResult => {
      const [near, far] = [Math.min(a, b), Math.max(a, b)];
      const room = roomFor(gap) * em;
      const inside = far - near > 1.6 * em;
      const head = 0.55 * em;
      const text =
        far + room + 1.4 * em < right
          ? ([far + (inside ? 0.4 : 1.3) * em, "start"] as const)
          : ([near - (inside ? 0.4 : 1.3) * em, "end"] as const);
      return svg`<path d="M${x(near - (inside ? 0 : em))} ${y}H${x(far + (inside ? 0 : em))}" stroke="currentColor" stroke-width="0.8" />
        <path d="${arrow(x(near), y, inside ? -along : along, head)}${arrow(x(far), y, inside ? along : -along, head)}" fill="currentColor" />
        <text x=${x(text[0])} y=${round(y + 0.35 * em)} text-anchor=${text[1]} font-weight="600">${gap}</text>`;
    };

    const ends = [...new Set([low, high, 1])];
    let lower: SVGTemplateResult;
    let height: number;
    if (enlarged) {
      // The end again, in a frame: as much larger as makes the gap a third of it, in round steps.
      const frame = Math.min(width * 0.5, 15 * em);
      const left = width - frame - 1;
      const steps = [2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000];
      const factor = steps.findLast((step) => size * unit * step <= frame * 0.45) ?? 2;
      const top = round(floor + 0.2 * em);
      const tall = round(4.6 * em);
      const inner = (length: number) => left + frame * 0.72 + (length - longest) * unit * factor;
      const [one, two] = [round(top + 0.9 * em), round(top + 2 * em)];
      const caption = fill(words.enlarged, factor);
      const fits = roomFor(caption) * em * 0.88 + em < left;
      lower = svg`<rect x=${Math.min(x(left), x(left + frame))} y=${top} width=${round(frame)} height=${tall} fill="none" stroke="currentColor" stroke-width="0.8" />
        <path d=${ends.map((length) => `M${x(inner(length))} ${round(top + 0.3 * em)}V${round(top + 3.5 * em)}`).join("")} stroke="currentColor" stroke-width="0.7" stroke-dasharray="2 2" />
        <path d="M${x(left + 0.3 * em)} ${one}H${x(inner(low))}" stroke="currentColor" stroke-width=${thick} />${doubt(one, inner)}
        <path d="M${x(left + 0.3 * em)} ${two}H${x(inner(1))}" stroke="currentColor" stroke-width=${thick} opacity="0.55" />
        ${dimension(round(top + 3.4 * em), inner(low), inner(low === high ? 1 : high), left + frame)}
        <text class="few" x=${x(fits ? left - 0.6 * em : left + frame)} y=${round(fits ? top + 1 * em : top + tall + em)} text-anchor="end">${caption}</text>`;
      height = top + tall + (fits ? 0.3 : 1.4) * em;
    } else {
      lower =
        size && low === high
          ? dimension(round(floor + 0.6 * em), end(low), end(1), width)
          : svg`<text x=${x(width)} y=${round(floor + em)} text-anchor="end" font-weight="600">${gap}</text>`;
      height = floor + 1.4 * em;
    }
    height = Math.ceil(height);
    return html`<svg
      part="ground"
      role="img"
      aria-label=${fill(words.gap, pair.of.label, gap, pair.with.label)}
      width=${width}
      height=${height}
      viewBox="0 0 ${width} ${height}"
    >
      <path d="M${x(start)} ${round(0.2 * em)}V${round(floor)}" stroke="currentColor" stroke-width="1.2" />
      <path
        d=${ends.map((length) => `M${x(end(length))} ${round(0.3 * em)}V${round(floor)}`).join("")}
        stroke="currentColor"
        stroke-width="0.7"
        stroke-dasharray="3 2"
      />
      ${bar(rows[0], 0, low, end, false)}${doubt(rows[0], end)}${bar(rows[1], 0, 1, end, true)}
      ${labels.map((label, n) => svg`<text x=${x(stacked ? 0.5 * em : start - 0.6 * em)} y=${round(rows[n]! + (stacked ? -0.75 : 0.35) * em)} text-anchor=${stacked ? "start" : "end"}>${label}</text>`)}
      <text class="few" x=${x(start)} y=${round(floor + em)} text-anchor=${stacked || along < 0 ? "start" : "middle"}>
        ${words.start}
      </text>
      ${lower}
    </svg>`;
  }

  /** The turning circle that it matches, where the wheelbase is known and the front is ahead. */
  #circle(pair: Comparison, scope: Scope): TemplateResult | typeof nothing {
    const { wheelbase } = this.evaluation(this.at)!.build;
    const gap = pair.difference(scope, "with");
    if (!wheelbase || !gap?.isExact) return nothing;
    const radius = turningRadius(gap.low, wheelbase);
    if (radius === undefined) return nothing;
    const text = new Writer({ locale: this.locale }).length(radius, { unit: "m", digits: 2 });
    return html`<p part="circle">${fill(this.words.circle, text)}</p>`;
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
    return html`<div class="root" part="root">
        ${!this.width ? nothing : pair.sameWay === false ? this.#opposed(pair) : this.#ground(pair, base, scope)}
        <p part="basis">
          ${words.scope}
          ${
            tyres
              ? this.#select(
                  "scope",
                  words.scope,
                  [
                    ["tyres", words.tyres],
                    ["gears", words.onlyGears],
                  ],
                  scope,
                )
              : words.onlyGears
          }${words.comma}
          ${words.base} ${this.#select("base", words.base, named, base)}
        </p>
        ${pair.by === "motor-speed" ? html`<p>${words.bySpeed}</p>` : nothing}
        ${pair.sameWay === false ? nothing : this.#circle(pair, scope)}
      </div>
      ${this.fallback()}`;
  }
}
