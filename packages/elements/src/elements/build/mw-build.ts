import { labelAt } from "@meshwright/calc/drivetrain";
import { findingOf, type Finding } from "@meshwright/calc/stages";
import { html, type TemplateResult } from "lit";
import { changesFrom, linkCarries, linkOf } from "@meshwright/calc/document";
import {
  buildsOf,
  MeshwrightElement,
  oversight,
  properties,
  whenOverseen,
  type Overseen,
  type PageFinding,
} from "../../shared/element/index.js";
import { hashKey, linkWith, readHash, writeHash } from "../../shared/page/index.js";
import { buildsMoved, BuildStore, page, sameFinding } from "../../shared/store/index.js";
import { absent, fetched, fromJson, fromNotation, notationOf, oddAbout, scriptOf, type Found } from "./data.js";
import { styles } from "./styles.js";

/**
 * Holds a build for everything around it: as attributes, as a JSON script inside, or from a file. Draws only its content;
 * what is wrong with it and its elements is in `findings`, once `checked` is settled.
 *
 * @attr stages, front, rear, front-wheel, target, … the build in the notation of attributes
 * @attr src the address of a JSON file
 * @attr json the build as JSON, where a script inside does not live
 * @attr mode the mode that everything is evaluated in
 * @attr seal a short hash over the notation, written by our tools
 * @fires mw-findings the list of what is wrong has become another one
 * @attr permalink where a reader's version is to be opened; none: the article's own permalink, or this page
 */
export class MwBuild extends MeshwrightElement implements Overseen {
  static override readonly tag = "mw-build";
  static override styles = [properties, styles];
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
  #refused: readonly Finding[] = [];

  override get store(): BuildStore {
    return this.#own;
  }

  #reading: Found | undefined;
  #oddity = "";
  #findings: readonly PageFinding[] | undefined;
  #read: { readonly promise: Promise<void>; readonly done: () => void } | undefined;

  readonly #complained = (): void => oversight()?.changed(this);

  /** All that is wrong or odd about the build and the elements that belong to it; undefined until that has been looked at. */
  get findings(): readonly PageFinding[] | undefined {
    return this.#findings;
  }

  /**
   * Settled when the build and the elements that are on the page now have been looked at: with what was found. Asked again, it
   * is about the page as it stands then.
   */
  get checked(): Promise<readonly PageFinding[]> {
    return whenOverseen()
      .then((overseer) => overseer.checked(this))
      .then(() => this.#findings ?? []);
  }

  get isRead(): boolean {
    return this.#reading !== undefined;
  }

  get read(): Promise<void> {
    if (this.isRead) return Promise.resolve();
    if (!this.#read) {
      let done!: () => void;
      const promise = new Promise<void>((resolve) => (done = resolve));
      this.#read = { promise, done };
    }
    return this.#read.promise;
  }

  get ownFindings(): readonly Finding[] {
    return [...this.#own.articleFindings, ...this.#refused];
  }

  told(findings: readonly PageFinding[]): void {
    const before = this.#findings;
    const isSame =
      before?.length === findings.length &&
      findings.every((one, n) => sameFinding(one, before[n]!) && one.element === before[n]!.element);
    if (isSame) return;
    this.#findings = Object.freeze([...findings]);
    this.dispatchEvent(new CustomEvent("mw-findings", { detail: this.#findings, bubbles: true, composed: true }));
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

  /** This one belongs to itself, and is looked at as its data are read. */
  override findBuild(): void {}

  override judge(): void {}

  override languageChanged(): void {
    super.languageChanged();
    this.#complained();
  }

  override contentChanged(): void {
    this.#readSource();
    super.contentChanged();
  }

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (changed.has("mode")) this.#own.mode = this.mode ?? undefined;
    if (this.isConnected && ["src", "json", "mode"].some((name) => changed.has(name))) this.#readSource();
  }

  /** Looks for the data, and reads them if they are other than they were. */
  #readSource(): void {
    const script = scriptOf(this);
    if (script) this.#observer?.observe(script, { childList: true, characterData: true, subtree: true });
    const notation = notationOf(this);
    const json = this.json ?? script?.textContent ?? undefined;
    const source = json ?? (this.src ? [this.src, this.baseURI].join(" ") : JSON.stringify(notation));
    if (source === this.#source) {
      if (this.#reading && this.#odd() !== this.#oddity) this.#publish();
      return;
    }
    const coming = document.readyState === "loading";
    this.#loading?.abort();
    if (json !== undefined) {
      const found = fromJson(json);
      // Half a script is no mistake.
      if (!found.build && coming && !this.json) return;
      this.#found(source, found);
    } else if (this.src) {
      this.#source = source;
      this.#reading = undefined;
      const { signal } = (this.#loading = new AbortController());
      void fetched(new URL(this.src, this.baseURI).href, signal).then((found) => {
        if (!signal.aborted) this.#found(source, found);
      });
    } else if (Object.keys(notation).length) this.#found(source, fromNotation(notation));
    else if (!coming) this.#found(source, absent());
  }

  #found(source: unknown, found: Found): void {
    this.#source = source;
    this.#reading = found;
    this.#publish();
    this.#read?.done();
    this.#read = undefined;
  }

  /** What is to be known of attributes that are none of the data, so that they are looked at no oftener than they change. */
  #odd(): string {
    return JSON.stringify([this.getAttributeNames(), this.mode]);
  }

  #publish(): void {
    this.#oddity = this.#odd();
    const { build, findings } = this.#reading!;
    const odd = oddAbout(this, this.mode, build, findings);
    const isRefused = odd.some(({ severity }) => severity === "error");
    this.#own.publish(isRefused ? undefined : build, [...odd, ...findings]);
    this.#address();
    oversight()?.published(this);
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
    this.#complained();
    // What cannot be read takes nothing away.
    const isEmpty = !structure.length && !Object.keys(changes).length;
    if (!isEmpty || !findings.length) this.#own.arrive({ structure, sets: changes });
  };

  /** What of the reader's changes a link leaves out, because it is words. */
  leftOut(): readonly Finding[] {
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
    return html`<slot></slot>`;
  }
}
