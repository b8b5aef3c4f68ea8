import { assert } from "@esm-bundle/chai";
import { clear, find, limpet, lineOf, settle, show, turn, withLimpet } from "../../test/page.js";
import type { MwBuild } from "../build/index.js";
import type { MwRatioSummary } from "./index.js";

describe("mw-ratio-summary", () => {
  let page: HTMLElement;
  const summary = () => find<MwRatioSummary>(page, "mw-ratio-summary");
  const rows = () =>
    [...summary().shadowRoot!.querySelectorAll("tr")].map((row) =>
      [...row.children].map((cell) => cell.textContent!.replace(/\s+/g, " ").trim()),
    );
  const draw = async (markup = "<mw-ratio-summary></mw-ratio-summary>") => {
    page = await show(withLimpet(markup));
  };

  afterEach(clear);

  it("shows stages, subtotals of groups and the total of each output", async () => {
    await draw();
    assert.deepEqual(rows(), [
      ["Stage Teeth".replace(" ", ""), "Front", "Rear"],
      ["Spur and pinion15 → 62", "4.13", "4.13"],
      ["Gear row18 → 31 → 45", "2.50", "2.50"],
      ["Gearbox", "10.33", "10.33"],
      ["Ring and pinion13 → 38 · 12 → 35", "2.92", "2.92"],
      ["Hub15 → 22 · 16 → 23", "1.47", "1.44"],
      ["Axle", "4.29", "4.19"],
      ["Motor turns for one wheel turn", "44.30", "43.32"],
    ]);
  });

  it("shows the interval where an input was a printed ratio", async () => {
    await draw(`<mw-ratio-summary at="as-printed"></mw-ratio-summary>`);
    assert.deepEqual(rows().at(-1), ["Motor turns for one wheel turn", "43.79 to 46.82", "43.32"]);
  });

  it("has the exact fractions on request only", async () => {
    await draw();
    const details = find<HTMLDetailsElement>(summary().shadowRoot!, "details");
    assert.isFalse(details.open);
    assert.include(lineOf(details), "Front: 25916/585");
    assert.include(lineOf(details), "Rear: 24955/576");
  });

  it("shows where each output stands in the range, as a picture with a name", async () => {
    await draw();
    const picture = find(summary().shadowRoot!, "svg");
    assert.equal(
      picture.getAttribute("aria-label"),
      "Front: 44.30, inside. Rear: 43.32, inside. The range is 38 to 46.",
    );
    find<MwBuild>(page, "mw-build").store.change({ "primary.driven": 72 });
    await turn();
    assert.include(picture.getAttribute("aria-label"), "Rear: 50.31, too many motor turns");
    // The article's own place stays in sight, in outline.
    assert.lengthOf(picture.querySelectorAll("path.end"), 2);
    const xs = [...picture.querySelectorAll("path.ink")].map((path) => parseFloat(path.getAttribute("d")!.slice(1)));
    const limit = parseFloat(find(picture, "text[text-anchor=middle]:nth-of-type(2)").getAttribute("x")!);
    for (const x of xs) assert.isAbove(x, limit);
  });

  it("has its title, its range and the verdicts in words, and holds its scale while counts are tried", async () => {
    await draw();
    const root = summary().shadowRoot!;
    assert.match(lineOf(root), /^Motor turns for one wheel turn/);
    assert.match(lineOf(root), /The range is 38 to 46\. Front: 44\.30, inside\. Rear: 43\.32, inside\./);
    const { store } = find<MwBuild>(page, "mw-build");
    const limits = (): string => find(root, "svg > path").getAttribute("d")!;
    const marks = (): string => [...root.querySelectorAll("path.ink")].map((path) => path.getAttribute("d")).join();
    const published = limits();
    store.change({ "primary.driven": 72 });
    await turn();
    const [wide, at72] = [limits(), marks()];
    assert.notEqual(wide, published);
    for (const driven of [70, 66, 63]) {
      store.change({ "primary.driven": driven });
      await turn();
      assert.equal(limits(), wide);
      assert.notEqual(marks(), at72);
    }
    store.reset();
    await turn();
    assert.equal(limits(), published);
  });

  it("has a total of the locked drive and one straight on where a differential is open", async () => {
    page = await show(`<mw-build></mw-build><mw-ratio-summary></mw-ratio-summary>`);
    find<MwBuild>(page, "mw-build").json = limpet.replace('"kind": "spool"', '"kind": "differential"');
    await settle();
    // Along the road both ask the mean of 25916/585 / 124 and 24955/576 / 120 of the motor, times their own diameters.
    assert.deepEqual(rows().slice(-2), [
      ["Motor turns for one wheel turn, locked", "44.30", "43.32"],
      ["Motor turns for one wheel turn, straight on", "44.53", "43.10"],
    ]);
  });

  it("leaves its content where it names an output that there is not, and tells the nearest that there is", async () => {
    await draw(`<mw-ratio-summary of="raer"><table><tr><td>Rear</td><td>43.32</td></tr></table></mw-ratio-summary>`);
    assert.equal(lineOf(summary()), "Rear43.32");
    assert.include((await find<MwBuild>(page, "mw-build").checked)[0]!.message, "nearest: rear");
  });

  it("writes gears as a drive, in the direction of reading", async () => {
    page = await show(`<div lang="ar-EG" dir="rtl">${withLimpet("<mw-ratio-summary></mw-ratio-summary>")}</div>`);
    assert.include(rows()[1]![0], "١٥ ← ٦٢");
  });

  it("shows one output alone", async () => {
    await draw(`<mw-ratio-summary of="rear"></mw-ratio-summary>`);
    assert.deepEqual(rows().at(-1), ["Motor turns for one wheel turn", "43.32"]);
  });

  it("stands for the table inside it, and lets swallowed prose be seen", async () => {
    await draw(
      `<mw-ratio-summary><table><tr><td>Front</td><td>44.30, as printed here</td></tr></table></mw-ratio-summary>`,
    );
    assert.notInclude(lineOf(summary()), "as printed here");
    await draw(`<mw-ratio-summary><p>The next paragraph of the article.</p><p>And 2 more.</p></mw-ratio-summary>`);
    assert.include(lineOf(summary()), "The next paragraph of the article.And 2 more.");
  });

  it("keeps the fallback in sight while there is no build", async () => {
    page = await show(`<mw-ratio-summary><table><tr><td>Front</td><td>44.30</td></tr></table></mw-ratio-summary>`);
    assert.equal(lineOf(summary()), "Front44.30");
  });

  it("is not bent by what a page lets down, nor by a reset of everything", async () => {
    const style = document.createElement("style");
    style.textContent =
      "*{all:unset} .stage-page{white-space:pre;letter-spacing:5px;line-height:0;text-transform:uppercase;word-spacing:9px;text-indent:40px}";
    document.head.append(style);
    await draw();
    page.className = "stage-page";
    await settle(6);
    const cell = find(summary().shadowRoot!, "tbody th");
    const { letterSpacing, whiteSpace, textTransform, textIndent, height } = getComputedStyle(cell);
    style.remove();
    assert.deepEqual([letterSpacing, whiteSpace, textTransform, textIndent], ["normal", "normal", "none", "0px"]);
    assert.isAbove(parseFloat(height), 15);
  });
});
