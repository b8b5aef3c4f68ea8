import type { Build, Change, ChangeSet } from "@meshwright/calc/drivetrain";
import type { Finding } from "@meshwright/calc/stages";
import type { Evaluation } from "@meshwright/calc/evaluate";
import type { QueryText } from "@meshwright/calc/report";
import { page, type BuildHolder, type BuildStore, type Follower } from "../store/index.js";
import { whenWordsArrive } from "../tables/index.js";
import { version } from "./define.js";
import { findBuild } from "./find.js";
import { follow, localeOf, unfollow } from "./locale.js";
import { isStrange, oversight } from "./oversight.js";
import { Reactive, type Declaration, type Style } from "./reactive.js";
import { forgetTexts, textFor } from "./texts.js";
import { wantMore } from "./want.js";

const connected = new Set<MeshwrightElement>();
let watching = false;
let searching = false;

/** Looks for everybody's build again, once for all the builds that came and went in one turn. */
function search(): void {
  if (searching) return;
  searching = true;
  queueMicrotask(() => {
    searching = false;
    for (const element of connected) element.findBuild();
  });
}

const lookAtLanguage = (): void => {
  for (const element of connected) element.languageChanged();
};

const readAll = (): void => {
  for (const element of connected) element.contentChanged();
};

const readInOtherWords = (): void => {
  forgetTexts();
  readAll();
};

/** Everything is looked at again: more can be said now than before. */
export function lookAgain(): void {
  forgetTexts();
  for (const element of connected) {
    element.judge();
    element.contentChanged();
  }
}

function watch(): void {
  if (watching) return;
  watching = true;
  page().watchers.add(search);
  whenWordsArrive(readInOtherWords);
  if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", readAll);
}

type Styles = Style | readonly Style[];

const sheets = new WeakMap<Document, Map<Styles, CSSStyleSheet[]>>();

/** Style sheets made by the document that they are used in: a frame's elements may have grown up in another one. */
function sheetsFor(view: Window & typeof globalThis, styles: Styles): CSSStyleSheet[] {
  const { document } = view;
  let known = sheets.get(document);
  if (!known) sheets.set(document, (known = new Map()));
  let made = known.get(styles);
  if (!made) {
    if ("cssText" in styles) {
      const sheet = new view.CSSStyleSheet();
      sheet.replaceSync(styles.cssText);
      made = [sheet];
    } else made = styles.flatMap((style) => sheetsFor(view, style));
    known.set(styles, made);
  }
  return made;
}

/** Adds style sheets to what a root has; as elements where a browser, or a document without a window, knows no others. */
export function dress(root: ShadowRoot, styles: Styles, isNew = false): void {
  const view = root.ownerDocument.defaultView;
  if (view && "adoptedStyleSheets" in root) {
    const more = sheetsFor(view, styles);
    root.adoptedStyleSheets = isNew ? more : [...new Set([...root.adoptedStyleSheets, ...more])];
    return;
  }
  for (const { cssText } of [styles].flat() as Style[]) {
    const element = root.ownerDocument.createElement("style");
    const { litNonce } = globalThis as { litNonce?: string };
    if (litNonce) element.nonce = litNonce;
    element.textContent = cssText;
    root.append(element);
  }
}

/**
 * What every element of the library is made from: it finds its build, follows it and its language, and draws. It holds no
 * number of its own.
 *
 * @attr build - the id of the `mw-build` that it is about; the nearest one where not said
 * @slot - the author's own text: what is read without scripts, and what stays while it says the same as the build
 * @cssprop [--mw-accent=currentColor] - what can be changed or pressed
 * @cssprop [--mw-fault=currentColor] - what is wrong
 * @cssprop [--mw-second=currentColor] - notes and captions
 * @cssprop [--mw-line=color-mix(in srgb, currentColor 18%, transparent)] - fine lines
 * @cssprop [--mw-ring=var(--mw-accent)] - the ring around what has the focus
 * @cssprop [--mw-paper=Canvas] - what lies over the text: trays, heads of columns
 */
export abstract class MeshwrightElement extends Reactive implements Follower {
  static readonly version: string = version;
  static readonly tag: string = "";
  /** Whether what it draws is right, or the author's text, though nobody looks after what is wrong. */
  static readonly isRightAlone: boolean = false;

  static override properties: Readonly<Record<string, Declaration>> = { build: {} };

  /** The id of the `mw-build` that this is about; none: the nearest. */
  declare build: string | null;

  /** What stood against the last text that was asked for, though nothing is wrong with how it was. */
  fault: string | undefined;

  #toldFault: string | undefined;
  #home: BuildHolder | undefined;
  #holder: BuildHolder | undefined;
  #store: BuildStore | undefined;
  #locale = "en";
  #roots: readonly Node[] = [];
  #drawn: Evaluation | undefined;
  /** What had been written when this was judged last. */
  #judged = -1;

  /** The store of the build that this belongs to, once there is one. */
  protected get store(): BuildStore | undefined {
    return this.#store;
  }

  /** The `mw-build` that this stands with, though an error may keep it from saying anything of it. */
  get home(): BuildHolder | undefined {
    return this.#home;
  }

  /** The `mw-build` that this belongs to. */
  protected get holder(): BuildHolder | undefined {
    return this.#holder;
  }

  get locale(): string {
    return this.#locale;
  }

  /** The build as it stands. */
  protected get current(): Build | undefined {
    return this.#store?.build;
  }

  /** The figures as they stand, or those of `"article"` or an alternative. */
  protected evaluation(at?: string | null): Evaluation | undefined {
    return this.#store?.evaluation(at ?? "");
  }

  /**
   * The text of a figure or a verdict, in this element's language; nothing while there is no build, or where it asks for
   * what there is not.
   */
  protected textOf(query: QueryText, at?: string | null): string | undefined {
    const evaluation = this.evaluation(at);
    if (!evaluation) {
      // A version that cannot plainly be made, or that there is none of.
      if (at && this.#store?.build) wantMore("third");
      return undefined;
    }
    try {
      return textFor(evaluation, query, this.#locale, this.#store!, at);
    } catch (error) {
      this.fault = (error as Error).message;
      return undefined;
    }
  }

  /**
   * Asks for a change on the reader's behalf, and tells the page where it was made and is one. What stands against it is
   * answered: whoever asks has to show it.
   */
  protected change(request: ChangeSet | Change, gesture?: unknown): readonly Finding[] {
    const store = this.#store;
    const before = store?.layer;
    const findings = store?.change(request, gesture) ?? [];
    if (store && store.layer !== before) this.tell("change", request);
    return findings;
  }

  protected override createRenderRoot(): ShadowRoot {
    const drawn = this.shadowRoot;
    const root = drawn ?? this.attachShadow({ mode: "open" });
    // A server may have drawn the fallback in here.
    drawn?.replaceChildren();
    this.dress(root, !drawn);
    return root;
  }

  protected dress(root: ShadowRoot, isNew = false): void {
    dress(root, (this.constructor as typeof Reactive).styles, isNew);
  }

  #parts: readonly HTMLElement[] = [];
  /** Those of them that stand in the root itself. */
  #top: readonly HTMLElement[] = [];

  protected make<Tag extends keyof HTMLElementTagNameMap>(tag: Tag): HTMLElementTagNameMap[Tag] {
    return this.ownerDocument.createElement(tag);
  }

  /** What this draws with: made once, and anew where somebody has taken a piece away. */
  protected parts<Parts extends readonly HTMLElement[]>(make: () => Parts): Parts {
    const root = this.renderRoot;
    if (!this.#top.length || this.#top.some((one) => one.parentNode !== root)) {
      for (const one of this.#top) one.remove();
      this.#parts = make();
      this.#top = this.#parts.filter((one) => !one.parentNode);
      root.append(...this.#top);
    }
    return this.#parts as Parts;
  }

  override connectedCallback(): void {
    watch();
    connected.add(this);
    this.#roots = follow(this, lookAtLanguage);
    this.languageChanged();
    this.findBuild(true);
    super.connectedCallback();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    connected.delete(this);
    unfollow(this.#roots);
    this.#home = undefined;
    this.#take(undefined);
    oversight()?.gone(this);
  }

  adoptedCallback(): void {
    // A root that a server has drawn is dressed when it is taken over.
    if (!(this.renderRoot as ShadowRoot | undefined) || !this.shadowRoot) return;
    // Sheets of another document do not count here.
    if (this.shadowRoot.adoptedStyleSheets) this.shadowRoot.adoptedStyleSheets = [];
    this.dress(this.shadowRoot);
  }

  /** Looks where the build of this is now. */
  findBuild(isFirst = false): void {
    this.#home = findBuild(this, this.build);
    this.judge(isFirst);
  }

  /**
   * Looks whether an error keeps this from saying anything: then it belongs nowhere, and the author's text stays. What has just
   * come and is right by itself is not kept waiting by whoever looks after what is wrong.
   */
  judge(isFirst = false): void {
    if (!this.isConnected) return;
    this.#judged = this.writes;
    const overseer = oversight();
    const isStrangeOne = (!overseer || isFirst) && isStrange(this);
    const canWait = isFirst && !isStrangeOne && (this.constructor as typeof MeshwrightElement).isRightAlone;
    const isDark = overseer && !canWait ? overseer.judge(this) : isStrangeOne;
    if (canWait) overseer?.later(this);
    if (isDark && !overseer) wantMore("third");
    this.#take(isDark ? undefined : this.#home);
  }

  #take(holder: BuildHolder | undefined): void {
    const store = holder?.store;
    this.#holder = holder;
    if (store === this.#store) return;
    this.#store?.followers.delete(this);
    this.#store = store;
    this.#drawn = undefined;
    store?.followers.add(this);
    if (this.isConnected) this.stateChanged();
  }

  /** The version that is drawn: the build as it stands, `"article"` or an alternative. */
  declare at?: string | null;

  /** The state of the store is another. Draws again, unless what is drawn is pinned to something that has not changed. */
  stateChanged(): void {
    const drawn = this.at ? this.evaluation(this.at) : undefined;
    if (drawn && drawn === this.#drawn) return;
    this.#drawn = drawn;
    this.requestUpdate();
  }

  /** The light content, or something else outside the store, may be another. */
  contentChanged(): void {
    this.requestUpdate();
  }

  languageChanged(): void {
    const locale = localeOf(this);
    if (locale !== this.#locale) {
      this.#locale = locale;
      this.contentChanged();
      if (this.#home) this.judge();
    }
  }

  protected override shouldUpdate(changed: Map<PropertyKey, unknown>): boolean {
    // What is asked for is looked at before it is drawn, so that nothing wrong is seen.
    if (changed.has("build")) this.findBuild();
    else if (this.#judged !== this.writes) this.judge();
    return true;
  }

  protected override updated(_: Map<PropertyKey, unknown>): void {
    if (this.fault === this.#toldFault) return;
    this.#toldFault = this.fault;
    oversight()?.judge(this);
  }

  /** Tells the page what a reader did. Programs that change a build raise no events. */
  protected tell(type: string, detail: unknown): void {
    this.dispatchEvent(new CustomEvent(`mw-${type}`, { detail, bubbles: true, composed: true }));
  }
}
