import { assert } from "@esm-bundle/chai";
import { define } from "../../third/index.js";
import { MwBenchCard } from "../../elements/bench-card/index.js";
import type { MwBuild } from "../../elements/build/index.js";
import { MwChangeTable } from "../../elements/change-table/index.js";
import { MwEdits } from "../../elements/edits/index.js";
import { MwOrderList } from "../../elements/order-list/index.js";
import { MwPairFinder } from "../../elements/pair-finder/index.js";
import { MwTrainDrawing } from "../../elements/train-drawing/index.js";
import { clear, find, lineOf, settle, show } from "../../test/page.js";
import { sayLengths } from "./index.js";

define(MwBenchCard, MwChangeTable, MwEdits, MwOrderList, MwPairFinder, MwTrainDrawing);

// 48 DP: 20 and 87 teeth stand 107 / 96 in = 1.1146 in = 28.31 mm apart, opened by 0.003 in 1.1176 in = 28.39 mm. A belt of
// 2 mm pitch between 20 and 60 teeth.
const build = (more: object = {}): object => ({
  format: "meshwright-build/1",
  stages: [
    { id: "primary", label: "Spur and pinion", kind: "pair", driver: 20, driven: 87, diametralPitch: 48 },
    { id: "belt", label: "Belt", kind: "belt", driver: 20, driven: 60, pitch: "2 mm", centre: "60 mm" },
  ],
  outputs: [{ id: "rear", label: "Rear", stages: [], wheel: { diameter: "4 in" } }],
  target: { from: 10, to: 14 },
  mounts: [{ stage: "primary", from: "1.05 in", to: "1.2 in", opening: "0.003 in" }],
  parts: [
    { id: "p20", is: "pinion", teeth: 20, diametralPitch: 48 },
    { id: "s87", is: "spur", teeth: 87, diametralPitch: 48 },
    { id: "s84", is: "spur", teeth: 84, diametralPitch: 48 },
  ],
  ...more,
});
const tags = ["mw-train-drawing", "mw-pair-finder", "mw-bench-card", "mw-order-list", "mw-change-table"];
const page = async (data: object, inside = "28.31 mm"): Promise<HTMLElement> => {
  const root = await show(
    `<mw-build><script type="application/json">${JSON.stringify(data)}</script></mw-build>
    <p>Centres <mw-value figure="centre" of="primary">${inside}</mw-value>, <mw-value id="pinned" figure="centre" of="primary" at="article">${inside}</mw-value></p>
    <mw-train-drawing of="primary"></mw-train-drawing><mw-pair-finder of="primary"></mw-pair-finder>
    <mw-bench-card></mw-bench-card><mw-order-list from="nothing"></mw-order-list><mw-change-table></mw-change-table><mw-edits></mw-edits>`,
    700,
  );
  while (!find(root, "mw-pair-finder").shadowRoot!.querySelector("tbody.hit")) await settle(1);
  await settle();
  return root;
};
const text = (root: Element, tag: string): string => {
  const shadow = find(root, tag).shadowRoot!;
  // Lettering of pictures is text of its own.
  const drawn = [...shadow.querySelectorAll("svg text")].map((one) => one.textContent);
  return [lineOf(find(root, tag)), ...drawn].join(" ").replaceAll("\u00a0", " ");
};
const press = async (root: Element, tag: string): Promise<void> => {
  find(find(root, tag).shadowRoot!, "button.unit").click();
  await settle();
};

describe("the unit of length", () => {
  afterEach(clear);

  it("is turned over by a reader for figures, drawing, finder, card, order and table together, and back", async () => {
    const root = await page(build());
    const { store } = find<MwBuild>(root, "mw-build");
    const inOne = (unit: "in" | "mm"): void => {
      const [centre, other] = unit === "in" ? ["1.115", "28.31"] : ["28.31", "1.115"];
      const [opened, otherOpened] = unit === "in" ? ["1.118", "28.39"] : ["28.39", "1.118"];
      for (const tag of tags.filter((one) => one !== "mw-order-list")) {
        // The drawing has the gears as they are set.
        assert.include(text(root, tag), `${tag === "mw-train-drawing" ? opened : centre} ${unit}`, tag);
        for (const wrong of [other, otherOpened]) assert.notInclude(text(root, tag), wrong!, tag);
      }
      // The belts that exist are told with the centre that each sets: 59.64 and 60.66 mm, 2.348 and 2.388 in.
      assert.include(text(root, "mw-order-list"), unit === "in" ? "2.348 in" : "59.64 mm");
      assert.include(text(root, "mw-bench-card"), `${opened} ${unit}`);
      assert.equal(lineOf(find(root, "mw-value")).replace("\u00a0", " "), `${centre} ${unit}`);
    };
    inOne("mm");
    for (const tag of tags) {
      await press(root, tag);
      inOne("in");
      // What the author wrote, and what is pinned to it, stays.
      assert.equal(find(root, "mw-value").textContent, "28.31 mm");
      assert.equal(lineOf(find(root, "#pinned")), "28.31 mm");
      assert.deepEqual(store.layer.sets, { lengths: "in" });
      assert.isUndefined(store.article!.lengths);
      // Nobody's numbers are others for it, and the reader is told what it was.
      assert.notInclude(text(root, "mw-bench-card"), "reader’s version");
      assert.isNull(find(root, "mw-train-drawing").shadowRoot!.querySelector(".version"));
      assert.match(text(root, "mw-edits"), /unit of length/);
      await press(root, tag);
      inOne("mm");
      assert.deepEqual(store.layer.sets, {});
    }
    await press(root, "mw-bench-card");
    // A link carries what is built, and nobody's unit; nor is that told as something left out.
    store.change({ "primary.driver": 21 });
    await settle();
    const holder = find<MwBuild>(root, "mw-build");
    const counts = holder.link();
    assert.deepEqual(holder.leftOut(), []);
    store.change({ lengths: null });
    await settle();
    assert.equal(holder.link(), counts);
    store.undo();
    store.undo();
    store.undo();
    await settle();
    inOne("mm");
  });

  it("an author's inches are turned into a reader's millimetres, and what is taken meanwhile is kept", async () => {
    const root = await page(build({ lengths: "in" }), "1.115 in");
    const { store } = find<MwBuild>(root, "mw-build");
    assert.include(text(root, "mw-pair-finder"), "1.115 in");
    await press(root, "mw-pair-finder");
    assert.include(text(root, "mw-pair-finder"), "28.31 mm");
    assert.equal(find(find(root, "mw-pair-finder").shadowRoot!, "button.unit").innerText, "Lengths in inches");
    store.change({ "primary.driven": 84 });
    await settle();
    // 104 / 96 in = 27.52 mm; the table has the author's in the same unit.
    assert.include(text(root, "mw-change-table"), "27.52 mm");
    assert.include(text(root, "mw-change-table"), "28.31 mm");
    await press(root, "mw-train-drawing");
    assert.deepEqual(store.layer.sets, { "primary.driven": 84 });
  });

  it("has no control where whoever reads is whoever writes: the page has one of its own", async () => {
    const root = await page(build());
    const holder = find<MwBuild>(root, "mw-build");
    const controls = (): number =>
      tags.filter((tag) => find(root, tag).shadowRoot!.querySelector("button.unit")).length;
    assert.equal(controls(), tags.length);
    Object.assign(holder, { isOwn: true });
    holder.store.change({ "primary.driven": 83 });
    await settle();
    assert.equal(controls(), 0);
  });

  it("has no control where no lengths are shown, nor where a version is pinned", async () => {
    const root = await show(
      `<mw-build stages="15 to 62" rear="12 to 35"></mw-build><mw-bench-card></mw-bench-card><mw-order-list></mw-order-list><mw-change-table></mw-change-table>`,
    );
    await settle();
    for (const tag of ["mw-bench-card", "mw-order-list", "mw-change-table"])
      assert.isNull(find(root, tag).shadowRoot!.querySelector(".unit"), tag);
    const pinned = await show(
      `<mw-build><script type="application/json">${JSON.stringify(build())}</script></mw-build><mw-bench-card at="article"></mw-bench-card>`,
    );
    await settle();
    assert.isNull(find(pinned, "mw-bench-card").shadowRoot!.querySelector(".unit"));
  });

  it("is found in what is said in any language", () => {
    for (const locale of ["en", "de", "fr", "es", "ja", "ar"])
      for (const [unit, name] of [
        ["mm", "millimeter"],
        ["in", "inch"],
      ] as const) {
        const length = new Intl.NumberFormat(locale, { style: "unit", unit: name }).format(31.2);
        assert.isTrue(sayLengths([`(${length})`], unit, locale), `${locale} ${length}`);
        assert.isFalse(sayLengths(["3 innings, 15 → 62"], unit, locale), locale);
      }
  });
});
