import { assert } from "@esm-bundle/chai";
import "axe-core";
import type axeCore from "axe-core";
import { define } from "../../shared/element/index.js";
import type { MwBuild } from "../build/index.js";
import { clear, find, lineOf, settle, show, withLimpet } from "../../test/page.js";
import { MwTurnCount } from "./index.js";

define(MwTurnCount);
const { axe } = globalThis as unknown as { axe: typeof axeCore };

describe("mw-turn-count", () => {
  let root: HTMLElement;
  const element = () => find<MwTurnCount>(root, "mw-turn-count");
  const inside = <One extends HTMLElement>(selector: string) => element().shadowRoot!.querySelector<One>(selector)!;
  const type = async (name: string, text: string) => {
    const input = inside<HTMLInputElement>(`[name="${name}"]`);
    input.value = text;
    input.dispatchEvent(new Event("input", { bubbles: true }));
    input.dispatchEvent(new Event("change", { bubbles: true }));
    await settle(1);
  };

  beforeEach(async () => {
    root = await show(withLimpet('<mw-turn-count of="front-hub"><p>Turned: 22 for 15.</p></mw-turn-count>'), 320);
  });
  afterEach(clear);

  it("leads from turns to counts to the build, in one edit that can be undone", async () => {
    const { store } = find<MwBuild>(root, "mw-build");
    const events: unknown[] = [];
    root.addEventListener("mw-change", (event) => events.push((event as CustomEvent).detail));
    assert.isNull(inside("[part='counts']"));
    await type("turnsIn", "22");
    await type("from", "15");
    assert.include(lineOf(element()), "The box: 1.4667 turns in for one turn out.");
    await type("driver", "15");
    assert.equal(inside("[part='counts']").textContent, "15 → 22");
    assert.deepEqual(events, []);
    inside<HTMLButtonElement>("button").click();
    await settle();
    assert.lengthOf(events, 1);
    assert.equal((store.build!.outputs[0]!.stages[1] as { kind: string }).kind, "measured");
    assert.equal(inside("button").textContent!.trim(), "In the build");
    store.undo();
    assert.equal(store.build, store.article);
  });

  it("says in its place what is wrong, once it was left, and takes turns along", async () => {
    await type("turnsIn", "forty");
    assert.equal(inside("#turnsIn-fault").textContent, "Found forty; expected a number above 0, such as 9.5.");
    assert.equal(inside("#turnsIn").getAttribute("aria-invalid"), "true");
    await type("turnsIn", "40");
    await type("from", "1.8");
    await type("to", "1.81");
    const select = inside<HTMLSelectElement>("select");
    select.value = "held";
    select.dispatchEvent(new Event("change", { bubbles: true }));
    for (const box of element().shadowRoot!.querySelectorAll<HTMLInputElement>("[type='checkbox']")) box.click();
    await settle();
    assert.include(lineOf(element()), "All that turned: 44.1988 to 44.4445.");
    assert.include(lineOf(element()), "The box: 1.4632 to 1.4715");
  });

  it("leaves axe nothing to find, and does not push a narrow page", async () => {
    await type("turnsIn", "forty");
    const { violations } = await axe.run(root, { rules: { region: { enabled: false } } });
    assert.deepEqual(
      violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html}`),
      [],
    );
    assert.isAtMost(element().scrollWidth, 321);
  });

  it("keeps the author's words where there is no build", async () => {
    root = await show('<mw-turn-count of="box"><p>In words.</p></mw-turn-count>');
    assert.equal(lineOf(element()), "In words.");
  });
});
