import { html, nothing, type TemplateResult } from "lit/html.js";
import {
  leadFrom,
  leadsFrom,
  placeName,
  said,
  sayTrain,
  stagesToChoose,
  type Reporter,
} from "@meshwright/calc/article";
import { rational, type Rounding } from "@meshwright/calc/exact";
import { valueAt } from "@meshwright/calc/drivetrain";
import { needsOf } from "@meshwright/calc/parts";
import { Writer } from "@meshwright/calc/report";
import {
  askTrains,
  takeTrain,
  type FoundTrain,
  type NotAsked,
  type TrainAsking,
  type TrainQuestion,
} from "@meshwright/calc/search";
import { announce, block, standingTexts, type Told } from "../../shared/drawn/index.js";
import { properties, css } from "../../shared/element/index.js";
import { fill } from "../../shared/words/index.js";
import { scrolling, tables, ToolElement } from "../../shared/tools/index.js";
import { Search, type Results } from "./search.js";

/** How many are shown at first, and how many more on request. */
const few = 8;

/**
 * Several stages at once, and tyres: which of the build's parts bring every output into its range, one axle to the lead that
 * is wanted, and fit, all together. Nothing is looked for until the reader asks for it; then it says how far it is, and can
 * be stopped. Taking one puts all of its parts in place as one edit.
 *
 * @attr of - ids of the stages to choose for, with blanks between; all pairs and sets where not said
 * @attr wheels - ids of outputs whose tyres are chosen too
 * @attr lead - how much farther the one axle that the build compares may roll than the other: "0% to 3%"
 * @fires {CustomEvent<ChangeSet | Change>} mw-change - the train that was taken
 * @csspart root - all that it draws
 * @csspart table - the list
 */
export class MwTrainFinder extends ToolElement {
  static override readonly tag = "mw-train-finder";
  static override styles = [
    properties,
    block,
    tables,
    css`
      .asked {
        display: flex;
        flex-wrap: wrap;
        gap: 0.2em 1.2em;
        margin: 0 0 0.5em;
      }
      label {
        display: inline-flex;
        align-items: baseline;
        gap: 0.4em;
        min-height: 24px;
      }
      input[type="checkbox"] {
        accent-color: var(--_accent);
        min-width: 1.1em;
        min-height: 1.1em;
        align-self: center;
      }
      input[type="text"] {
        font: inherit;
        color: inherit;
        background: none;
        border: 0;
        border-bottom: 1.5px dotted var(--_accent);
        border-radius: 0;
        padding: 0.1em 0;
        width: 4em;
        min-height: 24px;
      }
      tbody tr:first-child > * {
        border-bottom: 0;
        padding-bottom: 0;
      }
      tbody tr:last-child > * {
        padding: 0 0 0.34em;
        font-size: 0.9em;
      }
      button[aria-disabled] {
        color: var(--_second);
        text-decoration: none;
        cursor: default;
      }
      @media print {
        .asked {
          display: none;
        }
      }
    `,
  ];
  static override properties = {
    of: {},
    wheels: {},
    lead: {},
    results: { state: true },
    stopped: { state: true },
    message: { state: true },
    chosen: { state: true },
    leads: { state: true },
    shown: { state: true },
  };

  declare of: string | null;
  declare wheels: string | null;
  declare lead: string | null;
  declare private results: Results | undefined;
  declare private stopped: boolean;
  declare private message: Told | undefined;
  /** What the reader has put into the choice, or taken out of it. */
  declare private chosen: Readonly<Record<string, boolean>>;
  /** The leads that the reader has asked for. */
  declare private leads: Readonly<Partial<Record<"from" | "to", string>>>;
  declare private shown: number;

  #search: Search | undefined;
  #searching: AbortController | undefined;
  #key = "";

  constructor() {
    super();
    this.stopped = false;
    this.chosen = {};
    this.leads = {};
    this.shown = few;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#searching?.abort();
  }

  #words(name: "of" | "wheels"): readonly string[] {
    return (said({ [name]: this[name] }, name) ?? "").split(/[\s,]+/).filter(Boolean);
  }

  /** The stages and the outputs' tyres that may be chosen, and whether they are to be. */
  #places(): { readonly stages: readonly string[]; readonly tyres: readonly string[]; isChosen(id: string): boolean } {
    const evaluation = this.evaluation()!;
    const stages = stagesToChoose(evaluation);
    const hasTyres = !!evaluation.build.parts?.some(({ is, diameter }) => is === "wheel" && diameter !== undefined);
    const tyres = hasTyres ? evaluation.outputs.map(({ id }) => id) : [];
    const [of, wheels] = [this.#words("of"), this.#words("wheels")];
    const first = (id: string) => (stages.includes(id) ? !of.length || of.includes(id) : wheels.includes(id));
    return { stages, tyres, isChosen: (id) => this.chosen[id] ?? first(id) };
  }

  /** The ends of the lead that is wanted, as texts; empty where none is. */
  #leads(): readonly [string, string] {
    const [from = "", to = ""] = this.lead && leadsFrom(this.lead) ? this.lead.split(/\s+to\s+/) : [];
    return [this.leads.from ?? from, this.leads.to ?? to];
  }

  readonly #set = (event: Event): void => {
    event.stopPropagation();
    const { name, type, checked, value } = event.target as HTMLInputElement;
    if (type === "checkbox") this.chosen = { ...this.chosen, [name]: checked };
    else if (!value.trim() || leadFrom(value)) {
      this.leads = { ...this.leads, [name]: value.trim() };
      this.message = undefined;
    } else {
      this.message = () => fill(this.reports.counts.example, "3%");
      (event.target as HTMLInputElement).value = this.#leads()[name === "from" ? 0 : 1];
    }
  };

  #whyNot(why: NotAsked, stages: readonly string[]): string {
    const { reports } = this;
    const text = {
      "no-stage": reports.notPair,
      "no-range": reports.noTargetFor,
      "not-driven": reports.notDriven,
      "not-a-pair": reports.notPair,
      "open-differential": reports.openSplit,
    }[why];
    return fill(text, stages.map(this.#called).join(", "));
  }

  /** What a stage or an axle is called. */
  readonly #called = (id: string): string => placeName({ evaluation: this.evaluation()!, words: this.figureWords }, id);

  /** What is asked now; or why nothing can be. */
  #question(signal: AbortSignal): { readonly stages: readonly string[]; readonly question: TrainQuestion | string } {
    const evaluation = this.evaluation()!;
    const { stages: all, tyres, isChosen } = this.#places();
    const stages = all.filter(isChosen);
    const [from, to] = this.#leads().map(leadFrom);
    const pair = evaluation.compare();
    const before = this.evaluation("article")?.build;
    const asking: TrainAsking = {
      wheels: tyres.filter(isChosen),
      signal,
      ...(before && { before }),
      ...(pair &&
        (from ?? to) && {
          compare: { of: pair.of.id, with: pair.with.id, from: from ?? rational("-99/100"), to: to ?? rational(100) },
        }),
    };
    const question = evaluation.build.target ? askTrains(evaluation, stages, asking) : this.reports.noTarget;
    const isWhy = typeof question === "string" && evaluation.build.target;
    return { stages, question: isWhy ? this.#whyNot(question as NotAsked, stages) : question };
  }

  /** What decides what can be found, but for what stands in the places that are chosen. */
  #keyOf(stages: readonly string[], question: TrainQuestion | string): string {
    if (typeof question === "string") return question;
    const { outputs, compare, stages: choices } = question;
    const held = needsOf(this.current!).flatMap(({ stage, part, pieces }) =>
      part && !stages.includes(stage) && !outputs.some(({ id, wheels }) => id === stage && wheels)
        ? [[stage, part.id, pieces]]
        : [],
    );
    return JSON.stringify([
      stages,
      outputs,
      compare,
      choices.map(({ drivers, drivens, sets, adapters }) => [drivers, drivens, sets, adapters]),
      held,
    ]);
  }

  /** What was found for a build that stands otherwise by now is not told any more. */
  protected override willUpdate(): void {
    if (!this.#search || !this.evaluation()) return;
    const { stages, question } = this.#question(new AbortController().signal);
    if (this.#keyOf(stages, question) === this.#key) return;
    this.#searching?.abort();
    this.#search = undefined;
    this.results = undefined;
    this.stopped = false;
  }

  readonly #look = (): void => {
    this.#searching?.abort();
    const { signal } = (this.#searching = new AbortController());
    this.results = undefined;
    this.message = undefined;
    this.stopped = false;
    this.shown = few;
    const { stages, question } = this.#question(signal);
    this.#key = this.#keyOf(stages, question);
    if (typeof question === "string") {
      this.#search = undefined;
      this.message = () => question;
      return;
    }
    this.#search = new Search(question, stages, signal, (results) => {
      this.results = results;
    });
    void this.#search.until(few);
  };

  readonly #stop = (): void => {
    this.#searching?.abort();
    this.stopped = true;
  };

  readonly #more = (): void => {
    this.shown += few;
    void this.#search!.until(this.shown);
  };

  #settings(train: FoundTrain): readonly { readonly set: string; readonly to: unknown }[] {
    const { question, stages } = this.#search!;
    return takeTrain(
      this.current!,
      stages,
      question.outputs.map(({ id }) => id),
      train,
    );
  }

  #stands(train: FoundTrain): boolean {
    return this.#settings(train).every(
      ({ set, to }) => JSON.stringify(valueAt(this.current!, set) ?? null) === JSON.stringify(to),
    );
  }

  #take(train: FoundTrain): void {
    const [refusal] = this.change(Object.fromEntries(this.#settings(train).map(({ set, to }) => [set, to])));
    this.message = this.told(refusal);
    announce(
      this.renderRoot as ShadowRoot,
      () => this.message?.() ?? standingTexts(this.store!, this.locale).join(". "),
    );
  }

  // Drawing

  #box(id: string, label: string, on: boolean): TemplateResult {
    return html`<label><input type="checkbox" name=${id} .checked=${on} />${label}</label>`;
  }

  #asked(): TemplateResult {
    const { trains } = this.shop;
    const evaluation = this.evaluation()!;
    const { stages, tyres, isChosen } = this.#places();
    const [from, to] = this.#leads();
    const pair = evaluation.compare();
    const field = (name: "from" | "to", label: string, value: string) =>
      html`<label>${label} <input type="text" name=${name} autocomplete="off" .value=${value} /></label>`;
    return html`<div @change=${this.#set} @input=${(event: Event) => event.stopPropagation()}>
      <div class="asked" role="group" aria-label=${trains.choose}>
        ${stages.map((id) => this.#box(id, this.#called(id), isChosen(id)))}
        ${tyres.map((id) => this.#box(id, fill(trains.tyres, this.#called(id)), isChosen(id)))}
      </div>
      <div class="asked">
        ${
          pair
            ? html`<span>${fill(this.figureWords.told, pair.of.label, pair.with.label)}</span>
                ${field("from", trains.leadFrom, from)} ${field("to", trains.leadTo, to)}`
            : nothing
        }
        <button type="button" class="look" @click=${this.#look}>${trains.look}</button>
      </div>
    </div>`;
  }

  #state(): TemplateResult | typeof nothing {
    const { results, shop } = this;
    if (this.message) return html`<p class="fault" role="alert">${this.message()}</p>`;
    if (this.stopped) return html`<p role="status">${shop.stopped}</p>`;
    if (!results) return nothing;
    const { fault, busy, found, count, whole, progress } = results;
    if (fault)
      return html`<p role="status">${fault.code === "too-many-choices" ? this.reports.tooMany : fault.message}</p>`;
    const writer = new Writer({
      rounding: this.current!.rounding as Rounding | undefined,
      locale: this.locale,
      words: this.figureWords,
    });
    if (busy) {
      const share = writer.number(rational(Math.floor(progress * 100)).over(100), { percent: true, digits: 0 });
      return html`<p>
        ${fill(shop.trains.looking, share)} <button type="button" name="stop" @click=${this.#stop}>${shop.stop}</button>
      </p>`;
    }
    const all = count ?? (whole ? found.length : undefined);
    if (all === 0) return html`<p role="status">${shop.trains.none}</p>`;
    return all === undefined ? nothing : html`<p role="status">${fill(shop.trains.found, writer.given(all))}</p>`;
  }

  #row(train: FoundTrain, speaker: Reporter): TemplateResult {
    const { question, stages } = this.#search!;
    const { picks, totals, lead, price, parts } = sayTrain(speaker, stages, question, train);
    const here = this.#stands(train);
    const text = here ? this.shop.chosen : this.shop.choose;
    return html`<tbody>
      <tr>
        <th scope="row" aria-label=${picks.map(([, , heard]) => heard).join(", ")}>
          ${picks.map(([, gears], n) => html`${n ? ", " : nothing}${gears}`)}
        </th>
        <td>${totals}</td>
        ${question.compare ? html`<td>${lead}</td>` : nothing}
        <td>${here ? this.reports.stays : price}</td>
        <td>
          <button
            type="button"
            aria-disabled=${here ? "true" : nothing}
            aria-label="${text}: ${picks.map(([, , heard]) => heard).join(", ")}"
            @click=${() => here || this.#take(train)}
          >
            ${text}
          </button>
        </td>
      </tr>
      <tr>
        <td colspan=${question.compare ? 5 : 4} class="words"><span class="quiet">${parts}.</span></td>
      </tr>
    </tbody>`;
  }

  #table(): TemplateResult | typeof nothing {
    const { results, reports, shop } = this;
    if (!results?.found.length || !this.#search) return nothing;
    const speaker = this.speaker()!;
    const { question } = this.#search;
    const names = question.outputs.map(({ id }) => this.#called(id)).join(" · ");
    const isMore = !this.stopped && !results.busy && (results.found.length > this.shown || !results.whole);
    return html`${scrolling(
      names,
      html`<table part="table">
        <thead>
          <tr>
            <th scope="col">${this.figureWords.gears}</th>
            <th scope="col">${names}</th>
            ${question.compare ? html`<th scope="col">${reports.counts.figures.lead}</th>` : nothing}
            <th scope="col">${reports.price}</th>
            <th scope="col"><span class="heard">${shop.choose}</span></th>
          </tr>
        </thead>
        ${results.found.slice(0, this.shown).map((train) => this.#row(train, speaker))}
      </table>`,
    )}
    ${isMore ? html`<p><button type="button" class="more" @click=${this.#more}>${shop.trains.more}</button></p>` : nothing}`;
  }

  protected override render(): TemplateResult {
    const evaluation = this.evaluation();
    if (!evaluation) return this.fallback(false);
    const { stages, tyres } = this.#places();
    const isAsked = this.#words("of").every((id) => stages.includes(id));
    const isWheels = this.#words("wheels").every((id) => evaluation.output(id));
    const isLead = this.lead === null || this.lead === undefined || !this.lead || leadsFrom(this.lead);
    if (!isAsked || !isWheels || !isLead || (!stages.length && !tyres.length)) return this.fallback(false);
    return html`<div class="root" part="root">${this.whose()} ${this.#asked()} ${this.#state()} ${this.#table()}</div>
      ${this.fallback()}`;
  }
}
