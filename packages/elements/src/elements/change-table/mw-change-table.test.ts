import { assert } from "@esm-bundle/chai";
import { define } from "../../third/index.js";
import type { MwBuild } from "../build/index.js";
import { clear, find, lineOf, settle, show } from "../../test/page.js";
import { MwChangeTable } from "./index.js";

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

describe("mw-change-table against another mw-build", () => {
  afterEach(clear);

  const other = { ...sold, title: "Whimbrel as sold" };
  const script = (of: object) => `<script type="application/json">${JSON.stringify(of)}</script>`;
  const post = (own: string) =>
    `<mw-build id="tern">${script(build)}</mw-build>${own}<mw-change-table build="tern" against="whimbrel"><p>In words.</p></mw-change-table>
    <mw-value build="tern" figure="change" of="rear" from="whimbrel">+87.50%</mw-value>`;
  const whimbrel = `<mw-build id="whimbrel">${script(other)}</mw-build>`;
  const shown = (root: Element) => lineOf(find(root, "mw-value"));
  const faults = async (root: Element) => {
    const findings = await find<MwBuild>(root, "#tern").checked;
    return findings.filter(({ severity }) => severity === "error").map(({ message }) => message);
  };

  it("by its id, before it or behind it, with its title; a figure too; both follow either build", async () => {
    for (const own of [whimbrel, ""]) {
      const root = await show(post(own) + (own ? "" : whimbrel), 900);
      await settle();
      const table = find(root, "mw-change-table");
      assert.equal(lineOf(find(table.shadowRoot!, "thead th:nth-child(2)")), "Whimbrel as sold");
      assert.deepEqual(row(table, "Rear"), ["24.00", "45.00", "45.00"]);
      assert.deepEqual(row(table, "gearbox: reduction"), ["0.00%", "+25.00%", "+25.00%"]);
      assert.equal(shown(root), "+87.50%");
      assert.deepEqual(await faults(root), []);
      // As sold 12 · 3 = 36 with 60 teeth first: 45 is a quarter more.
      find<MwBuild>(root, "#whimbrel").store.change({ "first.driven": 60 });
      await settle();
      assert.deepEqual(row(table, "Rear"), ["36.00", "45.00", "45.00"]);
      assert.equal(shown(root), "+25.00%");
      assert.equal(find(root, "mw-value").textContent, "+87.50%");
      find<MwBuild>(root, "#tern").store.change({ "spur.driven": 40 });
      await settle();
      assert.deepEqual(row(table, "Rear"), ["36.00", "45.00", "36.00"]);
      assert.equal(shown(root), "0.00%");
      clear();
    }
  });

  it("that comes, goes and comes again; two that are held against each other end", async () => {
    const root = await show(post(""), 900);
    await settle();
    assert.equal(lineOf(find(root, "mw-change-table")), "In words.");
    assert.match((await faults(root)).join(), /whimbrel/);
    root.insertAdjacentHTML(
      "beforeend",
      `${whimbrel}<mw-change-table build="whimbrel" against="tern"></mw-change-table>`,
    );
    await settle();
    assert.deepEqual(row(find(root, "mw-change-table"), "Rear"), ["24.00", "45.00", "45.00"]);
    assert.deepEqual(row(find(root, 'mw-change-table[against="tern"]'), "Rear"), ["45.00", "24.00", "24.00"]);
    assert.deepEqual(await faults(root), []);
    find<MwBuild>(root, "#tern").store.change({ "spur.driven": 40 });
    find<MwBuild>(root, "#whimbrel").store.change({ "first.driven": 60 });
    await settle();
    assert.deepEqual(row(find(root, 'mw-change-table[against="tern"]'), "Rear"), ["36.00", "24.00", "36.00"]);
    find(root, "#whimbrel").remove();
    await settle();
    assert.equal(lineOf(find(root, "mw-change-table")), "In words.");
  });

  it("a name that is near one of them is told with it", async () => {
    const root = await show(post(whimbrel).replace('against="whimbrel"', 'against="whimbrle"'), 900);
    const told = await find<MwBuild>(root, "#tern").checked;
    assert.deepEqual(
      told.filter(({ at }) => at === "/against").map(({ values }) => values.nearest),
      [["whimbrel"]],
    );
  });

  it("a reference by the address of its document is fetched, once something is held against it", async () => {
    const asked: string[] = [];
    const { fetch } = globalThis;
    globalThis.fetch = (input) => {
      asked.push(new URL(input as string).pathname.split("/").at(-1)!);
      return Promise.resolve(new Response(JSON.stringify(sold)));
    };
    try {
      const references = [{ id: "as-sold", label: "as sold", src: "whimbrel-as-sold.json" }];
      const own = `<mw-build id="tern">${script({ ...build, references })}</mw-build>`;
      const root = await show(`${own}<mw-value figure="change" of="rear"></mw-value>`, 900);
      await settle();
      assert.deepEqual(asked, []);
      root.insertAdjacentHTML(
        "beforeend",
        `<mw-change-table against="as-sold"></mw-change-table><mw-value id="far" figure="change" of="rear" from="as-sold"></mw-value>`,
      );
      for (let n = 0; n < 4; n++) await settle();
      assert.deepEqual(asked, ["whimbrel-as-sold.json"]);
      assert.deepEqual(row(find(root, "mw-change-table"), "Rear"), ["24.00", "45.00", "45.00"]);
      assert.equal(lineOf(find(root, "#far")), "+87.50%");
      assert.deepEqual(await faults(root), []);
    } finally {
      globalThis.fetch = fetch;
    }
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
