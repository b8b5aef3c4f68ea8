import { assert } from "@esm-bundle/chai";
import "axe-core";
import type axeCore from "axe-core";
import { define } from "../../third/index.js";
import { MwBenchCard } from "../../elements/bench-card/index.js";
import { MwChangeTable } from "../../elements/change-table/index.js";
import { MwOrderList } from "../../elements/order-list/index.js";
import { MwPartsList } from "../../elements/parts-list/index.js";
import { MwWheelSpeed } from "../../elements/wheel-speed/index.js";
import { MwWorking } from "../../elements/working/index.js";
import type { MwBuild } from "../../elements/build/index.js";
import { clear, find, limpet, lineOf, settle, show, turn, withLimpet } from "../../test/page.js";

define(MwBenchCard, MwChangeTable, MwOrderList, MwPartsList, MwWheelSpeed, MwWorking);

const { axe } = globalThis as unknown as { axe: typeof axeCore };

const one = async (markup: string, width?: number): Promise<HTMLElement> => {
  const page = await show(withLimpet(markup), width);
  await settle();
  return page.querySelector(markup.match(/mw-[a-z-]+/)![0])!;
};

/** What a table shows, a row a line. */
const rows = (element: Element, table = 0): string[] =>
  [...element.shadowRoot!.querySelectorAll("table")[table]!.querySelectorAll("tr")].map((row) =>
    [...row.cells].map((cell) => cell.innerText.replace(/\s+/g, " ").trim()).join(" | "),
  );

const change = async (page: ParentNode, changes: Record<string, unknown>): Promise<void> => {
  find<MwBuild>(page, "mw-build").store.change(changes);
  await settle();
};

describe("mw-working", () => {
  afterEach(clear);

  it("shows each stage exactly, as a decimal, up to there, and as rounding at every step has it", async () => {
    const element = await one('<mw-working of="front"></mw-working>');
    assert.deepEqual(rows(element).slice(1), [
      "Spur and pinion | 15 → 62 | 62/15 | 4.13 | 4.13 | 4.13",
      "Gear row | 18 → 31 → 45 | 5/2 | 2.50 | 10.33 | 10.33",
      "Ring and pinion | 13 → 38 | 38/13 | 2.92 | 30.21 | 30.16",
      "Hub | 15 → 22 | 22/15 | 1.47 | 44.30 | 44.34",
      "Motor turns for one wheel turn |  | 25916/585 | 44.30 |  | 44.34",
    ]);
    assert.include(lineOf(element), "rounding at every step would be +0.09% off");
  });

  it("carries a printed ratio as what it is, and has no rounded column from there on", async () => {
    const element = await one('<mw-working of="front" at="as-printed"></mw-working>');
    assert.equal(rows(element)[4], "Hub | printed 1.5 | 29/20 to 31/20 | 1.45 to 1.55 | 43.79 to 46.82 | –");
  });
});

describe("mw-working in another language", () => {
  afterEach(clear);

  it("has its heads, its counts, its digits and its remark, and the build's rounding", async () => {
    const page = await show(`<div lang="de">${withLimpet("<mw-working></mw-working>")}</div>`);
    const element = find(page, "mw-working");
    // Its words come with several files, in any order.
    const heads = "Stufe | Zähne | Genau | Dezimal | Bis hierher | In jedem Schritt gerundet";
    for (let n = 0; n < 100 && rows(element)[0] !== heads; n++) await settle(1);
    assert.equal(rows(element)[0], heads);
    assert.equal(rows(element)[1], "Spur and pinion | 15 → 62 | 62/15 | 4,13 | 4,13 | 4,13");
    find<MwBuild>(page, "mw-build").json = limpet.replace(
      /"rounding": \{[^}]*\},/,
      '"rounding": { "maximumFractionDigits": 0 },',
    );
    await settle();
    assert.equal(rows(element)[1], "Spur and pinion | 15 → 62 | 62/15 | 4 | 4 | 4");
  });

  it("leaves its content where it names an output that there is not, and tells so", async () => {
    const element = await one('<mw-working of="nobody"><p>62/15 = 4.13</p></mw-working>');
    assert.equal(lineOf(element), "62/15 = 4.13");
    const [finding] = await find<MwBuild>(element.parentElement!, "mw-build").checked;
    assert.include(finding!.message, "nobody");
  });
});

describe("mw-change-table", () => {
  afterEach(clear);

  it("shows what other tyres do: the ground rolled, and nothing else", async () => {
    const element = await one("<mw-change-table></mw-change-table>");
    await change(element.parentElement!, { "rear.wheel": { diameter: "124 mm" } });
    const rear = rows(element).slice(
      rows(element).findIndex((row) => row.startsWith("Against the published build, Rear")),
    );
    const yours = (head: string) => rear.find((row) => row.startsWith(head))!.split(" | ")[2];
    assert.deepEqual(["reduction", "wheel speed", "wheel torque", "travel for one motor turn"].map(yours), [
      "0.00%",
      "0.00%",
      "0.00%",
      "+3.33%",
    ]);
  });
});

describe("mw-wheel-speed", () => {
  afterEach(clear);

  it("shows nominal and full, says what it takes for granted, and never says safe", async () => {
    const element = await one('<mw-wheel-speed of="front" loaded="0.8 to 0.9"></mw-wheel-speed>');
    // 1850 kV × 12.6 V / (25916/585) × π × 124 mm, worked out by hand: 12.298 km/h.
    assert.equal(rows(element)[2], "Full charge, 12.60 V | 23,310 | 526 | 12.3 km/h");
    assert.equal(rows(element)[1], "Nominal, 11.10 V | 20,535 | 464 | 10.8 km/h");
    assert.match(rows(element)[3]!, /^Loaded, 80% to 90% of the free speed \| 16,428 to 18,482 \| /);
    const text = lineOf(element);
    assert.include(text, "no load");
    assert.include(text, "Local rules, the makers’ instructions and qualified people come first.");
    assert.notMatch(text, /\bsafe\b/i);
  });

  it("says why there is no speed, instead of one", async () => {
    const page = await show(
      '<mw-build stages="Spur: 15 to 60" rear="Ring: 10 to 40"></mw-build><mw-wheel-speed></mw-wheel-speed>',
    );
    assert.include(lineOf(find(page, "mw-wheel-speed")), "No wheel is given.");
  });
});

describe("mw-change-table", () => {
  afterEach(clear);

  it("sets versions side by side, with four names for one change", async () => {
    const element = await one('<mw-change-table show="first-try"></mw-change-table>');
    const table = rows(element);
    assert.include(table, "Front | 44.30 inside | 44.30 inside | 24.70 too few motor turns");
    assert.include(table, "reduction | 0.00% | 0.00% | −44.25%");
    assert.include(table, "wheel speed | 0.00% | 0.00% | +79.37%");
    assert.include(table, "wheel torque | 0.00% | 0.00% | −44.25%");
  });

  it("follows the reader in one column only", async () => {
    const element = await one('<mw-change-table show="first-try"></mw-change-table>');
    await change(element.parentElement!, { "primary.driver": 17 });
    assert.include(rows(element), "Front | 44.30 inside | 39.09 inside | 24.70 too few motor turns");
  });
});

describe("what a change costs", () => {
  afterEach(clear);
  const costs = (element: Element): string => rows(element).find((row) => row.startsWith("To buy"))!;

  it("stands beside the other figures: nothing, owned already, a price, and what the list has not", async () => {
    const element = await one('<mw-change-table show="first-try hub-23 tempting"></mw-change-table>');
    // Pinion 17 for 6.40, spur 66 for 10.20; both gears of the first try lie in the drawer; no list has a hub of 23.
    assert.equal(costs(element), "To buy | – | – | Owned already | 2 not in the list | €16.60");
    await change(element.parentElement!, { "primary.driver": 17 });
    assert.equal(costs(element), "To buy | – | €6.40 | Owned already | 2 not in the list | €16.60");
  });

  const eider = (parts: object[]): string =>
    `<mw-build><script type="application/json">${JSON.stringify({
      format: "meshwright-build/1",
      title: "Eider, a mud sled",
      stages: [{ id: "belt", kind: "belt", label: "Belt", driver: 18, driven: 54, pitch: "3 mm", beltTeeth: 90 }],
      outputs: [
        {
          id: "rear",
          label: "Rear",
          stages: [
            {
              id: "sets",
              kind: "planetary",
              label: "Sets",
              sun: 12,
              ring: 60,
              fixed: "ring",
              input: "sun",
              output: "carrier",
              repeat: 2,
            },
          ],
        },
      ],
      alternatives: [
        { id: "other", label: "Other", changes: { "belt.beltTeeth": 94, "belt.driven": 60, "sets.sun": 15 } },
      ],
      parts,
    })}</script></mw-build>`;

  it("is told for each currency, and what has no price is counted", async () => {
    const page = await show(
      `${eider([
        { id: "drum", is: "pulley", teeth: 60, pitch: "3 mm", price: { amount: "5.25", currency: "EUR" } },
        { id: "band", is: "belt", teeth: 94, pitch: "3 mm", price: { amount: "4", currency: "GBP" } },
        { id: "suns", is: "planetary", driver: 15, driven: 60 },
      ])}<mw-change-table></mw-change-table>`,
    );
    assert.equal(costs(find(page, "mw-change-table")), "To buy | – | – | €5.25 and £4.00 and 1 without a price");
  });

  it("has no row where the build lists no parts", async () => {
    const page = await show(`${eider([])}<mw-change-table></mw-change-table>`);
    assert.isUndefined(costs(find(page, "mw-change-table")));
  });

  it("is an order of belts, pulleys and planetary sets as well, told by counts, pitch and length", async () => {
    const page = await show(`${eider([])}<mw-order-list at="other"></mw-order-list><mw-parts-list></mw-parts-list>`);
    assert.include(
      lineOf(find(page, "mw-order-list")),
      "No part of the list answers: Belt: pulley or sprocket 60, 3 mm; Belt: belt or chain 94, 3 mm, 282.0 mm; Sets: 2 × planetary set sun 15 in ring 60.",
    );
    assert.include(rows(find(page, "mw-parts-list"))[3], "belt or chain 90, 3 mm, 270.0 mm: no part of the list");
  });
});

describe("mw-order-list", () => {
  afterEach(clear);

  it("says what to buy, what is owned, what stays and what is left over, from one version to another", async () => {
    const element = await one('<mw-order-list from="first-try"></mw-order-list>');
    const text = lineOf(element);
    assert.match(text, /Left over: .*23.*53/);
    assert.notInclude(text, "NaN");
    assert.notInclude(text, "Fit,");
  });

  it("lists what a reader's pair means to get, with its price and the date it was looked up", async () => {
    const element = await one("<mw-order-list></mw-order-list>");
    assert.include(lineOf(element), "Nothing to buy.");
    await change(element.parentElement!, { "primary.driver": 17, "primary.driven": 66 });
    const [, first, second, total] = rows(element);
    assert.match(first!, /^Pinion 17, hardened Saltmarsh Gears \| 1 \| €6\.40 Sep 28, 2026 \| Saltmarsh Gears, list/);
    assert.match(second!, /^Spur 66/);
    assert.equal(total, "Together | €16.60 | ");
    assert.include(lineOf(element), "Fit, Spur and pinion: too far apart.");
  });
});

describe("mw-parts-list", () => {
  afterEach(clear);

  it("names every part by its stage, and says where the list has none", async () => {
    const element = await one("<mw-parts-list></mw-parts-list>");
    const table = rows(element);
    assert.match(table[1]!, /^Spur and pinion \| 1 \| Pinion 15, hardened module 0\.8 \| Saltmarsh Gears/);
    assert.isTrue(table.some((row) => /no part of the list/.test(row)));
  });
});

describe("mw-bench-card", () => {
  afterEach(clear);

  it("has counts, centres, turns to check by hand, and says whose values they are", async () => {
    const element = await one("<mw-bench-card></mw-bench-card>");
    assert.include(rows(element, 0), "Spur and pinion | 15 → 62 | ");
    assert.include(rows(element, 1), "Spur and pinion: Centre distance without play | 30.8 mm | ");
    // Two turns of a wheel: 2 × (25916/585) ÷ (62/15); with one held, the other's three count half.
    assert.include(rows(element, 2), "Front, both wheels 2× round; turns of: spur | 21.44 | ");
    assert.include(rows(element, 2), "Front, one wheel held, the other 3× round; turns of: spur | 16.08 | ");
    assert.include(lineOf(element), "The author’s values.");
    await change(element.parentElement!, { "primary.driver": 17 });
    assert.include(lineOf(element), "A reader’s version: 1 change.");
    assert.include(lineOf(element), "Fit, Spur and pinion: too far apart.");
  });
});

describe("the elements beyond an article", () => {
  afterEach(clear);
  const all = ["working", "wheel-speed", "change-table", "order-list", "parts-list", "bench-card"];

  it("leave axe nothing to find", async () => {
    const page = await show(withLimpet(all.map((name) => `<h2>${name}</h2><mw-${name}></mw-${name}>`).join("")));
    await settle();
    const { violations } = await axe.run(page, { rules: { region: { enabled: false } } });
    assert.deepEqual(
      violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html}`),
      [],
    );
  });

  it("do not push a page of 320 pixels sideways", async () => {
    const page = await show(withLimpet(all.map((name) => `<mw-${name}></mw-${name}>`).join("")), 320);
    await settle();
    for (const element of page.querySelectorAll<HTMLElement>(all.map((name) => `mw-${name}`).join()))
      assert.isAtMost(element.scrollWidth, 321, element.localName);
  });

  it("say whose version they show while it is not the author's", async () => {
    const tags = ["mw-order-list", "mw-change-table", "mw-working", "mw-wheel-speed", "mw-parts-list"];
    const page = await show(withLimpet(tags.map((tag) => `<${tag}></${tag}>`).join("")));
    const marks = () =>
      tags.map((tag) => find(page, tag).shadowRoot!.querySelector("[part=version]")?.textContent ?? "");
    assert.deepEqual(
      marks(),
      tags.map(() => ""),
    );
    await change(page, { "primary.driver": 17 });
    assert.deepEqual(
      marks(),
      tags.map(() => "yours"),
    );
  });

  it("keep the author's words until there is a build", async () => {
    const page = await show(all.map((name) => `<mw-${name}><p>In words.</p></mw-${name}>`).join(""));
    await turn();
    for (const name of all) assert.equal(lineOf(find(page, `mw-${name}`)), "In words.", name);
  });
});
