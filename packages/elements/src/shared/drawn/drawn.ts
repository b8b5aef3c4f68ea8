import { isUnsaid, type Speaker, type Unsaid } from "@meshwright/calc/article";
import type { FigureWords } from "@meshwright/calc/languages";
import { html, nothing, type RootPart, type TemplateResult } from "lit/html.js";
import { MeshwrightElement } from "../element/index.js";
import type { FindingCause } from "@meshwright/calc/stages";
import { figureWordsFor, findingText, wordsFor, type Words } from "../words/index.js";
import { standsForBlock } from "./content.js";
import { drawInto } from "./draw-into.js";
import { fitTables } from "./fit-tables.js";
import { isolateNames } from "./isolate.js";
import { speakerFor } from "./speaker.js";
import { valuesChanged } from "./values.js";

/** Keys that write, choose or move in a field are no short cuts of the page's. */
function keepKey(event: KeyboardEvent): void {
  const { key, ctrlKey, metaKey, altKey } = event;
  const field = event.composedPath()[0] as Partial<Element>;
  if (ctrlKey || metaKey || altKey || /^(Tab|Escape|F\d+)$/.test(key)) return;
  if (/^(input|select|textarea)$/.test(field.localName ?? "")) event.stopPropagation();
}

/** A sentence that is made when it is drawn: its words may come later than its cause. */
export type Told = () => string;

/** What is drawn by templates: everything but the three elements that an article begins with. */
export abstract class DrawnElement extends MeshwrightElement {
  #part: RootPart | undefined;

  protected get words(): Words {
    return wordsFor(this.locale);
  }

  /** The words of figures, in this element's language. */
  protected get figureWords(): FigureWords {
    return figureWordsFor(this.locale);
  }

  /** Whoever says what calc's article room makes of a version, in this element's language. */
  protected speaker(at?: string | null): Speaker | undefined {
    const evaluation = this.evaluation(at);
    return evaluation && speakerFor(evaluation, this.locale, this.store!);
  }

  /**
   * What this element says, as calc has it; nothing while there is no build, or where its attributes ask for what there is
   * not: then the content stays.
   */
  protected says<Said extends object>(
    make: (speaker: Speaker) => Said | Unsaid | undefined,
    at?: string | null,
  ): Said | undefined {
    this.fault = undefined;
    const speaker = this.speaker(at);
    let said: Said | Unsaid | undefined;
    try {
      said = speaker && make(speaker);
    } catch (error) {
      this.fault = (error as Error).message;
    }
    return isUnsaid(said) ? undefined : said;
  }

  /**
   * Whose version is drawn, where it is not the author's: small, above, in nobody's way. It stands for the whole of what is drawn,
   * also on paper.
   */
  protected whose(at?: string | null): TemplateResult | typeof nothing {
    const { store } = this;
    if (at || !store || !valuesChanged(store)) return nothing;
    const { whose } = this.words;
    return html`<span class="version" part="version">${store.arrived ? whose.sent : whose.yours}</span>`;
  }

  /** The author's content: hidden where it stands for what is drawn, shown where it is prose that a self-closed tag has swallowed. */
  protected fallback(hide = standsForBlock(this)): TemplateResult {
    if (!this.hasUpdated) this.#inside = this.innerHTML;
    return html`<slot ?hidden=${hide} @slotchange=${this.#slotted}></slot>`;
  }

  /** What stood inside when this was first drawn. The first event of a slot comes later and mostly tells of nothing else. */
  #inside: string | undefined;

  #slotted(): void {
    const before = this.#inside;
    this.#inside = undefined;
    if (before !== this.innerHTML) this.contentChanged();
  }

  /** What stands against a request, in the language that stands where and when it is drawn; nothing where nothing does. */
  protected told(finding: FindingCause | undefined): Told | undefined {
    return finding && (() => findingText(finding, this.locale));
  }

  /** What is drawn. */
  protected abstract render(): unknown;

  protected override update(changed: Map<PropertyKey, unknown>): void {
    let value: unknown;
    try {
      value = this.render();
    } catch (error) {
      // Whatever this browser cannot draw, the author's own text is read instead.
      this.fault = (error as Error).message;
      value = this.fallback(false);
    }
    super.update(changed);
    this.#part = drawInto(this.renderRoot, value, { host: this, isConnected: this.isConnected });
    isolateNames(this.renderRoot, this.locale);
    fitTables(this.renderRoot);
  }

  protected override createRenderRoot(): ShadowRoot {
    const root = super.createRenderRoot();
    for (const type of ["keydown", "keypress", "keyup"]) root.addEventListener(type, keepKey as EventListener);
    return root;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#part?.setConnected(true);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#part?.setConnected(false);
  }
}
