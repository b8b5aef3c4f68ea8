import { assert } from "@esm-bundle/chai";
import "axe-core";
import type axeCore from "axe-core";
import { define } from "../../shared/element/index.js";
import type { MwBuild } from "../build/index.js";
import { clear, find, lineOf, settle, show, withLimpet } from "../../test/page.js";
import { MwUnmarkedGear } from "./index.js";

define(MwUnmarkedGear);
const { axe } = globalThis as unknown as { axe: typeof axeCore };

describe("mw-unmarked-gear", () => {
  let root: HTMLElement;
  const element = () => find<MwUnmarkedGear>(root, "mw-unmarked-gear");
  const inside = <One extends HTMLElement>(selector: string) => element().shadowRoot!.querySelector<One>(selector)!;
  const type = async (name: string, text: string, type = "change") => {
    const input = inside<HTMLInputElement>(`[name="${name}"]`);
    input.value = text;
    input.dispatchEvent(new Event("input", { bubbles: true }));
    if (type === "change") input.dispatchEvent(new Event("change", { bubbles: true }));
    await settle(1);
  };
  const pitches = () =>
    [...element().shadowRoot!.querySelectorAll("[part='result'] li span")].map((one) => one.textContent);

  beforeEach(async () => {
    root = await show(withLimpet("<mw-unmarked-gear><p>Module 0.8.</p></mw-unmarked-gear>"), 320);
  });
  afterEach(clear);

  it("tells what it can be, narrows it down, and hands the part to the page's shelf", async () => {
    const parts: unknown[] = [];
    root.addEventListener("mw-part", (event) => parts.push((event as CustomEvent).detail));
    await type("teeth", "20");
    await type("outside", "17.53");
    await type("within", "0.1");
    assert.includeMembers(pitches(), ["module 0.8, full-depth teeth", "32 DP, full-depth teeth"]);
    assert.include(lineOf(element()), "This would settle it");
    const height = inside<HTMLSelectElement>("[name='height']");
    height.value = "1";
    height.dispatchEvent(new Event("change", { bubbles: true }));
    await type("outside", "17.6");
    await type("within", "");
    assert.deepEqual(pitches(), ["module 0.8"]);
    assert.equal(inside<HTMLInputElement>("[name='within']").value, "0.02");
    inside<HTMLButtonElement>("[part='result'] button").click();
    await settle(1);
    assert.deepEqual(parts, [{ id: "gear-20-m0-8", is: "gear", teeth: 20, module: "0.8", owned: 1 }]);
    assert.include(inside("[part='result'] button").textContent, "Put on the shelf");
    const { store } = find<MwBuild>(root, "mw-build");
    assert.equal(store.build, store.article);
  });

  it("finds no fault with what is half typed, and says in its place what is wrong once it is left", async () => {
    await type("teeth", "2o", "input");
    assert.isNull(inside("#teeth-fault"));
    await type("teeth", "2o");
    assert.equal(inside("#teeth-fault").textContent, "Found 2o; expected a whole number from 1.");
  });

  it("leaves axe nothing to find, and does not push a narrow page", async () => {
    await type("teeth", "20");
    await type("outside", "17.53");
    await type("within", "nothing");
    const { violations } = await axe.run(root, { rules: { region: { enabled: false } } });
    assert.deepEqual(
      violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html}`),
      [],
    );
    assert.isAtMost(element().scrollWidth, 321);
  });

  it("keeps the author's words where there is no build", async () => {
    root = await show("<mw-unmarked-gear><p>In words.</p></mw-unmarked-gear>");
    assert.equal(lineOf(element()), "In words.");
  });
});
