import { assert } from "@esm-bundle/chai";
import "axe-core";
import type axeCore from "axe-core";
import { define } from "../../shared/element/index.js";
import type { MwBuild } from "../build/index.js";
import { clear, countIn, find, lineOf, press as pressKey, settle, show, withLimpet } from "../../test/page.js";
import { MwQuantity } from "./index.js";

define(MwQuantity);
const { axe } = globalThis as unknown as { axe: typeof axeCore };

describe("mw-quantity", () => {
  let root: HTMLElement;
  const element = () => find<MwQuantity>(root, "mw-quantity");
  const input = () => element().shadowRoot!.querySelector("input")!;
  const store = () => find<MwBuild>(root, "mw-build").store;
  const press = (key: string) => input().dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true }));
  const type = async (text: string) => {
    input().focus();
    input().value = text;
    input().dispatchEvent(new Event("input", { bubbles: true }));
    await settle(1);
    press("Enter");
    await settle(1);
  };
  const text = () =>
    element()
      .shadowRoot!.querySelector(".text")!
      .textContent!.replace(/\u00a0/g, " ");

  beforeEach(async () => {
    root = await show(
      withLimpet(
        '<p>Tyres of <mw-quantity of="front.wheel.diameter">124 mm</mw-quantity> at the front roll <mw-value of="front" figure="travel">8.79 mm</mw-value>.</p>',
      ),
    );
  });
  afterEach(clear);

  it("stands as the author typed it, changes as a count does, in whatever unit, and comes back", async () => {
    const events: unknown[] = [];
    root.addEventListener("mw-change", (event) => events.push((event as CustomEvent).detail));
    assert.equal(text(), "124 mm");
    await type("4.65 in");
    assert.equal(text(), "4.65 in");
    assert.deepEqual(events, [{ "front.wheel.diameter": "4.65 in" }]);
    // 118.11 π ÷ 44.3009
    assert.match(lineOf(find(root, "mw-value")), /^8\.38/);
    assert.match(find(element().shadowRoot!, ".root").dataset.was!, /^article 124\smm$/);
    press("ArrowUp");
    await settle(1);
    assert.equal(text(), "4.66 in");
    store().undo();
    store().undo();
    await settle(1);
    assert.equal(text(), "124 mm");
    assert.equal(store().build, store().article);
  });

  it("keeps the last good value, and says what was found and what is expected", async () => {
    await type("big");
    assert.equal(text(), "124 mm");
    assert.match(
      element().shadowRoot!.querySelector("#message")!.textContent!,
      /^Found big; expected a length such as 17\.6 mm or 0\.69 in\. Kept 124\smm\.$/,
    );
    assert.equal(input().getAttribute("aria-invalid"), "true");
    assert.equal(store().build, store().article);
  });

  it("says in the language that stands there what stands against a value", async () => {
    root = await show(
      `<div lang="de">${withLimpet('<p>Ab <mw-quantity of="target.from">38</mw-quantity>.</p>')}</div>`,
    );
    await type("900");
    const told = () => element().shadowRoot!.querySelector("#message")!.textContent!;
    const wanted = "900 bis 46; das Kleinere gehört nach vorn. Es bleibt bei 38.";
    for (let n = 0; n < 100 && told() !== wanted; n++) await settle(1);
    assert.equal(told(), wanted);
    assert.equal(store().build, store().article);
  });

  it("says a refusal while its field is in hand, and no more once another one refuses or takes something", async () => {
    root = await show(
      withLimpet(
        '<p><mw-quantity of="target.from">38</mw-quantity> <mw-teeth of="primary.driver">15</mw-teeth> <a href="#x">x</a></p>',
      ),
    );
    const teeth = find(root, "mw-teeth");
    const refused = (one: Element) => one.shadowRoot!.querySelector("#message") !== null;
    const enter = async (text: string) => {
      const field = countIn(teeth);
      field.focus();
      field.value = text;
      field.dispatchEvent(new InputEvent("input", { bubbles: true, composed: true }));
      pressKey(field, "Enter");
      await settle(1);
    };
    await type("0");
    assert.isTrue(refused(element()));
    await enter("0");
    assert.deepEqual([refused(element()), refused(teeth)], [false, true]);
    find<HTMLElement>(root, "a").focus();
    await settle(1);
    assert.isFalse(refused(teeth), "it has been read");
    // What is refused as it is left has not.
    input().focus();
    input().value = "0";
    input().dispatchEvent(new Event("input", { bubbles: true }));
    await settle(1);
    input().blur();
    await settle(1);
    assert.isTrue(refused(element()));
    await enter("16");
    assert.deepEqual([refused(element()), refused(teeth)], [false, false]);
  });

  it("has keys that step while it has the focus, and a name", async () => {
    input().focus();
    await settle(1);
    assert.equal(input().getAttribute("aria-label"), "Front wheel: diameter");
    const [, more] = element().shadowRoot!.querySelectorAll("button");
    more!.click();
    await settle(1);
    assert.equal(text(), "125 mm");
    input().blur();
    await settle(1);
    assert.lengthOf(element().shadowRoot!.querySelectorAll("button"), 0);
  });

  it("leaves axe nothing to find", async () => {
    await type("big");
    const { violations } = await axe.run(root, { rules: { region: { enabled: false } } });
    assert.deepEqual(
      violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html}`),
      [],
    );
  });

  it("leaves the author's words where the build has no such value", async () => {
    root = await show(withLimpet('<p><mw-quantity of="front.wheel.diametr">124 mm</mw-quantity></p>'));
    assert.equal(lineOf(element()), "124 mm");
  });
});
