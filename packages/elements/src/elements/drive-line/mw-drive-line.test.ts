import { assert } from "@esm-bundle/chai";
import { define } from "../../shared/element/index.js";
import { clear, countIn, find, limpet, lineOf, press, settle, show, type, withLimpet } from "../../test/page.js";
import type { MwBuild } from "../build/index.js";
import { MwDriveLine } from "./index.js";

define(MwDriveLine);

const stage = (id: string, more: object): object => ({ id, kind: "pair", driver: 15, driven: 62, ...more });

const build = (document: object): string =>
  `<mw-build id="own"><script type="application/json">${JSON.stringify({ format: "meshwright-build/1", ...document })}</script></mw-build>`;

interface Scene {
  readonly line: MwDriveLine;
  readonly root: ShadowRoot;
}

async function draw(markup: string, width = 1200): Promise<Scene> {
  const page = await show(markup, width);
  await settle();
  const line = find<MwDriveLine>(page, "mw-drive-line");
  return { line, root: line.shadowRoot! };
}

const plain = (text: string | null | undefined): string => (text ?? "").replace(/[\u00a0\u2009\s]+/g, " ").trim();

/** What is heard of the list, item by item. */
const heard = (root: ShadowRoot): string[] =>
  [...root.querySelectorAll("[data-name], .heard")].map((one) =>
    plain(one.getAttribute("aria-label") ?? one.textContent),
  );

const names = (root: ShadowRoot): HTMLButtonElement[] => [...root.querySelectorAll<HTMLButtonElement>("[data-name]")];
const nameOf = (root: ShadowRoot, key: string): HTMLButtonElement => find(root, `[data-name="${key}"]`);
const totals = (root: ShadowRoot): string[] =>
  [...root.querySelectorAll(".total b")].map((one) => plain(one.textContent));
const teeth = (root: ShadowRoot, key: string): HTMLElement[] => [
  ...root.querySelectorAll<HTMLElement>(`[data-key="${key}"] mw-teeth`),
];
const focused = (root: ShadowRoot): string | undefined => (root.activeElement as HTMLElement | null)?.dataset["name"];

describe("mw-drive-line", () => {
  afterEach(clear);

  it("is a list in the order of drive, told as a person would", async () => {
    const { root } = await draw(withLimpet("<mw-drive-line></mw-drive-line>"));
    const list = find(root, "ol");
    assert.equal(list.getAttribute("role"), "list");
    assert.match(plain(list.getAttribute("aria-label")), /^Limpet, .*from the motor to the wheels$/);
    const told = heard(root);
    const order = [
      "motor",
      "Spur and pinion: 15 drives 62",
      "4.13 motor turns",
      "Gear row: 18 drives 31 drives 45",
      "axles locked together",
    ];
    const places = order.map((text) => told.findIndex((one) => one.startsWith(text)));
    assert.notInclude(places, -1);
    assert.deepEqual(
      places,
      [...places].sort((a, b) => a - b),
    );
    assert.include(told, "Front: 44.30 motor turns for one wheel turn, inside 38 to 46");
    assert.include(told, "Rear: 43.32 motor turns for one wheel turn, inside 38 to 46");
    assert.deepEqual(
      [...root.querySelectorAll("ol ol")].map((one) => one.getAttribute("aria-label")),
      ["Front", "Rear"],
    );
    assert.equal(find(root, "svg").getAttribute("aria-hidden"), "true");
  });

  it("shows the counts of a stage that a reader has put in, and tells the author of nothing", async () => {
    const page = await show(withLimpet("<mw-drive-line></mw-drive-line>"));
    const build = find<MwBuild>(page, "mw-build");
    build.store.change({ insert: { id: "late", kind: "pair", driver: 20, driven: 24 }, at: 1 });
    await settle();
    const { shadowRoot } = find(page, "mw-drive-line");
    assert.deepEqual(
      teeth(shadowRoot!, "late").map((one) => countIn(one).value),
      ["20", "24"],
    );
    await build.checked;
    assert.deepEqual(build.findings, []);
  });

  it("changes totals where a count is changed, and tells the page", async () => {
    const { line, root } = await draw(withLimpet("<mw-drive-line></mw-drive-line>"));
    const changes: unknown[] = [];
    line.addEventListener("mw-change", (event) => changes.push((event as CustomEvent).detail));
    const count = countIn(teeth(root, "primary")[0]!);
    count.focus();
    press(count, "ArrowUp");
    await settle();
    assert.deepEqual(changes, [{ "primary.driver": 16 }]);
    // 62/16 · 45/18 · 38/13 · 22/15 and 62/16 · 45/18 · 35/12 · 23/16.
    assert.deepEqual(totals(root), ["41.53", "40.62"]);
    assert.include(plain(root.querySelector('[data-key="primary"]')!.textContent), "article 15 → 62");
  });

  it("is after any edits what a line is that has never been another", async () => {
    const { line } = await draw(withLimpet("<mw-drive-line open></mw-drive-line>"));
    const { store } = document.querySelector("mw-build") as MwBuild;
    // Elements with their attributes in one order, and their texts: a list, so that what differs is told by itself.
    const pieces = (node: Node): string[] => {
      if (node instanceof Text) return node.data.trim() ? [node.data.trim()] : [];
      const own = node instanceof Element ? [...node.attributes].map(({ name, value }) => `${name}=${value}`) : [];
      const inside = node instanceof Element && node.localName === "mw-teeth" ? [lineOf(node)] : [];
      return [[node.nodeName, ...own.sort()].join(" "), ...inside, ...[...node.childNodes].flatMap(pieces)];
    };
    const shown = ({ shadowRoot }: MwDriveLine): string[] =>
      pieces(shadowRoot!).filter((one) => !one.startsWith("#comment"));
    const edits: (() => unknown)[] = [
      () => store.change({ "primary.driver": 16 }),
      () => (line.chosen = "row"),
      () => store.change({ "row.teeth.1": 33 }),
      () => store.change({ "primary.label": "Spur", "rear-hub.label": "Portal" }),
      () => store.change({ mounts: [{ stage: "primary", from: "29 mm", to: "30 mm" }] }),
      () => store.change({ "primary.module": "0.6" }),
      () => store.adopt(store.build!),
      () => (line.chosen = "wheel:front"),
      () => store.change({ insert: { id: "late", kind: "pair", driver: 20, driven: 24, module: "0.8" }, at: 1 }),
      () => store.change({ "late.driven": 30, lengths: "in" }),
      () => store.change({ move: "late", at: 0 }),
      () => line.parentElement!.setAttribute("lang", "de"),
      () => store.change({ remove: "row" }),
      () => store.undo(),
      () => store.change({ "primary.driver": 18 }),
      () => (line.still = true),
      () => store.change({ "front-hub.driver": 16 }),
    ];
    for (const [n, edit] of edits.entries()) {
      edit();
      const anew = line.cloneNode() as MwDriveLine;
      Object.assign(anew, { chosen: line.chosen, still: line.still });
      line.after(anew);
      await settle();
      const [now, fresh] = [shown(line), shown(anew)];
      const at = now.findIndex((one, place) => one !== fresh[place]);
      assert.equal(now[at]?.slice(0, 200), fresh[at]?.slice(0, 200), `edit ${n}`);
      assert.equal(now.length, fresh.length, `edit ${n}`);
      anew.remove();
    }
  });

  it("changes a set whole, or not at all", async () => {
    const { line, root } = await draw(withLimpet("<mw-drive-line></mw-drive-line>"));
    const changes: unknown[] = [];
    line.addEventListener("mw-change", (event) => changes.push((event as CustomEvent).detail));
    const select = find<HTMLSelectElement>(teeth(root, "rear-ring")[0]!.shadowRoot!, "select");
    select.selectedIndex = [...select.options].findIndex((one) => one.text.includes("11"));
    select.dispatchEvent(new Event("change", { bubbles: true }));
    await settle();
    assert.deepEqual(changes, [{ "rear-ring.driver": 11, "rear-ring.driven": 36 }]);
  });

  it("is entered once by the tab key, which then passes the counts of what is chosen", async () => {
    const { root } = await draw(withLimpet("<mw-drive-line></mw-drive-line>"));
    const stops = (): string[] => [
      ...names(root)
        .filter((one) => one.tabIndex === 0)
        .map((one) => one.dataset["name"]!),
      ...[...root.querySelectorAll("mw-teeth")].flatMap((one) => {
        const field = one.shadowRoot!.querySelector<HTMLElement>("input, select");
        return field && field.tabIndex === 0 ? [(one as unknown as { of: string }).of] : [];
      }),
    ];
    assert.deepEqual(stops(), ["primary", "primary.driver", "primary.driven"]);
    nameOf(root, "row").focus();
    await settle();
    assert.deepEqual(stops(), ["row", "row.teeth.0", "row.teeth.1", "row.teeth.2"]);
  });

  it("is walked by arrows: along the line, on to what it feeds, across to the other axle", async () => {
    const { line, root } = await draw(withLimpet("<mw-drive-line></mw-drive-line>"));
    const chosen: unknown[] = [];
    line.addEventListener("mw-choose", (event) => chosen.push((event as CustomEvent).detail));
    nameOf(root, "primary").focus();
    const walk: (string | undefined)[] = [];
    for (const key of [
      "ArrowRight",
      "ArrowRight",
      "ArrowRight",
      "ArrowDown",
      "ArrowRight",
      "ArrowUp",
      "ArrowLeft",
      "Home",
      "End",
    ]) {
      press(root.activeElement!, key);
      await settle(1);
      walk.push(focused(root));
    }
    assert.deepEqual(walk, [
      "row",
      "split:",
      "front-ring",
      "rear-ring",
      "rear-hub",
      "front-hub",
      "front-ring",
      "motor:",
      "wheel:rear",
    ]);
    assert.deepInclude(chosen, { key: "row", stage: "row" });
    assert.deepInclude(chosen, { key: "split:" });
    assert.equal(line.chosen, "wheel:rear");
    assert.equal(nameOf(root, "wheel:rear").getAttribute("aria-current"), "true");
  });

  it("is edited from the name by Enter or a digit; Escape puts back what was typed, then leads back", async () => {
    const { root } = await draw(withLimpet("<mw-drive-line></mw-drive-line>"));
    nameOf(root, "primary").focus();
    press(nameOf(root, "primary"), "Enter");
    const host = teeth(root, "primary")[0]!;
    const count = countIn(host);
    assert.equal(root.activeElement, host);
    type(count, "17");
    press(count, "Escape");
    await settle();
    assert.equal(count.value, "15");
    press(count, "Escape");
    assert.equal(focused(root), "primary");
    const digit = press(nameOf(root, "primary"), "1");
    assert.equal(root.activeElement, host);
    // The digit is the field's: nobody keeps the page from writing it.
    assert.isFalse(digit.defaultPrevented);
    type(count, "17");
    press(count, "Enter");
    await settle();
    assert.equal(totals(root)[0], "39.09");
  });

  it("has a property for what is chosen", async () => {
    const { line, root } = await draw(withLimpet('<mw-drive-line chosen="front-hub"></mw-drive-line>'));
    assert.equal(nameOf(root, "front-hub").tabIndex, 0);
    line.chosen = "row";
    await settle();
    assert.equal(find(root, ".cell.chosen").dataset["key"], "row");
    line.chosen = "gone";
    await settle();
    assert.equal(nameOf(root, "primary").tabIndex, 0);
  });

  it("lets something in where it is asked to, at the place that a change would name", async () => {
    const { line, root } = await draw(withLimpet("<mw-drive-line open></mw-drive-line>"));
    const asked: unknown[] = [];
    line.addEventListener("mw-insert", (event) => asked.push((event as CustomEvent).detail));
    for (const key of ["primary", "row", "split:", "front-ring", "wheel:rear"])
      find<HTMLButtonElement>(root, `[data-key="${key}"] .mark`).click();
    assert.deepEqual(asked, [
      { at: 0, before: "primary" },
      { at: 1, before: "row" },
      { at: 2, before: "split:" },
      { into: "front", at: 0, before: "front-ring" },
      { into: "rear", at: 2, before: "wheel:rear" },
    ]);
    line.open = false;
    await settle();
    assert.equal(root.querySelector(".mark"), null);
  });

  it("is still where the author says so, and where it is pinned", async () => {
    for (const attribute of ["still", 'at="article"']) {
      const { root } = await draw(withLimpet(`<mw-drive-line ${attribute}></mw-drive-line>`));
      assert.equal(root.querySelectorAll("mw-teeth, button, input, select").length, 0);
      assert.include(heard(root), "Spur and pinion: 15 drives 62, module 0.8");
      assert.deepEqual(totals(root), ["44.30", "43.32"]);
    }
  });

  it("sets a lever where it stands, with the total of each way", async () => {
    const box = {
      id: "box",
      label: "Two-speed box",
      kind: "selectable",
      selected: "low",
      positions: [
        { id: "low", stages: [stage("low-pair", { driver: 15, driven: 45 })] },
        { id: "high", stages: [stage("high-pair", { driver: 30, driven: 30 })] },
        { id: "neutral", released: "free" },
      ],
    };
    const { line, root } = await draw(
      build({ stages: [box], outputs: [{ id: "rear", stages: [stage("ring", { driver: 10, driven: 40 })] }] }) +
        "<mw-drive-line></mw-drive-line>",
    );
    const lanes = (): HTMLButtonElement[] => [...root.querySelectorAll<HTMLButtonElement>("button.lane")];
    assert.deepEqual(
      lanes().map((one) => plain(one.textContent)),
      ["low · 12.00", "high · 4.00", "neutral · not driven"],
    );
    assert.deepEqual(
      lanes().map((one) => one.getAttribute("aria-pressed")),
      ["true", "false", "false"],
    );
    const changes: unknown[] = [];
    line.addEventListener("mw-change", (event) => changes.push((event as CustomEvent).detail));
    lanes()[1]!.click();
    await settle();
    assert.deepEqual(changes, [{ "box.selected": "high" }]);
    assert.deepEqual(totals(root), ["4.00"]);
    assert.ok(root.querySelector('[data-key="high-pair"]'));
    lanes()[2]!.click();
    await settle();
    assert.deepEqual(totals(root), ["not driven"]);
  });

  it("says what a pair lacks in its mount, and what is not known of a box", async () => {
    const stages = [
      stage("spur", { driver: 15, driven: 68, module: "0.8" }),
      { id: "gearbox", kind: "published", value: "2.6" },
    ];
    const mounts = [{ stage: "spur", from: "30.3 mm", to: "31.3 mm" }];
    const { root } = await draw(
      build({ stages, mounts, outputs: [{ id: "rear", stages: [] }] }) + "<mw-drive-line></mw-drive-line>",
    );
    const text = (key: string): string => plain(root.querySelector(`[data-key="${key}"]`)!.textContent);
    assert.include(text("spur"), "1.9 mm short");
    assert.include(text("gearbox"), "2.55 to 2.65");
    assert.include(heard(root).join(), "Needs 33.2 mm between centres. The slot ends at 31.3 mm, 1.9 mm short.");
    // 68/15 · 2.55 to 2.65, rounded outward.
    assert.deepEqual(totals(root), ["11.56 to 12.02"]);
  });

  it("breaks the line of a draft where it cannot be read, and the totals wait", async () => {
    const { line, root } = await draw(withLimpet("<mw-drive-line></mw-drive-line>"));
    const document = JSON.parse(limpet) as { stages: object[] };
    document.stages[1] = { id: "row", label: "Gear row", kind: "train", teeth: [18] };
    line.draft = document;
    await settle();
    assert.deepEqual(totals(root), ["waiting for Gear row", "waiting for Gear row"]);
    assert.ok(root.querySelector("svg path.fault"));
    assert.ok(plain(root.querySelector('[data-key="row"] .fault')!.textContent));
    assert.equal(plain(root.querySelector('[data-key="primary"] .shaft [aria-hidden]')!.textContent), "4.13");
    line.draft = undefined;
    await settle();
    assert.deepEqual(totals(root), ["44.30", "43.32"]);
  });

  it("tells axles that turn against each other", async () => {
    const ring = (id: string, reverses: boolean): object => ({ id, stages: [stage(`${id}-ring`, { reverses })] });
    const { root } = await draw(
      build({ stages: [], outputs: [ring("front", true), ring("rear", false)] }) + "<mw-drive-line></mw-drive-line>",
    );
    assert.match(plain(root.querySelector("p.fault")!.textContent), /Do not drive it/);
  });

  it("stands upright on a narrow page, and never scrolls sideways", async () => {
    for (const width of [320, 375, 640, 760, 1024, 1600]) {
      const { line, root } = await draw(withLimpet("<mw-drive-line></mw-drive-line>"), width);
      assert.equal(!!root.querySelector(".root.upright"), width < 760, `${width}`);
      const edge = line.getBoundingClientRect();
      for (const text of root.querySelectorAll(
        ".head > *, .counts > *, .note, .lane, .total b, .shaft > [aria-hidden]",
      )) {
        const { left, right } = text.getBoundingClientRect();
        assert.isAtLeast(left, edge.left - 1, `${width}: ${text.textContent}`);
        assert.isAtMost(right, edge.right + 1, `${width}: ${text.textContent}`);
      }
      clear();
    }
  });

  it("is drawn for a sheet on paper, with whose values these are", async () => {
    const { root } = await draw(withLimpet("<mw-drive-line></mw-drive-line>"));
    assert.ok(root.querySelector(".root.level, .root.wrapped"));
    dispatchEvent(new Event("beforeprint"));
    await settle();
    assert.ok(root.querySelector(".root.upright"));
    assert.include(plain(find(root, ".paper").textContent), "Revision 2 · October 3, 2026 · The author’s values.");
    dispatchEvent(new Event("afterprint"));
    await settle();
    assert.equal(root.querySelector(".root.upright"), null);
    const count = countIn(teeth(root, "primary")[0]!);
    count.focus();
    press(count, "ArrowUp");
    await settle();
    assert.include(plain(find(root, ".paper").textContent), "A reader’s version: 1 change.");
  });

  it("keeps the totals in sight while somebody works on a narrow page, and only then", async () => {
    const { root } = await draw(withLimpet("<mw-drive-line></mw-drive-line>"), 375);
    const strip = find(root, ".strip");
    assert.equal(strip.getClientRects().length, 0);
    const count = countIn(teeth(root, "rear-hub")[1]!);
    count.focus();
    count.scrollIntoView({ block: "center" });
    await settle();
    const { top, bottom } = find(strip, "p").getBoundingClientRect();
    assert.isAtMost(bottom - top, 56);
    assert.isAtLeast(top, 0);
    assert.isBelow(bottom, innerHeight);
    assert.equal(plain(strip.textContent), "Front 44.30 Rear 43.32");
    press(count, "ArrowUp");
    await settle();
    assert.equal(plain(strip.textContent), "Front 44.30 Rear 45.21");
  });

  it("has room beneath what is chosen, as much as what is told of it takes, where the line stands upright", async () => {
    const detail = '<div slot="detail" style="height: 120px">What is known of it</div>';
    const markup = withLimpet(`<mw-drive-line chosen="primary">${detail}</mw-drive-line>`);
    const { root, line } = await draw(markup, 375);
    await settle(9);
    const box = (selector: string): DOMRect => find(root, selector).getBoundingClientRect();
    const told = find(line, "[slot=detail]").getBoundingClientRect();
    assert.isAtLeast(told.top, box('[data-key="primary"] .foot').bottom);
    assert.isBelow(told.top - box('[data-key="primary"] .foot').bottom, 60);
    assert.isAtLeast(box('[data-key="row"] .head').top, told.bottom);
    line.chosen = "rear-hub";
    await settle(9);
    assert.isAtLeast(
      find(line, "[slot=detail]").getBoundingClientRect().top,
      box('[data-key="rear-hub"] .foot').bottom,
    );
    clear();
    // A wide line has it below itself.
    const wide = await draw(markup);
    await settle(9);
    const below = find(wide.line, "[slot=detail]").getBoundingClientRect();
    for (const one of wide.root.querySelectorAll(".foot, .total"))
      assert.isAtLeast(below.top, one.getBoundingClientRect().bottom - 1);
  });

  it("letters nothing smaller than 12 pixels", async () => {
    const { root } = await draw(`<div style="font-size:13px">${withLimpet("<mw-drive-line></mw-drive-line>")}</div>`);
    for (const one of root.querySelectorAll(".name, .note, .counts, .shaft, .total b, .scale"))
      assert.isAtLeast(parseFloat(getComputedStyle(one).fontSize), 12, one.className);
  });

  it("runs from the right where text does", async () => {
    const { root } = await draw(`<div dir="rtl">${withLimpet("<mw-drive-line></mw-drive-line>")}</div>`);
    const left = (key: string): number => nameOf(root, key).getBoundingClientRect().left;
    assert.isAbove(left("primary"), left("row"));
    nameOf(root, "primary").focus();
    press(root.activeElement!, "ArrowLeft");
    assert.equal(focused(root), "row");
  });

  it("leaves the author's content where there is no build", async () => {
    const { root, line } = await draw("<mw-drive-line><p>15 to 62</p></mw-drive-line>");
    assert.equal(root.querySelector("ol"), null);
    assert.isAbove(find(line, "p").getBoundingClientRect().height, 0);
  });
});
