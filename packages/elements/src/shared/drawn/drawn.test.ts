import { assert } from "@esm-bundle/chai";
import { html, type TemplateResult } from "lit/html.js";
import { clear, find, lineOf, show, turn, withLimpet } from "../../test/page.js";
import type { MwBuild } from "../../elements/build/index.js";
import { define } from "../element/index.js";
import { DrawnElement } from "./index.js";

let breaks = false;

class MwDrawnTest extends DrawnElement {
  static override readonly tag = "mw-drawn-test";

  protected override render(): TemplateResult {
    if (breaks) throw new TypeError("toReversed is not a function");
    return html`<b>${this.textOf({ figure: "reduction", of: "rear" })}</b>${this.fallback()}`;
  }
}

define(MwDrawnTest);

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
});
