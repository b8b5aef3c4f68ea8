import { assert } from "@esm-bundle/chai";
import "axe-core";
import type axeCore from "axe-core";
import { define } from "../../third/index.js";
import type { MwBuild } from "../build/index.js";
import { clear, find, lineOf, settle, show } from "../../test/page.js";
import { MwCountFinder } from "./index.js";

define(MwCountFinder);

const { axe } = globalThis as unknown as { axe: typeof axeCore };

const build = {
  format: "meshwright-build/1",
  stages: [{ id: "spur", label: "Spur and pinion", kind: "pair", driver: 15, driven: 60, driverLabel: "motor pinion" }],
  outputs: [
    { id: "front", label: "Front", stages: [], wheel: { diameter: "100 mm" } },
    {
      id: "rear",
      label: "Rear",
      stages: [{ id: "ring", label: "Ring", kind: "pair", driver: 10, driven: 20, set: true }],
      wheel: { diameter: "200 mm" },
    },
  ],
  motor: { kv: 1000 },
  battery: { cells: 1, chemistry: "lipo" },
  headline: "rear",
  parts: [
    { id: "r30", name: "Ring 10 and 30", is: "set", driver: 10, driven: 30 },
    { id: "r25", name: "Ring 10 and 25", is: "set", driver: 10, driven: 25 },
    { id: "t110", name: "Tyre 110", is: "wheel", diameter: "110 mm" },
    { id: "t102", name: "Tyre 102", is: "wheel", diameter: "102 mm" },
  ],
};

const finder = async (attributes: string, width?: number): Promise<HTMLElement> => {
  const script = `<script type="application/json">${JSON.stringify(build)}</script>`;
  const markup = `<mw-build id="tern">${script}</mw-build><mw-count-finder ${attributes}></mw-count-finder>
    <mw-value figure="reduction" of="rear"></mw-value>`;
  return find(await show(markup, width), "mw-count-finder");
};

const rows = (element: Element): string[] =>
  [...element.shadowRoot!.querySelectorAll("tbody tr")].map((row) =>
    [...row.children].map((cell) => lineOf(cell).replaceAll("\u00a0", " ")).join(" | "),
  );

const field = (element: Element, name: string) =>
  find<HTMLInputElement & HTMLSelectElement>(element.shadowRoot!, `[name="${name}"]`);

const enter = async (element: Element, name: string, value: string): Promise<void> => {
  const control = field(element, name);
  control.value = value;
  control.dispatchEvent(new Event("change", { bubbles: true }));
  await settle(1);
};

describe("mw-count-finder", () => {
  afterEach(clear);

  it("names the counts on either side of a wanted total, and makes the one that is taken the reader's", async () => {
    const element = await finder('of="spur.driver" want="9.1"');
    const told: unknown[] = [];
    element.addEventListener("mw-change", (event) => told.push((event as CustomEvent).detail));
    // By hand: 60 · 2 / 13 = 9.2308, and / 14 = 8.5714.
    assert.deepEqual(rows(element), ["14 | 8.57 | −5.81% | Take it", "13 | 9.23 | +1.44% | Take it"]);
    // 120 / 9.1 = 13.187.
    assert.include(lineOf(element), "Exactly: 13.19.");
    find(element.shadowRoot!, "tbody tr:last-child button").click();
    await settle(1);
    assert.deepEqual(told, [{ "spur.driver": 13 }]);
    assert.equal(lineOf(find(element.parentElement!, "mw-value")), "9.23");
    assert.equal(rows(element)[1], "13 | 9.23 | +1.44% | in the build");
    find<MwBuild>(element.parentElement!, "mw-build").store.undo();
    await settle(1);
    assert.equal(lineOf(find(element.parentElement!, "mw-value")), "8.00");
  });

  it("finds a count for a travel, a speed and a lead that the reader asks for", async () => {
    const element = await finder('of="spur.driver"');
    await enter(element, "figure", "travel");
    // 200π / 8 = 78.54 mm as it is; 80 mm needs 15.28 teeth: 200π · 15 / 120 and · 16 / 120.
    assert.equal(field(element, "want").value, "78.54 mm");
    await enter(element, "want", "80 mm");
    assert.deepEqual(
      rows(element).map((row) => row.slice(0, 13)),
      ["15 | 78.54 mm", "16 | 83.78 mm"],
    );
    await enter(element, "figure", "speed");
    // 4200 / 8 turns a minute · 200π mm · 60 = 19.79 km/h.
    assert.equal(field(element, "want").value, "19.79 km/h");
    await enter(element, "want", "10 mph");
    // 4200 · 60 · 200π · n / 120 / 1609344 = 0.8199 mph a tooth: 9.84 at 12, 10.66 at 13.
    assert.deepEqual(
      rows(element).map((row) => row.slice(0, 13)),
      ["12 | 9.8 mph ", "13 | 10.7 mph"],
    );
    assert.include(lineOf(element), "no load, no losses");
    await enter(element, "figure", "lead");
    // A count before the split changes nothing about it.
    assert.include(lineOf(element), "changes nothing");
  });

  it("chooses a set, or a tyre, from the list for a wanted lead", async () => {
    // The rear rolls 200 / 20 · 10 against 100: level. With a ring of 25 it is 20% behind, with 30 a third.
    const element = await finder('of="ring" figure="lead" output="rear" with="front" want="-25 %"');
    assert.deepEqual(
      rows(element).map((row) => row.replace(/ \| [^|]*$/, "")),
      ["Ring 10 and 30 | 33.33% behind | −8.33%", "Ring 10 and 25 | 20.00% behind | +5.00%"],
    );
    await enter(element, "of", "front.wheel");
    await enter(element, "output", "front");
    await enter(element, "want", "5%");
    assert.deepEqual(
      rows(element).map((row) => row.replace(/ \| [^|]*$/, "")),
      ["Tyre 102 | 2.00% ahead | −3.00%", "Tyre 110 | 10.00% ahead | +5.00%"],
    );
    assert.include(lineOf(element), "Exactly: 105.0 mm.");
    find(element.shadowRoot!, "tbody button").click();
    await settle(1);
    const { layer } = find<MwBuild>(element.parentElement!, "mw-build").store;
    assert.deepEqual(layer.sets, { "front.wheel.diameter": "102 mm" });
  });

  it("keeps what it can read, and says what can be read", async () => {
    const element = await finder('of="spur.driver" want="9.1"');
    await enter(element, "want", "lots");
    assert.equal(field(element, "want").value, "9.1");
    assert.include(lineOf(element), "for example 44.3");
    await enter(element, "want", "8,6");
    assert.equal(rows(element)[0], "14 | 8.57 | −0.33% | Take it");
  });

  it("leaves the author's content where it asks for what there is not, and tells so", async () => {
    const script = `<script type="application/json">${JSON.stringify(build)}</script>`;
    for (const [attributes, slip] of [
      ['of="spur.drivr"', "spur.drivr"],
      ['figure="travl"', "travl"],
      ['output="raer"', "raer"],
      ['want="fast"', "fast"],
    ]) {
      const page = await show(
        `<mw-build id="tern">${script}</mw-build><mw-count-finder ${attributes}><p>13 teeth: 9.23</p></mw-count-finder>`,
      );
      assert.equal(lineOf(find(page, "mw-count-finder")), "13 teeth: 9.23");
      const [finding] = await find<MwBuild>(page, "mw-build").checked;
      assert.include(finding!.message, slip!);
    }
  });

  it("is worked by keyboard, leaves axe nothing to find, and fits a narrow page", async () => {
    const element = await finder('of="spur.driver"', 320);
    const button = find(element.shadowRoot!, "tbody button");
    button.focus();
    button.click();
    await settle(1);
    assert.equal(element.shadowRoot!.activeElement, find(element.shadowRoot!, "tbody button"));
    const { violations } = await axe.run(element.parentElement!, { rules: { region: { enabled: false } } });
    assert.deepEqual(
      violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html}`),
      [],
    );
    assert.isAtMost(element.scrollWidth, 321);
  });
});
