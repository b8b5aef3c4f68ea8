import { assert } from "@esm-bundle/chai";
import { html, type TemplateResult } from "lit/html.js";
import { clear, find, lineOf, settle, show, turn, withLimpet } from "../../test/page.js";
import type { MwBuild } from "../../elements/build/index.js";
import { define } from "../element/index.js";
import { DrawnElement, block, table } from "./index.js";

let breaks = false;

class MwDrawnTest extends DrawnElement {
  static override readonly tag = "mw-drawn-test";

  protected override render(): TemplateResult {
    if (breaks) throw new TypeError("toReversed is not a function");
    return html`<b>${this.textOf({ figure: "reduction", of: "rear" })}</b>${this.fallback()}`;
  }
}

define(MwDrawnTest);

class MwTableTest extends DrawnElement {
  static override readonly tag = "mw-table-test";
  static override styles = [block, table];
  text = "a few";

  protected override render(): TemplateResult {
    return html`<div class="scroll">
      <table>
        <tbody>
          <tr>
            <th>Told</th>
            <td>${this.text}</td>
          </tr>
        </tbody>
      </table>
    </div>`;
  }
}

define(MwTableTest);

describe("tables", () => {
  afterEach(clear);

  it("are what they have room for, whatever they say by and by, and ask for no layout while all of it has room", async () => {
    const page = await show("<mw-table-test></mw-table-test>", 240);
    const element = find<MwTableTest>(page, "mw-table-test");
    const drawn = find<HTMLTableElement>(element.shadowRoot!, "table");
    const said = async (words: string): Promise<string> => {
      element.text = words;
      element.requestUpdate();
      await settle();
      assert.isAtMost(drawn.offsetWidth, 241, words);
      return drawn.className;
    };
    assert.equal(await said("none"), "");
    assert.equal(await said("as many words as no line of this width can hold"), "wraps");
    assert.equal(await said("none"), "");
    assert.equal(await said("n".repeat(60)), "list");
    assert.equal(await said("none"), "");

    let asked = 0;
    const { get } = Object.getOwnPropertyDescriptor(HTMLElement.prototype, "offsetWidth")!;
    Object.defineProperty(drawn, "offsetWidth", { get: () => (asked++, get!.call(drawn)), configurable: true });
    await said("one");
    asked = 0;
    element.text = "two";
    element.requestUpdate();
    await settle();
    assert.equal(asked, 0);
  });
});

describe("what is drawn by templates", () => {
  const markup = withLimpet("<mw-drawn-test><p>Rear 43.32</p></mw-drawn-test>");
  const shown = (page: HTMLElement): string => lineOf(find(page, "mw-drawn-test"));
  afterEach(() => {
    breaks = false;
    clear();
  });

  it("shows the author's content where drawing throws, and draws again where it no longer does", async () => {
    breaks = true;
    const page = await show(markup);
    assert.equal(shown(page), "Rear 43.32");
    breaks = false;
    find<MwDrawnTest>(page, "mw-drawn-test").requestUpdate();
    await turn();
    assert.equal(shown(page), "43.32");
  });

  it("is drawn anew where the marks between which it is drawn were taken away", async () => {
    const page = await show(markup);
    const element = find<MwDrawnTest>(page, "mw-drawn-test");
    element.shadowRoot!.innerHTML = element.shadowRoot!.innerHTML.replace(/<!--.*?-->/g, "");
    find<MwBuild>(page, "mw-build").store.change({ "primary.driver": 17 });
    await turn();
    assert.equal(shown(page), "38.23");
  });

  it("is drawn anew where texts were wrapped, or cleaned of some marks; what is said or shown beside it stays", async () => {
    const page = await show(markup);
    const element = find<MwDrawnTest>(page, "mw-drawn-test");
    const root = element.shadowRoot!;
    const voice = Object.assign(document.createElement("span"), { className: "heard", textContent: "Said" });
    root.append(voice);
    const figure = find(root, "b");
    const ways: (() => void)[] = [
      () => {
        const font = document.createElement("font");
        const text = figure.lastChild as Text;
        text.replaceWith(font);
        font.append(text);
      },
      () => root.querySelector("b")!.firstChild!.remove(),
      () => (root.querySelector("b")!.lastChild as Text).splitText(2),
      // As many pieces as before.
      () => (root.querySelector("b")!.lastChild as Text).replaceWith("read aloud"),
    ];
    for (const [n, way] of ways.entries()) {
      way();
      find<MwBuild>(page, "mw-build").store.change({ "primary.driver": 17 + n });
      await turn();
      assert.equal(shown(page), ["38.23", "36.10", "34.20", "32.49"][n]);
      assert.equal(voice.parentNode, root);
    }
    // Where nobody has touched it, the same pieces go on.
    const kept = root.querySelector("b")!;
    find<MwBuild>(page, "mw-build").store.change({ "primary.driver": 15 });
    await turn();
    assert.equal(root.querySelector("b"), kept);
  });

  it("keeps keys in its fields to itself, but for those that are the page's", async () => {
    const page = await show(markup);
    const root = find<MwDrawnTest>(page, "mw-drawn-test").shadowRoot!;
    const heard: string[] = [];
    const hear = ({ key }: KeyboardEvent): void => void heard.push(key);
    document.addEventListener("keydown", hear);
    for (const name of ["input", "select", "textarea", "button"]) {
      const field = document.createElement(name);
      root.append(field);
      for (const key of ["j", "5", "ArrowUp", "Enter", "Escape", "Tab", "F5"])
        field.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, composed: true }));
      field.dispatchEvent(new KeyboardEvent("keydown", { key: "s", ctrlKey: true, bubbles: true, composed: true }));
      assert.deepEqual(
        heard.splice(0),
        name === "button" ? ["j", "5", "ArrowUp", "Enter", "Escape", "Tab", "F5", "s"] : ["Escape", "Tab", "F5", "s"],
        name,
      );
    }
    document.removeEventListener("keydown", hear);
  });
});
