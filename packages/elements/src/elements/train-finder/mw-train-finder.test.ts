import { assert } from "@esm-bundle/chai";
import "axe-core";
import type axeCore from "axe-core";
import { define } from "../../third/index.js";
import { MwOrderList } from "../order-list/index.js";
import type { MwBuild } from "../build/index.js";
import { clear, find, lineOf, settle, show } from "../../test/page.js";
import { MwTrainFinder } from "./index.js";

define(MwTrainFinder, MwOrderList);

const { axe } = globalThis as unknown as { axe: typeof axeCore };

const price = (amount: string) => ({ price: { amount, currency: "EUR" }, available: true });
const pinions = [14, 15, 16, 17].map((teeth) => ({
  id: `p${teeth}`,
  is: "pinion",
  teeth,
  module: "0.8",
  ...price("3.10"),
}));
const spurs = [60, 61, 62, 64].map((teeth) => ({
  id: `s${teeth}`,
  is: "spur",
  teeth,
  module: "0.8",
  ...price("5.20"),
}));
const sets = (stage: string, list: readonly (readonly [number, number])[]) =>
  list.map(([driver, driven]) => ({
    id: `${stage}-${driver}-${driven}`,
    is: "set",
    stage,
    driver,
    driven,
    ...price("20.00"),
  }));
const frontSets = [[12, 35], [13, 38], [11, 36]] as const; // prettier-ignore
const rearSets = [
  [12, 35],
  [12, 36],
  [13, 40],
] as const;
const ring = (id: string) => ({ id, label: id, kind: "pair", driver: 10, driven: 30, form: "bevel", set: true });
const build = {
  format: "meshwright-build/1",
  stages: [{ id: "primary", label: "Spur and pinion", kind: "pair", driver: 13, driven: 60, module: "0.8" }],
  outputs: [
    { id: "front", label: "Front", stages: [ring("front-ring")], wheel: { diameter: "120 mm" } },
    { id: "rear", label: "Rear", stages: [ring("rear-ring")], wheel: { diameter: "120 mm" } },
  ],
  target: { from: 11, to: 13 },
  mounts: [{ stage: "primary", from: "30 mm", to: "31 mm" }],
  parts: [...pinions, ...spurs, ...sets("front-ring", frontSets), ...sets("rear-ring", rearSets)],
};

const finder = async (attributes: string, more: object = {}, width?: number): Promise<HTMLElement> => {
  const script = `<script type="application/json">${JSON.stringify({ ...build, ...more })}</script>`;
  const markup = `<mw-build id="tern">${script}</mw-build><mw-train-finder ${attributes}></mw-train-finder><mw-order-list></mw-order-list>
    ${["front", "rear"].map((of) => `<mw-value figure="reduction" of="${of}"></mw-value>`).join(" ")}<mw-value figure="lead"></mw-value>`;
  return find(await show(markup, width), "mw-train-finder");
};

const press = async (element: Element, selector: string): Promise<void> => {
  find(element.shadowRoot!, selector).click();
  await settle(2);
};

const rows = (element: Element): string[][] =>
  [...element.shadowRoot!.querySelectorAll("tbody tr:first-child")].map((row) =>
    [...row.children].map((cell) => lineOf(cell).replaceAll("\u00a0", " ")),
  );

/** By hand, in whole numbers: every pinion and spur in the slot with every set, in range, the front so far ahead. */
function byHand(from: number, to: number): string[] {
  const found: string[] = [];
  for (const { teeth: p } of pinions)
    for (const { teeth: s } of spurs)
      for (const [a, b] of frontSets)
        for (const [c, d] of rearSets) {
          const fits = 0.4 * (p + s) >= 30 - 1e-9 && 0.4 * (p + s) <= 31 + 1e-9;
          // Totals 11 to 13: s · b ≥ 11 p a and so on; lead = (d / c) / (b / a) − 1.
          const inside = [[a, b], [c, d]].every(([x, y]) => s * y! >= 11 * p * x! && s * y! <= 13 * p * x!); // prettier-ignore
          const ahead = 100 * (d * a - b * c);
          if (fits && inside && ahead >= from * b * c && ahead <= to * b * c)
            found.push(`${p} → ${s}, ${a} → ${b}, ${c} → ${d}`);
        }
  return found;
}

describe("mw-train-finder", () => {
  afterEach(clear);

  it("looks only when it is asked, and finds every train within ranges, slot and lead", async () => {
    const element = await finder('lead="0% to 3%"');
    assert.deepEqual(rows(element), []);
    await press(element, "button.look");
    const expected = byHand(0, 3);
    assert.isAtLeast(expected.length, 9);
    assert.include(lineOf(element), `Found: ${expected.length}`);
    assert.lengthOf(rows(element), 8);
    for (let more; (more = element.shadowRoot!.querySelector<HTMLElement>("button.more"));) {
      more.click();
      await settle(1);
    }
    assert.sameMembers(
      rows(element).map(([gears]) => gears!),
      expected,
    );
    const shown = rows(element).map(([, totals]) => totals!.split(" · ").map(Number));
    const far = shown.map((totals) => Math.max(...totals.map((total) => Math.abs(total - 12))));
    assert.isTrue(far.every((one, n) => !n || one >= far[n - 1]! - 0.011));
  });

  it("puts the whole train on the stages as one edit, and every figure and the order say what it said", async () => {
    const element = await finder('lead="0% to 3%"');
    await press(element, "button.look");
    const told: unknown[] = [];
    element.addEventListener("mw-change", (event) => told.push((event as CustomEvent).detail));
    const [gears, totals, lead, cost] = rows(element)[2]!;
    find(element.shadowRoot!, "tbody:nth-of-type(3) button").click();
    await settle(2);
    assert.lengthOf(told, 1);
    const values = [...element.parentElement!.querySelectorAll("mw-value")].map((value) => lineOf(value));
    assert.deepEqual([values.slice(0, 2).join(" · "), values[2]], [totals, lead]);
    const order = find(element.parentElement!, "mw-order-list");
    assert.equal(lineOf(find(order.shadowRoot!, ".total .sum")), cost);
    // The list stays where it is, and says what is in the build.
    assert.equal(rows(element)[2]![0], gears);
    assert.equal(rows(element)[2]![4], "in the build");
    const { store } = find<MwBuild>(element.parentElement!, "mw-build");
    store.undo();
    assert.deepEqual(store.layer.sets, {});
  });

  it("takes stages out of the choice, and tells no more of what stands otherwise by now", async () => {
    const element = await finder('of="primary"');
    await press(element, "button.look");
    // 60 / 14 · 3 = 12.86 and so on: all pairs of the slot in 11 to 13.
    const pairs = pinions.flatMap(({ teeth: p }) =>
      spurs.flatMap(({ teeth: s }) =>
        p + s >= 75 && p + s <= 77 && 3 * s >= 11 * p && 3 * s <= 13 * p ? [`${p} → ${s}`] : [],
      ),
    );
    assert.isAtLeast(pairs.length, 3);
    assert.sameMembers(
      rows(element).map(([gears]) => gears!),
      pairs,
    );
    find<MwBuild>(element.parentElement!, "mw-build").store.change({
      "front-ring.driver": 11,
      "front-ring.driven": 36,
    });
    await settle(2);
    assert.deepEqual(rows(element), []);
    const box = find<HTMLInputElement>(element.shadowRoot!, 'input[name="front-ring"]');
    assert.isFalse(box.checked);
    box.click();
    await press(element, "button.look");
    assert.isTrue(rows(element).every(([gears]) => gears!.split(",").length === 2));
  });

  it("chooses tyres too, where the list has some", async () => {
    const tyres = ["115 mm", "120 mm", "126 mm"].map((diameter, n) => ({
      id: `t${n}`,
      name: `Tyre ${diameter}`,
      is: "wheel",
      diameter,
      ...price("9.00"),
    }));
    const element = await finder('of="primary" wheels="front" lead="4% to 6%"', { parts: [...build.parts, ...tyres] });
    await press(element, "button.look");
    assert.isNotEmpty(rows(element));
    // Both rings are alike: the tyre alone leads, 126 / 120.
    for (const [gears, , lead] of rows(element)) {
      assert.include(gears, "Tyre 126 mm");
      assert.equal(lead, "5.00% ahead");
    }
    find(element.shadowRoot!, "tbody button").click();
    await settle(2);
    assert.equal(lineOf(element.parentElement!.querySelectorAll("mw-value")[2]!), "5.00% ahead");
  });

  it("says why it cannot look, and that nothing meets all of it", async () => {
    const without = await finder("", { target: undefined });
    await press(without, "button.look");
    assert.include(lineOf(without), "names no range");
    const open = await finder("", { centre: { kind: "differential" } });
    await press(open, "button.look");
    assert.include(lineOf(open), "one stage at a time");
    const none = await finder('lead="90% to 95%"');
    await press(none, "button.look");
    assert.include(lineOf(none), "meets all of it");
  });

  it("can be stopped while it looks", async () => {
    const many = [...Array(900).keys()].map((n) => n + 20);
    const gears = (is: string) =>
      many.map((teeth) => ({ id: `${is}-${teeth}`, is, teeth, module: "0.8", ...price("1.00") }));
    const element = await finder("", { parts: [...gears("pinion"), ...gears("spur"), ...build.parts], mounts: [] });
    find(element.shadowRoot!, "button.look").click();
    // It lets the page draw before it goes on.
    await (element as MwTrainFinder).updateComplete;
    assert.include(lineOf(element), "Looking");
    const stop = [...element.shadowRoot!.querySelectorAll("button")].find((button) => lineOf(button) === "Stop")!;
    stop.click();
    await settle(1);
    assert.include(lineOf(element), "Stopped");
  });

  it("leaves the author's content where it asks for what there is not, and tells so", async () => {
    for (const [attributes, slip] of [
      ['of="primery"', "primery"],
      ['wheels="raer"', "raer"],
      ['lead="some"', "some"],
    ]) {
      const element = await finder(attributes!);
      element.innerHTML = "<p>15 to 62</p>";
      await settle(1);
      assert.equal(lineOf(element), "15 to 62");
      const [finding] = await find<MwBuild>(element.parentElement!, "mw-build").checked;
      assert.include(finding!.message, slip!);
    }
  });

  it("leaves axe nothing to find, and a narrow page in its place", async () => {
    const element = await finder('lead="0% to 3%"', {}, 320);
    await press(element, "button.look");
    const { violations } = await axe.run(element.parentElement!, { rules: { region: { enabled: false } } });
    assert.deepEqual(
      violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html}`),
      [],
    );
    assert.isAtMost(element.scrollWidth, 321);
  });

  it("says of which axle a stage is, where both bear one label", async () => {
    const outputs = build.outputs.map((one) => ({
      ...one,
      stages: one.stages.map((stage) => ({ ...stage, label: "Ring" })),
    }));
    const element = await finder("", { outputs });
    const names = [...element.shadowRoot!.querySelectorAll("label")].map((one) => lineOf(one));
    assert.includeMembers(names, ["Spur and pinion", "Front: Ring", "Rear: Ring"]);
  });
});
