import { css, dress, paperOf, properties, type MeshwrightElement, type More } from "../shared/element/index.js";
import { fill, wordsFor } from "../shared/words/index.js";

const marks = css`
  :host {
    position: relative;
  }
  /* A figure is washed from below. A count has its double underline. */
  [part="value"][data-was] {
    background: linear-gradient(transparent 62%, rgb(127 127 127 / 0.25) 0);
    background: linear-gradient(transparent 62%, color-mix(in srgb, var(--_accent) 26%, transparent) 0);
  }
  [part="value"][data-was]:focus-visible {
    outline: 2px solid var(--_ring);
    outline-offset: 2px;
  }
  @media (prefers-reduced-motion: no-preference) {
    [data-pulse="1"] {
      animation: one 900ms ease-out;
    }
    [data-pulse="2"] {
      animation: two 900ms ease-out;
    }
  }
  /* Two of the same: another name begins anew. */
  @keyframes one {
    from {
      background-color: color-mix(in srgb, var(--_accent) 34%, transparent);
    }
  }
  @keyframes two {
    from {
      background-color: color-mix(in srgb, var(--_accent) 34%, transparent);
    }
  }
  .was {
    all: initial;
    position: fixed;
    z-index: 10;
    inset: auto;
    box-sizing: border-box;
    max-width: 90vw;
    margin: 0;
    padding: 0.1em 0.5em;
    border: 1px solid currentColor;
    border-radius: 3px;
    font: inherit;
    font-size: 0.82em;
    font-style: italic;
    font-weight: 400;
    line-height: 1.35;
    color: inherit;
    direction: inherit;
    background: var(--_paper, Canvas);
    pointer-events: none;
    user-select: none;
    -webkit-user-select: none;
  }
  @media (forced-colors: active) {
    [part="value"][data-was] {
      text-decoration: underline 2px;
    }
  }
  @media print {
    .was {
      display: none;
    }
    [data-was]::after {
      content: " (" attr(data-was) ")";
      font-size: 0.82em;
      font-style: italic;
      font-weight: 400;
    }
  }
`;

const styles = [properties, marks];

const watched = new WeakSet<Document>();
/** The text that was marked last. */
const marked = new WeakMap<HTMLElement, string>();
/** What floats, over what, on one page. */
let floating: { readonly over: HTMLElement; readonly float: HTMLElement } | undefined;

/** Where it stands in the window: above what it speaks of, below where keys or the edge are. */
function place(over: HTMLElement, float: HTMLElement): void {
  const { left, top, bottom, width } = over.getBoundingClientRect();
  const { clientWidth } = over.ownerDocument.documentElement;
  const own = float.getBoundingClientRect();
  const isUnder = top - own.height < 4 || over.querySelector(".tray:not(.under)") !== null;
  const middle = left + width / 2 - own.width / 2;
  float.style.left = `${Math.max(4, Math.min(middle, clientWidth - own.width - 4))}px`;
  float.style.top = `${isUnder ? bottom + 4 : top - own.height - 4}px`;
}

function hide(): void {
  if (!floating) return;
  const { over, float } = floating;
  floating = undefined;
  float.remove();
  if (over.getAttribute("aria-describedby") === "was") over.removeAttribute("aria-describedby");
}

function show(over: HTMLElement): void {
  if (floating?.over === over) return;
  hide();
  const root = over.getRootNode() as ShadowRoot;
  const float = over.ownerDocument.createElement("span");
  float.className = "was paged";
  float.id = "was";
  float.setAttribute("role", "tooltip");
  float.setAttribute("part", "was");
  float.textContent = over.dataset.was!;
  // Above whatever cuts off what stands out of it.
  root.append(float);
  const { color } = getComputedStyle(over);
  float.style.color = color;
  float.style.setProperty("--_page", paperOf(root.host));
  if (typeof float.showPopover === "function") {
    float.popover = "manual";
    float.showPopover();
  }
  if (over.tabIndex === 0 && !over.hasAttribute("aria-describedby")) over.setAttribute("aria-describedby", "was");
  floating = { over, float };
  place(over, float);
}

const markedIn = (event: Event): HTMLElement | undefined =>
  event.composedPath().find((one): one is HTMLElement => one instanceof HTMLElement && one.dataset.was !== undefined);

const look = (event: Event): void => {
  const over = markedIn(event);
  if (over) show(over);
  else if (event.type === "pointerover") hide();
};

function watch(page: Document): void {
  if (watched.has(page)) return;
  watched.add(page);
  page.addEventListener("pointerover", look);
  page.addEventListener("focusin", look);
  page.addEventListener("focusout", hide);
  page.addEventListener("scroll", hide, { capture: true, passive: true });
  page.addEventListener("keydown", (event) => event.key === "Escape" && hide(), true);
}

/** Marks what differs from the article's: it says the article's on focus and under a pointer, and pulses once where it is new. */
export const mark: NonNullable<More["mark"]> = (element: MeshwrightElement, over: HTMLElement, article): void => {
  const isFigure = over.getAttribute("part") === "value";
  const known = over.dataset.was;
  if (article === undefined) {
    if (known === undefined) return;
    if (floating?.over === over) hide();
    for (const name of ["data-was", "data-pulse"]) over.removeAttribute(name);
    marked.delete(over);
    if (isFigure) over.removeAttribute("tabindex");
    return;
  }
  const shown = over.textContent ?? "";
  if (known === undefined) {
    watch(over.ownerDocument);
    dress(over.getRootNode() as ShadowRoot, styles);
    if (isFigure) over.tabIndex = 0;
  }
  over.dataset.was = fill(wordsFor(element.locale).article, article);
  if (!isFigure || marked.get(over) === shown) return;
  marked.set(over, shown);
  over.dataset.pulse = over.dataset.pulse === "1" ? "2" : "1";
};
