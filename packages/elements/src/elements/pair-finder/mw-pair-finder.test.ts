import { assert } from "@esm-bundle/chai";
import "axe-core";
import type axeCore from "axe-core";
import { define } from "../../third/index.js";
import type { MwBuild } from "../build/index.js";
import { clear, find, lineOf, press, settle, show, withLimpet } from "../../test/page.js";
import { MwPairFinder } from "./index.js";

define(MwPairFinder);

const { axe } = globalThis as unknown as { axe: typeof axeCore };

const finder = async (width?: number): Promise<HTMLElement> => {
  const page = await show(withLimpet("<mw-pair-finder></mw-pair-finder>"), width);
  const element = find(page, "mw-pair-finder");
  await until(() => /reach(es)? the range|No pair/.test(lineOf(element)));
  return element;
};

async function until(question: () => boolean): Promise<void> {
  while (!question()) await settle(1);
}

/** Near misses beyond the first three. */
async function further(element: Element): Promise<void> {
  find<HTMLElement>(element.shadowRoot!, "button.more-misses").click();
  await settle();
}

const pairs = (element: Element, kind: string): string[] =>
  [...element.shadowRoot!.querySelectorAll(`tbody.${kind}`)].map((body) =>
    body.textContent!.replace(/\s+/g, " ").trim(),
  );

describe("mw-pair-finder", () => {
  afterEach(clear);

  it("finds the one pair of the shelf that reaches the range and fits", async () => {
    const element = await finder();
    assert.match(lineOf(element), /1 pair reaches the range and fits\./);
    const [only, ...others] = pairs(element, "hit");
    assert.match(only!, /^15 → 62 44\.30 · 43\.32 30\.8 mm .* in the build/);
    assert.deepEqual(others, []);
  });

  it("keeps the tempting pair in sight with what it lacks, and never the pitch that is nearly the same", async () => {
    const element = await finder();
    await further(element);
    const misses = pairs(element, "miss");
    assert.isTrue(
      misses.some((text) => /^17 → 66 .*1\.9 mm short/.test(text)),
      misses.join("\n"),
    );
    assert.isFalse(misses.some((text) => /^16 → /.test(text)));
  });

  it("makes the pair that is taken the reader's edit", async () => {
    const element = await finder();
    await further(element);
    const told: unknown[] = [];
    element.addEventListener("mw-change", (event) => told.push((event as CustomEvent).detail));
    const button = find<HTMLButtonElement>(element.shadowRoot!, 'button[aria-label="Take it: 17 drives 66"]');
    button.focus();
    button.click();
    await settle();
    assert.equal(element.shadowRoot!.activeElement!.getAttribute("aria-label"), "in the build: 17 drives 66");
    button.click();
    const { store } = find<MwBuild>(element.parentElement!, "mw-build");
    // What is taken are the parts: their counts, and their names.
    const parts = store.article!.parts!.filter(({ teeth }) => teeth === 17 || teeth === 66);
    const { "primary.fitted": fitted, ...counts } = store.layer.sets;
    assert.deepEqual(counts, { "primary.driver": 17, "primary.driven": 66 });
    assert.sameMembers(
      [...(fitted as string[])],
      parts.map(({ id }) => id),
    );
    assert.deepEqual(told, [store.layer.sets]);
    assert.isTrue(pairs(element, "miss").some((text) => /^17 → 66 .* in the build/.test(text)));
  });

  it("lets the reader move the range, refuses what is no number, and keeps the last good one", async () => {
    const element = await finder();
    const to = find<HTMLInputElement>(element.shadowRoot!, 'input[name="to"]');
    const enter = async (text: string) => {
      to.value = text;
      to.dispatchEvent(new Event("change", { bubbles: true }));
      await settle();
    };
    await enter("lots");
    assert.equal(to.value, "46");
    assert.include(lineOf(element), "Kept 46.");
    await enter("43");
    await until(() => /No pair reaches/.test(lineOf(element)));
    const { store } = find<MwBuild>(element.parentElement!, "mw-build");
    assert.deepEqual(store.layer.sets, { "target.to": 43 });
  });

  it("draws hits, misses, the range and the mount, and says so in words", async () => {
    const element = await finder();
    const picture = find(element.shadowRoot!, "svg");
    assert.include(picture.getAttribute("aria-label")!, "1 pair reaches the range and fits.");
    assert.include(picture.textContent!, "15 → 62");
    assert.include(picture.textContent!, "30.3");
    assert.include(picture.textContent!, "31.3");
    // The axis is of the output that every row, and the text around it, begins with.
    assert.include(picture.textContent!.replace(/\s+/g, " "), "Motor turns, Front");
  });

  it("lets a point of the window be taken: pressed, or by keys from one to the next", async () => {
    const element = await finder();
    const root = element.shadowRoot!;
    const { store } = find<MwBuild>(element.parentElement!, "mw-build");
    const points = (): SVGGElement[] => [...root.querySelectorAll<SVGGElement>(".point")];
    const named = (text: string): SVGGElement =>
      points().find((point) => point.getAttribute("aria-label")!.includes(text))!;
    assert.equal(named("15 drives 62").getAttribute("aria-label"), "in the build: 15 drives 62; 44.30, 30.8\u00a0mm");
    assert.equal(named("17 drives 62").getAttribute("aria-label"), "Take it: 17 drives 62; 39.09, 31.6\u00a0mm");
    // A finger near it means it.
    const { x, y, width, height } = named("17 drives 62").querySelector(".hit")!.getBoundingClientRect();
    assert.isAtLeast(Math.min(width, height), 24);
    find(root, "svg").dispatchEvent(
      new MouseEvent("click", { clientX: x + width / 2 + 4, clientY: y + height / 2 - 3, bubbles: true }),
    );
    await settle(1);
    assert.equal(store.layer.sets["primary.driver"], 17);
    // One stop for the tab key, at what is in the build; arrows go to what lies that way.
    const stops = points().filter((point) => point.getAttribute("tabindex") === "0");
    assert.deepEqual(stops, [named("17 drives 62")]);
    stops[0]!.focus();
    const at = (point: Element): DOMRect => point.getBoundingClientRect();
    press(stops[0]!, "ArrowLeft");
    const next = root.activeElement as SVGGElement;
    assert.isBelow(at(next).left, at(stops[0]!).left);
    const teeth = /(\d+) drives (\d+)/.exec(next.getAttribute("aria-label")!)!;
    press(next, "Enter");
    await settle(1);
    const { build } = store;
    const stage = build!.stages[0] as unknown as { driver: number; driven: number };
    assert.deepEqual([stage.driver, stage.driven], [Number(teeth[1]), Number(teeth[2])]);
  });

  it("is read as cards where its table has no room: teeth and what takes them on top, nothing cut", async () => {
    const element = await finder(300);
    await settle();
    const root = element.shadowRoot!;
    assert.isTrue(find(root, "table").classList.contains("list"));
    const card = find(root, "tbody.miss");
    const [head, button] = [find(card, "th"), find(card, "button")].map((one) => one.getBoundingClientRect());
    assert.isBelow(Math.abs((head!.top + head!.bottom) / 2 - (button!.top + button!.bottom) / 2), 8);
    assert.isAtLeast(card.getBoundingClientRect().left, element.getBoundingClientRect().left);
    assert.isAtMost(button!.right, element.getBoundingClientRect().right);
    assert.equal(find(card, "td.wide").dataset["head"], "Price");
    // What the button says is not said once more before it.
    assert.equal(getComputedStyle(find(card, "td:has(button)"), "::before").content, "none");
  });

  /** Texts that stand over each other, or beyond the picture's edge. */
  const clashes = (picture: Element): string[] => {
    const edge = picture.getBoundingClientRect();
    const texts = [...picture.querySelectorAll("text")].map((text) => {
      const { left, right, top, bottom } = text.getBoundingClientRect();
      // A line of digits leaves room above and below itself.
      const spare = (bottom - top) / 5;
      return { text: text.textContent!.trim(), left, right, top: top + spare, bottom: bottom - spare };
    });
    return texts.flatMap((one, n) => [
      ...texts
        .slice(n + 1)
        .filter((two) => one.left < two.right && two.left < one.right && one.top < two.bottom && two.top < one.bottom)
        .map((two) => `${one.text} over ${two.text}`),
      ...(one.left < edge.left - 1 || one.right > edge.right + 1 ? [`${one.text} cut off`] : []),
    ]);
  };

  it("sets no label over another, nor over the box's edge, nor beyond its own, whatever the width and the range", async () => {
    for (const width of [335, 568, 700]) {
      const element = await finder(width);
      const { store } = find<MwBuild>(element.parentElement!, "mw-build");
      const ranges = [
        {},
        { "target.from": 43, "target.to": 44 },
        { "target.from": 10, "target.to": 60 },
        { "target.from": 43.25, "target.to": 43.75 },
      ];
      for (const range of ranges) {
        store.change(range);
        await settle(1);
        await until(() => /reach(es)? the range|No pair/.test(lineOf(element)));
        await settle();
        const picture = find(element.shadowRoot!, "svg");
        assert.deepEqual(clashes(picture), [], `${width} ${JSON.stringify(range)}`);
        assert.isAtLeast(picture.querySelectorAll("text.pair").length, 3);
        const box = find(picture, "rect").getBoundingClientRect();
        for (const label of picture.querySelectorAll("text.pair")) {
          const { left, right } = label.getBoundingClientRect();
          const crossed = [box.left, box.right].filter((edge) => left < edge - 1 && edge + 1 < right);
          const { top, bottom } = label.getBoundingClientRect();
          const beside = bottom < box.top + 4 || top > box.bottom - 4;
          assert.isTrue(beside || !crossed.length, `${label.textContent} at ${width}`);
        }
      }
    }
  });

  const gear = (is: string, teeth: number, more: object = {}) => ({
    id: `${is}-${teeth}`,
    is,
    teeth,
    module: "1",
    ...more,
  });
  const shelf = [
    ...[10, 11, 12, 13, 14, 15, 16, 17].map((teeth) => gear("pinion", teeth)),
    ...[40, 44, 48].map((teeth) => gear("spur", teeth)),
  ];
  const pair = (id: string, driver: number, driven: number) => ({
    id,
    label: id,
    kind: "pair",
    driver,
    driven,
    module: "1",
  });
  const other = async (data: object, of: string): Promise<HTMLElement> => {
    const build = { format: "meshwright-build/1", target: { from: 3.9, to: 4.1 }, parts: shelf, ...data };
    const script = `<script type="application/json">${JSON.stringify(build)}</script>`;
    const page = await show(`<mw-build id="other">${script}</mw-build><mw-pair-finder of="${of}"></mw-pair-finder>`);
    await settle();
    return find(page, "mw-pair-finder");
  };

  it("looks for a pair of a branch, of an axle, or behind a motor of its own", async () => {
    const it = pair("hub", 10, 40);
    const places = [
      { branches: [{ id: "shaft", stages: [it] }], outputs: [{ id: "rear", from: "shaft", stages: [] }] },
      { outputs: [{ id: "rear", stages: [it] }] },
      { outputs: [{ id: "rear", motor: {}, stages: [it] }] },
    ];
    for (const place of places) {
      const element = await other(place, "hub");
      await until(() => /reach the range/.test(lineOf(element)));
      // By hand: 40/10, 44/11 and 48/12 are 4; nothing else lies between 3.9 and 4.1.
      const found = pairs(element, "hit").map((text) => text.slice(0, 7));
      assert.sameMembers(found, ["10 → 40", "11 → 44", "12 → 48"]);
    }
  });

  it("says why it cannot look, and never that there is no range where there is one", async () => {
    const split = [
      { id: "front", stages: [pair("hub", 10, 40)] },
      { id: "rear", stages: [] },
    ];
    const target = { from: 3, to: 5, output: "rear" };
    assert.include(lineOf(await other({ outputs: split, target }, "hub")), "no range for what hub drives");
    assert.include(lineOf(await other({ outputs: split, target: undefined }, "hub")), "names no range to reach");
    const positions = [
      { id: "low", stages: [] },
      { id: "high", stages: [pair("hub", 10, 40)] },
    ];
    const box = { id: "box", kind: "selectable", selected: "low", positions };
    const lever = { stages: [box], outputs: [{ id: "rear", stages: [] }] };
    assert.include(lineOf(await other(lever, "hub")), "As the levers stand, hub drives nothing.");
  });

  it("shows few near misses at first, those that need the least, and more on request", async () => {
    const element = await other({ outputs: [{ id: "rear", stages: [pair("hub", 10, 40)] }] }, "hub");
    await until(() => /reach the range/.test(lineOf(element)));
    const misses = () => pairs(element, "miss").map((text) => text.slice(0, 7));
    assert.lengthOf(misses(), 3);
    // By hand: (48/11 − 4.1)/(48/11)·12 = 0.725, (4.4 − 4.1)/4.4·11 = 0.75, (3.9 − 48/13)/(48/13)·14 = 0.79,
    // (3.9 − 44/12)/(44/12)·13 = 0.83 teeth on the driver.
    assert.deepEqual(misses(), ["11 → 48", "10 → 44", "13 → 48"]);
    find(element.shadowRoot!, "button.more-misses").click();
    await settle();
    assert.lengthOf(misses(), 15);
    assert.equal(misses()[3], "12 → 44");
    find(element.shadowRoot!, "button.more-misses").click();
    await settle();
    // Twenty-four pairs, three of them found.
    assert.lengthOf(misses(), 21);
    assert.isNull(element.shadowRoot!.querySelector("button.more-misses"));
  });

  it("does not say that pairs fit a mount that is not known", async () => {
    const rear = [{ id: "rear", stages: [pair("hub", 10, 40)] }];
    const element = await other({ outputs: rear, mounts: undefined }, "hub");
    await until(() => /reach the range/.test(lineOf(element)));
    assert.include(lineOf(element), "How the motor is held is not known, and neither is which of them fit.");
    const held = await other({ outputs: rear, mounts: [{ stage: "hub", from: "20 mm", to: "30 mm" }] }, "hub");
    await until(() => /reach the range/.test(lineOf(held)));
    assert.match(lineOf(held), /pairs reach the range and fit\./);
  });

  it("offers no part as free that another stage has come to hold, and keeps the box in sight", async () => {
    const owned = shelf.map((part) => ({ ...part, owned: 1, available: false }));
    const mounts = [{ stage: "hub", from: "24.9 mm", to: "25.1 mm" }];
    const stages = [pair("first", 30, 30)];
    const build = { parts: owned, mounts, stages, outputs: [{ id: "rear", stages: [pair("hub", 10, 40)] }] };
    const element = await other(build, "hub");
    await until(() => /reaches the range/.test(lineOf(element)));
    assert.include(pairs(element, "hit")[0], "10 → 40");
    const [picture, box] = [find(element.shadowRoot!, "svg"), find(element.shadowRoot!, "svg rect")];
    assert.isAtLeast(box.getBoundingClientRect().width, picture.getBoundingClientRect().width / 40);
    const { store } = find<MwBuild>(element.parentElement!, "mw-build");
    store.change({ "first.driver": 10, "first.driven": 10, "first.fitted": ["pinion-10"] });
    await until(() => /No pair/.test(lineOf(element)));
    assert.deepEqual(pairs(element, "hit"), []);
  });

  it("begins with bare counts where there is no list, and takes them without parts", async () => {
    const mounts = [{ stage: "hub", from: "25 mm", to: "25 mm" }];
    const element = await other({ parts: [], mounts, outputs: [{ id: "rear", stages: [pair("hub", 12, 38)] }] }, "hub");
    await until(() => /1 pair reaches the range/.test(lineOf(element)));
    const among = find<HTMLSelectElement>(element.shadowRoot!, 'select[name="among"]');
    assert.equal(among.value, "counts");
    const choose = (value: string): void => {
      among.value = value;
      among.dispatchEvent(new Event("change", { bubbles: true }));
    };
    choose("had");
    await until(() => /No pair/.test(lineOf(element)));
    choose("counts");
    await until(() => /1 pair reaches the range/.test(lineOf(element)));
    // Fifty teeth in all, four times as many on the one.
    assert.match(pairs(element, "hit").join(), /^10 → 40 4\.00 25\.0 mm – Take it/);
    find(element.shadowRoot!, "tbody.hit button").click();
    await settle(1);
    const { layer } = find<MwBuild>(element.parentElement!, "mw-build").store;
    assert.deepEqual(layer.sets, { "hub.driver": 10, "hub.driven": 40 });
  });

  it("leaves axe nothing to find, and a narrow page in its place", async () => {
    const element = await finder(343);
    const { violations } = await axe.run(element.parentElement!, { rules: { region: { enabled: false } } });
    assert.deepEqual(
      violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html}`),
      [],
    );
    assert.isAtMost(element.scrollWidth, 344);
  });
});
