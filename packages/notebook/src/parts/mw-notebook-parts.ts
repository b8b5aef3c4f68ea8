import { css, html, nothing, type TemplateResult } from "lit";
import { partKinds, type Part } from "@meshwright/calc/drivetrain";
import {
  csvOf,
  partsFromSheet,
  readSheet,
  sheetKey,
  sheetOf,
  sheetWords,
  type Sheet,
  type SheetField,
  type SheetSettings,
} from "@meshwright/calc/parts";
import { type ComesBack, download, drives, NotebookPage, sheet } from "../frame/index.js";
import {
  addPart,
  assemblyText,
  dayText,
  fileName,
  noSheet,
  partsOf,
  putOn,
  shelve,
  thousandsFault,
  withoutPart,
  withPart,
  withPoint,
  type SheetMeaning,
} from "../model/index.js";
import { columnsView, questionsView } from "./sheet-view.js";

const shownAtFirst = 40;

/** What became of the parts of a sheet: "6 parts lie on the shelf: 2 new, 1 brought up to date, 3 as they were." */
function shelvedText({ added, updated, left }: Record<"added" | "updated" | "left", number>): string {
  const all = added + updated + left;
  const what = [
    ...(added ? [`${added} new`] : []),
    ...(updated ? [`${updated} brought up to date`] : []),
    ...(left ? [`${left} as ${left === 1 ? "it was" : "they were"}`] : []),
  ];
  return `${all} ${all === 1 ? "part lies" : "parts lie"} on the shelf: ${what.join(", ")}.`;
}

/** The shelf: a sheet of parts as it is, what it was understood as, and what lies there. */
export class MwNotebookParts extends NotebookPage implements ComesBack {
  static readonly tag = "mw-notebook-parts";
  static override styles = [
    sheet,
    css`
      td input.count {
        width: 2.6em;
      }
      .asked {
        border-inline-start: 2px solid var(--accent);
        padding-inline-start: 1em;
        margin-bottom: 1.2em;
      }
    `,
  ];
  static override properties = {
    reading: { state: true },
    settings: { state: true },
    filter: { state: true },
    shown: { state: true },
    said: { state: true },
    isPasting: { state: true },
  };

  declare private reading: Sheet | undefined;
  declare private settings: SheetSettings;
  declare private filter: string;
  declare private shown: number;
  declare private said: string | undefined;
  declare private isPasting: boolean;

  constructor() {
    super();
    this.settings = {};
    this.filter = "";
    this.shown = shownAtFirst;
    this.isPasting = false;
  }

  /** Takes in a sheet that was pasted, dropped or opened; without one, the place to paste it. */
  takeIn(source: string | ArrayBuffer): void {
    if (typeof source === "string" && !source.trim()) {
      this.isPasting = true;
      void this.focusOn("textarea");
      return;
    }
    this.reading = readSheet(source);
    const remembered = this.session.notebook.sheets?.[sheetKey(this.reading.rows)];
    this.settings = remembered ? { columns: remembered } : {};
    this.isPasting = false;
    this.said = undefined;
    void this.focusOn(".asked h3");
  }

  /** A sheet that is being read, with what was answered, or the place to paste one: what a tab that comes back has open again. */
  get leftOpen(): unknown {
    const { reading, settings, isPasting } = this;
    return reading ? { reading, settings } : isPasting ? { isPasting } : undefined;
  }

  async comeBack(left: unknown): Promise<void> {
    const { reading, settings, isPasting } = Object(left) as Partial<
      Record<"reading" | "settings" | "isPasting", unknown>
    >;
    this.isPasting = !!isPasting;
    try {
      const { rows } = reading as Sheet;
      partsFromSheet(rows, settings as SheetSettings);
      [this.reading, this.settings] = [reading as Sheet, settings as SheetSettings];
    } catch {
      // It is no sheet, or none any more.
    }
    await this.ready();
  }

  readonly #pasted = (event: Event): void => {
    const { value } = event.target as HTMLTextAreaElement;
    // Who types it has only begun: it is read when they say so.
    const isTyped = /^(insertText|insertLineBreak|insertComposition|delete)/.test(
      (event as InputEvent).inputType ?? "",
    );
    if (value.trim() && !isTyped) this.takeIn(value);
  };

  readonly #typedSheet = (): void => {
    const { value } = this.renderRoot.querySelector<HTMLTextAreaElement>("#paste")!;
    if (value.trim()) this.takeIn(value);
  };

  readonly #picked = async (event: Event): Promise<void> => {
    const [file] = (event.target as HTMLInputElement).files ?? [];
    if (!file) return;
    // What is far too large is not even read.
    const bytes = file.size > 2e7 ? new Uint8Array() : new Uint8Array(await file.arrayBuffer());
    this.said = noSheet(bytes, file.size);
    if (!this.said) this.takeIn(bytes.buffer);
  };

  readonly #answer = (key: string, text: string): void => {
    this.settings = { ...this.settings, answers: { ...this.settings.answers, [key]: text } };
  };

  readonly #column = (key: string, field: SheetField | "unused" | object): void => {
    const before = this.settings.columns?.[key];
    const meaning = typeof field === "string" ? { field } : field;
    const columns = {
      ...this.settings.columns,
      [key]: { ...(typeof before === "object" && before), ...meaning },
    } as SheetMeaning;
    this.settings = { ...this.settings, columns };
    const { sheets } = this.session.notebook;
    this.session.note({ sheets: { ...sheets, [sheetKey(this.reading!.rows)]: columns } });
  };

  readonly #shelve = (): void => {
    const read = partsFromSheet(this.reading!.rows, this.settings);
    const { findings, unplaced, ...counts } = shelve(this.session, read, `${read.parts.length} parts put on the shelf`);
    if (findings.length) return void this.blame("sheet", findings[0]!.message);
    this.blame("sheet");
    this.reading = undefined;
    this.said = `${shelvedText(counts)}${unplaced ? ` ${unplaced} named a stage that this drivetrain does not have, and lie there without it.` : ""}`;
  };

  #asked(): TemplateResult | typeof nothing {
    const { reading, settings } = this;
    if (!reading) return nothing;
    const read = partsFromSheet(reading.rows, settings);
    const answering = { settings, answer: this.#answer, column: this.#column };
    const { parts, questions, passed } = read;
    return html`<div class="asked">
      <h3 tabindex="-1">A sheet of parts</h3>
      <p role="status">
        ${parts.length} ${parts.length === 1 ? "part" : "parts"},
        <span class=${questions.length ? "fault" : ""}
          >${questions.length} ${questions.length === 1 ? "question" : "questions"}</span
        >.
        ${passed.length ? html`<span class="quiet">Passed over: ${passed.slice(0, 8).map(({ line, code, text, key }, n) => html`${n ? "; " : ""}line ${line}, ${sheetWords.passed[code]} (${text.slice(0, 24)}) <button type="button" @click=${() => this.#answer(key, "part")}>It is a part</button>`)}${passed.length > 8 ? ` and ${passed.length - 8} more` : ""}.</span>` : nothing}
      </p>
      ${questionsView(read, answering)} ${columnsView(read, answering)}
      <p class="quiet">No row is lost: where a cell is not certain its part lies on the shelf without it.</p>
      ${this.fault("sheet")}
      <p>
        <button type="button" class="shelve" ?disabled=${!parts.length} @click=${this.#shelve}>
          ${`Put ${parts.length === 1 ? "1 part" : `${parts.length} parts`} on the shelf`}
        </button>
        <button type="button" @click=${() => (this.reading = undefined)}>Leave it</button>
      </p>
    </div>`;
  }

  #ways(): TemplateResult {
    return html`<p class="choices">
        <button type="button" aria-expanded=${String(this.isPasting)} @click=${() => this.takeIn("")}>
          Paste a parts list
        </button>
        <label class="press"
          >Open a sheet <input class="heard" type="file" accept=".csv,.tsv,.txt,text/csv" @change=${this.#picked}
        /></label>
        ${this.#all.length ? html`<button type="button" @click=${this.#save}>Save as CSV</button>` : nothing}
      </p>
      ${
        this.isPasting
          ? html`<p>
                <label for="paste">The sheet, as it is, with its heads</label>
              </p>
              <textarea id="paste" rows="6" spellcheck="false" @input=${this.#pasted}></textarea>
              <p><button type="button" @click=${this.#typedSheet}>Read what I typed</button></p>`
          : nothing
      }`;
  }

  readonly #save = (): void =>
    download(fileName(this.session.notebook, "csv"), csvOf(sheetOf(this.#all)), "text/csv;charset=utf-8");

  get #all(): readonly Part[] {
    return partsOf(this.session.notebook);
  }

  readonly #typed = (event: Event): void => {
    event.preventDefault();
    const form = event.target as HTMLFormElement;
    const value = (name: string) => (form.elements.namedItem(name) as HTMLInputElement).value.trim();
    const [name, is, teeth, module] = [value("name"), value("is"), value("teeth"), withPoint(value("module"))];
    if (!name) return void this.blame("typed", "What is it called?");
    if (teeth && !/^[1-9]\d{0,5}$/.test(teeth)) return void this.blame("typed", "Whole teeth only, from 1.");
    const unclear = thousandsFault(value("module"));
    if (unclear) return void this.blame("typed", unclear);
    const part = {
      name,
      is,
      ...(teeth && { teeth: Number(teeth) }),
      ...(module && { module }),
      owned: 1,
    } as unknown as Omit<Part, "id">;
    const [refusal] = addPart(this.session, part, `${name} put on the shelf`);
    this.blame("typed", refusal?.message);
    if (!refusal) form.reset();
  };

  #row(part: Part): TemplateResult {
    const { id, name, is, teeth, driver, driven, value, module, diametralPitch, bore, maker, price, owned } = part;
    const counts = teeth ?? (driver !== undefined ? html`${driver}${drives}${driven}` : (value ?? ""));
    const take = (event: Event): void => {
      const input = event.target as HTMLInputElement;
      const typed = input.value.trim();
      const now = typed === "" ? undefined : Number(typed);
      if (now !== undefined && !(Number.isInteger(now) && now >= 0)) {
        input.value = String(owned ?? "");
        return void this.blame(id, "Whole pieces only.");
      }
      const { owned: _, ...rest } = part;
      const [refusal] = withPart(
        this.session,
        { ...rest, ...(now !== undefined && { owned: now }) },
        `${name ?? id}, owned ${typed || "not known"}`,
      );
      this.blame(id, refusal?.message);
    };
    return html`<tr>
      <th scope="row">${name ?? id}</th>
      <td>${is}</td>
      <td class="number">${counts}</td>
      <td>
        ${module !== undefined ? `module ${String(module)}` : diametralPitch !== undefined ? `${String(diametralPitch)} DP` : ""}
      </td>
      <td class="number">${bore ?? ""}</td>
      <td>${maker ?? ""}</td>
      <td class="number">${price ? `${String(price.amount)} ${price.currency}` : ""}</td>
      <td>
        <input
          class="count"
          inputmode="numeric"
          aria-label=${`${name ?? id}: pieces that I have`}
          .value=${String(owned ?? "")}
          @change=${take}
        />${this.fault(id)}
      </td>
      <td>
        <button
          type="button"
          aria-label=${`Take ${name ?? id} off the shelf`}
          @click=${() => withoutPart(this.session, part)}
        >
          ×
        </button>
      </td>
    </tr>`;
  }

  #table(): TemplateResult | typeof nothing {
    const all = this.#all;
    if (!all.length) return nothing;
    const wanted = this.filter.toLowerCase().split(/\s+/).filter(Boolean);
    const found = wanted.length
      ? all.filter((part) => {
          const text = [
            part.name,
            part.id,
            part.is,
            part.teeth,
            part.driver,
            part.driven,
            part.maker,
            part.number,
            part.module,
            part.source,
          ]
            .join(" ")
            .toLowerCase();
          return wanted.every((word) => text.includes(word));
        })
      : all;
    return html`<p>
        ${all.length} parts.
        <input
          class="short"
          aria-label="Show those with"
          placeholder="find"
          .value=${this.filter}
          @input=${(event: Event) => (this.filter = (event.target as HTMLInputElement).value)}
        />
        ${wanted.length ? `${found.length} found.` : nothing}
      </p>
      <div class="scroll" tabindex="0" role="group" aria-label="The shelf">
        <table>
          <thead>
            <tr>
              ${["Part", "Is a"].map((head) => html`<th scope="col">${head}</th>`)}
              <th scope="col" class="number">Teeth</th>
              <th scope="col">Pitch</th>
              <th scope="col" class="number">Bore</th>
              <th scope="col">Maker</th>
              <th scope="col" class="number">Price</th>
              <th scope="col">I have</th>
              <th scope="col"><span class="heard">Take it off</span></th>
            </tr>
          </thead>
          <tbody>
            ${found.slice(0, this.shown).map((part) => this.#row(part))}
          </tbody>
        </table>
      </div>
      ${found.length > this.shown ? html`<p><button type="button" @click=${() => (this.shown += 200)}>${Math.min(200, found.length - this.shown)} more of ${found.length - this.shown}</button></p>` : nothing}`;
  }

  /** Axles that were taken off, whole. */
  #assemblies(): TemplateResult | typeof nothing {
    const { assemblies = [] } = this.session.notebook;
    if (!assemblies.length) return nothing;
    const away = (name: string): boolean =>
      this.session.put({ assemblies: assemblies.filter((one) => one.name !== name) }, `${name} taken off the shelf`);
    return html`<p>Taken off, and whole:</p>
      <ul>
        ${assemblies.map(
          (one) =>
            html`<li>
              ${one.name}, ${assemblyText(one)}${one.axle.wheel?.diameter ? `, tyre ${one.axle.wheel.diameter}` : ""},
              off since ${dayText(one.date)}
              ${this.build ? html`<button type="button" aria-label=${`Put it on as one more axle: ${one.name}`} @click=${() => this.blame("assembly", putOn(this.session, one.name)[0]?.message)}>Put it on as one more axle</button>` : nothing}
              <button type="button" aria-label=${`Take ${one.name} off the shelf`} @click=${() => away(one.name)}>
                ×
              </button>
            </li>`,
        )}
      </ul>
      ${this.fault("assembly")}`;
  }

  protected override render(): TemplateResult {
    return html`${this.#all.length || this.reading ? nothing : html`<p>Nothing lies on the shelf yet. A sheet from your own list will do as it is.</p>`}
      ${this.#ways()} ${this.said ? html`<p role="status">${this.said}</p>` : nothing} ${this.#asked()} ${this.#table()}
      ${this.#assemblies()}
      <form @submit=${this.#typed}>
        <p>
          One by hand:
          <input class="short" name="name" aria-label="Name of the part" placeholder="name" autocomplete="off" /> is a
          <select name="is" aria-label="What the part is">
            ${partKinds.map((one) => html`<option>${one}</option>`)}
          </select>
          with
          <input class="count" name="teeth" inputmode="numeric" aria-label="Teeth of the part" autocomplete="off" />
          teeth, module
          <input class="count" name="module" inputmode="decimal" aria-label="Module of the part" autocomplete="off" />
          <button type="submit">Put it on the shelf</button>
        </p>
        ${this.fault("typed")}
      </form>`;
  }
}
