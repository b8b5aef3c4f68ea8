import { render, type RenderOptions, type RootPart } from "lit/html.js";

/** What stands beside what templates draw: the author’s sign, a voice, what floats, styles of older browsers. */
const isApart = (node: Node): boolean =>
  node.nodeName === "STYLE" || /^(heard|to-mend|told|was)\b/.test((node as Partial<Element>).className ?? "");

/** Whether a change of a place was made to what templates have drawn there. */
function isWithin(place: Node, { target, addedNodes, removedNodes }: MutationRecord): boolean {
  if (target === place) return ![...addedNodes, ...removedNodes].every(isApart);
  let top = target;
  while (top.parentNode && top.parentNode !== place) top = top.parentNode;
  return !isApart(top);
}

/** Notes whether somebody else has put something into a place, or taken something away. */
class Watch {
  readonly #place: Node;
  readonly #observer: MutationObserver;
  #isTouched = false;

  constructor(place: Node) {
    this.#place = place;
    this.#observer = new MutationObserver((records) => this.#note(records));
    this.#observer.observe(place, { childList: true, subtree: true });
  }

  #note(records: readonly MutationRecord[]): void {
    this.#isTouched ||= records.some((record) => isWithin(this.#place, record));
  }

  get isTouched(): boolean {
    this.#note(this.#observer.takeRecords());
    return this.#isTouched;
  }

  /** What has been done by now is our own. */
  drawn(): void {
    this.#observer.takeRecords();
    this.#isTouched = false;
  }
}

const watches = new WeakMap<Node, Watch>();

/**
 * Draws by a template. Whoever cleans, translates or reads a page aloud takes marks away, or wraps texts: what is drawn between
 * them would stand elsewhere. Then all is drawn anew.
 */
export function drawInto(place: HTMLElement | ShadowRoot, value: unknown, options?: RenderOptions): RootPart {
  const known = watches.get(place);
  if (known?.isTouched) {
    for (const node of [...place.childNodes]) if (!isApart(node)) node.remove();
    delete (place as { _$litPart$?: unknown })._$litPart$;
  }
  const part = render(value, place, options);
  if (known) known.drawn();
  else watches.set(place, new Watch(place));
  return part;
}
