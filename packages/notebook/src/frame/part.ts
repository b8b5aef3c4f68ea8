import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from "lit";
import { oneIn, type Build, type Change, type ChangeSet } from "@meshwright/calc/drivetrain";
import { evaluate, type Evaluation } from "@meshwright/calc/evaluate";
import { figureOf, type QueryText } from "@meshwright/calc/report";
import { engineNow, runOn } from "@meshwright/elements/store";
import { thousandsFault, withPoint, type Fields, type Notebook, type Session } from "../model/index.js";
import { untilLetGo } from "./hand.js";

/** How a value is written into a field. */
export interface FieldOptions {
  /** What it is, for whoever does not see the sentence around it. */
  readonly label: string;
  /** `count`: whole, from 1. `number`: any number, kept as it is typed. `text`: anything. */
  readonly takes: "count" | "number" | "text";
  readonly placeholder?: string;
  readonly size?: "count" | "short" | "wide";
  /** What is asked of the notebook; setting the address where it is not said. */
  readonly change?: (value: string | number | null) => ChangeSet | readonly Change[];
  /** Told when it was done, with what it was before. */
  readonly done?: (before: unknown, after: unknown) => void;
}

const steps: Readonly<Record<string, number>> = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 };

const evaluations = new WeakMap<Build, Evaluation>();

/** What a drivetrain comes to, worked out once, for the notebook and for the elements that it is made of. */
export function evaluationOf(build: Build): Evaluation {
  let known = evaluations.get(build);
  if (!known) evaluations.set(build, (known = evaluate(build)));
  return known;
}

runOn({
  ...engineNow(),
  evaluate: (build, mode) => (mode === undefined ? evaluationOf(build) : evaluate(build, mode)),
});

/** One part of the notebook's page: follows the session, asks it for changes, and shows what stands against them. */
export abstract class NotebookPart extends LitElement {
  static override properties: PropertyDeclarations = {
    session: { attribute: false },
    faults: { state: true },
  };

  declare session: Session;
  /** What stands against the last change at a place. */
  declare protected faults: Readonly<Record<string, string>>;
  #watched: Session | undefined;
  #shown: object | undefined;
  readonly #changed = ({ notebook }: Session): void => {
    if (this.isAffected((this.#shown ?? {}) as Partial<Notebook>, notebook)) this.requestUpdate();
    this.#shown = notebook;
  };

  constructor() {
    super();
    this.faults = {};
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#watch(this.session);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#watch(undefined);
  }

  protected override scheduleUpdate(): void | Promise<unknown> {
    const free = untilLetGo();
    return free ? free.then(() => super.scheduleUpdate()) : super.scheduleUpdate();
  }

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (changed.has("session")) this.#watch(this.session);
  }

  /** Whether this part has to be drawn again. Writing in the post changes nothing else. */
  protected isAffected(before: Partial<Notebook>, after: Notebook): boolean {
    const keys = new Set([...Object.keys(before), ...Object.keys(after)] as (keyof Notebook)[]);
    return [...keys].some((key) => key !== "post" && key !== "log" && before[key] !== after[key]);
  }

  #watch(session: Session | undefined): void {
    this.#watched?.watchers.delete(this.#changed);
    this.#watched = session;
    session?.watchers.add(this.#changed);
  }

  protected get build(): Build | undefined {
    return this.session.build;
  }

  /** A figure or verdict as text; nothing where the drivetrain does not say enough for it. */
  protected figure(query: QueryText): string | undefined {
    if (!this.build) return undefined;
    try {
      return figureOf(evaluationOf(this.build), query);
    } catch {
      return undefined;
    }
  }

  /** Asks for a change; what stands against it is shown at a place. Says whether it was done. */
  protected ask(place: string, request: ChangeSet | readonly Change[], name?: string, also?: Partial<Fields>): boolean {
    const [refusal] = this.session.change(request, name, also);
    const { [place]: _, ...others } = this.faults;
    this.faults = refusal ? { ...others, [place]: refusal.message } : others;
    return !refusal;
  }

  /** Shows a sentence at a place, or takes it away. */
  protected blame(place: string, sentence?: string): void {
    const { [place]: _, ...others } = this.faults;
    this.faults = sentence ? { ...others, [place]: sentence } : others;
  }

  /** What stands against the last change at a place. */
  protected fault(place: string): TemplateResult | typeof nothing {
    const sentence = this.faults[place];
    return sentence ? html`<p class="fault" role="alert">${sentence}</p>` : nothing;
  }

  /** A value of the drivetrain, changeable where it stands in a sentence. Enter and leaving keep it, Escape restores it. */
  protected field(address: string, options: FieldOptions): TemplateResult {
    const { label, takes, placeholder = "not known", size, change, done } = options;
    const before = this.build && oneIn(this.build).value(address);
    const text = before === undefined || before === null ? "" : String(before);
    const take = (input: HTMLInputElement): void => {
      const typed = input.value.trim();
      if (typed === text) return void this.blame(address);
      const fault =
        takes === "count" && typed && !/^[1-9]\d{0,5}$/.test(typed)
          ? "Whole teeth only, from 1."
          : takes === "number"
            ? thousandsFault(typed)
            : undefined;
      if (fault) {
        this.blame(address, `${fault}${text ? ` Kept ${text}.` : ""}`);
        input.value = text;
        return;
      }
      const plain = takes === "number" ? withPoint(typed) : typed;
      const value = !plain
        ? null
        : takes === "count" || (takes === "number" && Number.isFinite(+plain))
          ? Number(plain)
          : plain;
      const isDone = this.ask(address, change ? change(value) : { [address]: value });
      // What was read is what stands there, also where it was nothing new.
      input.value = isDone ? String(value ?? "") : text;
      if (isDone) done?.(before, value);
    };
    const pressed = (event: KeyboardEvent): void => {
      const input = event.target as HTMLInputElement;
      const by = takes === "count" ? steps[event.key] : undefined;
      if (event.key === "Enter") take(input);
      else if (event.key === "Escape") input.value = text;
      else if (by && input.value) {
        input.value = String(Math.max(1, Number(input.value) + by));
        take(input);
      } else return;
      event.preventDefault();
    };
    const kind = size ?? (takes === "count" ? "count" : takes === "number" ? "short" : "wide");
    return html`<input
        class=${kind}
        autocomplete="off"
        spellcheck="false"
        inputmode=${takes === "count" ? "numeric" : takes === "number" ? "decimal" : nothing}
        role=${takes === "count" && text ? "spinbutton" : nothing}
        aria-valuenow=${takes === "count" && text ? text : nothing}
        aria-label=${label}
        aria-invalid=${this.faults[address] ? "true" : nothing}
        placeholder=${placeholder}
        data-address=${address}
        data-was=${text}
        .value=${text}
        @change=${(event: Event) => take(event.target as HTMLInputElement)}
        @keydown=${pressed}
      />${this.faults[address] ? html`<span class="fault" role="alert"> ${this.faults[address]} </span>` : nothing}`;
  }

  /** What is folded away: made when somebody opens it. */
  protected fold(summary: string, content: () => unknown): TemplateResult {
    const open = (event: Event): void => {
      const { open: isOpen } = event.target as HTMLDetailsElement;
      if (isOpen) this.#open.add(summary);
      else this.#open.delete(summary);
      this.requestUpdate();
    };
    return html`<details @toggle=${open}>
      <summary>${summary}</summary>
      ${this.#open.has(summary) ? content() : nothing}
    </details>`;
  }

  readonly #open = new Set<string>();

  /** A choice among values of the drivetrain. */
  protected choice(
    address: string,
    label: string,
    options: readonly (readonly [value: string, text: string])[],
    change?: (value: string | null) => ChangeSet | readonly Change[],
  ): TemplateResult {
    const now = String((this.build && oneIn(this.build).value(address)) ?? "");
    return html`<select
      aria-label=${label}
      data-address=${address}
      @change=${(event: Event) => {
        const select = event.target as HTMLSelectElement;
        const value = select.value || null;
        if (!this.ask(address, change ? change(value) : { [address]: value })) select.value = now;
      }}
    >
      ${options.map(([value, text]) => html`<option value=${value} ?selected=${value === now}>${text}</option>`)}
    </select>`;
  }

  /** Puts the focus on something that the next drawing brings. */
  protected async focusOn(selector: string): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>(selector)?.focus();
  }
}
