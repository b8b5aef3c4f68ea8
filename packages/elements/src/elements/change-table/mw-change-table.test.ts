import { assert } from "@esm-bundle/chai";
import { addFigures } from "../../shared/drawn/index.js";
import { define } from "../../shared/element/index.js";
import { fitFigures, motionFigures } from "@meshwright/calc/report";
import type { MwBuild } from "../build/index.js";
import { clear, find, lineOf, settle, show } from "../../test/page.js";
import { MwChangeTable } from "./index.js";

addFigures({ ...fitFigures, ...motionFigures });
define(MwChangeTable);

const pair = (id: string, driver: number, driven: number, group: string) => ({
  id,
  label: id,
  kind: "pair",
  driver,
  driven,
  group,
});
const rear = (...stages: object[]) => ({ id: "rear", label: "Rear", stages });
const sold = {
  format: "meshwright-build/1",
  stages: [pair("first", 10, 40, "gearbox"), pair("second", 10, 20, "gearbox")],
  outputs: [rear(pair("ring", 10, 30, "axle"))],
};
const build = {
  format: "meshwright-build/1",
  stages: [pair("spur", 10, 50, "gearbox"), pair("back", 10, 20, "gearbox")],
  outputs: [
    rear(pair("ring", 10, 30, "axle"), pair("hub", 10, 15, "hubs")),
    { id: "front", label: "Front", stages: [] },
  ],
  references: [{ id: "as-sold", label: "the digger as sold", build: sold }],
};

const table = async (attributes: string, inside = ""): Promise<HTMLElement> => {
  const script = `<script type="application/json">${JSON.stringify(build)}</script>`;
  const page = await show(
    `<mw-build id="tern">${script}</mw-build><mw-change-table ${attributes}>${inside}</mw-change-table>
    <mw-value figure="change" of="rear" from="as-sold"></mw-value>`,
    900,
  );
  await settle();
  return find(page, "mw-change-table");
};

const row = (element: Element, head: string): string[] => {
  const rows = [...element.shadowRoot!.querySelectorAll("tr")];
  const found = rows.find((one) => lineOf(one.cells[0]!) === head)!;
  return [...found.cells].slice(1).map((cell) => lineOf(cell));
};

describe("mw-change-table against a reference", () => {
  afterEach(clear);

  it("holds totals and groups against it, each percentage by its base, and says what one side lacks", async () => {
    const element = await table('against="as-sold"');
    // As sold 8 · 3 = 24; published 10 · 3 · 1.5 = 45; yours the same.
    assert.deepEqual(row(element, "Rear"), ["24.00", "45.00", "45.00"]);
    // 45 / 24 = 1.875; by the middle of both 2 · 21 / 69.
    assert.deepEqual(row(element, "reduction"), ["0.00%", "+87.50%", "+87.50%"]);
    assert.deepEqual(row(element, "reduction, against the middle of both"), ["0.00%", "+60.87%", "+60.87%"]);
    // The gearbox 10 against 8: a quarter more; by the middle 2 · 2 / 18. The axle is as it was.
    assert.deepEqual(row(element, "gearbox: reduction"), ["0.00%", "+25.00%", "+25.00%"]);
    assert.deepEqual(row(element, "gearbox: reduction, against the middle of both"), ["0.00%", "+22.22%", "+22.22%"]);
    assert.deepEqual(row(element, "axle: reduction"), ["0.00%", "0.00%", "0.00%"]);
    // Hubs there are only in one of them; so is the front axle.
    assert.deepEqual(row(element, "hubs: reduction"), [
      "not in the digger as sold",
      "not in the digger as sold",
      "not in the digger as sold",
    ]);
    assert.include(row(element, "Front")[0], "not in the digger as sold");
    assert.equal(lineOf(find(element.parentElement!, "mw-value")), "+87.50%");
  });

  it("follows the reader, and leaves the published build as it is", async () => {
    const element = await table('against="as-sold"');
    find<MwBuild>(element.parentElement!, "mw-build").store.change({ "spur.driven": 40, "hub.driven": 10 });
    await settle();
    assert.deepEqual(row(element, "Rear"), ["24.00", "45.00", "24.00"]);
    assert.deepEqual(row(element, "gearbox: reduction"), ["0.00%", "+25.00%", "0.00%"]);
  });

  it("leaves the author's content where there is no such build, and tells so", async () => {
    const element = await table('against="as-solt"', "<p>87.5 % deeper</p>");
    assert.equal(lineOf(element), "87.5 % deeper");
    const [finding] = await find<MwBuild>(element.parentElement!, "mw-build").checked;
    assert.include(finding!.message, "as-sold");
  });
});

describe("mw-change-table where whoever reads is whoever writes", () => {
  afterEach(clear);

  it("shows nothing as published, and counts what alternatives change from what stands", async () => {
    const other = { id: "deeper", label: "Deeper", changes: { "spur.driver": 8 } };
    const script = `<script type="application/json">${JSON.stringify({ ...build, alternatives: [other] })}</script>`;
    const page = await show(`<mw-build id="tern">${script}</mw-build><mw-change-table></mw-change-table>`, 900);
    Object.assign(find(page, "mw-build"), { isOwn: true });
    const element = find(page, "mw-change-table");
    (element as unknown as { requestUpdate(): void }).requestUpdate();
    await settle();
    const [head] = element.shadowRoot!.querySelectorAll("tr");
    assert.notInclude(lineOf(head!), "published");
    assert.lengthOf(head!.cells, 3);
    // 10 · 3 · 1.5 = 45, and 12.5 · 3 · 1.5 = 56.25.
    assert.deepEqual(row(element, "Rear"), ["45.00", "56.25"]);
  });
});
