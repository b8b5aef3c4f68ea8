import { html, nothing } from "lit/html.js";
import { css, dress, outward, type Subject, type PageFinding } from "../element/index.js";
import { drawInto } from "../drawn/index.js";
import { isAuthorHere } from "../page/index.js";
import { fillCount, findingText, wordsFor } from "../words/index.js";
import { spotOf } from "./spot.js";

const styles = css`
  /* Where it stands by itself, and in nobody's way: what is around it does not move. */
  .to-mend {
    position: absolute;
    z-index: 1;
    display: block;
    font:
      400 14px/1.45 system-ui,
      sans-serif;
    text-align: start;
    text-indent: 0;
    text-transform: none;
    letter-spacing: normal;
    white-space: normal;
    color: CanvasText;
  }
  /* Where a build cannot be read there is nothing that it would stand on. */
  .to-mend.stands {
    position: static;
    margin: 0.6em 0;
  }
  .to-mend button {
    all: unset;
    box-sizing: border-box;
    display: block;
    min-width: 24px;
    min-height: 24px;
    text-align: center;
    font-weight: 700;
    color: Canvas;
    background: #9c2f1b;
    border: 1px solid Canvas;
    cursor: pointer;
  }
  .to-mend button:focus-visible {
    outline: 2px solid CanvasText;
    outline-offset: 2px;
  }
  .to-mend ul {
    box-sizing: border-box;
    width: max-content;
    max-width: min(44em, 86vw);
    max-height: 60vh;
    overflow: auto;
    margin: 0;
    padding: 0.5em 0.8em 0.6em;
    list-style: none;
    background: Canvas;
    border: 1px solid #9c2f1b;
  }
  .to-mend li + li {
    margin-top: 0.5em;
  }
  .to-mend code {
    display: block;
    font-size: 0.92em;
    overflow-wrap: anywhere;
  }
  @media (forced-colors: active) {
    .to-mend button {
      color: ButtonText;
      background: ButtonFace;
      border-color: ButtonText;
    }
  }
  @media print {
    .to-mend {
      display: none;
    }
  }
`;

interface Sign {
  readonly place: HTMLElement;
  findings: readonly PageFinding[];
  open: boolean;
}

const signs = new WeakMap<Element, Sign>();

function draw(element: Subject, sign: Sign): void {
  const { place, open, findings } = sign;
  const { locale } = element;
  const name = fillCount(wordsFor(locale).findings, findings.length, locale);
  const turn = (to: boolean): void => {
    sign.open = to;
    draw(element, sign);
  };
  const pressed = (event: KeyboardEvent): void => {
    if (event.key !== "Escape" || !open) return;
    event.stopPropagation();
    turn(false);
    place.querySelector("button")!.focus();
  };
  const clicked = (event: Event): void => {
    // It may stand in a link or a summary of the page's own.
    event.preventDefault();
    event.stopPropagation();
    turn(!sign.open);
  };
  drawInto(
    place,
    html`<button
        type="button"
        part="sign"
        aria-expanded=${open ? "true" : "false"}
        aria-label=${name}
        title=${name}
        @click=${clicked}
        @keydown=${pressed}
      >
        !
      </button>
      ${
        open
          ? html`<ul part="findings" tabindex="-1" aria-label=${name} @keydown=${pressed}>
              ${findings.map((one) => html`<li class=${one.severity}><code>${spotOf(one)}</code> ${findingText(one, locale)}</li>`)}
            </ul>`
          : nothing
      }`,
  );
}

/** All around an element, across shadow roots, outermost last. */
function* around(element: Element): Generator<Element> {
  for (let at = outward(element); at; at = outward(at)) if (at instanceof Element) yield at;
}

/**
 * Moves a sign out to where the block begins that it stands in, or the table or list around that: over no text, as far as there
 * is room that is seen.
 */
function moveAside(place: HTMLElement): void {
  place.style.translate = "";
  if (!place.classList.contains("aside")) return;
  const isRtl = getComputedStyle(place).direction === "rtl";
  // As if everything ran from left to right.
  const startOf = (one: Element): number => {
    const { left, right } = one.getBoundingClientRect();
    return isRtl ? -right : left;
  };
  const { offsetParent } = place;
  let [start, least] = [startOf(place), isRtl ? -document.documentElement.clientWidth : 0];
  let isCutting = false;
  for (const one of around(place)) {
    if (one.matches("table, ol, ul")) start = Math.min(start, startOf(one));
    // What the page itself cuts off is the window's affair.
    if (one === document.body) break;
    isCutting ||= one === offsetParent;
    if (isCutting && getComputedStyle(one).overflowX !== "visible") least = Math.max(least, startOf(one));
  }
  const by = Math.max(least, start - place.querySelector("button")!.offsetWidth) - startOf(place);
  place.style.translate = `${isRtl ? -by : by}px`;
}

/** Puts a sign beside an element where there is something to mend and its author is here; takes it away otherwise. */
export function drawSign(element: Subject, findings: readonly PageFinding[]): void {
  const root = element.shadowRoot;
  const known = signs.get(element);
  if (!root || !findings.length || !isAuthorHere()) {
    known?.place.remove();
    signs.delete(element);
    return;
  }
  // What keeps all of it from being read is said at once, in its place.
  const isDark = findings.some((one) => one.severity === "error" && !one.element);
  const sign = known ?? { place: element.ownerDocument.createElement("span"), findings, open: isDark };
  sign.findings = findings;
  if (!known) {
    signs.set(element, sign);
    dress(root, styles);
  }
  sign.place.className = isDark ? "to-mend stands" : "to-mend aside";
  // Before what the element draws itself, which it may replace.
  if (sign.place.parentNode !== root) root.prepend(sign.place);
  draw(element, sign);
  moveAside(sign.place);
}
