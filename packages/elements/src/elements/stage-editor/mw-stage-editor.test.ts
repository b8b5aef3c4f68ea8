import { assert } from "@esm-bundle/chai";
import type { Build } from "@meshwright/calc/drivetrain";
import { stageShapes } from "@meshwright/calc/stages";
import { clear, find, lineOf, press, settle, show, turn, withLimpet } from "../../test/page.js";
import type { MwBuild } from "../build/index.js";
import type { MwStageEditor } from "./index.js";

const stagesIn = (build: Build) => [build.stages, ...build.outputs.map(({ stages }) => stages)].flat();

describe("mw-stage-editor", () => {
  let page: HTMLElement;
  const root = () => find<MwStageEditor>(page, "mw-stage-editor").shadowRoot!;
  const build = () => find<MwBuild>(page, "mw-build").store.build!;
  const rear = () => lineOf(find(page, "mw-value"));
  const stages = () => [...root().querySelectorAll("li")].map((item) => item.id);
  const enter = async (selector: string, text: string) => {
    const input = find<HTMLInputElement>(root(), selector);
    input.value = text;
    input.dispatchEvent(new Event("change", { bubbles: true }));
    await settle();
  };
  const add = async (kind: string, list = "#add-") => {
    const select = find<HTMLSelectElement>(root(), list);
    select.value = kind;
    select.dispatchEvent(new Event("change", { bubbles: true }));
    await settle();
  };

  beforeEach(async () => {
    page = await show(withLimpet(`<mw-value of="rear">43.32</mw-value><mw-stage-editor></mw-stage-editor>`));
  });
  afterEach(clear);

  it("lists the stages in the order of drive, every count under a name", () => {
    assert.deepEqual(stages(), ["primary", "row", "front-ring", "front-hub", "rear-ring", "rear-hub"]);
    for (const input of root().querySelectorAll("input, select, button"))
      assert.ok(input.getAttribute("aria-label"), input.outerHTML);
  });

  it("changes a count, and refuses what is none", async () => {
    await enter("#primary input", "17");
    assert.equal(rear(), "38.23");
    await enter("#primary input", "1.5");
    assert.equal(rear(), "38.23");
    assert.include(lineOf(root()), "Kept 17.");
    press(find(root(), "#primary input"), "ArrowDown");
    await turn();
    assert.equal(rear(), "40.62");
  });

  it("changes what can be said besides, and takes it away again", async () => {
    await enter("#primary details [aria-label$=': name']", "First pair");
    assert.equal(build().stages[0]!.label, "First pair");
    await enter("#primary details [aria-label$=': name']", "");
    assert.isUndefined(build().stages[0]!.label);
  });

  it("leaves the slot where it is when the pair that it was counted by gets another pitch", async () => {
    const known = build().mounts![0]!;
    assert.deepEqual(known.knownPair, [23, 53]);
    await enter("#primary details [aria-label*=': module']", "0.5");
    const { knownPair, from, to } = build().mounts![0]!;
    assert.deepEqual([knownPair, from, to], [undefined, "30.3 mm", "31.3 mm"]);
  });

  it("moves, removes and keeps the focus", async () => {
    find(root(), "#primary .down").focus();
    find(root(), "#primary .down").click();
    await settle();
    assert.deepEqual(stages().slice(0, 2), ["row", "primary"]);
    assert.equal(root().activeElement?.closest("li")?.id, "primary");
    find(root(), "#row .remove").focus();
    find(root(), "#row .remove").click();
    await settle();
    assert.notInclude(stages(), "row");
    assert.equal(root().activeElement?.closest("li")?.id, "primary");
    assert.equal(rear(), "17.33");
  });

  it("takes every stage out on request, and says in words what goes with it", async () => {
    const ids = stages().join("|");
    const labels = stagesIn(build()).map(({ id, label }) => [id, label!] as const);
    for (const [id, label] of labels) {
      find(root(), `#${id} .remove`).click();
      await settle();
      assert.notInclude(stages(), id);
      const told = root().querySelector(".message")?.textContent;
      // The row alone is named by nothing.
      assert.equal(told !== undefined, id !== "row", id);
      // Both axles have a ring and a hub.
      const axle = { front: "Front: ", rear: "Rear: " }[id.split("-")[0]!] ?? "";
      if (told) assert.match(told, new RegExp(`^With ${axle}${label} went (?!.*\\b(${ids})\\b)`));
    }
    assert.deepEqual(stages(), []);
    assert.equal(rear(), "1.00");
  });

  it("says what goes with a stage in the language that stands there", async () => {
    const page = await show(`<div lang="fr">${withLimpet("<mw-stage-editor></mw-stage-editor>")}</div>`);
    const inside = find(page, "mw-stage-editor").shadowRoot!;
    find<HTMLElement>(inside, "#primary .remove").click();
    const told = () => inside.querySelector(".message")?.textContent ?? "";
    for (let n = 0; n < 100 && !told().startsWith("Retiré avec"); n++) await settle(1);
    assert.match(told(), /^Retiré avec /);
  });

  it("adds a stage of every kind that there is, one that the build accepts", async () => {
    for (const kind of Object.keys(stageShapes)) {
      await add(kind);
      assert.include(stages(), `${kind}-1`, kind);
      assert.equal(root().activeElement?.closest("li")?.id, `${kind}-1`);
    }
    assert.lengthOf(build().stages, 2 + Object.keys(stageShapes).length);
    await add("pair", "[id='add-rear']");
    assert.equal(build().outputs[1]!.stages.at(-1)!.id, "pair-2");
    await add("pair", "[id='add-selectable-1.low']");
    assert.include(stages(), "pair-3");
  });

  it("lengthens and shortens a row of gears", async () => {
    const counts = () =>
      [...root().querySelectorAll<HTMLInputElement>("#row .fields input[role=spinbutton]")].map(({ value }) => value);
    // In the middle, where it stands.
    root().querySelectorAll<HTMLElement>("#row .another")[1]!.click();
    await settle();
    assert.deepEqual(counts(), ["18", "31", "31", "45"]);
    assert.equal(rear(), "43.32");
    root().querySelectorAll<HTMLElement>("#row .fewer")[0]!.click();
    await settle();
    assert.deepEqual(counts(), ["31", "31", "45"]);
    for (const key of root().querySelectorAll("#row button")) {
      const { width, height } = key.getBoundingClientRect();
      assert.isAtLeast(Math.min(width, height), 24);
    }
  });

  it("has its fields in groups, in the page's language and with units", async () => {
    page.lang = "de";
    for (let n = 0; n < 40 && !lineOf(root()).includes("Drehrichtung"); n++) {
      find<HTMLDetailsElement>(root(), "#primary details").open = true;
      await settle(1);
    }
    const legends = [...root().querySelectorAll("#primary legend")].map((legend) => legend.textContent);
    assert.deepEqual(legends, ["Grundangaben", "Teilung und Maße", "Drehrichtung", "Namen und Teile"]);
    const words = lineOf(find(root(), "#primary details"));
    assert.notMatch(words, /\b(pressure|shift|label|tip|side|driver)\b/i);
    assert.include(words, "Eingriffswinkel°");
    assert.include(
      [...root().querySelectorAll("#primary option")].map((option) => option.textContent),
      "Schrägstirnrad",
    );
  });

  it("moves nothing where a panel opens but what stands below it", async () => {
    const before = find(root(), "#primary .name").getBoundingClientRect();
    find<HTMLElement>(root(), "#primary summary").click();
    await settle();
    const after = find(root(), "#primary .name").getBoundingClientRect();
    assert.deepEqual([after.x, after.y, after.width], [before.x, before.y, before.width]);
  });

  it("changes a set whole", async () => {
    await enter("#rear-ring input", "11");
    assert.isNull(root().querySelector(".message"));
    assert.equal(rear(), "47.26");
  });
});
