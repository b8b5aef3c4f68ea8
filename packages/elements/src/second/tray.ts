import { setText } from "@meshwright/calc/article";
import { sameSet, setOf, spotOf, type GearSet } from "@meshwright/calc/drivetrain";
import { Writer } from "@meshwright/calc/report";
import { html, nothing, type TemplateResult } from "lit/html.js";
import { dress, paperOf, type CountState, type More, type Tray } from "../shared/element/index.js";
import { drawInto, isolateNames, standingTexts, stripOf, takeInHand } from "../shared/drawn/index.js";
import { figureWordsFor, fill, wordsFor } from "../shared/words/index.js";
import { choicesFor, type Choice } from "./sets.js";
import { trayStyles } from "./tray-styles.js";

/** The counts of a set, as they stand in a sentence. */
export const inSentence: NonNullable<More["setText"]> = (set, locale) =>
  setText(set, new Writer({ locale, words: figureWordsFor(locale) }));

/** Where the tray is to stand: measured before it is there, because a page is laid out anew for every look after a change. */
interface Place {
  readonly sides: readonly string[];
  readonly paper: string;
  readonly color: string;
}

/** The keys take no focus, and a link around the sentence is not followed. */
const refuse = (event: Event): void => event.preventDefault();

/** Keys beside a count, or a strip of them; and a choice where gears are sold as a set. */
export class CountTray implements Tray {
  readonly #state: CountState;
  #choices: readonly Choice[] | undefined;
  #wheeled = 0;
  #shown: unknown;

  constructor(state: CountState) {
    this.#state = state;
    dress(state.root, trayStyles);
  }

  outcome(): string {
    const { element, name, text, store } = this.#state;
    return [`${name} ${text}`, ...(store ? standingTexts(store, element.locale) : [])].join(". ");
  }

  draw(): void {
    const { keys, choice, message, isSet } = this.#state;
    const open = this.#open();
    // The strip of the page follows what is taken up, and what is changed while it is.
    if (this.#state.open && !isSet) takeInHand(this.#state);
    const what = open ?? message;
    const place = what !== this.#shown ? this.#measure() : undefined;
    this.#shown = what;
    drawInto(keys, this.#keys());
    drawInto(choice, this.#choice());
    isolateNames(choice, this.#state.element.locale);
    const select = choice.querySelector("select");
    // What is chosen does not look like what is typed.
    choice.parentElement!.toggleAttribute("data-choice", !!select);
    if (select) {
      const fitted = setOf(this.#stage());
      select.selectedIndex = this.#choices!.findIndex(({ set }) => sameSet(set, fitted));
    }
    const tray = keys.querySelector<HTMLElement>(".tray");
    if (!tray || !place) return;
    for (const side of ["start", "end", "under"]) tray.classList.toggle(side, place.sides.includes(side));
    tray.style.setProperty("--_page", place.paper);
    tray.style.color = place.color;
    if (open === "strip" && tray.showPopover && !tray.matches(":popover-open")) tray.showPopover();
  }

  /** What is to stand around the count: nothing but messages, where the page's own strip has the keys. */
  #open(): CountState["open"] {
    const { open, store } = this.#state;
    return open === "strip" && stripOf(store) ? undefined : open;
  }

  #stage() {
    const { build, address } = this.#state;
    return build && spotOf(build, address)?.stage;
  }

  #measure(): Place | undefined {
    const { root, message, element } = this.#state;
    const open = this.#open();
    const around = root.querySelector(".root")?.getBoundingClientRect();
    if (!around || !(open || message)) return undefined;
    const width = element.ownerDocument.documentElement.clientWidth;
    const near = around.left < 190 ? "start" : around.right > width - 190 ? "end" : "";
    const sides = open === "strip" ? [] : [near, around.top < 60 ? "under" : ""];
    return { sides, paper: paperOf(element), color: getComputedStyle(element).color };
  }

  #keys(): TemplateResult | typeof nothing {
    const { message, name, text, store, element, step, undo } = this.#state;
    const open = this.#open();
    if (!open && !message) return nothing;
    const words = wordsFor(element.locale);
    const strip = open === "strip";
    return html`<span
      class=${strip ? "tray strip" : "tray"}
      part="tray"
      popover=${strip ? "manual" : nothing}
      @pointerdown=${refuse}
      @mousedown=${refuse}
      >${
        open
          ? html`<button class="wide" type="button" tabindex="-1" ?disabled=${!store?.canUndo} @click=${undo}>
                ${words.undo}</button
              ><span class="name" aria-hidden="true">${name} <b>${text}</b></span
              ><button type="button" tabindex="-1" aria-label="${words.less}: ${name}" @click=${() => step(-1)}>
                −</button
              ><button type="button" tabindex="-1" aria-label="${words.more}: ${name}" @click=${() => step(1)}>
                +
              </button>`
          : nothing
      }${message ? html`<span class="message" id="message">${message}</span>` : nothing}</span
    >`;
  }

  readonly #stop = (event: Event): void => event.stopPropagation();

  readonly #wheel = (): void => {
    this.#wheeled = performance.now();
  };

  readonly #chosen = (event: Event): void => {
    event.stopPropagation();
    const select = event.target as HTMLSelectElement;
    const { set } = this.#choices![select.selectedIndex]!;
    // Some browsers let the wheel turn a choice over.
    if (performance.now() - this.#wheeled > 100) this.#state.take(set);
    this.#state.element.requestUpdate();
  };

  #text(set: GearSet): string {
    return inSentence(set, this.#state.element.locale);
  }

  #choice(): TemplateResult | typeof nothing {
    const { isSet, build, address, name, element } = this.#state;
    this.#choices = isSet && build ? choicesFor(build, address) : undefined;
    const choices = this.#choices;
    if (!choices || choices.length === 1) return nothing;
    return html`<select
      tabindex=${this.#state.passed ? "-1" : nothing}
      aria-label=${fill(wordsFor(element.locale).set, name)}
      @change=${this.#chosen}
      @input=${this.#stop}
      @wheel=${{ handleEvent: this.#wheel, passive: true }}
    >
      ${choices.map((one) => html`<option>${this.#text(one.set)}${one.name ? ` · ${one.name}` : nothing}</option>`)}
    </select>`;
  }
}
