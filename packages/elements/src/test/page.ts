import { define } from "../shared/element/index.js";
import { makeWhole } from "../third/index.js";
import { MwBuild } from "../elements/build/index.js";
import { MwEdits } from "../elements/edits/index.js";
import { MwOverdriveGauge } from "../elements/overdrive-gauge/index.js";
import { MwRatioSummary } from "../elements/ratio-summary/index.js";
import { MwStageEditor } from "../elements/stage-editor/index.js";
import { MwTeeth } from "../elements/teeth/index.js";
import { MwValue } from "../elements/value/index.js";

makeWhole();
define(MwBuild, MwTeeth, MwValue, MwRatioSummary, MwOverdriveGauge, MwEdits, MwStageEditor);

// What is wrong on purpose would fill the run's log; whoever tests warnings listens for them.
const { warn } = console;
console.warn = (...what: unknown[]) => {
  if (!String(what[0]).startsWith("<mw-")) warn(...what);
};

/** The demo's build, as its file says it. */
export const limpet = await (await fetch(new URL("../../../../seeds/limpet.json", import.meta.url))).text();

/** A build of one pair, as attributes. */
export const short = 'stages="Spur and pinion: 15 to 60" rear="Ring: 10 to 40" target="14 to 18"';

/** Lets changes be drawn, pictures included. A page that is not in front gets no frames. */
export async function settle(frames = 3): Promise<void> {
  for (let n = 0; n < frames; n++) {
    await new Promise((done) => {
      requestAnimationFrame(done);
      setTimeout(done, 60);
    });
  }
}

/** Lets what happens in this turn come down from the store, and no frame pass. */
export async function turn(): Promise<void> {
  for (let n = 0; n < 12; n++) await Promise.resolve();
}

let shown: HTMLElement | undefined;

/** Counts and values bring what nobody sees once they have been painted, or at once for whoever waits for them. */
async function complete(root: ParentNode): Promise<void> {
  for (const element of root.querySelectorAll("mw-teeth, mw-value"))
    await (element as Element & { readonly updateComplete?: Promise<unknown> }).updateComplete;
}

/** Puts markup into the page, in place of what was there. */
export async function show(markup: string, width = 640): Promise<HTMLElement> {
  clear();
  shown = document.createElement("div");
  shown.style.width = `${width}px`;
  shown.innerHTML = markup;
  const page = shown;
  document.body.append(page);
  await settle();
  await complete(page);
  return page;
}

export function clear(): void {
  // What is still to be written into the address is written now, not under the next test.
  dispatchEvent(new Event("pagehide"));
  shown?.remove();
  shown = undefined;
  // Some engines count how often a program writes the address.
  if (location.href.includes("#") || history.state !== null)
    history.replaceState(null, "", location.pathname + location.search);
}

/** Limpet with something beside it. */
export const withLimpet = (markup: string, attributes = ""): string =>
  `<mw-build id="limpet" ${attributes}><script type="application/json">${limpet}</script></mw-build>${markup}`;

const hiddenOf = (node: Element): boolean => node.matches("[hidden], .heard, [popover], .to-mend");

/** What an element shows: its shadow, with what is slotted in its place. */
function textOf(node: Node): string {
  if (node.nodeType === 3) return node.textContent!;
  const element = node as Element;
  if (node.nodeType !== 1 && node.nodeType !== 11) return "";
  if (node.nodeType === 1 && (hiddenOf(element) || /^(STYLE|SCRIPT|SELECT)$/.test(element.nodeName))) return "";
  const inside =
    element.nodeName === "SLOT"
      ? (element as HTMLSlotElement).assignedNodes()
      : (element.shadowRoot ?? element).childNodes;
  return [...inside].map(textOf).join("");
}

/** The same on one line. */
export const lineOf = (node: Node): string => textOf(node).replace(/\s+/g, " ").trim();

export const find = <T extends Element = HTMLElement>(root: ParentNode, selector: string): T => {
  const found = root.querySelector<T>(selector);
  if (!found) throw new Error(`Nothing matches ${selector}.`);
  return found;
};

/** The control inside an `mw-teeth`. */
export const countIn = (teeth: Element): HTMLInputElement => find<HTMLInputElement>(teeth.shadowRoot!, "input");

export function press(target: EventTarget, key: string, more: KeyboardEventInit = {}): KeyboardEvent {
  const event = new KeyboardEvent("keydown", { key, bubbles: true, composed: true, cancelable: true, ...more });
  target.dispatchEvent(event);
  return event;
}

/** Types into a field as a person does, and leaves it to be taken. */
export function type(field: HTMLInputElement, text: string): void {
  field.value = text;
  field.dispatchEvent(new InputEvent("input", { bubbles: true, composed: true }));
}
