import { html, nothing, type TemplateResult } from "lit/html.js";
import { setText } from "@meshwright/calc/article";
import { linkOfBuild } from "@meshwright/calc/document";
import { Writer } from "@meshwright/calc/report";
import type { Finding } from "@meshwright/calc/stages";
import { setOf, spotOf, valueAt, type Build } from "@meshwright/calc/drivetrain";
import { DrawnElement, announce, block } from "../../shared/drawn/index.js";
import { css, nameOf, properties, writeCount } from "../../shared/element/index.js";
import { copyText } from "../../shared/page/index.js";
import { fill, fillCount } from "../../shared/words/index.js";

/** What an `mw-build` says about links. */
interface Sender {
  link?(): string;
  leftOut?(): readonly Finding[];
}

/**
 * What differs from the article: each change, undo, back to the article's values, a link to this version. Says so when a
 * reader's version has arrived by a link. Draws nothing while nothing differs.
 *
 * @fires mw-undo, mw-reset, mw-copy what the reader did
 * @csspart changes the list · @csspart told what went along, or could not be kept · @csspart actions the buttons · @csspart notebook the way into a notebook
 */
export class MwEdits extends DrawnElement {
  static override readonly tag = "mw-edits";
  static override styles = [
    properties,
    block,
    css`
      .root,
      .actions {
        display: flex;
        flex-wrap: wrap;
        gap: 0.1em 1.1em;
        align-items: baseline;
      }
      .now {
        flex: 1 1 16em;
      }
      .note {
        color: var(--_second);
        font-style: italic;
        font-size: 0.88em;
      }
      input {
        font: inherit;
        font-size: max(16px, 0.88em);
        color: inherit;
        background: none;
        border: 1px solid var(--_line);
        padding: 0.2em 0.4em;
        width: 100%;
        box-sizing: border-box;
      }
      @media not print {
        .paper {
          display: none;
        }
      }
      a {
        color: inherit;
      }
      @media print {
        button,
        a {
          display: none;
        }
      }
    `,
  ];
  static override properties = { copied: { state: true }, own: { state: true } };

  /** Whether the last attempt to copy worked; nothing: no attempt for this version. */
  declare private copied: boolean | undefined;

  /** The build as it stands, taken into a notebook: its address there, once it is made. */
  declare private own: { readonly build: Build; readonly address: string } | undefined;

  override stateChanged(): void {
    this.copied = undefined;
    void this.#makeOwn();
    super.stateChanged();
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
    if (!root.activeElement) (root.querySelector("button") ?? root.querySelector<HTMLElement>(".root"))?.focus();
  }

  async #copy(): Promise<void> {
    const link = this.#link;
    this.copied = await copyText(link);
    this.tell("copy", { link });
    if (this.copied) return announce(this.renderRoot as ShadowRoot, () => this.words.copied);
    await this.updateComplete;
    this.renderRoot.querySelector("input")?.select();
  }

  /** What a build has at an address: a count, a text, all counts of a set. */
  #value(build: Build, address: string): string {
    const set = address.includes(".") ? undefined : setOf(spotOf(build, address)?.stage);
    return set
      ? setText(set, new Writer({ locale: this.locale, words: this.figureWords }))
      : this.#written(valueAt(build, address));
  }

  #written(value: unknown): string {
    return typeof value === "number" ? writeCount(value, this.locale) : typeof value === "string" ? value : "";
  }

  /** Every change by its name: what the reader has, what the article has. */
  #changes(): TemplateResult {
    const { words, store } = this;
    const { units, layer, article, build } = store!;
    const changes = units.map(({ address }) => {
      const was = this.#value(article!, address);
      const yours = this.#value(build!, address);
      return html`${nameOf(build!, address, words)}${was || yours ? html` <span class="note">(${fill(words.yours, yours, was)})</span>` : nothing}`;
    });
    if (layer.structure.length) changes.push(html`${words.structure}`);
    const [before, after] = words.changed.split("{0}");
    return html`${before}${changes.map((change, n) => html`${n ? words.comma + " " : nothing}${change}`)}${after}`;
  }

  /** What went along with a change, or could not be kept; and, where a link was asked for, what that leaves out. */
  #told(): readonly string[] {
    const left = this.copied === undefined ? [] : ((this.holder as Sender | undefined)?.leftOut?.() ?? []);
    return [...this.store!.notes, ...left].map(({ message }) => message);
  }

  protected override render(): TemplateResult {
    const { store, words } = this;
    if (!store?.article) return this.fallback(false);
    if (!store.changed && !store.canUndo && !store.notes.length) return this.fallback();
    return html`<div class="root" part="root" tabindex="-1">
        <span class="now" part="changes">
          ${store.changed ? html`<span class=${store.arrived ? "" : "paper"}>${fillCount(words.readers, store.changed, this.locale)} </span>` : nothing}${store.changed ? this.#changes() : words.restored}
          ${this.#told().map((message) => html` <span class="note" part="told">${message}</span>`)}
        </span>
        <span class="actions" part="actions">
          ${store.canUndo ? html`<button type="button" @click=${() => this.#act("undo")}>${words.undo}</button>` : nothing}
          ${store.changed ? html`<button type="button" @click=${() => this.#act("reset")}>${store.arrived ? words.showArticle : words.reset}</button>` : nothing}
          ${store.changed ? html`<button type="button" @click=${this.#copy}>${this.copied ? words.copied : words.copy}</button>` : nothing}
          ${this.own && this.own.build === store.build ? html`<a href=${this.own.address} part="notebook">${words.notebook}</a>` : nothing}
        </span>
        ${this.copied === false ? html`<input readonly aria-label=${words.link} .value=${this.#link} />` : nothing}
      </div>
      ${this.fallback()}`;
  }
}
