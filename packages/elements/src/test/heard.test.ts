import { assert } from "@esm-bundle/chai";
import { define } from "../third/index.js";
import { MwPairFinder } from "../elements/pair-finder/index.js";
import { MwTrainDrawing } from "../elements/train-drawing/index.js";
import { clear, find, lineOf, settle, show, withLimpet } from "./page.js";

// What those who listen are told by the sentence, the gauge, the drawing, the finder and the editor, as a file that a person has
// read: names, roles and states, one a line.

define(MwPairFinder, MwTrainDrawing);

const roles: Readonly<Record<string, string>> = {
  BUTTON: "button",
  SELECT: "choice",
  SUMMARY: "button",
  TABLE: "table",
  TH: "head",
  TD: "cell",
  SVG: "picture",
  OL: "list",
  LI: "item",
  P: "paragraph",
};

const childrenOf = (node: Element | ShadowRoot | HTMLSlotElement): Node[] =>
  node.nodeName === "SLOT"
    ? (node as HTMLSlotElement).assignedNodes()
    : [...((node as Element).shadowRoot ?? node).childNodes];

const plain = (text: string): string => text.replace(/\s+/g, " ").trim();

/** What is heard of a node, a line each for whatever has a role or a name of its own. */
function heard(node: Node, lines: string[]): string {
  if (node.nodeType === 3) return node.textContent!;
  if (node.nodeType !== 1 && node.nodeType !== 11) return "";
  const element = node as HTMLElement;
  if (node.nodeType === 1) {
    if (/^(STYLE|SCRIPT|OPTION|DESC)$/.test(element.nodeName.toUpperCase())) return "";
    if (element.ariaHidden === "true" || element.getAttribute("aria-hidden") === "true") return "";
    if (element.matches("[hidden], .to-mend, [role=status]") || getComputedStyle(element).display === "none") return "";
    const isControl = /^(INPUT|SELECT|TEXTAREA)$/.test(element.nodeName);
    const label = isControl ? element.closest("label") : null;
    const words = [...(label?.childNodes ?? [])].map((one) =>
      one.nodeType === 8 || one.contains(element) ? "" : one.textContent,
    );
    const name = element.getAttribute("aria-label") ?? (label && plain(words.join("")));
    // A group is named before what is in it.
    if (element.getAttribute("role") === "group" && name) lines.push(`group: ${plain(name)}`);
    const role = element.getAttribute("role") ?? roles[element.nodeName.toUpperCase()];
    const isField = /^(INPUT|TEXTAREA)$/.test(element.nodeName);
    const { type, checked, value: typed } = element as HTMLInputElement;
    const chosen = (element as HTMLSelectElement).selectedOptions?.[0]?.textContent ?? "";
    const shown = type === "checkbox" ? (checked ? "yes" : "no") : isField ? typed : plain(chosen);
    const value = element.getAttribute("aria-valuetext") ?? shown;
    if (name && (role || isField) && (isField || /^(button|choice|picture|img|spinbutton)$/.test(role!))) {
      const kind = role ?? (type === "checkbox" ? "tick" : "field");
      lines.push(`${kind === "img" ? "picture" : kind}: ${plain(name)}${value ? ` = ${value}` : ""}`);
      // In the middle of a sentence a field is read as what stands in it.
      return element.closest("label") || !value ? "" : value;
    }
  }
  const own: string[] = [];
  for (const child of childrenOf(element)) {
    const text = heard(child, lines);
    // Elements beside each other are words of their own.
    if (text) own.push(child.nodeType === 1 && child.previousSibling?.nodeType === 1 ? ` ${text}` : text);
  }
  const isBlock =
    node.nodeType === 1 &&
    /^(BUTTON|SUMMARY|TH|TD|P|LI|DIV|OL|LEGEND|TR)$/.test(element.nodeName) &&
    plain(own.join(""));
  // What a field is called has been told with it.
  if (node.nodeName === "LABEL" && element.querySelector("input, select, textarea")) return "";
  if (!isBlock) return own.join("");
  // A head that has a name of its own is read by it, not by what stands there for eyes.
  const named = element.nodeName === "TH" && element.getAttribute("aria-label");
  lines.push(`${roles[element.nodeName] ?? "text"}: ${plain(named || own.join(""))}`);
  return "";
}

const wanted = (await (await fetch(new URL("./heard.txt", import.meta.url))).text()).trim();

describe("what is heard", () => {
  afterEach(clear);

  it("is what a person has read, of sentence, gauge, drawing, finder and editor", async () => {
    const page = await show(
      withLimpet(
        `<p>With <mw-teeth of="primary.driver">15</mw-teeth> teeth on the motor the front wheels turn once for <mw-value of="front">44.30</mw-value> turns of it, with <mw-teeth of="rear-ring">12 driving 35</mw-teeth> behind.</p>` +
          `<mw-overdrive-gauge></mw-overdrive-gauge><mw-train-drawing of="primary"></mw-train-drawing><mw-pair-finder of="primary"></mw-pair-finder><mw-stage-editor></mw-stage-editor>`,
      ),
    );
    for (let n = 0; n < 100 && !/reach(es)? the range/.test(lineOf(find(page, "mw-pair-finder"))); n++) await settle(1);
    await settle();
    const said = ["p", "mw-overdrive-gauge", "mw-train-drawing", "mw-pair-finder", "mw-stage-editor"].flatMap(
      (selector) => {
        const lines: string[] = [];
        const element = find(page, selector);
        // Of the editor one list of stages: the others read alike.
        const rest = heard(selector === "mw-stage-editor" ? find(element.shadowRoot!, "section") : element, lines);
        return [`# ${selector}`, ...lines, ...(plain(rest) ? [`text: ${plain(rest)}`] : []), ""];
      },
    );
    assert.equal(said.join("\n").trim(), wanted);
  });
});
