import { asPublished, sameLayer, type Edited, type Layer } from "@meshwright/calc/document";
import { valueAt, type Build, type Change, type ChangeSet, type Unit } from "@meshwright/calc/drivetrain";
import type { Evaluation } from "@meshwright/calc/evaluate";
import type { Finding } from "@meshwright/calc/stages";
import { Complaints } from "./complaints.js";
import { engineNow } from "./engine.js";

/** Whatever draws from a store. */
export interface Follower {
  /** The state is another; called once for all changes made in one turn, before the next frame. */
  stateChanged(): void;
}

const unchanged: Layer = { structure: [], sets: {} };
const longest = 200;

/**
 * One build of a page: what the author published and, as a layer over it, what the reader changed. Requests go up
 * to it; whatever draws reads from it and is told once a turn when something is different. The author's build is never
 * written to.
 *
 * The public members are a contract between copies of the library on one page; their number stands in `page()`.
 */
export class BuildStore {
  readonly followers = new Set<Follower>();
  readonly complaints = new Complaints();
  /** Whether the layer came by a link, and nobody has touched it since. */
  arrived = false;

  #article: Build | undefined;
  #authors: readonly Finding[] = [];
  #dropped: readonly Finding[] = [];
  #state: Edited | undefined;
  /** A layer that waits for a build to lie over. */
  #waiting = unchanged;
  #past: (readonly [article: Build, state: Edited])[] = [];
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
    return this.#state?.build;
  }

  /** The reader's changes: no more than differs from the author's, sets whole. Another object where anything is different. */
  get layer(): Layer {
    return this.#state?.layer ?? unchanged;
  }

  /** The reader's changes of values by what belongs together: a set is one. */
  get units(): readonly Unit[] {
    return this.#state ? engineNow().unitsOf(this.#state.base, this.#state.layer.sets) : [];
  }

  /** How many changes the reader made: each of structure, each value, each set. */
  get changed(): number {
    return this.layer.structure.length + this.units.length;
  }

  get canUndo(): boolean {
    return this.#past.length > 0;
  }

  /** Findings about the author's document. */
  get articleFindings(): readonly Finding[] {
    return this.#authors;
  }

  /** Findings about the author's document, then about the reader's changes. */
  get findings(): readonly Finding[] {
    return [...this.#authors, ...this.notes];
  }

  /** What the reader should know of their changes: what went along with a stage, what could not be kept when the author published again. */
  get notes(): readonly Finding[] {
    return [...this.#dropped, ...(this.#state?.gone ?? [])];
  }

  /** The mode that everything is evaluated in; none: the positions that the build selects. */
  get mode(): string | undefined {
    return this.#mode;
  }

  set mode(mode: string | undefined) {
    if (mode === this.#mode) return;
    this.#mode = mode;
    this.#evaluations.clear();
    this.#tell();
  }

  /**
   * The figures of the build as it stands, or of a version of the author's: `"article"`, an alternative, an earlier revision, a
   * reference. Nothing for a name that the build does not have.
   */
  evaluation(at = ""): Evaluation | undefined {
    const known = this.#evaluations;
    if (!known.has(at)) known.set(at, this.#evaluate(at));
    return known.get(at);
  }

  /** What is held against, by its name: a version, or another build that the page has. `at` is what it is held against. */
  against(id: string, at = ""): Evaluation | undefined {
    return this.evaluation(id) ?? engineNow().elsewhere?.(this, id, at);
  }

  /** The value at an address of the build as it stands, or of the author's. */
  value(address: string, of: "" | "article" = ""): unknown {
    const build = of ? this.#article : this.build;
    const key = of + address;
    if (!this.#values.has(key)) this.#values.set(key, build && valueAt(build, address));
    return this.#values.get(key);
  }

  #evaluate(at: string): Evaluation | undefined {
    const article = this.#article;
    const engine = engineNow();
    const build = at ? article && engine.version(article, at) : this.build;
    if (!at && build === article) return this.evaluation("article");
    return build && engine.evaluate(build, build.modes?.some((one) => one.id === this.#mode) ? this.#mode : undefined);
  }

  /**
   * The author's build, or another one of the same author: the reader's changes stay where they still apply, and `notes`
   * tells which do not.
   */
  publish(article: Build | undefined, findings: readonly Finding[] = []): void {
    const layer = this.#state?.layer ?? this.#waiting;
    this.#article = article;
    this.#authors = findings;
    this.#evaluations.clear();
    this.#gesture = undefined;
    if (article) this.#lay(article, layer);
    else {
      this.#waiting = layer;
      this.#state = undefined;
    }
    this.#tell();
  }

  /**
   * Takes a build for the author's as it stands, with no changes over it and nothing to take back: for whoever keeps the
   * build elsewhere, and has taken the reader's changes over.
   */
  adopt(article: Build, findings: readonly Finding[] = []): void {
    this.#article = article;
    this.#authors = findings;
    this.#evaluations.clear();
    this.#past = [];
    this.#dropped = [];
    this.#waiting = unchanged;
    this.#touched(asPublished(article));
  }

  /** Puts over the author's build what applies of a layer. */
  #lay(article: Build, layer: Layer): void {
    const { dropped, ...state } = engineNow().layOver(article, layer, this.build);
    this.#waiting = unchanged;
    this.#state = state;
    this.#dropped = dropped;
    this.arrived &&= this.changed > 0;
  }

  /**
   * What a reader asks for: new values by address, or a change of structure. Changes made in one gesture (a key held
   * down) are undone together.
   *
   * @returns the findings that stand against it; none when it was done, or when it changes nothing
   */
  change(request: ChangeSet | Change, gesture?: unknown): readonly Finding[] {
    const before = this.#state;
    const article = this.#article;
    const now = engineNow().edited(article, before, request);
    if (!now.ok) return now.findings.filter(({ severity }) => severity === "error");
    if (!before || sameLayer(now.layer, before.layer)) return [];
    const begun = this.#past.at(-1)?.[1];
    if (gesture === undefined || gesture !== this.#gesture) this.#remember();
    else if (begun && sameLayer(begun.layer, now.layer)) {
      // A gesture that is back where it began has left nothing to take back.
      this.#past.pop();
      gesture = undefined;
    }
    this.#touched(now, gesture);
    return [];
  }

  /** Takes the last gesture back. */
  undo(): void {
    const article = this.#article;
    const before = this.layer;
    if (!article || !this.canUndo) return;
    let state: Edited;
    do {
      const [of, then] = this.#past.pop()!;
      state = of === article ? then : engineNow().layOver(article, then.layer);
      // What the author has published since may have left nothing of a gesture.
    } while (this.canUndo && sameLayer(state.layer, before));
    this.#touched(state);
  }

  /** Back to the author's values; can be undone. */
  reset(): void {
    if (!this.changed || !this.#article) return;
    this.#remember();
    this.#touched(asPublished(this.#article));
  }

  /** The reader has done something. */
  #touched(state: Edited, gesture?: unknown): void {
    this.#state = state;
    this.#gesture = gesture;
    this.#dropped = [];
    this.arrived = false;
    this.#tell();
  }

  /**
   * A reader's version arrives with the address: what applies of it takes the place of all changes made here. These come back
   * with `undo`. The author's values if it is empty.
   */
  arrive(layer: Layer): void {
    if (!this.#article) return;
    if (this.changed && !this.arrived) this.#remember();
    this.#lay(this.#article, layer);
    this.arrived = this.changed > 0;
    this.#gesture = undefined;
    this.#tell();
  }

  /** What stands against what an element asks for; or, with nothing, all is well again or it is gone. */
  complain(whom: object, findings?: readonly Finding[]): void {
    this.complaints.from(whom, findings);
  }

  #remember(): void {
    this.#past.push([this.#article!, this.#state!]);
    if (this.#past.length > longest) this.#past.shift();
  }

  #tell(): void {
    this.#evaluations.delete("");
    this.#values.clear();
    if (!this.#told) return;
    this.#told = false;
    queueMicrotask(() => {
      this.#told = true;
      for (const follower of this.followers) follower.stateChanged();
    });
  }
}
