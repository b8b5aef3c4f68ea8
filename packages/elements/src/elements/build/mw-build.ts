import type { Finding } from "@meshwright/calc/stages";
import {
  contract,
  extend,
  MeshwrightElement,
  more,
  oversight,
  properties,
  wantMore,
  whenOverseen,
  type Found,
  type Linking,
  type More,
  type Overseen,
  type PageFinding,
  type Source,
} from "../../shared/element/index.js";
import { buildsMoved, BuildStore, page, sameFinding } from "../../shared/store/index.js";
import { notationOf, plainly, scriptOf } from "./source.js";
import { styles } from "./styles.js";

/**
 * Holds a build for everything around it: as attributes, as a JSON script inside, or from a file. Draws only its content;
 * what is wrong with it and its elements is in `findings`, once `checked` is settled.
 *
 * @attr stages - the stages from the motor to where the drive splits, in the order of drive, with a semicolon between them:
 *   `Spur and pinion: 15 to 62; Gear row: 18 to 31 to 45`; it has to be there, though it may be empty
 * @attr front - the stages of an axle, from where the drive splits to its wheels: `Ring: 13 to 38; Hub: 15 to 22`
 * @attr front-wheel - the axle's tyre: `124 mm`, `118 mm under weight`, or what it rolled: `10 turns 3.75 m`
 * @attr front-motor - a motor of the axle's own: `1850 kv`
 * @attr target - motor turns for one wheel turn that the builder likes: `38 to 46`, or of one axle only: `38 to 46 at rear`
 * @attr compare - the two axles that are set against each other: `front with rear`
 * @attr centre - how the drive splits: `spool` where not said, or `differential`, with its shares of the torque where they are
 *   not equal: `differential: front 2, rear 3`
 * @attr motor - the motor of all axles that have none of their own: `1850 kv`, `1850 kv, 30000 rpm at most, 12.6 V at most`
 * @attr battery - the pack: `3 cells lipo`, `3 cells lipo, 2 parallel`
 * @attr controller - the most volts that the controller bears: `12.6 V`
 * @attr mount - how far apart a pair can be set: `Spur and pinion: 30.3 mm to 31.3 mm`, or from a pair that is known to
 *   mesh: `Spur and pinion: known pair 23 to 53, closer 0.1 mm, farther 0.9 mm`
 * @attr title - what the vehicle is called
 * @attr wheelbase - from the middle of the front axle to that of the rear one: `310 mm`
 * @attr headline - the axle whose total answers "what do you run?"
 * @attr lengths - the unit that lengths are shown in
 * @attr src - the address of a JSON file
 * @attr json - the build as JSON, where a script inside does not live
 * @attr mode - the mode that everything is evaluated in
 * @attr seal - a short hash over the notation, written by our tools
 * @attr notebook - the address of a notebook that a reader can take the build into, as they have changed it
 * @attr permalink - where a reader's version is to be opened; none: the article's own permalink, or this page
 * @fires {CustomEvent<readonly PageFinding[]>} mw-findings - the list of what is wrong has become another one
 */
export class MwBuild extends MeshwrightElement implements Overseen {
  static override readonly tag = "mw-build";
  static override styles = [properties, styles];
  static override properties = { src: {}, json: {}, mode: {}, permalink: {} };

  /** The number of what this copy's files say to each other by. */
  static readonly contract = contract;

  /** Takes in what comes after the first file. */
  static extend(part: More, number: number): void {
    extend(part, number);
  }

  declare src: string | null;
  declare json: unknown;
  declare mode: string | null;
  declare permalink: string | null;

  readonly #own = new BuildStore();
  #observer: MutationObserver | undefined;
  #source: unknown;
  #loading: AbortController | undefined;
  #linking: Linking | undefined;
  #raw: Source;

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
   * is about the page as it stands then. Rejected with a `MeshwrightError`, `load-failed` at the file's name, where the file that
   * looks at them cannot be loaded.
   */
  get checked(): Promise<readonly PageFinding[]> {
    wantMore("third");
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
    return [...this.#own.articleFindings, ...(this.#linking?.refused ?? [])];
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
    this.#linking ??= more().link?.(this);
    page().holders.add(this);
    page().watchers.add(this.#look);
    addEventListener("hashchange", this.#look);
    addEventListener("pageshow", this.#look);
    buildsMoved();
    super.connectedCallback();
    this.#readSource();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#linking?.left();
    this.#observer?.disconnect();
    this.#own.followers.delete(this);
    this.#own.complaints.watchers.delete(this.#complained);
    page().holders.delete(this);
    page().watchers.delete(this.#look);
    removeEventListener("hashchange", this.#look);
    removeEventListener("pageshow", this.#look);
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
      if (this.#reading && this.#odd() !== this.#oddity) this.renew();
      return;
    }
    const coming = document.readyState === "loading";
    this.#loading?.abort();
    if (json !== undefined) {
      const raw = { json };
      const found = this.#reader(raw);
      // Half a script is no mistake.
      if (!found.build && coming && !this.json) return;
      this.#found(source, raw, found);
    } else if (this.src) {
      this.#source = source;
      this.#reading = undefined;
      const { signal } = (this.#loading = new AbortController());
      void loaded(new URL(this.src, this.baseURI).href, signal).then((raw) => {
        if (!signal.aborted) this.#found(source, raw);
      });
    } else if (Object.keys(notation).length) this.#found(source, { notation });
    else if (!coming) this.#found(source, undefined);
  }

  #reader(raw: Source): Found {
    return (more().check ?? plainly)(raw, this);
  }

  #found(source: unknown, raw: Source, found = this.#reader(raw)): void {
    this.#source = source;
    this.#raw = raw;
    this.#reading = found;
    // Whatever cannot be read plainly has to be read in full.
    if (!found.build) wantMore("third");
    this.#publish();
    this.#read?.done();
    this.#read = undefined;
  }

  /** More can be read, and told, than before. */
  renew(): void {
    this.#linking ??= more().link?.(this);
    if (!this.#reading) return;
    this.#reading = this.#reader(this.#raw);
    this.#publish();
  }

  /** What is to be known of attributes that are none of the data, so that they are looked at no oftener than they change. */
  #odd(): string {
    return JSON.stringify([this.getAttributeNames(), this.mode]);
  }

  #publish(): void {
    this.#oddity = this.#odd();
    const { build, findings } = this.#reading!;
    this.#own.publish(build, findings);
    this.#look();
    oversight()?.published(this);
  }

  /** Takes in what the address says about this build, if it says anything new. */
  readonly #look = (): void => this.#linking?.look();

  /** A link that opens the article with the reader's changes in it. */
  link(): string {
    if (!this.#linking) wantMore("third");
    return this.#linking?.link() ?? location.href;
  }

  /** What of the reader's changes a link leaves out, because it is words. */
  leftOut(): readonly Finding[] {
    return this.#linking?.leftOut() ?? [];
  }

  override stateChanged(): void {
    if (this.#linking) this.#linking.changed();
    // What a reader has changed is written into the address.
    else if (this.#own.changed) wantMore("third");
    super.stateChanged();
  }

  protected override update(changed: Map<PropertyKey, unknown>): void {
    super.update(changed);
    this.parts(() => [this.make("slot")]);
    this.#linking?.draw();
  }
}

/** What a file says, or why it cannot be had. */
async function loaded(address: string, signal: AbortSignal): Promise<Source> {
  try {
    const answer = await fetch(address, { signal });
    return answer.ok ? { json: await answer.text() } : { address, found: answer.status };
  } catch (error) {
    return { address, found: (error as Error).message };
  }
}
