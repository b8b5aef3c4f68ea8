import { html, nothing, svg, type SVGTemplateResult, type TemplateResult } from "lit/html.js";
import {
  drawnEnds,
  drawnLength,
  sayDrawing,
  stepsToDraw,
  wallText,
  type DrawnEnds,
  type SaidDrawing,
  type Reporter,
} from "@meshwright/calc/article";
import type { ReportWords } from "@meshwright/calc/languages";
import { layoutOf, type Layout, type PlacedWheel } from "@meshwright/calc/layout";
import { Picture, block, round } from "../../shared/drawn/index.js";
import { properties, writeCount } from "../../shared/element/index.js";
import { fill, reportWordsFor } from "../../shared/words/index.js";
import { reporting, toolWordsFor, type ToolWords, unitControl } from "../../shared/tools/index.js";
import { centreLine, drawCentres, drawPivot, drawWalls, type LengthText } from "./dimensions.js";
import { drawPlanes } from "./planes.js";
import { partOf, planesOf, rowsOf } from "./rows.js";
import { reachOf, sheetFor, type Sheet } from "./sheet.js";
import { drawSlot, drawTrack } from "./slot.js";
import { styles } from "./styles.js";
import { drawGhosts, drawWheels, ghostsOf } from "./wheels.js";

/** Some stages of the drawing on a sheet of their own, below those before. */
interface Row {
  readonly n: number;
  readonly layout: Layout;
  readonly article: Layout | undefined;
  readonly sheet: Sheet;
}

/** Whether the reader asks for less motion. */
const wantsLess = (): boolean => matchMedia("(prefers-reduced-motion: reduce)").matches;

/** Seconds that the driver takes from one tooth to the next. */
const pace = 0.9;

/**
 * The gears of a drive to scale, in mesh on their true centre distances, with the mount's slot and walls, dimensioned, and the
 * same from above, layer by layer from the motor on. A long train goes on in rows. Still, until it is asked to turn, or turned
 * tooth by tooth: by a wheel that is drawn along, by keys. The article's gears are dashed where the reader's are others.
 *
 * @attr of - an output's id, or stages' ids; none: what drives the output that the build's headline names
 * @attr at - `article` or an alternative's id
 * @csspart root - all that it draws
 * @csspart drawing - the picture
 * @csspart counts - the counts in a line, where they would stand on one another
 * @csspart verdict - why it does not fit
 * @csspart dashed - what is dashed
 * @csspart rest - stages that have no place in it
 */
export class MwTrainDrawing extends Picture {
  static override readonly tag = "mw-train-drawing";
  static override styles = [properties, block, styles];
  static override properties = { of: {}, at: {}, turning: { state: true } };

  declare of: string | null;
  declare at: string | null;
  declare private turning: boolean | undefined;
  #frame = 0;
  /** Lets go of the wheel that is held. */
  #drop: (() => void) | undefined;
  /** By how many of the first gear's teeth it was turned on by hand. */
  #teeth = 0;
  /** What is drawn, and the article's where it may differ. */
  #layouts: { readonly shown?: Layout; readonly article?: Layout | undefined } = {};

  get #shop(): ToolWords {
    return toolWordsFor(this.locale);
  }

  get #reports(): ReportWords {
    return reportWordsFor(this.locale);
  }

  #layout(at?: string | null): Layout | undefined {
    const evaluation = this.evaluation(at);
    return evaluation && layoutOf(stepsToDraw(evaluation, this.of), evaluation.build.mounts);
  }

  protected override willUpdate(): void {
    const { store, at } = this;
    this.#layouts = {};
    this.fault = undefined;
    try {
      const shown = this.#layout(at);
      const differs = !at && store && store.build !== store.article;
      if (shown?.spans.length) this.#layouts = { shown, article: differs ? this.#layout("article") : undefined };
      else if (shown) this.fault = "No gears to draw; expected spur or helical gears of a known pitch.";
    } catch (error) {
      this.fault = (error as Error).message;
    }
  }

  /** One row of the drawing: some stages from the front, dimensioned, and from above. */
  #row(
    row: Row,
    speaker: Reporter,
    ends: DrawnEnds,
  ): { readonly picture: SVGTemplateResult; readonly height: number; crowded: boolean } {
    const { layout, article, sheet, n } = row;
    const { em } = sheet;
    const shop = this.#reports;
    const text: LengthText = (length, limit) => drawnLength(speaker, length, limit);
    const { wheels, lettering, counts, crowded } = drawWheels(layout, sheet, n, (teeth) =>
      writeCount(teeth, this.locale),
    );
    const level = sheet.y + sheet.bottom + (layout.mounts.some((mount) => mount.walls.length) ? 3.6 : 2.2) * em;
    const centres = drawCentres(layout.spans, sheet, level, text);
    let height = level + centres.height + 0.6 * em;
    const slots = layout.mounts.map((mount) => {
      const published = article?.mounts.find((one) => one.span.stage === mount.span.stage);
      const slot = drawSlot(mount, published, sheet, height, text, {
        short: mount.short
          ? fill({ to: shop.short, from: shop.tooClose, hole: shop.holeAway }[mount.short.end], text(mount.short.by))
          : "",
        article: published ? fill(this.words.article, text(published.span.centre)) : "",
        caption: (factor) => fill(shop.axisStands, writeCount(factor, this.locale)),
      });
      height += slot.height;
      return slot.picture;
    });
    height += 0.5 * em;
    const { from, to } = ends;
    const planes = drawPlanes(layout, sheet, height, { plan: n ? "" : shop.plan, from, to });
    return {
      crowded,
      height: Math.ceil(height + planes.height),
      picture: svg`${article ? drawGhosts(article, layout, sheet, n) : nothing}
        ${wheels}${centreLine(layout.spans, sheet, counts)}${lettering}${centres.picture}
        ${layout.mounts.map((mount) => [drawPivot(mount, sheet), drawTrack(mount, sheet), drawWalls(mount, sheet, (wall) => wallText(speaker, wall))])}
        ${slots}${planes.picture}
        ${layout.wheels.map((wheel) => svg`<circle class="wheel" cx=${round(sheet.x(wheel.x))} cy=${round(sheet.y)} r=${round(reachOf(wheel) * sheet.scale)} @pointerdown=${(event: PointerEvent) => this.#held(event, wheel)} />`)}`,
    };
  }

  /** The stages in rows, all to one scale; the article's where the same axis stands. */
  #rows(layout: Layout, article: Layout | undefined): readonly Row[] {
    const { width } = this;
    const em = this.em * 0.86;
    const stages = rowsOf(layout, width, em);
    const parts = stages.map((own) => {
      if (stages.length === 1) return { layout, article };
      const part = partOf(layout, own);
      const before = article && partOf(article, own);
      const axis = part.spans[0]!.driven.x;
      const by = before?.spans.length ? axis - before.spans[0]!.driven.x : 0;
      return { layout: part, article: article && before?.spans.length ? partOf(article, own, by) : undefined };
    });
    const sheet = (part: (typeof parts)[number], most?: number): Sheet =>
      sheetFor(part.article ? [part.layout, part.article] : [part.layout], width, em, most);
    const scale = Math.min(...parts.map((part) => sheet(part).scale));
    return parts.map((part, n) => ({ ...part, n, sheet: sheet(part, scale) }));
  }

  #drawing(layout: Layout, article: Layout | undefined, speaker: Reporter, said: SaidDrawing): TemplateResult {
    const { width } = this;
    const parts = this.#rows(layout, article);
    const endsOf = (one: Layout): DrawnEnds => {
      const stages = planesOf(one);
      return drawnEnds(speaker, stages[0]!, stages.at(-1)!, this.of);
    };
    const ends = endsOf(layout);
    let height = 0;
    let crowded = false;
    const rows = parts.map((row) => {
      const drawn = this.#row(row, speaker, parts.length === 1 ? ends : endsOf(row.layout));
      const top = height;
      height += drawn.height + (row.n ? 0 : 0.4 * row.sheet.em);
      crowded ||= drawn.crowded;
      return row.n ? svg`<g transform="translate(0 ${round(top)})">${drawn.picture}</g>` : drawn.picture;
    });
    height = Math.ceil(height);
    return html`<svg
        part="drawing"
        role="img"
        aria-label=${said.title}
        aria-describedby="told"
        width=${width}
        height=${height}
        viewBox="0 0 ${width} ${height}"
      >
        ${rows}
      </svg>
      <span class="heard" id="told">${ends.told} ${said.told}</span>
      ${crowded ? html`<p part="counts" aria-hidden="true">${said.title}</p>` : nothing}`;
  }

  /** A wheel is taken hold of, and turns the others with it, tooth by tooth. */
  #held(event: PointerEvent, wheel: PlacedWheel): void {
    if (event.button || !wheel.turns) return;
    event.preventDefault();
    const circle = event.currentTarget as SVGCircleElement;
    const box = circle.getBoundingClientRect();
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const angleOf = (at: PointerEvent): number => Math.atan2(at.clientY - y, at.clientX - x);
    const first = this.#layouts.shown!.wheels[0]!;
    // One tooth of the first gear turns this wheel by so much.
    const tooth = ((2 * Math.PI) / first.teeth) * (wheel.turns / (first.turns || 1));
    const before = this.#teeth;
    let [last, turned] = [angleOf(event), 0];
    this.turning = false;
    this.#drop?.();
    const svg = circle.ownerSVGElement!;
    svg.classList.add("held");
    const move = (at: PointerEvent): void => {
      if (at.pointerId !== event.pointerId) return;
      const angle = angleOf(at);
      // The short way round.
      turned += ((((angle - last) % (2 * Math.PI)) + 3 * Math.PI) % (2 * Math.PI)) - Math.PI;
      last = angle;
      this.#teeth = before + Math.round(turned / tooth);
      this.#run();
    };
    const drop = (at?: PointerEvent): void => {
      if (at && at.pointerId !== event.pointerId) return;
      svg.classList.remove("held");
      removeEventListener("pointermove", move);
      for (const end of ["pointerup", "pointercancel"] as const) removeEventListener(end, drop);
      this.#drop = undefined;
    };
    addEventListener("pointermove", move);
    for (const end of ["pointerup", "pointercancel"] as const) addEventListener(end, drop);
    this.#drop = drop;
  }

  readonly #turn = (): void => {
    this.turning = !this.turning && !wantsLess();
  };

  /** One tooth on, or back. */
  #step(by: number): void {
    this.turning = false;
    this.#teeth += by;
    this.#run();
  }

  readonly #pressed = (event: KeyboardEvent): void => {
    const by = ({ ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 } as Record<string, number>)[event.key];
    if (!by) return;
    event.preventDefault();
    event.stopPropagation();
    this.#step(event.key.startsWith("ArrowU") || event.key.startsWith("ArrowD") ? by : by * this.along);
  };

  /** Turns the gears a little with every frame, from where they stand; back to where they stood when it is done. */
  #run(): void {
    cancelAnimationFrame(this.#frame);
    const gears = [...this.renderRoot.querySelectorAll<SVGPathElement>(".teeth")];
    const fastest = Math.max(...gears.map((gear) => Math.abs(Number(gear.dataset["turns"]))), 1e-9);
    const first = this.#layouts.shown?.wheels[0];
    const teeth = first?.teeth ?? 20;
    const by = (this.#teeth * 360) / teeth / (Math.abs(first?.turns ?? 0) || 1);
    const turn = (angle: number): void => {
      for (const gear of gears)
        if (angle)
          gear.setAttribute("transform", `rotate(${((angle * Number(gear.dataset["turns"])) % 360).toFixed(3)})`);
        else gear.removeAttribute("transform");
    };
    if (!this.turning || !this.isConnected) return turn(by);
    let started: number | undefined;
    const step = (now: number): void => {
      if (wantsLess()) {
        this.turning = false;
        return;
      }
      started ??= now;
      turn(by + (((now - started) / 1000 / pace) * 360) / teeth / fastest);
      this.#frame = requestAnimationFrame(step);
    };
    this.#frame = requestAnimationFrame(step);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    cancelAnimationFrame(this.#frame);
    this.#drop?.();
    this.turning = false;
  }

  protected override updated(changed: Map<PropertyKey, unknown>): void {
    super.updated(changed);
    if (this.turning || this.#teeth || changed.has("turning")) this.#run();
  }

  protected override render(): TemplateResult {
    const { shown: layout, article } = this.#layouts;
    const speaker = layout && reporting(this.speaker(this.at));
    if (!layout || !speaker) return this.fallback(false);
    const said = sayDrawing(speaker, layout);
    const changed = article && ghostsOf(article, layout).length > 0;
    return html`<div class="root" part="root">
        ${this.whose(this.at)} ${this.width ? this.#drawing(layout, article, speaker, said) : nothing}
        ${said.verdicts.map((verdict) => html`<p class="fault" part="verdict">${verdict}</p>`)}
        ${changed ? html`<p part="dashed">${this.#reports.dashed}</p>` : nothing}
        ${said.rest ? html`<p part="rest">${said.rest}</p>` : nothing}
        <div class="keys">
          <span @keydown=${this.#pressed}
            ><button type="button" class="run" @click=${this.#turn}>
              ${this.turning ? this.#shop.holdStill : this.#shop.letTurn}</button
            ><button
              type="button"
              aria-label=${this.#shop.toothBack}
              title=${this.#shop.toothBack}
              @click=${() => this.#step(-1)}
            >
              ↺</button
            ><button
              type="button"
              aria-label=${this.#shop.toothOn}
              title=${this.#shop.toothOn}
              @click=${() => this.#step(1)}
            >
              ↻
            </button></span
          >
          ${unitControl(this.store!, this.locale, (request) => this.change(request), this.at)}
        </div>
      </div>
      ${this.fallback()}`;
  }
}
