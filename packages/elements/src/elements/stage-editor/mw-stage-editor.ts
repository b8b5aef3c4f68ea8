import { html, nothing, type TemplateResult } from "lit/html.js";
import { repeat } from "lit/directives/repeat.js";
import { placeName } from "@meshwright/calc/article";
import { valueAt, type Change, type ChangeSet } from "@meshwright/calc/drivetrain";
import { arrowFor } from "@meshwright/calc/report";
import { changesAt } from "@meshwright/calc/search";
import { inners, stageShapes, type Position, type Stage } from "@meshwright/calc/stages";
import { announce, block, type Told } from "../../shared/drawn/index.js";
import { properties, readCount } from "../../shared/element/index.js";
import { fill } from "../../shared/words/index.js";
import { ToolElement } from "../../shared/tools/index.js";
import { fieldsOf, groupsOf, listsOf, newStage, unitOf, type Field } from "./fields.js";
import { styles } from "./styles.js";

/** What is longer than so many signs goes on below. */
const longest = 14;

/** A field as high as what is written in it. */
const grow = (field: HTMLTextAreaElement): void => {
  field.style.height = "auto";
  if (field.scrollHeight) field.style.height = `${field.scrollHeight}px`;
};

/**
 * The stages of a build as a list: read, change, add, remove, reorder. What can be said of a stage follows from its kind.
 *
 * @fires {CustomEvent<ChangeSet | Change>} mw-change - what the reader changed
 * @csspart root - all that it draws
 * @csspart list - the stages of one shaft
 * @csspart stage - one stage
 */
export class MwStageEditor extends ToolElement {
  static override readonly tag = "mw-stage-editor";
  static override styles = [properties, block, styles];
  static override properties = { message: { state: true } };

  /** What stands against the last change, and at which stage. */
  declare private message: { readonly at: string; readonly text: Told } | undefined;

  /** Asks for a change; afterwards the focus is where it was, or at what has taken that place. */
  async #ask(at: string, request: ChangeSet | Change, focus?: string): Promise<void> {
    const [refusal] = this.change(request);
    // What goes along with a stage is told where the stage was.
    const gone = "remove" in request ? this.store?.notes.find((note) => note.at === request.remove) : undefined;
    const text = this.told(refusal ?? gone);
    this.message = text && { at: refusal ? at : "gone", text };
    const root = this.renderRoot as ShadowRoot;
    if (text) announce(root, text);
    await Promise.resolve();
    await this.updateComplete;
    if (!focus) return;
    const wanted = root.querySelector<HTMLButtonElement>(focus);
    const found =
      wanted && !wanted.disabled
        ? wanted
        : (wanted?.parentElement ?? root).querySelector<HTMLElement>("button:not(:disabled), select");
    found?.focus();
  }

  protected override updated(changed: Map<PropertyKey, unknown>): void {
    super.updated(changed);
    this.renderRoot.querySelectorAll("textarea").forEach(grow);
  }

  /** What those hear who do not see the axle beside it. */
  #called({ id }: Stage): string {
    return placeName({ evaluation: this.evaluation()!, words: this.figureWords }, id);
  }

  #set(stage: Stage, address: string, value: unknown): void {
    void this.#ask(stage.id, changesAt(this.current!, address, value));
  }

  #typed(stage: Stage, address: string, shape: string, event: Event): void {
    event.stopPropagation();
    const input = event.target as HTMLInputElement | HTMLTextAreaElement;
    const before = valueAt(this.current!, address);
    const text = input.value.trim().replace(/\s+/g, " ");
    const value = shape === "count" ? readCount(text) : text || null;
    input.value = String(before ?? "");
    if (shape === "count" && !value) {
      if (text) {
        this.message = { at: stage.id, text: () => fill(this.words.wholeOnly, 1, String(before ?? "")) };
        announce(this.renderRoot as ShadowRoot, () => this.message?.text() ?? "");
        return;
      }
      // An optional count is taken away by emptying its field.
      return this.#set(stage, address, null);
    }
    if (String(value) !== String(before)) this.#set(stage, address, value);
    // What is typed next takes its place.
    if ((this.renderRoot as ShadowRoot).activeElement === input) input.select();
  }

  /** Spinning by keys, as in the text: whole teeth only. */
  #pressed(event: KeyboardEvent): void {
    const by = ({ ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 } as Record<string, number>)[event.key];
    const input = event.target as HTMLInputElement;
    const now = readCount(input.value);
    if (!by || now === undefined) return;
    event.preventDefault();
    input.value = String(Math.max(1, now + by));
    input.dispatchEvent(new Event("change"));
  }

  #control(stage: Stage, field: Field, address: string, shape: string, name: string): TemplateResult {
    const value = valueAt(this.current!, address);
    const label = fill(this.figureWords.told, this.#called(stage), name);
    const options = this.shop.editor.options as Readonly<Record<string, string>>;
    if (shape === "flag")
      return html`<input
        type="checkbox"
        aria-label=${label}
        .checked=${value === true}
        @change=${(event: Event) => {
          event.stopPropagation();
          this.#set(stage, address, (event.target as HTMLInputElement).checked || null);
        }}
      />`;
    if (shape.includes("|"))
      return html`<select
        aria-label=${label}
        @change=${(event: Event) => {
          event.stopPropagation();
          this.#set(stage, address, (event.target as HTMLSelectElement).value || null);
        }}
      >
        ${field.needed ? nothing : html`<option value="">${this.shop.unmarked.notKnown}</option>`}
        ${shape.split("|").map((one) => html`<option value=${one} ?selected=${one === value}>${options[one] ?? one}</option>`)}
      </select>`;
    const count = shape === "count";
    // A long name is read whole: it goes on below.
    if (!count && [...String(value ?? "")].length > longest)
      return html`<textarea
        rows="1"
        cols=${Math.min(24, [...String(value)].length + 1)}
        autocomplete="off"
        spellcheck="false"
        aria-label=${label}
        .value=${String(value)}
        @input=${(event: Event) => {
          event.stopPropagation();
          grow(event.target as HTMLTextAreaElement);
        }}
        @keydown=${(event: KeyboardEvent) => {
          if (event.key !== "Enter" || event.isComposing) return;
          event.preventDefault();
          event.target!.dispatchEvent(new Event("change"));
        }}
        @change=${(event: Event) => this.#typed(stage, address, shape, event)}
      ></textarea>`;
    const article = this.store?.article && valueAt(this.store.article, address);
    return html`<input
      class="${count ? "" : "text"} ${count && article !== undefined && article !== value ? "changed" : ""}"
      type="text"
      size=${Math.max(count ? 3 : 6, [...String(value ?? "")].length)}
      inputmode=${count ? "numeric" : nothing}
      role=${count && value !== undefined ? "spinbutton" : nothing}
      aria-valuenow=${count && value !== undefined ? String(value) : nothing}
      aria-valuemin=${count && value !== undefined ? "1" : nothing}
      autocomplete="off"
      spellcheck="false"
      aria-label=${label}
      .value=${String(value ?? "")}
      @input=${(event: Event) => event.stopPropagation()}
      @keydown=${count ? this.#pressed : nothing}
      @change=${(event: Event) => this.#typed(stage, address, shape, event)}
    />`;
  }

  #field(stage: Stage, field: Field): TemplateResult {
    const { words } = this;
    const address = `${stage.id}.${field.name}`;
    const names = { ...this.shop.editor.fields, ...words.fields } as Readonly<Record<string, string>>;
    const known = names[field.name] ?? field.name;
    const unit = unitOf(field, (this.current as { readonly lengths?: string }).lengths ?? "mm");
    const list = /^\[count\]/.test(field.shape);
    // From and to stand side by side.
    if (field.shape === "span" && typeof valueAt(this.current!, address) === "object")
      return html`<label
          ><span>${known}</span>${this.#control(stage, field, `${address}.from`, "positive", known)}</label
        ><label
          ><span>${fill(this.figureWords.range, "", "").trim()}</span
          >${this.#control(stage, field, `${address}.to`, "positive", known)}</label
        >`;
    if (!list) {
      const hasUnit = unit && !/[a-z]/i.test(String(valueAt(this.current!, address) ?? ""));
      return html`<label
        ><span>${known}</span
        >${this.#control(stage, field, address, field.shape, hasUnit ? `${known}, ${unit}` : known)}${hasUnit ? html`<span>${unit}</span>` : nothing}</label
      >`;
    }
    const values = valueAt(this.current!, address) as readonly number[];
    const change = (teeth: readonly number[], at: number) =>
      this.#ask(stage.id, { [address]: teeth }, `#${stage.id} .gear:nth-of-type(${at + 1}) input`);
    return html`${values.map((teeth, n) => {
      const gear = fill(words.gear, n + 1);
      return html`<span class="gear"
        ><label
          ><span>${n ? arrowFor(this.locale) : ""}</span
          >${this.#control(stage, field, `${address}.${n}`, "count", gear)}</label
        ><span class="keys"
          >${
            values.length < 3
              ? nothing
              : html`<button
                  type="button"
                  class="fewer"
                  aria-label=${fill(this.shop.editor.gearLess, gear)}
                  @click=${() => change([...values.slice(0, n), ...values.slice(n + 1)], Math.max(0, n - 1))}
                >
                  ×
                </button>`
          }<button
            type="button"
            class="another"
            aria-label=${fill(this.shop.editor.gearMore, gear)}
            @click=${() => change([...values.slice(0, n + 1), teeth, ...values.slice(n + 1)], n + 1)}
          >
            +
          </button></span
        ></span
      >`;
    })}`;
  }

  #stage(stage: Stage, index: number, stages: readonly Stage[], into: string | undefined): TemplateResult {
    const { message } = this;
    const name = stage.label ?? stage.id;
    const called = this.#called(stage);
    const fields = fieldsOf(stage.kind);
    const positions = inners[stage.kind]?.positions(stage);
    // A lever shows its positions by their names, not the field that holds one of them.
    const shown = positions ? fields.filter(({ name: field }) => field !== "selected") : fields;
    const said = shown.filter(({ needed }) => needed);
    const more = shown.filter((field) => !said.includes(field));
    const neighbour = stages[index + 1] ?? stages[index - 1];
    const key = (what: "up" | "down" | "remove", sign: string, off: boolean, request: Change, focus: string) =>
      html`<button
        type="button"
        class=${what}
        aria-label=${fill(this.shop.editor[what], called)}
        ?disabled=${off}
        @click=${() => this.#ask(stage.id, request, focus)}
      >
        ${sign}
      </button>`;
    return html`<li id=${stage.id} part="stage">
      <div class="line">
        <span class="name"
          >${name}
          ${name === this.shop.editor.kinds[stage.kind] ? nothing : html`<span class="kind">${this.shop.editor.kinds[stage.kind]}</span>`}</span
        >
        <span class="fields">
          ${said.map((field) => this.#field(stage, field))} ${positions ? this.#lever(stage, positions) : nothing}
        </span>
        <span class="keys">
          ${key("up", "↑", index === 0, { move: stage.id, at: index - 1 }, `#${stage.id} .up`)}
          ${key("down", "↓", index === stages.length - 1, { move: stage.id, at: index + 1 }, `#${stage.id} .down`)}
          ${key("remove", "×", false, { remove: stage.id }, neighbour ? `#${neighbour.id} .remove` : `[id="add-${into ?? ""}"]`)}
        </span>
        <details @toggle=${() => this.renderRoot.querySelectorAll("textarea").forEach(grow)}>
          <summary aria-label=${fill(this.shop.editor.more, called)}>${this.shop.editor.all}</summary>
          ${groupsOf(more).map(
            ([group, own]) =>
              html`<fieldset>
                <legend>${this.shop.editor.groups[group]}</legend>
                <div class="fields">${own.map((field) => this.#field(stage, field))}</div>
              </fieldset>`,
          )}
        </details>
      </div>
      ${message?.at === stage.id ? html`<p class="message" role="note">${message.text()}</p>` : nothing}
      ${
        positions?.map((one) =>
          one.stages ? this.#list(one.stages as Stage[], `${stage.id}.${one.id}`, one.label ?? one.id) : nothing,
        ) ?? nothing
      }
    </li>`;
  }

  /** Which position a box with a lever stands in. */
  #lever(stage: Stage, positions: readonly Position[]): TemplateResult {
    const { selected } = stage as { readonly selected?: string };
    return html`<select
      aria-label=${this.#called(stage)}
      @change=${(event: Event) => {
        event.stopPropagation();
        this.#set(stage, `${stage.id}.selected`, (event.target as HTMLSelectElement).value);
      }}
    >
      ${positions.map(({ id, label }) => html`<option value=${id} ?selected=${id === selected}>${label ?? id}</option>`)}
    </select>`;
  }

  #list(stages: readonly Stage[], into: string | undefined, label: string): TemplateResult {
    const add = (event: Event): void => {
      event.stopPropagation();
      const select = event.target as HTMLSelectElement;
      const kind = select.value as Stage["kind"];
      select.value = "";
      const insert = newStage(kind, [this.current!, this.store!.article!]);
      void this.#ask(
        into ?? "",
        { insert, ...(into === undefined ? {} : { into }), at: stages.length },
        `#${insert.id} input, #${insert.id} select`,
      );
    };
    return html`<p class="over" aria-hidden="true">${label}</p>
      <ol part="list" aria-label=${label}>
        ${repeat(
          stages,
          ({ id }) => id,
          (stage, index) => this.#stage(stage, index, stages, into),
        )}
      </ol>
      <select class="add" id="add-${into ?? ""}" aria-label=${this.shop.editor.add} @change=${add}>
        <option value="">${this.shop.editor.add} …</option>
        ${Object.keys(stageShapes).map((kind) => html`<option value=${kind}>${this.shop.editor.kinds[kind as Stage["kind"]]}</option>`)}
      </select>`;
  }

  protected override render(): TemplateResult {
    const build = this.current;
    if (!build) return this.fallback(false);
    const { message } = this;
    return html`<div class="root" part="root">
        ${message?.at === "gone" ? html`<p class="message" role="note">${message.text()}</p>` : nothing}
        ${listsOf(build).map(
          ({ label, into, stages }) =>
            html`<section>${this.#list(stages, into, label ?? this.shop.editor.shared)}</section>`,
        )}
      </div>
      ${this.fallback()}`;
  }
}
