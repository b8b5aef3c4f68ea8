import { labelAt } from "@meshwright/calc/drivetrain";
import { errorOf, findingOf } from "@meshwright/calc/stages";
import { html, nothing, type TemplateResult } from "lit";
import { changesFrom, linkCarries, linkOf } from "@meshwright/calc/document";
import { buildsOf, MeshwrightElement, guard, properties } from "../../shared/element/index.js";
import { hashKey, linkWith, readHash, writeHash } from "../../shared/page/index.js";
import { buildsMoved, BuildStore, page, type BuildHolder } from "../../shared/store/index.js";
import { fillCount } from "../../shared/words/index.js";
import { absent, fetched, fromJson, fromNotation, notationOf, scriptOf, type Found } from "./data.js";
import { styles } from "./styles.js";

/**
 * Holds a build for everything around it: as attributes, as a JSON script inside, or from a file. Draws only its content,
 * and on demand what is wrong with the data.
 *
 * @attr stages, front, rear, front-wheel, target, … the build in the notation of attributes
 * @attr src the address of a JSON file
 * @attr json the build as JSON, where a script inside does not live
 * @attr mode the mode that everything is evaluated in
 * @attr permalink where a reader's version is to be opened; none: the article's own permalink, or this page
 */
export class MwBuild extends MeshwrightElement implements BuildHolder {
  static override readonly tag = "mw-build";
  static override styles = [properties, guard, styles];
  static override properties = { src: {}, json: {}, mode: {}, permalink: {} };

  declare src: string | null;
  declare json: unknown;
  declare mode: string | null;
  declare permalink: string | null;

  readonly #own = new BuildStore();
  #observer: MutationObserver | undefined;
  #source: unknown;
  #loading: AbortController | undefined;
  #key = "";
  #seen: string | undefined;
  #refused: Found["findings"] = [];

  override get store(): BuildStore {
    return this.#own;
  }

  readonly #complained = (): void => this.requestUpdate();

  /** What is wrong or odd about the data. */
  get findings(): Found["findings"] {
    const asked = this.#own.complaints.messages.map((why) =>
      errorOf("meaning", "figure-missing", "", { element: "", why }),
    );
    return [...this.#own.findings, ...this.#refused, ...asked];
  }

  override connectedCallback(): void {
    this.#observer ??= new MutationObserver((records) => {
      if (records.some((record) => record.attributeName === "id")) buildsMoved();
      this.#readSource();
    });
    // The script's own text may still be coming in; nothing else inside is watched closely.
    this.#observer.observe(this, { attributes: true, childList: true });
    this.#own.followers.add(this);
    this.#own.complaints.watchers.add(this.#complained);
    page().holders.add(this);
    page().watchers.add(this.#address);
    addEventListener("hashchange", this.#address);
    addEventListener("pageshow", this.#address);
    buildsMoved();
    super.connectedCallback();
    this.#readSource();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#observer?.disconnect();
    this.#own.followers.delete(this);
    this.#own.complaints.watchers.delete(this.#complained);
    page().holders.delete(this);
    page().watchers.delete(this.#address);
    removeEventListener("hashchange", this.#address);
    removeEventListener("pageshow", this.#address);
    buildsMoved();
  }

  /** This one belongs to itself. */
  override findBuild(): void {}

  override contentChanged(): void {
    this.#readSource();
    super.contentChanged();
  }

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (changed.has("mode")) this.#own.mode = this.mode ?? undefined;
    if (this.isConnected && (changed.has("src") || changed.has("json"))) this.#readSource();
  }

  /** Looks for the data, and reads them if they are other than they were. */
  #readSource(): void {
    const script = scriptOf(this);
    if (script) this.#observer?.observe(script, { childList: true, characterData: true, subtree: true });
    const notation = notationOf(this);
    const json = this.json ?? script?.textContent ?? undefined;
    const source = json ?? (this.src ? [this.src, this.baseURI].join(" ") : JSON.stringify(notation));
    if (source === this.#source) return;
    const coming = document.readyState === "loading";
    this.#loading?.abort();
    if (json !== undefined) {
      const found = fromJson(json);
      // Half a script is no mistake.
      if (!found.build && coming && !this.json) return;
      this.#found(source, found);
    } else if (this.src) {
      this.#source = source;
      const { signal } = (this.#loading = new AbortController());
      void fetched(new URL(this.src, this.baseURI).href, signal).then((found) => {
        if (!signal.aborted) this.#found(source, found);
      });
    } else if (Object.keys(notation).length) this.#found(source, fromNotation(notation));
    else if (!coming) this.#found(source, absent());
  }

  #found(source: unknown, { build, findings }: Found): void {
    this.#source = source;
    this.#own.publish(build, findings);
    this.#address();
    this.requestUpdate();
  }

  /** Takes in what the address says about this build, if it says anything new. */
  readonly #address = (): void => {
    const { article } = this.#own;
    if (!article) return;
    const key = hashKey(this.id, buildsOf(this.id).indexOf(this) + 1);
    const text = readHash(key);
    if (this.#key && key !== this.#key && this.#own.arrived && !text) this.#own.arrive({ structure: [], sets: {} });
    this.#key = key;
    if (!text || text === this.#seen) return;
    this.#seen = text;
    const { changes, structure, findings } = changesFrom(text, article);
    this.#refused = findings;
    // What cannot be read takes nothing away.
    const isEmpty = !structure.length && !Object.keys(changes).length;
    if (!isEmpty || !findings.length) this.#own.arrive({ structure, sets: changes });
    this.requestUpdate();
  };

  /** What of the reader's changes a link leaves out, because it is words. */
  leftOut(): Found["findings"] {
    const { article, layer } = this.#own;
    const words = article ? Object.keys(layer.sets).filter((address) => !linkCarries(article, address)) : [];
    return words.map((address) =>
      findingOf("warning", "meaning", "link-words", address, { address: labelAt(article!, address) }),
    );
  }

  #written(): string | undefined {
    const { article, layer } = this.#own;
    if (!article) return undefined;
    const sets = Object.entries(layer.sets).filter(([address]) => linkCarries(article, address));
    if (!sets.length && !layer.structure.length) return undefined;
    try {
      return linkOf(article, Object.fromEntries(sets), layer.structure);
    } catch {
      // More than a link holds.
      return undefined;
    }
  }

  /** Where this build's article stands on its own. */
  #permalink(): string {
    const bookmark = this.closest("article, [role=article], .h-entry, .hentry")?.querySelector<HTMLAnchorElement>(
      "a[rel~=bookmark][href], a.u-url[href]",
    );
    const own = this.permalink ? new URL(this.permalink, this.baseURI).href : bookmark?.href;
    return own ?? location.href;
  }

  /** A link that opens the article with the reader's changes in it. */
  link(): string {
    const at = this.#permalink();
    const here = at.split("#")[0] === location.href.split("#")[0];
    return linkWith(at, here ? this.#key : hashKey(this.id, 1), this.#written() ?? "");
  }

  override stateChanged(): void {
    if (this.#key && !this.#own.arrived && (this.#own.changed || this.#own.canUndo))
      writeHash(this.#key, () => (this.#seen = this.#written()));
    super.stateChanged();
  }

  protected override render(): TemplateResult {
    const { findings } = this;
    const wrong = findings.filter((finding) => finding.severity === "error");
    return html`${
        wrong.length
          ? html`<details class="root" part="findings">
              <summary
                title=${fillCount(this.words.findings, findings.length, this.locale)}
                aria-label=${fillCount(this.words.findings, findings.length, this.locale)}
              >
                !
              </summary>
              <ul>
                ${findings.map(({ at, message }) => html`<li>${at ? html`<code>${at}</code> ` : nothing}${message}</li>`)}
              </ul>
            </details>`
          : nothing
      }<slot></slot>`;
  }
}
