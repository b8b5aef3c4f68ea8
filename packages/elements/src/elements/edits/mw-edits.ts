import { html, nothing, type TemplateResult } from "lit/html.js";
import { linkOfBuild } from "@meshwright/calc/document";
import type { Build } from "@meshwright/calc/drivetrain";
import type { Finding } from "@meshwright/calc/stages";
import {
  DrawnElement,
  announce,
  block,
  changeTexts,
  effectTexts,
  inHand,
  standAlone,
  standDown,
  stripOf,
  type Strip,
} from "../../shared/drawn/index.js";
import { paperOf, properties } from "../../shared/element/index.js";
import { copyText } from "../../shared/page/index.js";
import { fill, fillCount, findingText } from "../../shared/words/index.js";
import { liftOver } from "./bars.js";
import { styles } from "./styles.js";

/** What an `mw-build` says about links. */
interface Sender {
  link?(): string;
  leftOut?(): readonly Finding[];
}

/**
 * What differs from the article: what it comes to, each change, undo, back to the article's values, a link to this version. Says so
 * when a reader's version has arrived by a link. Draws nothing while nothing differs.
 *
 * @attr sticks - at the bottom of the window while something differs, with keys for the count in hand, until a reader closes it;
 *   one of a page
 * @fires {CustomEvent<undefined>} mw-undo - the reader took the last change back
 * @fires {CustomEvent<undefined>} mw-reset - the reader went back to the article's values
 * @fires {CustomEvent<{ link: string }>} mw-copy - the reader asked for a link to this version; `link` is it
 * @csspart root - all that it draws
 * @csspart changes - the list
 * @csspart told - what went along, or could not be kept
 * @csspart actions - the buttons
 * @csspart hand - the count in hand, with its keys
 * @csspart notebook - the way into a notebook
 */
export class MwEdits extends DrawnElement implements Strip {
  static override readonly tag = "mw-edits";
  static override styles = [properties, block, styles];
  static override properties = {
    sticks: { type: Boolean },
    copied: { state: true },
    closed: { state: true },
    own: { state: true },
  };

  declare sticks: boolean | null;
  /** Whether the last attempt to copy worked; nothing: no attempt for this version. */
  declare private copied: boolean | undefined;
  /** Whether a reader has closed the strip: then all of it stands where the author has put it. */
  declare private closed: boolean | undefined;

  #sizes: ResizeObserver | undefined;
  readonly #lift = (): void => this.#stand();

  override connectedCallback(): void {
    super.connectedCallback();
    for (const where of [globalThis, globalThis.visualViewport]) where?.addEventListener("resize", this.#lift);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    standDown(this);
    this.#sizes?.disconnect();
    this.#sizes = undefined;
    for (const where of [globalThis, globalThis.visualViewport]) where?.removeEventListener("resize", this.#lift);
  }

  /** Whether the build has just been changed. */
  #claims = false;

  /** The build as it stands, taken into a notebook: its address there, once it is made. */
  declare private own: { readonly build: Build; readonly address: string } | undefined;

  override stateChanged(): void {
    this.copied = undefined;
    void this.#makeOwn();
    this.#claims = (this.store?.changed ?? 0) > 0;
    super.stateChanged();
  }

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    super.willUpdate(changed);
    const { store } = this;
    if (!store) return;
    if (!this.sticks || this.closed) standDown(this);
    else standAlone(store, this, this.#claims);
    this.#claims = false;
  }

  get #isStrip(): boolean {
    return stripOf(this.store) === this;
  }

  /** What a reader can take along, where the author says into which notebook. */
  async #makeOwn(): Promise<void> {
    const { holder, store } = this;
    const [build, notebook] = [store?.build, holder?.getAttribute("notebook")];
    if (!holder || !build || !notebook || !store?.changed) return void (this.own = undefined);
    try {
      const address = new URL(notebook, holder.baseURI);
      address.hash = `build-${await linkOfBuild(build)}`;
      // An author's address may lead anywhere but into a script.
      const isPage = /^(https?|file):$/.test(address.protocol);
      if (isPage && build === this.store?.build) this.own = { build, address: address.href };
    } catch {
      // No address, or a browser that cannot pack: there is nothing to offer.
    }
  }

  get #link(): string {
    return (this.holder as Sender | undefined)?.link?.() ?? "";
  }

  /** A control that acts may vanish with what it did; then the next one takes the focus. */
  async #act(what: "undo" | "reset"): Promise<void> {
    this.store?.[what]();
    this.tell(what, undefined);
    announce(this.renderRoot as ShadowRoot, () => this.renderRoot.querySelector(".now")?.textContent?.trim() ?? "");
    // The store tells its followers at the end of this turn.
    await Promise.resolve();
    await this.updateComplete;
    const root = this.renderRoot as ShadowRoot;
    const isAway = !root.activeElement && this.ownerDocument.activeElement === this.ownerDocument.body;
    if (isAway) (root.querySelector("button") ?? root.querySelector<HTMLElement>(".root"))?.focus();
  }

  async #copy(): Promise<void> {
    const link = this.#link;
    this.copied = await copyText(link);
    this.tell("copy", { link });
    if (this.copied) return announce(this.renderRoot as ShadowRoot, () => this.words.copied);
    await this.updateComplete;
    this.renderRoot.querySelector("input")?.select();
  }

  readonly #close = (): void => {
    this.closed = true;
  };

  /** What it comes to, in a sentence for each output. */
  #effect(): string {
    const { store, words, locale } = this;
    if (!store!.changed) return words.restored;
    const effects = effectTexts(store!, locale);
    const said = effects.reduce((before, one) => (before ? fill(words.followed, before, one) : one), "");
    return fill(words.ended, said);
  }

  /** Every change by its name: what the reader has, what the article has. */
  #changes(): TemplateResult {
    const { words, store, locale } = this;
    const changes = changeTexts(store!, locale).map(
      ({ name, now, was }) =>
        html`${name}${was || now ? html` <span class="note">(${fill(words.yours, now, was)})</span>` : nothing}`,
    );
    if (store!.layer.structure.length) changes.push(html`${words.structure}`);
    const [before, after] = words.changed.split("{0}");
    return html`${before}${changes.map((change, n) => html`${n ? words.comma + " " : nothing}${change}`)}${after}`;
  }

  /** What went along with a change, or could not be kept; and, where a link was asked for, what that leaves out. */
  #told(): readonly string[] {
    const left = this.copied === undefined ? [] : ((this.holder as Sender | undefined)?.leftOut?.() ?? []);
    return [...this.store!.notes, ...left].map((one) => findingText(one, this.locale));
  }

  /** Keys for the count in hand, where this is the page's strip. */
  #hand(): TemplateResult | typeof nothing {
    const { words, store } = this;
    const hand = this.#isStrip ? inHand(store!) : undefined;
    if (!hand) return nothing;
    const { name, text } = hand;
    // They take no focus from the count.
    const refuse = (event: Event): void => event.preventDefault();
    return html`<span class="hand" part="hand" @pointerdown=${refuse} @mousedown=${refuse}
      ><button type="button" aria-label="${words.less}: ${name}" @click=${() => hand.step(-1)}>−</button
      ><span>${name} <b>${text}</b></span
      ><button type="button" aria-label="${words.more}: ${name}" @click=${() => hand.step(1)}>+</button></span
    >`;
  }

  /** Stands above the keyboard and the page's own bars, and leaves room where it would stand otherwise. */
  #stand(): void {
    const strip = this.renderRoot?.querySelector<HTMLElement>(".strip");
    const space = this.renderRoot?.querySelector<HTMLElement>(".space");
    if (!strip || !space || !this.isConnected) return;
    if (strip.showPopover && !strip.matches(":popover-open")) {
      strip.popover = "manual";
      strip.showPopover();
    }
    strip.style.setProperty("--_page", paperOf(this));
    strip.style.color = getComputedStyle(this).color;
    strip.style.setProperty("--_lift", `${liftOver(this.ownerDocument, this)}px`);
    if (!this.#sizes && globalThis.ResizeObserver) {
      const measure = (): void => space.style.setProperty("--_high", `${strip.offsetHeight}px`);
      this.#sizes = new ResizeObserver(() => requestAnimationFrame(measure));
      this.#sizes.observe(strip);
    }
  }

  protected override updated(changed: Map<PropertyKey, unknown>): void {
    super.updated(changed);
    if (this.renderRoot.querySelector(".strip")) return this.#stand();
    this.#sizes?.disconnect();
    this.#sizes = undefined;
  }

  protected override render(): TemplateResult {
    const { store, words } = this;
    if (!store?.article) return this.fallback(false);
    const isOpen = this.#isStrip && inHand(store)?.open !== undefined;
    if (!store.changed && !store.canUndo && !store.notes.length && !isOpen) return this.fallback();
    const isStrip = this.#isStrip;
    const inner = html`<span class="now" part="changes">
        ${store.changed ? html`<span class=${store.arrived ? "" : "paper"}>${fillCount(words.readers, store.changed, this.locale)} </span>` : nothing}<span
          class="effect"
          >${store.changed || store.canUndo ? this.#effect() : nothing}</span
        >
        ${store.changed ? html`<span class="changes">${this.#changes()}</span>` : nothing}
        ${this.#told().map((message) => html` <span class="note" part="told">${message}</span>`)}
      </span>
      ${this.#hand()}
      <span class="actions" part="actions">
        ${store.canUndo ? html`<button type="button" @click=${() => this.#act("undo")}>${words.undo}</button>` : nothing}
        ${store.changed ? html`<button type="button" @click=${() => this.#act("reset")}>${store.arrived ? words.seeAuthors : words.reset}</button>` : nothing}
        ${store.changed ? html`<button type="button" @click=${this.#copy}>${this.copied ? words.copied : words.copy}</button>` : nothing}
        ${this.own && this.own.build === store.build ? html`<a href=${this.own.address} part="notebook">${words.notebook}</a>` : nothing}
        ${isStrip ? html`<button type="button" class="close" aria-label=${words.close} title=${words.close} @click=${this.#close}>×</button>` : nothing}
      </span>
      ${this.copied === false ? html`<input readonly aria-label=${words.link} .value=${this.#link} />` : nothing}`;
    return html`${
      isStrip
        ? html`<div class="space"></div>
            <div class="root strip paged" part="root" tabindex="-1">${inner}</div>`
        : html`<div class="root" part="root" tabindex="-1">${inner}</div>`
    }
    ${this.fallback()}`;
  }
}
