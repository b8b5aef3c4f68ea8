import { changesOf, sameSet, setOf, type ChangeSet, type GearSet } from "@meshwright/calc/drivetrain";
import { fill } from "@meshwright/calc/languages";
import type { Stage } from "@meshwright/calc/stages";
import { countWords } from "../../languages/counts.js";
import {
  authorsText,
  isWrapped,
  InlineElement,
  more,
  nameOf,
  properties,
  inSentence,
  readCount,
  sameText,
  standsForValue,
  wantMore,
  writeCount,
  type CountState,
  type Tray,
} from "../../shared/element/index.js";
import { wordsThere } from "../../shared/tables/index.js";

const highest = 1_000_000;
let narrow: MediaQueryList | undefined;
/** Where a thumb works: there is a strip of keys then, and no keyboard before it is asked for. */
const isNarrow = (): boolean =>
  !!(narrow ??= globalThis.matchMedia?.("(max-width: 560px), (pointer: coarse)"))?.matches;
const keyboard = (): string => (isNarrow() ? "none" : "numeric");
const steps: Readonly<Record<string, number>> = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 };

/**
 * A tooth count in a sentence that a reader can change; or, where two gears are sold as a set, a choice among the sets that
 * can be had.
 *
 * @attr of - the address: `primary.driver`, `row.teeth.1`; for a set the stage's id, or either count
 * @attr label - its name, where the gear's own is not the one to say
 * @attr min - the lowest count that a reader may try; 1 where not said
 * @attr max - the highest count that a reader may try
 * @attr free - a set's counts may be changed one by one
 * @fires {CustomEvent<ChangeSet | Change>} mw-change - what the reader changed: new values by address
 * @csspart count - the count
 * @csspart tray - the keys
 */
export class MwTeeth extends InlineElement {
  static override readonly tag = "mw-teeth";
  static override styles = [properties, inSentence];
  static override properties = {
    of: {},
    label: {},
    min: {},
    max: {},
    free: { type: Boolean },
    passed: { state: true },
    open: { state: true },
    draft: { state: true },
    message: { state: true },
  };

  declare of: string | null;
  declare label: string | null;
  declare min: string | number | null;
  declare max: string | number | null;
  declare free: boolean | null;
  /** Whether the tab key passes it by: where something around it leads to it. */
  declare passed: boolean | null;
  declare private open: "tray" | "strip" | undefined;
  declare private draft: string | undefined;
  declare private message: (() => string) | undefined;

  /** What the store says at the address, and what the article says. */
  #value: unknown;
  #article: unknown;
  #fitted: GearSet | undefined;
  #gesture: object | undefined;
  /** Whether the field has been tapped since it has the focus. */
  #tapped = false;
  #asking = false;
  #isLeaving = false;
  /** The published text that the author's own was found to say; nothing where it says something else. */
  #right: string | undefined;
  #hides = false;
  #inside: string | undefined;
  #tray: Tray | undefined;
  /** Whether a reader has changed it, or tried to. */
  #isUsed = false;
  #hosts: Pick<CountState, "choice" | "keys"> | undefined;
  /** The text's place under what lies over it, what is drawn in it, and the field: each made when it is wanted. */
  #under: HTMLElement | undefined;
  #shown: HTMLElement | undefined;
  #input: HTMLInputElement | undefined;
  /** Whether it was marked as another than the article's. */
  #isMarked = false;

  get #words(): typeof countWords {
    return wordsThere("words", countWords, this.locale);
  }

  get #address(): string {
    return this.of ?? "";
  }

  get #count(): number {
    return Number(this.store!.value(this.#address));
  }

  get #name(): string {
    const { label, current, locale } = this;
    return label || (more().nameOf?.(current!, this.#address, locale) ?? nameOf(current!, this.#address, this.#words));
  }

  get #lowest(): number {
    return Math.max(1, Math.ceil(Number(this.min)) || 1);
  }

  get #highest(): number {
    return Math.min(highest, Math.floor(Number(this.max)) || highest);
  }

  /** Takes in what the store says; answers whether there is something else to draw: another count, or another one of its set. */
  #takeIn(): boolean {
    const { store } = this;
    const [value, article] = [store?.value(this.#address), store?.value(this.#address, "article")];
    const fitted = store && setOf(this.#stage());
    const other = this.#value !== value || this.#article !== article || !sameSet(this.#fitted, fitted);
    this.#value = value;
    this.#article = article;
    this.#fitted = fitted;
    return other;
  }

  override stateChanged(): void {
    const { article } = this.store ?? {};
    const isAnew = this.#seen !== article;
    this.#seen = article;
    // The first drawing looks at all of it.
    if (!this.hasUpdated) return;
    const isOther = this.#takeIn();
    const isUnjudged =
      isAnew && (this.#judged !== (this.#article ?? this.#value) || this.#inside !== authorsText(this));
    if (isUnjudged) this.#judge();
    const isRenamed = isAnew && this.current && this.#named !== this.#name;
    if (isOther || isUnjudged || isRenamed || this.open) super.stateChanged();
  }

  /** The author's build, when this was told of it last. */
  #seen: unknown;
  /** The value that the author's text was held against. */
  #judged: unknown;
  /** What it was called when it was drawn last. */
  #named: string | undefined;

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (!this.hasUpdated || changed.has("of") || changed.has("free")) this.#judge();
    else this.#takeIn();
  }

  override contentChanged(): void {
    this.#judge();
    super.contentChanged();
  }

  /** Looks at what stands inside. */
  #judge(): void {
    this.#inside = authorsText(this);
    this.#takeIn();
    const published = this.#text((this.#judged = this.#article ?? this.#value));
    this.#right = published !== undefined && sameText(this.#inside, published) ? published : undefined;
    // What says the same is known by that, whatever stands around it.
    this.#hides = this.#right !== undefined || (published !== undefined && standsForValue(this, published));
  }

  /** What was right stays shown when something wraps it; what the author writes is judged. */
  readonly #slotted = (): void => {
    if (authorsText(this) === this.#inside || (this.#right !== undefined && isWrapped(this))) return;
    this.contentChanged();
  };

  get #isCount(): boolean {
    return typeof this.#value === "number" && !this.#isSet;
  }

  /** Whether both counts of a set are one value here. */
  get #isSet(): boolean {
    return !!this.#fitted && !this.free;
  }

  #write(value: number): string {
    return writeCount(value, this.locale);
  }

  // Requests

  #ask(changes: ChangeSet, gesture?: unknown): void {
    const before = this.store?.layer;
    const findings = this.change(changes, gesture);
    this.draft = undefined;
    const [found] = findings;
    this.message =
      found &&
      (() => fill(this.#words.kept, more().findingText?.(found, this.locale) ?? found.message, this.#text() ?? ""));
    if (before !== this.store?.layer || this.message) this.#announce();
  }

  #announce(): void {
    this.#isUsed = true;
    more().announce?.(this.renderRoot as ShadowRoot, () => this.message?.() ?? this.#tray?.outcome() ?? "");
  }

  /** Takes a count, or says why not and keeps the last good one. */
  #take(value: number | undefined, gesture?: unknown): void {
    if (value !== undefined && value >= this.#lowest && value <= this.#highest) {
      this.message = undefined;
      this.draft = undefined;
      if (value !== this.#count) this.#ask(this.#changes(value), gesture);
      return;
    }
    this.draft = undefined;
    const over = value !== undefined && value > this.#highest;
    this.message = () =>
      fill(
        over ? this.#words.most : this.#words.wholeOnly,
        this.#write(over ? this.#highest : this.#lowest),
        this.#text() ?? "",
      );
    this.#announce();
  }

  /** The stage that the address belongs to. */
  #stage(): Stage | undefined {
    const value = this.store!.value(this.#address.split(".")[0]!);
    return (value as Partial<Stage> | undefined)?.kind ? (value as Stage) : undefined;
  }

  /** Where the author lets a set's counts be any, the others of it come along: a set is never changed in part. */
  #changes(value: number): ChangeSet {
    const [id] = this.#address.split(".") as [string];
    const stage = this.#stage();
    return stage ? changesOf(stage, { [this.#address.slice(id.length + 1)]: value }) : { [this.#address]: value };
  }

  #step(by: number, gesture?: unknown): void {
    const from = (this.draft === undefined ? undefined : readCount(this.draft)) ?? this.#count;
    const to = from + by;
    // Ten at a time stops at the end; one more than the end is refused.
    this.#take(Math.abs(by) > 1 ? Math.min(Math.max(to, this.#lowest), this.#highest) : to, gesture);
  }

  #commit(): void {
    if (this.draft !== undefined) this.#take(readCount(this.draft));
  }

  // Handlers

  readonly #focused = (event: FocusEvent): void => {
    this.#isLeaving = false;
    if (this.open) return;
    this.#show();
    this.#tapped = false;
    (event.target as HTMLInputElement).select();
  };

  #show(): void {
    this.open ??= isNarrow() ? "strip" : "tray";
  }

  /** Who moves the count takes the focus away, and by the end of this turn it may be back. */
  readonly #left = (): void => {
    if (this.#asking) return;
    this.#isLeaving = true;
    queueMicrotask(this.#gone);
  };

  readonly #gone = (): void => {
    if (!this.#isLeaving) return;
    this.#isLeaving = false;
    if (this.#field) this.#field.inputMode = keyboard();
    const { message } = this;
    if (this.store) this.#commit();
    this.draft = this.open = undefined;
    if (this.message === message) this.message = undefined;
    // What is refused as it is left is there long enough to be read.
    else setTimeout(() => this.open || (this.message = undefined), 6000);
  };

  readonly #clicked = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    // The first tap brings the strip, the second one the keyboard, which comes with the focus.
    if (this.#tapped && this.open === "strip" && input.inputMode === "none") {
      this.#asking = true;
      input.inputMode = "numeric";
      input.blur();
      input.focus();
      this.#asking = false;
    }
    this.#tapped = true;
    this.#show();
    if (this.draft === undefined) input.select();
  };

  readonly #typed = (event: InputEvent): void => {
    // Nothing of ours may look like a host's own field being typed in.
    event.stopPropagation();
    this.draft = (event.target as HTMLInputElement).value;
  };

  readonly #pressed = (event: KeyboardEvent): void => {
    const { key } = event;
    if (event.isComposing || event.keyCode === 229) return;
    if ((event.ctrlKey || event.metaKey) && key === "z" && this.draft === undefined) this.store?.undo();
    else if (event.ctrlKey || event.metaKey || event.altKey) return;
    else if (key in steps) {
      this.#gesture = event.repeat && this.#gesture ? this.#gesture : {};
      this.#step(steps[key]!, this.#gesture);
    } else if (key === "Home") this.#take(this.#lowest);
    else if (key === "End" && this.#highest < highest) this.#take(this.#highest);
    else if (key === "Enter") {
      this.#commit();
      // What is typed next takes its place.
      if (this.open) (event.target as HTMLInputElement).select();
    } else if (key === "Escape" && this.open) this.draft = this.message = this.open = undefined;
    // A space means nothing in a count, and something in a summary around it.
    else if (key !== " ") return this.#ownKey(event);
    event.preventDefault();
    event.stopPropagation();
  };

  /** Keys that write or move the caret are no short cuts of the page's. */
  readonly #ownKey = (event: KeyboardEvent): void => {
    if (!/^(Tab|Escape|F\d+)$/.test(event.key)) event.stopPropagation();
  };

  /** The keys take no focus, and a link around the sentence is not followed. */
  readonly #refuse = (event: Event): void => event.preventDefault();

  readonly #undo = (): void => {
    this.store?.undo();
    this.message = undefined;
    this.#announce();
  };

  readonly #stop = (event: Event): void => event.stopPropagation();

  // Drawing

  /** A value as text: a count, or all counts of a set; nothing where that cannot be said yet. */
  #text(value = this.#value): string | undefined {
    if (typeof value === "number") return this.#write(value);
    const set = typeof value === "object" ? setOf(value as Stage) : undefined;
    return set && more().setText?.(set, this.locale);
  }

  #make() {
    const root = this.make("span");
    const slot = this.make("slot");
    root.setAttribute("part", "count");
    if (this.isReady) this.#listen(root, slot);
    root.append(slot);
    return [root, slot] as const;
  }

  /** Where the text stands: by itself, or under what lies over it. */
  #home(root: HTMLElement): HTMLElement {
    return this.#under?.parentNode === root ? this.#under : root;
  }

  /** A field or a choice lies over the text from here on, and says it. */
  #cover(root: HTMLElement, slot: HTMLElement): void {
    if (this.#home(root) !== root) return;
    const under = (this.#under = this.make("span"));
    under.className = "text";
    under.ariaHidden = "true";
    for (const one of [this.#shown, slot]) if (one?.parentNode === root) under.append(one);
    root.prepend(under);
    root.classList.replace("text", "over");
  }

  #listen(root: HTMLElement, slot: HTMLSlotElement): void {
    slot.addEventListener("slotchange", this.#slotted);
    root.addEventListener("click", this.#refuse);
  }

  #makeField(): HTMLInputElement {
    const input = this.make("input");
    for (const [name, value] of Object.entries(fieldAttributes)) input.setAttribute(name, value);
    for (const [name, handle] of Object.entries({
      focus: this.#focused,
      blur: this.#left,
      click: this.#clicked,
      input: this.#typed,
      change: this.#stop,
      keydown: this.#pressed,
      keypress: this.#ownKey,
      keyup: this.#ownKey,
    }))
      input.addEventListener(name, handle as EventListener);
    return input;
  }

  /** What is drawn in the place of the author's text: made when there is something. */
  #draw(home: HTMLElement, drawn: string): void {
    if (this.#shown?.parentNode !== home) {
      if (!drawn) return;
      home.prepend((this.#shown = this.make("span")));
    }
    if (this.#shown.textContent !== drawn) this.#shown.textContent = drawn;
  }

  /** Where keys and choices are drawn: made for a count that somebody has taken up. */
  #hostsIn(root: HTMLElement): Pick<CountState, "choice" | "keys"> {
    const hosts = { choice: this.make("span"), keys: this.make("span") };
    root.append(hosts.choice, hosts.keys);
    return (this.#hosts = hosts);
  }

  get #field(): HTMLInputElement | null | undefined {
    return (this.renderRoot as ShadowRoot | undefined)?.querySelector("input");
  }

  /** Nobody sees the field over the text; what has come in meanwhile is looked at now. */
  protected override ready(): void {
    const [root, slot] = this.parts(() => this.#make());
    this.#listen(root, slot);
    this.#slotted();
    this.#drawField();
  }

  /** The field is what a page that focuses the count means. */
  override focus(options?: FocusOptions): void {
    this.makeReady();
    const field = this.#field ?? (this.renderRoot as ShadowRoot | undefined)?.querySelector("select");
    if (field) field.focus(options);
    else super.focus(options);
  }

  /** Lists are put into another order by moving what stands in them: focus and caret come along. */
  override connectedCallback(): void {
    super.connectedCallback();
    const field = this.#field;
    if (!this.open || !field || document.activeElement !== document.body) return;
    const { selectionStart, selectionEnd } = field;
    field.focus({ preventScroll: true });
    field.setSelectionRange(selectionStart, selectionEnd);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    if (this.open) this.#left();
  }

  protected override update(changed: Map<PropertyKey, unknown>): void {
    super.update(changed);
    const [root, slot] = this.parts(() => this.#make());
    const said = this.#text();
    const isCount = this.#isCount;
    const isSet = this.#isSet && said !== undefined;
    const isThere = isCount || isSet;
    const { draft } = this;
    const article = this.#article;
    const published = article === this.#value ? said : article === undefined ? undefined : this.#text(article);
    const differs = isThere && published !== undefined && published !== said;
    if (isSet) this.#cover(root, slot);
    const home = this.#home(root);
    const covered = home === root ? "text" : "over";
    root.className = `root ${covered}${differs ? " changed" : ""}${draft === undefined ? "" : " typing"}`;
    // What the author wrote stands under the field while it is right; what is drawn, in a place of its own.
    const isOwn = isThere && draft === undefined && said === this.#right;
    if (isOwn) slot.parentNode === home || home.prepend(slot);
    else if (slot.parentNode !== root.parentNode) root.after(slot);
    root.hidden = !isThere;
    slot.hidden = isThere && !isOwn && this.#hides;
    const drawn = !isThere || isOwn ? "" : draft === undefined ? said! : draft || "\u2002";
    this.#draw(home, drawn);
    if (differs || this.#isMarked) more().mark?.(this, root, differs ? published : undefined);
    this.#isMarked = differs;
    if (this.isReady) this.#drawField();
    if (this.#hosts?.keys.parentNode !== root) this.#hosts = this.#tray = undefined;
    // Nothing stands around a count that nobody has taken up.
    const isWanted = this.#tray || this.#isUsed || this.open || isSet;
    const { tray } = more();
    if (tray && isThere && isWanted) (this.#tray ??= tray(this.#state(this.#hostsIn(root)))).draw();
    if (this.#isSet && !this.#tray) wantMore("second");
  }

  #drawField(): void {
    const [root, slot] = this.parts(() => this.#make());
    if (!this.#isCount) return this.#input?.remove();
    this.#cover(root, slot);
    const input = (this.#input ??= this.#makeField());
    if (input.parentNode !== root) this.#home(root).after(input);
    const { draft, message } = this;
    const said = this.#text()!;
    input.inputMode = this.open ? input.inputMode : keyboard();
    setAttributes(input, {
      tabindex: this.passed ? "-1" : undefined,
      "aria-label": fill(this.#words.teeth, (this.#named = this.#name)),
      "aria-valuenow": String(this.#count),
      "aria-valuemin": String(this.#lowest),
      "aria-valuemax": this.#highest < highest ? String(this.#highest) : undefined,
      "aria-valuetext": said,
      "aria-invalid": message ? "true" : undefined,
      "aria-describedby": message ? "message" : undefined,
    });
    if (draft !== undefined || input.value === said) return;
    input.value = said;
    // Some engines give a field the focus that is chosen in.
    if (this.open && !this.#isLeaving) input.select();
  }

  #state({ choice, keys }: Pick<CountState, "choice" | "keys">): CountState {
    const own = (): MwTeeth => this;
    return {
      element: this,
      root: this.renderRoot as ShadowRoot,
      choice,
      keys,
      get name() {
        return own().#name;
      },
      get text() {
        return own().#text() ?? "";
      },
      get open() {
        return own().open;
      },
      get message() {
        return own().message?.();
      },
      get build() {
        return own().current;
      },
      get store() {
        return own().store;
      },
      get address() {
        return own().#address;
      },
      get passed() {
        return !!own().passed;
      },
      get isSet() {
        return own().#isSet;
      },
      step: (by) => this.#step(by),
      undo: this.#undo,
      take: (set) => this.#ask(changesOf(this.#stage()!, set)),
    };
  }
}

const fieldAttributes = {
  type: "text",
  role: "spinbutton",
  autocomplete: "off",
  autocorrect: "off",
  spellcheck: "false",
  enterkeyhint: "done",
};

function setAttributes(element: Element, attributes: Readonly<Record<string, string | undefined>>): void {
  for (const [name, value] of Object.entries(attributes))
    if (value === undefined) element.removeAttribute(name);
    else if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}
