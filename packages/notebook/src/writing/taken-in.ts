import { standsForBlock, type Content } from "@meshwright/calc/article";
import { DOMParser as PostParser, type Node as PostNode } from "prosemirror-model";
import { renamed } from "./notation.js";
import { blocks, boxes, isHarmless, keptName, phrases, schema } from "./schema.js";

/** What could not be taken in of a page, by what it is called, and how many there were. */
export type Left = ReadonlyMap<string, number>;

const ownAttributes: Readonly<Record<string, readonly string[]>> = {
  a: ["href", "title"],
  img: ["src", "alt", "title"],
  ol: ["start"],
};
/** Attributes of a figure that ask for nothing. */
const figureOwn = /^(class|style|id|contenteditable|draggable)$|[^a-z-]/;
const plain = /^(p|h[1-6]|blockquote|ul|ol|li|br|img|a|em|i|strong|b)$/;
/** What ends a line of words wherever it stands. */
const ofBlocks = /^(table|figure|details|dl|form|fieldset|hgroup|pre|hr|menu|dialog|search|center|noscript)$/;
const isPhrase = (tag: string): boolean => phrases.includes(tag);
const isFigure = (tag: string): boolean => tag === "mw-teeth" || tag === "mw-value";

/** Elements that say something to the page and nothing to a reader, and what they are called. */
const pagesOwn: Readonly<Record<string, string>> = {
  script: "script",
  style: "style sheet",
  link: "style sheet",
  base: "word to the page itself",
  meta: "word to the page itself",
  template: "template",
};

/** A page made ready for the editor: what that knows keeps its attributes, all else is kept as it stands. */
class Making {
  readonly left = new Map<string, number>();
  readonly #own: string | null;

  /** @param own the id of the drivetrain that goes into the notebook */
  constructor(own: string | null) {
    this.#own = own;
  }

  #leave(what: string): void {
    this.left.set(what, (this.left.get(what) ?? 0) + 1);
  }

  /** Takes away what would run, or speak for the page. */
  clean(root: Element): void {
    for (const element of root.querySelectorAll("*")) {
      const tag = element.localName;
      if (Object.hasOwn(pagesOwn, tag)) {
        this.#leave(pagesOwn[tag]!);
        element.remove();
      } else if (tag === "mw-build") {
        this.#leave("further drivetrain");
        element.replaceWith(...element.childNodes);
      } else
        for (const { name, value } of [...element.attributes])
          if (!isHarmless(name, value)) {
            this.#leave("attribute that would run something");
            element.removeAttribute(name);
          }
    }
  }

  #keep(element: Element, isTaken: (name: string) => boolean): void {
    const rest = [...element.attributes].filter(({ name }) => isTaken(name)).map(({ name, value }) => [name, value]);
    if (rest.length) element.setAttribute(keptName, JSON.stringify(Object.fromEntries(rest)));
  }

  /** As it stands, as one thing. */
  #whole(node: ChildNode, isInline: boolean): void {
    const document = node.ownerDocument!;
    const place = document.createElement(isInline ? "span" : "div");
    const html = node.nodeType === 8 ? `<!--${node.nodeValue}-->` : (node as Element).outerHTML;
    place.setAttribute(`${keptName}-html`, html);
    node.replaceWith(place);
  }

  /** A tag that closed itself has swallowed what follows it: that stands behind it again. */
  #freeSwallowed(element: Element): void {
    const { localName: tag, childNodes } = element;
    const inside = [...childNodes].map((node): Content => {
      const isElement = node.nodeType === 1;
      return {
        tag: isElement ? (node as Element).localName : "",
        text: node.nodeType === 8 ? "" : (node.textContent ?? ""),
        holds: isElement && (node as Element).childElementCount > 0,
      };
    });
    const text = inside.map((one) => one.text).join("");
    const isOwn = isFigure(tag)
      ? text.length <= 80 &&
        !/^\s*[,.;:!?)\]]|^ \p{L}/u.test(text) &&
        inside.every((one) => !one.tag || isPhrase(one.tag) || plain.test(one.tag))
      : standsForBlock(inside) || inside.every((one) => !one.text.trim() || /^(table|p)$/.test(one.tag));
    if (!isOwn) element.after(...childNodes);
  }

  /** What stands inside of an element. */
  inside(parent: Element, isInline: boolean): void {
    // What stands among words is part of their line.
    const isLine =
      isInline ||
      [...parent.childNodes].some(
        (node) =>
          (node.nodeType === 3 && !!node.nodeValue?.trim()) ||
          (node.nodeType === 1 && (isPhrase((node as Element).localName) || isFigure((node as Element).localName))),
      );
    for (let node = parent.firstChild; node;) {
      const next: ChildNode | null = this.#one(node, isLine, /^(ul|ol)$/.test(parent.localName));
      node = next;
    }
  }

  /** One node; answers with the one to go on with. */
  #one(node: ChildNode, isLine: boolean, isInList: boolean): ChildNode | null {
    const next = node.nextSibling;
    if (node.nodeType === 8 && !isInList) this.#whole(node, isLine);
    if (node.nodeType !== 1) return next;
    const element = node as Element;
    const tag = element.localName;
    const rest = (taken: readonly string[] = []): void => this.#keep(element, (name) => !taken.includes(name));
    if (isFigure(tag) || Object.hasOwn(blocks, tag)) {
      const of = element.getAttribute("build");
      if (of !== null && of !== this.#own) {
        this.#whole(element, isFigure(tag));
        return next;
      }
      element.removeAttribute("build");
      this.#freeSwallowed(element);
      this.#keep(element, (name) => figureOwn.test(name));
      return element.nextSibling;
    }
    const isBare = !element.attributes.length;
    if (tag === "pre" ? isBare && this.#isPlainCode(element) : /^(hr|code)$/.test(tag) && isBare) {
      if (tag === "code") this.inside(element, true);
      return next;
    }
    if (
      plain.test(tag) &&
      !(tag === "img" && !element.hasAttribute("src")) &&
      !(tag === "a" && !element.hasAttribute("href"))
    ) {
      rest(ownAttributes[tag]);
      this.inside(element, !/^(blockquote|ul|ol|li)$/.test(tag));
    } else if (
      isPhrase(tag) &&
      !element.querySelector("p, div, ul, ol, table, blockquote, pre, h1, h2, h3, h4, h5, h6")
    ) {
      if (tag === "span" && isBare) {
        const first = element.firstChild;
        element.replaceWith(...element.childNodes);
        return first ?? next;
      }
      rest();
      this.inside(element, true);
    } else if (boxes.includes(tag)) {
      rest();
      this.inside(element, false);
    } else this.#whole(element, isLine && !ofBlocks.test(tag));
    return next;
  }

  #isPlainCode(element: Element): boolean {
    const [code, ...others] = element.childNodes;
    const isCode = (code as Element | undefined)?.localName === "code" && !(code as Element).attributes.length;
    return isCode && !others.length && !(code as Element).childElementCount;
  }
}

/**
 * A page whose drivetrain is that of a notebook, in other ids: it speaks in the notebook's from now on.
 *
 * @param ids the notebook's by those of the page
 */
export function renameIn(body: HTMLElement, ids: ReadonlyMap<string, string>): void {
  for (const element of body.querySelectorAll("*"))
    for (const name of element.localName.startsWith("mw-") ? ["of", "with"] : []) {
      const asked = element.getAttribute(name);
      if (asked !== null) element.setAttribute(name, renamed(asked, ids));
    }
}

/**
 * A page as a post. What the editor has no button for keeps its place: attributes, elements around words and paragraphs; what it does
 * not know at all is kept as it stands. What would run something is left out, and told.
 *
 * @param own the id of the drivetrain that the post brings along
 */
export function postFromPage(
  body: HTMLElement,
  own: string | null = null,
): { readonly doc: PostNode; readonly left: Left } {
  const making = new Making(own);
  making.clean(body);
  making.inside(body, false);
  return { doc: PostParser.fromSchema(schema).parse(body), left: making.left };
}
