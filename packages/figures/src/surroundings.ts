import { holderIn, type Inside } from "@meshwright/calc/article";
import { canonicalLocale } from "@meshwright/calc/languages";
import { elementsIn, enclosing, isElement, type Article, type Element, type Holder } from "./article.js";

/** Builds of one name, in the order of the document, and what was found out about who holds one of them. */
interface Named {
  readonly builds: Element[];
  readonly known: Map<Holder, Inside<Element> | undefined>;
}

/** The scripts that hold builds as JSON, by their builds: the first of each that is its own and no inner one's. */
function scriptsIn(elements: readonly Element[]): ReadonlyMap<Element, Element> {
  const scripts = new Map<Element, Element>();
  for (const one of elements) {
    if (one.tag !== "script" || !(one.attributes.type ?? "").toLowerCase().endsWith("json")) continue;
    const owner = enclosing(one, ({ tag }) => tag === "mw-build");
    if (owner && !scripts.has(owner)) scripts.set(owner, one);
  }
  return scripts;
}

/** How many elements begin before a place in the document. */
function countBefore(order: number, elements: readonly Element[]): number {
  let [low, high] = [0, elements.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (elements[middle]!.order < order) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** What an article's elements have around them: builds and languages. Each is looked for once. */
export class Surroundings {
  /** The elements that hold builds, in the order of the document. */
  readonly builds: readonly Element[];
  readonly #scripts: ReadonlyMap<Element, Element>;
  readonly #locales = new Map<Holder, string>();
  /** The last element inside each. */
  readonly #ends = new Map<Holder, number>();
  /** By their ids, and all of them without one. */
  readonly #named = new Map<string, Named>();

  constructor(article: Article) {
    const elements = [...elementsIn(article)];
    this.#scripts = scriptsIn(elements);
    this.builds = elements.filter(({ tag, foreign }) => tag === "mw-build" && !foreign);
    this.#ends.set(article, elements.length);
    for (const element of elements.toReversed()) {
      const last = element.children.findLast(isElement);
      this.#ends.set(element, last ? this.#ends.get(last)! : element.order);
    }
    for (const one of elements) {
      const { lang } = one.attributes;
      this.#locales.set(one, lang ? canonicalLocale(lang) : (this.#locales.get(one.parent) ?? "en"));
    }
    for (const build of this.builds)
      for (const name of new Set(["", build.attributes.id ?? ""])) {
        const known = this.#named.get(name);
        if (known) known.builds.push(build);
        else this.#named.set(name, { builds: [build], known: new Map() });
      }
  }

  /** The script that holds a build as JSON, if there is one. */
  scriptOf(build: Element): Element | undefined {
    return this.#scripts.get(build);
  }

  /** The language that an element stands in. */
  localeOf(element: Element): string {
    return this.#locales.get(element) ?? "en";
  }

  /** The build that an element belongs to, by the page's own rule; or, by a name, another one as it would be looked for from there. */
  buildOf(element: Element, name = element.attributes.build ?? ""): Element | undefined {
    const named = this.#named.get(name);
    if (!named) return undefined;
    const { builds: holders, known } = named;
    const inside = (node: Holder): Inside<Element> => {
      const start = isElement(node) ? node.order : 0;
      return {
        holders,
        from: countBefore(start, holders),
        until: countBefore(this.#ends.get(node)! + 1, holders),
      };
    };
    const order = (node: Holder) => (isElement(node) ? node.order : -1);
    const tree = {
      parent: (node: Holder) => (isElement(node) ? node.parent : undefined),
      isBefore: (node: Holder, other: Holder) => order(node) < order(other),
    };
    return holderIn<Holder, Element>(tree, inside, element, known);
  }
}
