import { html, nothing, type TemplateResult } from "lit/html.js";
import { guard } from "lit/directives/guard.js";
import { ifDefined } from "lit/directives/if-defined.js";
import {
  mendedDraft,
  sayDriveLine,
  speakerOf,
  type LinePiece,
  type Reporter,
  type SaidCell,
  type SaidLine,
  type SaidStrand,
} from "@meshwright/calc/article";
import { openedBeneath, placeDriveLine, type Box, type OpenedLine, type PlacedLine } from "@meshwright/calc/layout";
import { evaluate } from "@meshwright/calc/evaluate";
import { stageText } from "@meshwright/calc/report";
import { spotOf } from "@meshwright/calc/drivetrain";
import { paperOf, properties, writeCount } from "../../shared/element/index.js";
import { announce, block, figures, onPaper, Picture, type Told } from "../../shared/drawn/index.js";
import { reporting, whoseValues } from "../../shared/tools/index.js";
import { fill, reportWordsFor } from "../../shared/words/index.js";
import { drawLine, type Drawn } from "./drawing.js";
import { laneText, letteringFor, sizesFor, totalLines } from "./lettering.js";
import { movesFor } from "./moves.js";
import { placed } from "./placed.js";
import { styles } from "./styles.js";

/** Narrower than this the line stands upright. */
const narrow = 760;
let coarse: MediaQueryList | undefined;
const formats = new Map<string, Intl.NumberFormat>();
function twoDigits(locale: string): Intl.NumberFormat {
  let format = formats.get(locale);
  if (!format) formats.set(locale, (format = new Intl.NumberFormat(locale, { maximumSignificantDigits: 2 })));
  return format;
}
const isCoarse = (): boolean => !!(coarse ??= globalThis.matchMedia?.("(pointer: coarse)"))?.matches;

/**
 * The whole drivetrain as one line from the motor to the wheels, gears to one scale, with what each shaft has come to. It is
 * the picture of a list, and every count in it can be changed where it stands.
 *
 * @attr still - counts cannot be changed, nothing can be chosen
 * @attr chosen - the id of the stage that is chosen
 * @attr at - `article` or an alternative's id: then it is still
 * @attr open - marks on the shafts let something in: whoever listens to `mw-insert` asks what
 * @fires {CustomEvent<{ into?: string, at: number, before: string }>} mw-insert - a mark was pressed: `into` and `at`, as a
 *   change has them, and `before`, the key of what stands behind
 * @fires {CustomEvent<{ key: string, stage?: string }>} mw-choose - a stage, motor, split or wheel was chosen: `key`, and
 *   `stage` where it is one
 * @fires {CustomEvent<ChangeSet | Change>} mw-change - what the reader changed: new values by address
 * @slot detail - what is to be said of the stage that is chosen: beneath it where the line stands upright, else below the line
 * @csspart root - all that it draws
 * @csspart drawing - the picture
 * @csspart list - the list
 * @csspart name - what a stage is called
 * @csspart total - a total
 * @csspart scale - what the picture is drawn to
 */
export class MwDriveLine extends Picture {
  static override readonly tag = "mw-drive-line";
  static override styles = [properties, block, styles];
  static override properties = {
    still: { type: Boolean },
    chosen: {},
    at: {},
    open: { type: Boolean },
    draft: { state: true },
    message: { state: true },
    detail: { state: true },
  };

  declare still: boolean | null;
  declare chosen: string | null;
  declare at: string | null;
  declare open: boolean | null;
  /** A document that is being written, as data: what cannot be read of it breaks the line where it stands. */
  declare draft: unknown;
  /** What stands against the last change of a lever. */
  declare private message: Told | undefined;
  /** How high what stands in the slot is, in pixels; undefined where nothing does. */
  declare private detail: number | undefined;

  #drawn: Drawn = new Map();
  #said: SaidLine | undefined;
  #line: PlacedLine | undefined;

  get #isStill(): boolean {
    return !!this.still || !!this.at;
  }

  /** Whether counts can be changed: of a draft they are changed by whoever writes it. */
  get #isLive(): boolean {
    return !this.#isStill && !this.draft;
  }

  /** The thing that is chosen, or that the focus enters at: the first stage. */
  get #current(): string | undefined {
    const { cells } = this.#said!;
    if (this.chosen && cells.has(this.chosen)) return this.chosen;
    return [...cells.values()].find(({ stage }) => stage)?.key ?? [...cells.keys()][0];
  }

  // Requests

  #choose(key: string): void {
    if (this.chosen === key) return;
    this.chosen = key;
    const stage = this.#said?.cells.get(key)?.stage?.id;
    this.tell("choose", { key, ...(stage !== undefined && { stage }) });
  }

  /** Asks whoever listens what is to be let in before a thing. */
  #letIn({ key, before }: SaidCell): void {
    if (this.open && before) this.tell("insert", { ...before.place, before: key });
  }

  #stand(lane: SaidCell["lanes"][number]): void {
    const [refusal] = lane.changes ? this.change(lane.changes) : [];
    this.message = this.told(refusal);
    announce(
      this.renderRoot as ShadowRoot,
      () => this.message?.() ?? [...this.#said!.totals.values()].map(({ heard }) => heard).join(". "),
    );
  }

  // Handlers

  readonly #focus = (key: string): void => {
    this.renderRoot.querySelector<HTMLElement>(`[data-name="${CSS.escape(key)}"]`)?.focus();
  };

  readonly #pressed = (event: KeyboardEvent): void => {
    const path = event.composedPath();
    const cell = path.find((one): one is HTMLElement => (one as HTMLElement).dataset?.["key"] !== undefined);
    const key = cell?.dataset["key"];
    if (!key || event.ctrlKey || event.metaKey || event.altKey || event.isComposing) return;
    const isName = (path[0] as HTMLElement).dataset?.["name"] !== undefined;
    if (!isName) {
      if (event.key === "Escape") this.#focus(key);
      return;
    }
    if (event.key === "Insert") return this.#letIn(this.#said!.cells.get(key)!);
    const count = cell!.querySelector<HTMLElement>("mw-teeth");
    if (event.key === "Enter" || /^\d$/.test(event.key)) {
      // The key that comes with the focus writes the digit.
      const field = count?.shadowRoot?.querySelector<HTMLElement>("input, select");
      if (field) {
        this.#choose(key);
        field.focus();
        if (event.key === "Enter") event.preventDefault();
      }
      return;
    }
    const to = movesFor(this.#said!, key, this.#line?.form === "upright", this.along < 0)[event.key];
    if (to === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    this.#focus(to);
  };

  /** The strip of totals lies over the page: it takes the page's own colour. */
  readonly #entered = (): void => {
    this.renderRoot.querySelector<HTMLElement>(".strip")?.style.setProperty("--_page", paperOf(this));
  };

  // What is said of what is chosen

  readonly #details = globalThis.ResizeObserver && new ResizeObserver(() => this.#measured());
  #held: Element | null = null;

  #measured(): void {
    const { height } = this.#held?.getBoundingClientRect() ?? { height: 0 };
    const isThere = !!this.querySelector(":scope > [slot=detail]");
    const detail = isThere ? Math.ceil(height) : undefined;
    // Sizes are being told: what they change is drawn in the next frame.
    if (detail !== this.detail) requestAnimationFrame(() => (this.detail = detail));
  }

  protected override updated(changed: Map<PropertyKey, unknown>): void {
    super.updated(changed);
    const held = this.renderRoot.querySelector<HTMLElement>(".detail");
    if (held === this.#held) return;
    if (this.#held) this.#details?.unobserve(this.#held);
    this.#held = held;
    if (!held) return;
    held.style.setProperty("--_page", paperOf(this));
    this.#details?.observe(held);
  }

  /** The slot, in the room that the line makes for it. */
  #detail(opened: OpenedLine | undefined, width: number): TemplateResult {
    const box = opened && { x: 0, y: opened.y, width, height: 0 };
    return html`<div class=${box ? "detail paged inside" : "detail paged"} ${placed(box)}>
      <slot name="detail" @slotchange=${() => this.#measured()}></slot>
    </div>`;
  }

  // Drawing

  /** What stands below the counts: what is known, and the article's where it is another. */
  #notesOf(cell: SaidCell, speaker: Reporter): readonly string[] {
    const { article } = this.store ?? {};
    const published =
      !this.at && !this.draft && article && cell.stage ? spotOf(article, cell.stage.id)?.stage : undefined;
    if (!published || !cell.stage || published === cell.stage) return cell.notes;
    const [was, is] = [published, cell.stage].map((stage) => stageText(stage, "arrow", speaker.writer));
    return was === is || !was ? cell.notes : [fill(this.words.article, was), ...cell.notes];
  }

  #piece({ text, address, isArrow }: LinePiece, isCurrent: boolean): TemplateResult {
    if (isArrow) return html`<span class="arrow" aria-hidden="true">${text}</span>`;
    if (address === undefined || !this.#isLive) return html`<span>${text}</span>`;
    return html`<mw-teeth .of=${address} .build=${this.build} .passed=${!isCurrent}></mw-teeth>`;
  }

  #name(cell: SaidCell, isCurrent: boolean): TemplateResult {
    const { key, name, heard } = cell;
    if (this.#isStill)
      return html`<span class="name" part="name" aria-hidden="true">${name}</span><span class="heard">${heard}</span>`;
    return html`<button
      class="name"
      part="name"
      type="button"
      data-name=${key}
      tabindex=${isCurrent ? 0 : -1}
      aria-label=${heard}
      aria-current=${ifDefined(this.chosen === key ? "true" : undefined)}
      @click=${() => this.#choose(key)}
      @focus=${() => this.#choose(key)}
    >
      ${name}
    </button>`;
  }

  /** A mark stands on the shaft just before a thing. */
  #markBox({ x, y }: PlacedLine["cells"][number]): Box {
    const size = isCoarse() ? 44 : 24;
    const by = 13;
    const isUpright = this.#line?.form === "upright";
    const [left, top] = isUpright ? [x, y - by] : [x - by * this.along, y];
    return { x: left - size / 2, y: top - size / 2, width: size, height: size };
  }

  #lanes({ lanes, lanesName }: SaidCell): TemplateResult | typeof nothing {
    if (!lanes.length) return nothing;
    return html`<span class="lanes" role="group" aria-label=${lanesName}
      >${lanes.map((lane) =>
        !this.#isLive || !lane.changes
          ? html`<span class=${lane.stands ? "lane stands" : "lane"}>${laneText(lane)}</span>`
          : html`<button
              type="button"
              class=${lane.stands ? "lane stands" : "lane"}
              aria-pressed=${lane.stands ? "true" : "false"}
              @click=${() => this.#stand(lane)}
            >
              ${laneText(lane)}
            </button>`,
      )}</span
    >`;
  }

  #cell(
    cell: SaidCell,
    boxes: Map<string, PlacedLine["cells"][number]>,
    notes: ReadonlyMap<string, Box>,
    speaker: Reporter,
  ): TemplateResult {
    const { key, stage, name, heard, pieces, shaft, faults, before } = cell;
    const isCurrent = this.#current === key;
    const box = boxes.get(key);
    const isChosen = this.chosen === key;
    const small = this.#notesOf(cell, speaker);
    const named = (): unknown =>
      guard([key, name, heard, isCurrent, isChosen, this.#isStill], () => this.#name(cell, isCurrent));
    const mark = this.open && !this.#isStill && before && box ? this.#markBox(box) : undefined;
    return html`<li class=${isChosen ? "cell chosen" : "cell"} data-key=${key}>
      ${
        mark
          ? html`<button
              type="button"
              class="mark"
              tabindex=${isCurrent ? 0 : -1}
              aria-label=${before!.name}
              @click=${() => this.#letIn(cell)}
              ${placed(mark)}
            ></button>`
          : nothing
      }
      ${stage ? html`<span class="head" ${placed(box?.head)}>${named()}</span>` : nothing}
      <span class="foot" ${placed(box?.foot)}>
        ${!stage && name ? named() : nothing}
        ${guard([pieces, isCurrent, this.#isStill, this.#isLive, this.build], () => (pieces.length ? html`<span class="counts" aria-hidden=${this.#isStill ? "true" : nothing}>${pieces.map((piece) => this.#piece(piece, isCurrent))}</span>` : nothing))}
        ${this.#lanes(cell)}
        ${guard([small, !stage], () => small.map((note) => html`<span class="note" aria-hidden=${stage ? nothing : "true"}>${note}</span>`))}
        ${faults.map((fault) => html`<span class="note fault">${fault}</span>`)}
      </span>
      ${
        shaft
          ? html`<span class="shaft" ?hidden=${!notes.has(key)} ${placed(notes.get(key))}
              ><span aria-hidden="true">${shaft.text}</span><span class="heard">${shaft.heard}</span></span
            >`
          : nothing
      }
    </li>`;
  }

  #strand(strand: SaidStrand, line: PlacedLine, speaker: Reporter): TemplateResult {
    const boxes = new Map(line.cells.map((cell) => [cell.key, cell]));
    const notes = new Map(
      line.shafts.flatMap(({ after, note }) => (after !== undefined && note ? [[after, note] as const] : [])),
    );
    const inner = (one: SaidStrand): TemplateResult => {
      const { cells, feeds, total } = one;
      return html`${cells.map((cell) => this.#cell(cell, boxes, notes, speaker))}
      ${feeds.map(
        (fed) =>
          html`<li class="strand">
            ${this.#label(fed, line)}
            <ol role="list" aria-label=${fed.label}>
              ${inner(fed)}
            </ol>
          </li>`,
      )}
      ${total ? this.#total(total, line) : nothing}`;
    };
    return inner(strand);
  }

  #label({ id, label }: SaidStrand, line: PlacedLine): TemplateResult | typeof nothing {
    const box = line.labels.find(({ strand }) => strand === id);
    return box ? html`<span class="label" aria-hidden="true" ${placed(box)}>${label}</span>` : nothing;
  }

  #total(total: NonNullable<SaidStrand["total"]>, line: PlacedLine): TemplateResult {
    const { output, standing, heard } = total;
    const [label, text, verdict] = totalLines(total);
    const box = line.totals.find((one) => one.output === output);
    const isOff = standing === "below" || standing === "above";
    return html`<li class="total" part="total" ${placed(box)}>
      <span class="heard">${heard}</span>
      <span aria-hidden="true"
        ><span class="name">${label}</span
        ><b class=${total.isWaiting ? "waiting" : nothing}>${text}</b
        >${verdict ? html`<span class=${isOff ? "note fault" : "note"}>${verdict}</span>` : nothing}</span
      >
    </li>`;
  }

  /** The totals, in sight while somebody works on a line that is longer than the screen. */
  #strip({ totals }: SaidLine): TemplateResult {
    return html`<div class="strip paged" aria-hidden="true">
      <p>${[...totals.values()].map(({ label, text }) => html`<span>${label} <b>${text}</b></span> `)}</p>
    </div>`;
  }

  /** Whose values these are, for paper. */
  #whose(): string {
    return this.draft ? "" : whoseValues(this.store!, this.locale, this.holder?.isOwn, this.at);
  }

  #scaleText({ scale, isGuessed, isToScale }: PlacedLine): string {
    const { line } = reportWordsFor(this.locale);
    const life = 96 / 25.4 / scale;
    const number = twoDigits(this.locale).format(Math.max(life, 1 / life));
    const one = writeCount(1, this.locale);
    return [
      fill(line.scale, life < 1 ? `${number}\u2009:\u2009${one}` : `${one}\u2009:\u2009${number}`),
      ...(isGuessed ? [line.guessed] : []),
      ...(isToScale ? [] : [line.notToScale]),
    ]
      .map((text) => text.replace(/\.$/, ""))
      .join(" · ");
  }

  /** Who says it: of a draft somebody who has read what there is to read. */
  #speaking(): { readonly speaker: Reporter; readonly broken?: ReadonlyMap<string, string> } | undefined {
    if (!this.draft) {
      const speaker = reporting(this.speaker(this.at));
      return speaker && { speaker };
    }
    const mended = mendedDraft(this.draft);
    if (!mended) return undefined;
    const { locale, figureWords: words } = this;
    const reports = reportWordsFor(locale);
    return {
      speaker: speakerOf({ evaluation: evaluate(mended.build), locale, words, reports, figures }),
      broken: mended.broken,
    };
  }

  protected override render(): TemplateResult {
    const { speaker, broken } = this.#speaking() ?? {};
    const told = (): SaidLine | undefined => speaker && sayDriveLine(speaker, broken);
    const said = this.draft ? told() : this.says(told, this.at);
    this.#said = said;
    if (!said || !speaker) return this.fallback(false);
    const { width } = this;
    if (!width)
      return html`<div class="root" part="root"></div>
        ${this.fallback()}`;
    const sizes = sizesFor(this.em, isCoarse() && !this.#isStill);
    const plain = placeDriveLine(speaker.evaluation, {
      width,
      lettering: letteringFor(said, sizes, this.#isStill, (cell) => this.#notesOf(cell, speaker)),
      isUpright: width < narrow,
      isRightToLeft: this.along < 0,
      broken: new Set(broken?.keys()),
    });
    const opened =
      plain.form === "upright" && this.detail !== undefined && !onPaper()
        ? openedBeneath(plain, this.chosen ?? "", this.detail)
        : undefined;
    const line = opened?.line ?? plain;
    this.#line = line;
    const now: Drawn = new Map();
    const picture = drawLine(line, said, this.#drawn, now, this.chosen ?? undefined, guard);
    this.#drawn = now;
    const [first, ...others] = said.strands;
    return html`<div class="root ${line.form}" part="root">
        ${this.whose(this.at)} ${line.form === "upright" && !this.#isStill ? this.#strip(said) : nothing}
        <div class="sheet" ${placed({ x: 0, y: 0, width, height: line.height })}>
          <svg
            part="drawing"
            aria-hidden="true"
            width=${width}
            height=${line.height}
            viewBox="0 0 ${width} ${line.height}"
          >
            ${picture}
          </svg>
          <ol role="list" part="list" aria-label=${said.name} @keydown=${this.#pressed} @focusin=${this.#entered}>
            ${
              others.length
                ? said.strands.map(
                    (one) =>
                      html`<li class="strand">
                        ${this.#label(one, line)}
                        <ol role="list" aria-label=${one.label || said.name}>
                          ${this.#strand(one, line, speaker)}
                        </ol>
                      </li>`,
                  )
                : this.#strand(first!, line, speaker)
            }
          </ol>
          ${opened ? this.#detail(opened, width) : nothing}
        </div>
        ${said.faults.map((fault) => html`<p class="fault">${fault}</p>`)}
        ${this.message === undefined ? nothing : html`<p class="fault" role="note">${this.message()}</p>`}
        <p class="scale" part="scale">${this.#scaleText(line)}</p>
        ${opened ? nothing : this.#detail(undefined, width)}
        <p class="scale paper">${[said.origin, this.#whose()].filter(Boolean).join(" · ")}</p>
      </div>
      ${this.fallback()}`;
  }
}
