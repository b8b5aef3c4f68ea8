import { applyChanges } from "@meshwright/calc/document";
import { valueAt, type Build, type Change, type ChangeSet } from "@meshwright/calc/drivetrain";
import type { Finding } from "@meshwright/calc/stages";
import { evaluate, type Evaluation } from "@meshwright/calc/evaluate";

/** Whatever draws from a store. */
export interface Reader {
  /** The state is another; called once for all changes made in one turn, before the next frame. */
  stateChanged(): void;
}

/** What a reader did to the author's build: changes of structure in their order, then values by address. */
export interface Layer {
  readonly structure: readonly Change[];
  readonly sets: ChangeSet;
  /** A build that came whole, in the place of the author's. */
  readonly whole?: Build | undefined;
}

const nothing: Layer = { structure: [], sets: {} };
const longest = 200;

const same = (one: unknown, other: unknown): boolean => one === other || JSON.stringify(one) === JSON.stringify(other);

/** Puts a value into a layer. What is the author's own is no change; a stage that was replaced whole stays so. */
function put(base: Build, sets: Record<string, unknown>, address: string, value: unknown): void {
  const [id, field, place] = address.split(".") as [string, string?, string?];
  const whole = sets[id] as Record<string, unknown> | undefined;
  if (field && whole && typeof whole === "object") {
    const list = whole[field] as readonly unknown[];
    value = { ...whole, [field]: place ? list.map((one, n) => (n === +place ? value : one)) : value };
    address = id;
  }
  for (const other of Object.keys(sets)) if (other === address || other.startsWith(`${address}.`)) delete sets[other];
  if (!same(valueAt(base, address), value)) sets[address] = value;
}

/**
 * One build of a page: what the author published and, as a layer over it, what the reader changed. Requests go up
 * to it; whatever draws reads from it and is told once a turn when something is different. The author's build is never
 * written to.
 *
 * The public members are a contract between copies of the library on one page; their number stands in `page()`.
 */
export class BuildStore {
  readonly readers = new Set<Reader>();
  /** Findings about the author's document, then about the reader's changes. */
  findings: readonly Finding[] = [];
  /** What the elements of a page ask for and the build does not have: for its author. */
  readonly complaints = new Map<Reader, string>();
  /** Whether the layer came by a link, and nobody has touched it since. */
  arrived = false;

  #article: Build | undefined;
  #build: Build | undefined;
  #layer = nothing;
  #past: Layer[] = [];
  #mode: string | undefined;
  #evaluations = new Map<string, Evaluation | undefined>();
  #values = new Map<string, unknown>();
  #told = true;
  #gesture: unknown;

  /** The build as the author published it. */
  get article(): Build | undefined {
    return this.#article;
  }

  /** The build as it stands: the author's, with the reader's changes. */
  get build(): Build | undefined {
    return this.#build;
  }

  /** The reader's changes. */
  get layer(): Layer {
    return this.#layer;
  }

  /** How many changes that is. */
  get changed(): number {
    const { structure, sets, whole } = this.#layer;
    return structure.length + Object.keys(sets).length + (whole ? 1 : 0);
  }

  get canUndo(): boolean {
    return this.#past.length > 0;
  }

  /** The mode that everything is evaluated in; none: the positions that the build selects. */
  get mode(): string | undefined {
    return this.#mode;
  }

  set mode(mode: string | undefined) {
    if (mode === this.#mode) return;
    this.#mode = mode;
    this.#evaluations.clear();
    this.#different();
  }

  /**
   * The figures of the build as it stands; of the author's with `"article"`, or of one of the author's alternatives.
   * Nothing for a name that the build does not have.
   */
  evaluation(at = ""): Evaluation | undefined {
    const known = this.#evaluations;
    if (!known.has(at)) known.set(at, this.#evaluate(at));
    return known.get(at);
  }

  /** The value at an address of the build as it stands, or of the author's. */
  value(address: string, of: "" | "article" = ""): unknown {
    const build = of ? this.#article : this.#build;
    const key = of + address;
    if (!this.#values.has(key)) this.#values.set(key, build && valueAt(build, address));
    return this.#values.get(key);
  }

  #evaluate(at: string): Evaluation | undefined {
    const article = this.#article;
    const alternative = article?.alternatives?.find((one) => one.id === at);
    let build = at ? article : this.#build;
    if (article && alternative) build = applyChanges(article, alternative.changes).build;
    else if (at && at !== "article") return undefined;
    if (!at && build === article) return this.evaluation("article");
    return build && evaluate(build, build.modes?.some((one) => one.id === this.#mode) ? this.#mode : undefined);
  }

  /** The author's build, or another one of the same author: the reader's changes stay where they still apply. */
  publish(article: Build | undefined, findings: readonly Finding[] = []): void {
    this.#article = article;
    this.findings = findings;
    this.#evaluations.clear();
    this.#build = article;
    const layer = this.#layer;
    this.#layer = nothing;
    if (article && !this.#lay(layer)) {
      const sets: Record<string, unknown> = {};
      for (const [address, value] of Object.entries(layer.sets))
        if (applyChanges(article, { ...sets, [address]: value }).build) sets[address] = value;
      this.#lay({ structure: [], sets });
    }
    this.#different();
  }

  /** Puts a layer in place if the whole of it applies. Values that are the author's own are no change. */
  #lay(layer: Layer): boolean {
    const article = this.#article;
    if (!article) return false;
    const { structure, whole } = layer;
    let build: Build | undefined = whole ?? article;
    if (structure.length) build = applyChanges(build, structure).build;
    if (build && Object.keys(layer.sets).length) build = applyChanges(build, layer.sets).build;
    if (!build) return false;
    this.#build = build;
    this.#layer = layer;
    return true;
  }

  /**
   * What a reader asks for: new values by address, or a change of structure. Changes made in one gesture (a key held
   * down) are undone together.
   *
   * @returns the findings that stand against it; none when it was done
   */
  change(request: ChangeSet | Change, gesture?: unknown): readonly Finding[] {
    const before = this.#layer;
    if (!this.#build) return [];
    const structural = "insert" in request || "remove" in request || "move" in request;
    const { whole } = before;
    let { structure } = before;
    const sets: Record<string, unknown> = { ...before.sets };
    if (structural) {
      structure = [...structure, request as Change];
      if ("remove" in request)
        for (const address of Object.keys(sets)) if (address.split(".")[0] === request.remove) delete sets[address];
    } else {
      const author = whole ?? this.#article!;
      const base = structure.length ? applyChanges(author, structure).build! : author;
      for (const [address, value] of Object.entries(request)) put(base, sets, address, value);
    }
    if (!this.#lay({ structure, sets, whole })) {
      return applyChanges(this.#build, structural ? [request as Change] : (request as ChangeSet)).findings;
    }
    if (gesture === undefined || gesture !== this.#gesture) this.#remember(before);
    this.#gesture = gesture;
    this.#different();
    return [];
  }

  /** Takes the last change back. */
  undo(): void {
    const last = this.#past.pop();
    if (last) this.#return(last);
  }

  /** Back to the author's values; can be undone. */
  reset(): void {
    if (!this.changed) return;
    this.#remember(this.#layer);
    this.#return(nothing);
  }

  /** A reader's version arrives with the address, as changes or whole; the author's values if it is empty. */
  arrive(sets: ChangeSet, whole?: Build): void {
    if (!this.#lay({ structure: [], sets, whole })) return;
    this.arrived = this.changed > 0;
    this.#past = [];
    this.#tell();
  }

  /** An element could not draw what it was asked to; or it can again. */
  complain(reader: Reader, message?: string): void {
    if (this.complaints.get(reader) === message) return;
    if (message) this.complaints.set(reader, message);
    else this.complaints.delete(reader);
    this.#tell();
  }

  #remember(layer: Layer): void {
    this.#past.push(layer);
    if (this.#past.length > longest) this.#past.shift();
  }

  #return(layer: Layer): void {
    this.#gesture = undefined;
    if (!this.#lay(layer)) this.#lay(nothing);
    this.#different();
  }

  #different(): void {
    this.arrived = false;
    this.#tell();
  }

  #tell(): void {
    this.#evaluations.delete("");
    this.#values.clear();
    if (!this.#told) return;
    this.#told = false;
    queueMicrotask(() => {
      this.#told = true;
      for (const reader of this.readers) reader.stateChanged();
    });
  }
}
