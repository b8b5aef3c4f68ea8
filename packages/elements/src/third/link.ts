import { changesFrom, linkCarries, linkOf } from "@meshwright/calc/document";
import { labelAt } from "@meshwright/calc/drivetrain";
import { findingOf, type Finding } from "@meshwright/calc/stages";
import { buildsOf, oversight, type Linking, type MeshwrightElement, type Overseen } from "../shared/element/index.js";
import { hashKey, linkWith, readHash, seekAnchor, writeHash, writeNow } from "../shared/page/index.js";
import { Told } from "./told.js";

/** Whoever opens a link reads lengths in a unit of their own. */
const isReaders = (address: string): boolean => address === "lengths";

/** What the address says about one build, and what it is to say. */
export class BuildLinks implements Linking {
  refused: readonly Finding[] = [];
  readonly #build: Overseen & { readonly permalink?: string | null };
  #key = "";
  #seen: string | undefined;
  readonly #told: Told;

  constructor(build: Overseen) {
    this.#build = build;
    this.#told = new Told(build as Overseen & MeshwrightElement);
  }

  draw(): void {
    this.#told.draw();
  }

  look(): void {
    const build = this.#build;
    const { store } = build;
    const { article } = store;
    if (!article) return;
    seekAnchor();
    const key = hashKey(build.id, buildsOf(build.id).indexOf(build) + 1);
    const text = readHash(key);
    if (this.#key && key !== this.#key && store.arrived && !text) store.arrive({ structure: [], sets: {} });
    this.#key = key;
    if (!text || text === this.#seen) return;
    this.#seen = text;
    const { changes, structure, findings } = changesFrom(text, article);
    this.refused = findings;
    oversight()?.changed(build);
    // What cannot be read takes nothing away.
    const isEmpty = !structure.length && !Object.keys(changes).length;
    if (!isEmpty || !findings.length) store.arrive({ structure, sets: changes });
    this.#told.arrived(!isEmpty, findings.length > 0);
  }

  leftOut(): readonly Finding[] {
    const { article, layer } = this.#build.store;
    const words = Object.keys(layer.sets).filter(
      (address) => article && !isReaders(address) && !linkCarries(article, address),
    );
    return words.map((address) =>
      findingOf("warning", "meaning", "link-words", address, { address: labelAt(article!, address) }),
    );
  }

  #written(): string | undefined {
    const { article, layer } = this.#build.store;
    if (!article) return undefined;
    const sets = Object.entries(layer.sets).filter(([address]) => !isReaders(address) && linkCarries(article, address));
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
    const build = this.#build;
    const bookmark = build
      .closest("article, [role=article], .h-entry, .hentry")
      ?.querySelector<HTMLAnchorElement>("a[rel~=bookmark][href], a.u-url[href]");
    const own = build.permalink ? new URL(build.permalink, build.baseURI).href : bookmark?.href;
    return own ?? location.href;
  }

  link(): string {
    const at = this.#permalink();
    const here = at.split("#")[0] === location.href.split("#")[0];
    return linkWith(at, here ? this.#key : hashKey(this.#build.id, 1), this.#written() ?? "");
  }

  left(): void {
    writeNow();
  }

  changed(): void {
    const { store } = this.#build;
    if (this.#key && !store.arrived && (store.changed || store.canUndo))
      writeHash(this.#key, () => (this.#seen = this.#written()));
  }
}
