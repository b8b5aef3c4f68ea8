import { html, nothing, type TemplateResult } from "lit/html.js";
import { drawnLength, moneyText, pairText, partName, placeName, type Reporter } from "@meshwright/calc/article";
import type { Evaluation } from "@meshwright/calc/evaluate";
import { valueAt, type Build } from "@meshwright/calc/drivetrain";
import type { ReportWords } from "@meshwright/calc/languages";
import { rangesOf } from "@meshwright/calc/fit";
import { canBeHad, needsOf } from "@meshwright/calc/parts";
import { Writer } from "@meshwright/calc/report";
import { type Among, type FoundPair, type NotAsked, type Order, takenIn, takePair } from "@meshwright/calc/search";
import { rational, type Bounded, type Rounding } from "@meshwright/calc/exact";
import { Picture, announce, block, standingTexts, type Told } from "../../shared/drawn/index.js";
import { properties } from "../../shared/element/index.js";
import { fill, fillCount, reportWordsFor } from "../../shared/words/index.js";
import { reporting, tables, toolWordsFor, type ToolWords, unitControl } from "../../shared/tools/index.js";
import { drawn, listedFrom, type Listed } from "./listed.js";
import { askFor, type Asked } from "./question.js";
import { Search, type Results } from "./search.js";
import { styles } from "./styles.js";
import { windowOf } from "./window.js";

/** How many pairs and how many near misses are shown at first, and how many more on request. */
const [pairsAtFirst, missesAtFirst, more] = [8, 3, 12];
const amongAll = { all: "amongAll", had: "amongHad", owned: "amongOwned", counts: "amongCounts" } as const;
type Sort = Order | "closest";

/**
 * Which gears that can be had bring the total into the range, mesh, and fit the mount: as a list, and as a window of total
 * against centre distance with the range and the mount drawn in it. Near misses stay, with their reasons. Choosing a pair
 * makes it the reader's own.
 *
 * @attr of - the stage of the pair, set or planetary set; the first one with a mount where not said
 * @fires {CustomEvent<ChangeSet | Change>} mw-change - the pair that was taken, or the range that was changed
 * @csspart root - all that it draws
 * @csspart question - the question
 * @csspart window - the picture
 * @csspart table - the list
 */
export class MwPairFinder extends Picture {
  static override readonly tag = "mw-pair-finder";
  static override styles = [properties, block, tables, styles];
  static override properties = {
    of: {},
    among: { state: true },
    adapters: { state: true },
    sort: { state: true },
    results: { state: true },
    pairs: { state: true },
    misses: { state: true },
    stopped: { state: true },
    message: { state: true },
  };

  declare of: string | null;
  /** What was chosen; none: what the build lists, or any counts where it lists nothing. */
  declare private among: Among | undefined;
  declare private adapters: boolean;
  declare private sort: Sort;
  declare private results: Results | undefined;
  declare private pairs: number;
  declare private misses: number;
  declare private stopped: boolean;
  declare private message: Told | undefined;

  #asked: Asked | undefined;
  #notAsked: NotAsked | undefined;
  #key = "";
  #searching: AbortController | undefined;
  #search: Search | undefined;
  #listed: readonly Listed[] = [];
  #listedFor: readonly unknown[] = [];

  constructor() {
    super();
    this.adapters = true;
    this.sort = "nearest";
    this.#few();
    this.stopped = false;
  }

  #few(): void {
    [this.pairs, this.misses] = [pairsAtFirst, missesAtFirst];
  }

  protected get shop(): ToolWords {
    return toolWordsFor(this.locale);
  }

  protected get reports(): ReportWords {
    return reportWordsFor(this.locale);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#searching?.abort();
    this.#key = "";
  }

  protected override willUpdate(): void {
    this.#ask();
  }

  #amongOf({ parts }: Build): Among {
    const isListed = parts?.some(({ teeth, driver }) => teeth !== undefined || driver !== undefined);
    return this.among ?? (isListed ? "had" : "counts");
  }

  // The search

  /** Begins another search where the question is another. Which pair stands in the build is not part of the question. */
  #ask(): void {
    const evaluation = this.evaluation();
    if (!evaluation || !this.isConnected) return;
    const { sort, adapters } = this;
    const { build } = evaluation;
    const among = this.#amongOf(build);
    const order = sort === "closest" ? "nearest" : sort;
    const before = this.evaluation("article")?.build;
    const answer = askFor(evaluation, this.of, { among, adapters, order, ...(before && { before }) });
    const asked = typeof answer === "string" ? undefined : answer;
    this.#notAsked = typeof answer === "string" ? answer : undefined;
    const { stock: _, signal: _signal, ...question } = asked?.question ?? ({} as Partial<Asked["question"]>);
    // What other places hold decides what is free.
    const held = [build, ...(before ? [before] : [])].map((one) =>
      needsOf(one).flatMap(({ stage, part, pieces }) =>
        part && stage !== asked?.stage.id ? [stage, part.id, pieces] : [],
      ),
    );
    const key = JSON.stringify([asked?.stage.id, question, held]);
    if (key === this.#key) return;
    // What was found stays until there is something else: who has just taken a pair keeps it under the hand.
    if (asked?.stage.id !== this.#asked?.stage.id) {
      this.results = undefined;
      this.#few();
    }
    this.#key = key;
    this.#asked = asked;
    this.#searching?.abort();
    this.stopped = false;
    if (!asked) return;
    const { signal } = (this.#searching = new AbortController());
    this.#search = new Search(asked, signal, Math.max(this.misses, more), (results) => {
      const { results: old } = this;
      this.results = results.done || !old?.found.length ? results : { ...old, progress: results.progress, done: false };
    });
    void this.#search.go();
  }

  readonly #stop = (): void => {
    this.#searching?.abort();
    this.stopped = true;
  };

  #outcome(): string {
    const count = this.results?.found.length ?? 0;
    const { found, foundUnmounted, noneFound } = this.reports;
    return count ? fillCount(this.#asked?.isUnmounted ? foundUnmounted : found, count, this.locale) : noneFound;
  }

  get #writer(): Writer {
    const rounding = this.current!.rounding as Rounding | undefined;
    return new Writer({ rounding, locale: this.locale, words: this.figureWords });
  }

  /** Everything found and nearly found, as sentences: made once for each set of results and language. */
  #list(): readonly Listed[] {
    const { results, sort } = this;
    const asked = this.#asked;
    const evaluation = this.evaluation();
    if (!results || !asked || !evaluation) return [];
    const given = [results, this.reports, this.figureWords, sort, this.current!.lengths];
    if (given.some((one, n) => one !== this.#listedFor[n])) {
      this.#listedFor = given;
      const speaker = reporting(this.speaker())!;
      const length = (measure: Bounded) => drawnLength(speaker, measure);
      const read = (hit: boolean) => (one: Results["found"][number]) => listedFrom(one, hit, asked, speaker, length);
      const distance = (one: Listed) => drawn(one) ?? Infinity;
      const hits = results.found.map(read(true));
      if (sort === "closest") hits.sort((a, b) => distance(a) - distance(b));
      this.#listed = [...hits, ...results.missed.map(read(false))];
    }
    return this.#listed;
  }

  // What the reader does

  #take(pair: FoundPair): void {
    const { id } = this.#asked!.stage;
    const article = this.evaluation("article")!.build;
    // Back to what the author has: also to what is fitted there, or not said to be.
    const back = this.#isPublished(pair) && [{ set: `${id}.fitted`, to: valueAt(article, `${id}.fitted`) ?? null }];
    const changes = [...takePair(this.current!, id, pair), ...(back || [])];
    const [refusal] = this.change(Object.fromEntries(changes.map(({ set, to }) => [set, to])));
    this.message = this.told(refusal);
    if (this.message) return announce(this.renderRoot as ShadowRoot, this.message);
    announce(this.renderRoot as ShadowRoot, () => standingTexts(this.store!, this.locale).join(". "));
  }

  /** The range is the build's: changing it here changes it everywhere. */
  readonly #ranged = (event: Event): void => {
    event.stopPropagation();
    const input = event.target as HTMLInputElement;
    const text = input.value.trim().normalize("NFKC").replace(",", ".");
    const findings = /^\d{1,9}(\.\d{1,9})?$/.test(text)
      ? this.change({ [`target.${input.name}`]: Number(text) })
      : undefined;
    const kept = String(this.current!.target![input.name as "from" | "to"]);
    const refusal = findings ? this.told(findings[0]) : () => this.shop.numberOnly;
    this.message = refusal && (() => fill(this.words.kept, refusal(), kept));
    if (this.message) input.value = kept;
  };

  readonly #chosen = (event: Event): void => {
    event.stopPropagation();
    const control = event.target as HTMLInputElement & HTMLSelectElement;
    if (control.name === "among") this.among = control.value as Among;
    else if (control.name === "sort") this.sort = control.value as Sort;
    else this.adapters = control.checked;
    this.#few();
  };

  readonly #morePairs = (): void => {
    this.pairs += more;
  };

  readonly #moreMisses = (): void => {
    this.misses += more;
    if (this.results!.missed.length < this.misses) void this.#search?.further(more);
  };

  // Drawing

  /** Whether the author's build stands as taking a pair would leave it: then nothing is to be had for it. */
  get #isPublished(): (one: FoundPair) => boolean {
    const article = this.evaluation("article")?.build;
    return article && this.#asked ? takenIn(article, this.#asked.stage.id) : () => false;
  }

  /** Whether the build stands as taking a pair would leave it. */
  get #isChosen(): (listed: Listed) => boolean {
    const isTaken = takenIn(this.current!, this.#asked!.stage.id);
    return ({ one, meshes }) => meshes && isTaken(one);
  }

  #question(): TemplateResult {
    const { shop } = this;
    const target = this.current!.target!;
    const [before, between, after] = shop.question.split(/\{[01]\}/);
    const among = this.#amongOf(this.current!);
    const field = (name: "from" | "to", label: string) =>
      html`<input
        type="text"
        inputmode="decimal"
        name=${name}
        aria-label=${label}
        autocomplete="off"
        .value=${String(target[name])}
        @change=${this.#ranged}
        @input=${(event: Event) => event.stopPropagation()}
      />`;
    return html`<p class="question" part="question">
        ${before}${field("from", shop.rangeFrom)}${between}${field("to", shop.rangeTo)}${after}
        ${this.message ? html`<span class="why" role="alert">${this.message()}</span>` : nothing}
      </p>
      <div class="controls" @change=${this.#chosen}>
        <label
          >${shop.among}
          <select name="among">
            ${(Object.keys(amongAll) as Among[]).map((one) => html`<option value=${one} ?selected=${one === among}>${shop[amongAll[one]]}</option>`)}
          </select></label
        >
        <label
          >${shop.sortBy}
          <select name="sort">
            ${(Object.keys(shop.sorts) as Sort[]).map((one) => html`<option value=${one} ?selected=${one === this.sort}>${shop.sorts[one]}</option>`)}
          </select></label
        >
        <label><input type="checkbox" name="adapters" .checked=${this.adapters} />${shop.sleeves}</label>
      </div>`;
  }

  #window(listed: readonly Listed[]): TemplateResult | typeof nothing {
    const { width } = this;
    const { build, outputs } = this.evaluation()!;
    const asked = this.#asked!;
    const target = build.target!;
    const speaker = reporting(this.speaker())!;
    const { mount = {}, pitch = {}, internal } = asked.question;
    const ranges = rangesOf(mount, { ...pitch, ...(internal && { internal }) });
    const ends = [ranges[0]?.from, ranges.at(-1)?.to];
    const shown = (end: Bounded | undefined) => (end === undefined ? undefined : end.low.toNumber());
    const texts = (["from", "to"] as const).map((end, n) => {
      const at = ends[n];
      return at === undefined ? "" : drawnLength(speaker, at, mount.holes ? undefined : end);
    });
    // What stands first in every row.
    const output = 0;
    const { label } = outputs.find(({ id }) => id === asked.question.outputs[output]!.id)!;
    return windowOf({
      listed,
      output,
      range: [rational(target.from).toNumber(), rational(target.to).toNumber()],
      rangeTexts: [String(target.from), String(target.to)],
      mount: [shown(ends[0]), shown(ends[1])],
      mountTexts: [texts[0]!, texts[1]!],
      title: fill(this.reports.picture, this.#outcome()),
      axes: [this.reports.centres, fill(this.reports.totals, label)],
      isChosen: this.#isChosen,
      teethOf: ({ one: { counts } }) => pairText(speaker, asked.stage.id, counts, "arrow"),
      nameOf: (listed) => {
        const teeth = pairText(speaker, asked.stage.id, listed.one.counts, "heard");
        const press = this.#isChosen(listed) ? this.shop.chosen : this.shop.choose;
        const figures = [listed.totals[output]!.text, ...(listed.centre ? [drawnLength(speaker, listed.centre)] : [])];
        return `${press}: ${teeth}; ${figures.join(", ")}`;
      },
      take: (listed) => void (this.#isChosen(listed) || this.#take(listed.one)),
      width,
      em: this.em * 0.82,
      x: (distance) => this.x(distance),
    });
  }

  #price({ one }: Listed): string {
    if (this.#isPublished(one)) return this.reports.stays;
    if (!one.parts.length) return "–";
    const { sums, unpriced, buy } = one.pay;
    if (!buy.length) return this.reports.ownedAlready;
    if (unpriced || sums.length > 1) return this.reports.noPrice;
    return moneyText(sums[0]!.amount, sums[0]!.currency, this.locale);
  }

  #row(one: Listed, speaker: Reporter, isChosen: (one: Listed) => boolean): TemplateResult {
    const { shop } = this;
    const { counts, parts } = one.one;
    const { id } = this.#asked!.stage;
    const drive = (form: "arrow" | "heard") => pairText(speaker, id, counts, form);
    const chosen = isChosen(one);
    const gone = parts.filter((part) => canBeHad(part) === false);
    const why = [...one.reasons, ...gone.map((part) => `${partName(part)}: ${this.reports.notToBeHad}.`)];
    return html`<tbody class=${one.hit ? "hit" : "miss"}>
      <tr>
        <th scope="row" aria-label=${drive("heard")}>${drive("arrow")}</th>
        <td>${one.totals.map(({ text }) => text).join(" · ")}</td>
        <td>${one.centre === undefined ? "–" : drawnLength(speaker, one.centre)}</td>
        <td class="wide">${this.#price(one)}</td>
        <td>
          ${
            // What was taken keeps its button: the focus would be lost with it.
            one.meshes
              ? html`<button
                  type="button"
                  aria-disabled=${chosen ? "true" : nothing}
                  aria-label="${chosen ? shop.chosen : shop.choose}: ${drive("heard")}"
                  @click=${() => chosen || this.#take(one.one)}
                >
                  ${chosen ? shop.chosen : shop.choose}
                </button>`
              : nothing
          }
        </td>
      </tr>
      <tr>
        <td colspan="5" class="words">
          ${parts.length ? html`<span class="quiet">${parts.map(partName).join(" + ")}.</span>` : nothing}
          <span class="narrow quiet">${this.reports.price}: ${this.#price(one)}.</span>
          ${why.map((sentence) => html`<span class="why">${sentence} </span>`)}
        </td>
      </tr>
    </tbody>`;
  }

  #table(listed: readonly Listed[]): TemplateResult {
    const { shop } = this;
    const speaker = reporting(this.speaker())!;
    const isChosen = this.#isChosen;
    const hits = listed.filter(({ hit }) => hit);
    const misses = listed.filter(({ hit }) => !hit);
    const names = this.#asked!.question.outputs.map(({ id }) => this.evaluation()!.output(id)!.label);
    return html`<div class="scroll" tabindex="0" role="region" aria-label=${names.join(", ")}>
        <table part="table" class="cards">
          <thead>
            <tr>
              <th scope="col">${this.figureWords.gears}</th>
              <th scope="col">${names.join(" · ")}</th>
              <th scope="col">${this.reports.centres}</th>
              <th scope="col" class="wide">${this.reports.price}</th>
              <th scope="col"><span class="heard">${shop.choose}</span></th>
            </tr>
          </thead>
          ${hits.slice(0, this.pairs).map((one) => this.#row(one, speaker, isChosen))}
          ${
            misses.length
              ? html`<tbody>
                  <tr>
                    <th scope="rowgroup" colspan="5" class="quiet">${this.reports.missed}</th>
                  </tr>
                </tbody>`
              : nothing
          }
          ${misses.filter((one, n) => n < this.misses || isChosen(one)).map((one) => this.#row(one, speaker, isChosen))}
        </table>
      </div>
      ${
        this.results?.done
          ? html`<p class="controls">
              ${hits.length > this.pairs ? html`<button type="button" class="more-pairs" @click=${this.#morePairs}>${fill(shop.morePairs, hits.length - this.pairs)}</button>` : nothing}
              ${misses.length > this.misses || this.results.more ? html`<button type="button" class="more-misses" @click=${this.#moreMisses}>${shop.moreMisses}</button>` : nothing}
            </p>`
          : nothing
      }`;
  }

  #state(): TemplateResult {
    const { shop, results } = this;
    if (this.stopped) return html`<p>${shop.stopped}</p>`;
    if (results?.fault) {
      const { code, message } = results.fault;
      return html`<p role="status">${code === "too-many-choices" ? this.reports.tooMany : message}</p>`;
    }
    if (results?.done) return html`<p role="status">${this.#outcome()}</p>`;
    const share = this.#writer.number(rational(Math.floor((results?.progress ?? 0) * 100)).over(100), {
      percent: true,
      digits: 0,
    });
    return html`<p>
      ${fill(shop.looking, share)} <button type="button" name="stop" @click=${this.#stop}>${shop.stop}</button>
    </p>`;
  }

  /** Why nothing is looked for, in a sentence; nothing where something is, or where the author asks for what there is not. */
  #why(evaluation: Evaluation): string | undefined {
    const { reports } = this;
    const why = this.#notAsked;
    if (!why || why === "no-stage") return undefined;
    if (!evaluation.build.target) return reports.noTarget;
    const text = {
      "no-range": reports.noTargetFor,
      "not-driven": reports.notDriven,
      "not-a-pair": reports.notPair,
      "open-differential": reports.openSplit,
    }[why];
    return fill(
      text,
      placeName({ evaluation, words: this.figureWords }, this.of ?? evaluation.build.mounts![0]!.stage),
    );
  }

  protected override render(): TemplateResult {
    const evaluation = this.evaluation();
    if (!evaluation) return this.fallback(false);
    const asked = this.#asked;
    const why = this.#why(evaluation);
    if (!asked && !why) return this.fallback(false);
    const { drivers, drivens, sets } = asked?.question ?? {};
    const hasParts = !!(drivers?.length && drivens?.length) || !!sets?.length;
    const listed = this.#list();
    return html`<div class="root" part="root">
        ${this.whose()}
        ${
          asked
            ? html`${this.#question()} ${hasParts ? nothing : html`<p>${this.reports.noParts}</p>`}
              ${asked.unsure ? html`<p class="note">${this.reports.unsureRange}</p>` : nothing} ${this.#state()}
              ${this.width ? this.#window(listed) : nothing}
              ${listed.length ? html`<p class="note">${this.reports.legend}</p>` : nothing}
              ${listed.length ? this.#table(listed) : nothing}
              ${
                listed.some(({ centre }) => centre)
                  ? html`<p class="note">
                      ${unitControl(this.store!, this.locale, (request) => this.change(request))}
                    </p>`
                  : nothing
              }`
            : html`<p>${why}</p>`
        }
      </div>
      ${this.fallback()}`;
  }
}
