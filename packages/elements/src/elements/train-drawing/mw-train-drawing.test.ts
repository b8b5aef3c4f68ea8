import { assert } from "@esm-bundle/chai";
import { readBuild } from "@meshwright/calc/document";
import { evaluate } from "@meshwright/calc/evaluate";
import { layoutOf } from "@meshwright/calc/layout";
import { define } from "../../shared/element/index.js";
import { makeWhole } from "../../third/index.js";
import { MwBuild } from "../build/index.js";
import { MwTrainDrawing } from "./index.js";

makeWhole();
define(MwBuild, MwTrainDrawing);

const primary = {
  id: "primary",
  label: "Spur and pinion",
  kind: "pair",
  driver: 15,
  driven: 62,
  module: "0.8",
  drivenLabel: "spur",
};
const row = { id: "row", label: "Gear row", kind: "train", teeth: [18, 31, 45], module: "0.8" };
const ring = { id: "ring", label: "Ring and pinion", kind: "pair", form: "bevel", driver: 13, driven: 38 };
const slot = { stage: "primary", knownPair: [23, 53], closer: "0.1 mm", farther: "0.9 mm" };
const limpet = {
  format: "meshwright-build/1",
  stages: [primary, row],
  outputs: [{ id: "rear", stages: [ring] }],
  mounts: [slot],
};

const settle = async (): Promise<void> => {
  for (let n = 0; n < 4; n++) await new Promise((done) => requestAnimationFrame(done));
};

let page: HTMLElement;
let shown = 0;

interface Scene {
  readonly drawing: MwTrainDrawing;
  readonly build: MwBuild;
  readonly root: ShadowRoot;
}

async function show(json: unknown, attributes = "", width = 640): Promise<Scene> {
  page = document.createElement("div");
  page.style.width = `${width}px`;
  page.innerHTML = `<mw-build id="limpet-${++shown}"><mw-train-drawing ${attributes}><p>15 to 62, 30.8 mm</p></mw-train-drawing></mw-build>`;
  const build = page.querySelector("mw-build") as MwBuild;
  build.json = JSON.stringify(json);
  document.body.append(page);
  await settle();
  const drawing = page.querySelector("mw-train-drawing") as MwTrainDrawing;
  return { drawing, build, root: drawing.shadowRoot! };
}

const texts = (root: ShadowRoot, selector = "svg text"): string[] =>
  [...root.querySelectorAll(selector)].map((text) => text.textContent.trim().replaceAll("\u00a0", " "));

const plain = (text: string | null | undefined): string => (text ?? "").replaceAll("\u00a0", " ");

describe("mw-train-drawing", () => {
  afterEach(() => page.remove());

  it("letters every count, and the centre distances that calc has", async () => {
    const { root } = await show(limpet);
    assert.deepEqual(texts(root, ".count").sort(), ["15", "18", "31", "45", "62"]);
    const { spans } = layoutOf(evaluate(readBuild(limpet).build!).outputs[0]!.steps);
    const written = texts(root);
    for (const { centre } of spans)
      assert.include(written, `${centre.low.toDecimal({ minimumFractionDigits: 1, maximumFractionDigits: 1 })} mm`);
    assert.include(written, "30.8 mm");
    assert.include(written, "spur");
  });

  it("draws the gears to one scale on their centre distances", async () => {
    const { root } = await show(limpet);
    const at = (path: Element): number =>
      Number(/translate\((\S+)/.exec(path.parentElement!.getAttribute("transform")!)![1]);
    const [pinion, spur, first, idler, last] = [...root.querySelectorAll(".teeth")];
    const scale = (at(spur!) - at(pinion!)) / 30.8;
    assert.closeTo(at(first!), at(spur!), 0.1);
    assert.closeTo((at(idler!) - at(first!)) / scale, 19.6, 0.05);
    assert.closeTo((at(last!) - at(idler!)) / scale, 30.4, 0.05);
    const wide = (path: Element): number => (path as SVGGraphicsElement).getBBox().width / scale;
    assert.closeTo(wide(spur!), 64 * 0.8, 0.1);
    assert.closeTo(wide(idler!), 33 * 0.8, 0.1);
  });

  it("turns neighbours against each other", async () => {
    const { root } = await show(limpet);
    const ways = [...root.querySelectorAll(".turn")].map((arrow) => arrow.getAttribute("data-way"));
    // One arrow an axis: motor, spur with the row's first gear, idler, last.
    assert.deepEqual(ways, ["clockwise", "anticlockwise", "clockwise", "anticlockwise"]);
    assert.match(
      plain(root.querySelector("#told")!.textContent),
      /15 teeth turn 62 the other way, 30\.8 mm between centres\./,
    );
  });

  /** What a path takes up. */
  const boxOf = (d: string): DOMRect => {
    const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
    const path = document.createElementNS(svg.namespaceURI, "path") as SVGPathElement;
    path.setAttribute("d", d);
    svg.append(path);
    document.body.append(svg);
    const box = path.getBBox();
    svg.remove();
    return box;
  };

  it("draws a belt with its tensioner, which presses on one run, and no sign that it cannot", async () => {
    const belt = { id: "belt", kind: "belt", driver: 20, driven: 60, pitch: "2 mm", centre: "60 mm" };
    const shapes = async (more: object) => {
      const { root } = await show({
        format: "meshwright-build/1",
        stages: [{ ...belt, ...more }],
        outputs: [{ id: "rear", stages: [] }],
      });
      const rollers = [...root.querySelectorAll<SVGGraphicsElement>("path.tensioner")];
      const d = root.querySelector("path.belt")!.getAttribute("d")!;
      page.remove();
      return [rollers, d] as const;
    };
    const [none, straight] = await shapes({});
    assert.lengthOf(none, 0);
    const [[roller], pressed] = await shapes({ tensioner: true });
    // The upper run is as it was, the lower one goes in over the roller.
    const runs = (d: string) => d.split("M").slice(1);
    // Around both pulleys: 20 teeth of 2 mm on 6.37 mm, 60 on 19.10 mm, and 60 mm between them.
    const { width, height } = boxOf(straight);
    assert.approximately(width / height, (6.37 + 60 + 19.1) / (2 * 19.1), 0.01);
    assert.equal(runs(pressed)[0], runs(straight)[0]);
    assert.lengthOf(runs(pressed)[1]!.split("L"), 3);
    // A circle from its rightmost point, whose top is where the belt bends.
    const [right, top] = roller!
      .getAttribute("d")!
      .match(/-?[\d.]+/g)!
      .map(Number) as [number, number];
    const [x, y] = runs(pressed)[1]!.split("L")[1]!.split(" ").map(Number) as [number, number];
    assert.isAbove(right, x);
    assert.isAbove(top, y);
    assert.notEqual(roller!.getAttribute("stroke-dasharray"), null);
  });

  it("draws round what is round", async () => {
    const { root } = await show(limpet);
    const circles = [...root.querySelectorAll("g > path.pitch, g > path.fine")]
      .flatMap((path) => path.getAttribute("d")!.split(/(?=M)/))
      .filter((d) => d.endsWith("z"));
    assert.isAbove(circles.length, 8);
    for (const d of circles) {
      const { width, height } = boxOf(d);
      assert.approximately(width, height, 0.3, d);
    }
  });

  it("names both ends, and tells its layers apart: each stage from above, shafts from one to the next", async () => {
    const { root } = await show(limpet);
    const written = texts(root);
    assert.include(written, "motor");
    assert.include(written, "to: Ring and pinion");
    assert.match(
      plain(root.querySelector("#told")!.textContent),
      /^From: motor, to: Ring and pinion\. 15 teeth turn 62/,
    );
    const box = (text: string): DOMRect =>
      [...root.querySelectorAll("svg text")].find((one) => one.textContent.trim() === text)!.getBoundingClientRect();
    const order = ["motor", "Spur and pinion", "Gear row", "to: Ring and pinion"].map((text) => box(text).top);
    assert.deepEqual(
      order,
      [...order].sort((a, b) => a - b),
    );
    // The last of them is the nearest: its line is the strongest.
    const strength = [...root.querySelectorAll(".teeth")].map((gear) => parseFloat(getComputedStyle(gear).strokeWidth));
    assert.isBelow(strength[0]!, strength.at(-1)!);
    const { root: whole } = await show({ ...limpet, outputs: [{ id: "rear", label: "Rear axle", stages: [] }] });
    assert.include(texts(whole), "to: Rear axle");
    const { root: later } = await show(limpet, 'of="row"');
    assert.include(texts(later), "from: Spur and pinion");
  });

  it("goes on in rows where a train is long, all to one scale", async () => {
    const more = Array.from({ length: 10 }, (_, n) => ({
      ...{ id: `more-${n}`, label: `Pair ${n + 3}`, kind: "pair", driver: 18 + n, driven: 20 + n, module: "0.8" },
    }));
    const { root } = await show({ ...limpet, stages: [primary, row, ...more] }, "", 335);
    const rows = new Set(
      [...root.querySelectorAll(".teeth")].map((gear) =>
        Math.round(gear.parentElement!.getBoundingClientRect().top / 40),
      ),
    );
    assert.isAtLeast(rows.size, 2);
    const wide = (gear: Element | undefined): number => (gear as SVGGraphicsElement).getBBox().width;
    const gears = [...root.querySelectorAll(".teeth")];
    // 20 and 29 teeth of the last rows, by the same module: as (20 + 2) to (29 + 2).
    assert.closeTo(wide(gears.at(-1)) / wide(gears[0]), (29 + 2) / (15 + 2), 0.02);
    assert.deepEqual(
      texts(root, ".count")
        .map(Number)
        .sort((a, b) => a - b),
      [15, 62, 18, 31, 45, ...more.flatMap(({ driver, driven }) => [driver, driven])].sort((a, b) => a - b),
    );
  });

  it("turns tooth by tooth with the wheel that a hand draws along", async () => {
    const { root } = await show(limpet);
    const gears = [...root.querySelectorAll(".teeth")];
    const angle = (gear: Element): number =>
      Number(/rotate\((.*)\)/.exec(gear.getAttribute("transform") ?? "rotate(0)")![1]);
    // The spur, by a twelfth of a turn from its right to below.
    const spur = root.querySelectorAll(".wheel")[1]!;
    const { x, y, width, height } = spur.getBoundingClientRect();
    const [cx, cy, radius] = [x + width / 2, y + height / 2, width / 2.5];
    const at = (type: string, degrees: number, target: EventTarget): boolean =>
      target.dispatchEvent(
        new PointerEvent(type, {
          ...{ pointerId: 7, button: 0, bubbles: true, composed: true, cancelable: true },
          clientX: cx + radius * Math.cos((degrees * Math.PI) / 180),
          clientY: cy + radius * Math.sin((degrees * Math.PI) / 180),
        }),
      );
    at("pointerdown", 0, spur);
    for (const degrees of [10, 20, 30]) at("pointermove", degrees, globalThis);
    // Five of its 62 teeth are 29.03 degrees: the nearest whole tooth.
    assert.closeTo(angle(gears[1]!), (5 * 360) / 62, 0.01);
    assert.closeTo(angle(gears[0]!), (-5 * 360) / 15, 0.01);
    at("pointerup", 30, globalThis);
    at("pointermove", 90, globalThis);
    assert.closeTo(angle(gears[1]!), (5 * 360) / 62, 0.01);
  });

  it("names the stages that it has no place for", async () => {
    const { root } = await show(limpet);
    assert.equal(root.querySelector("[part=rest]")!.textContent, "Not drawn: Ring and pinion.");
  });

  it("shows the slot with its ends, and nothing short where the pair fits", async () => {
    const { root } = await show(limpet, 'of="primary"');
    const written = texts(root);
    assert.include(written, "31.3 mm");
    assert.include(written, "30.3 mm");
    assert.notOk(root.querySelector(".short, [part=verdict], [part=dashed], .article"));
  });

  it("dimensions what the slot lacks, keeps the article dashed beside it, and takes both back", async () => {
    const { root, build } = await show(limpet, 'of="primary"');
    build.store.change({ "primary.driver": 17, "primary.driven": 66 });
    await settle();
    assert.deepEqual(texts(root, ".short"), ["1.9 mm short"]);
    assert.equal(
      plain(root.querySelector("[part=verdict]")!.textContent),
      "Needs 33.2 mm between centres. The slot ends at 31.3 mm, 1.9 mm short.",
    );
    assert.include(texts(root), "article 30.8 mm");
    assert.isAtLeast(root.querySelectorAll(".article").length, 2);
    build.store.reset();
    await settle();
    assert.notOk(root.querySelector(".short, [part=verdict], .article"));
    assert.include(texts(root, ".count"), "62");
  });

  it("says how near a wall is, and that the gap is too small", async () => {
    const walls = [{ label: "skid", distance: "28 mm", gap: "0.5 mm" }];
    const pivot = { distance: "30 mm", arm: "20 mm", from: 60, to: 90 };
    const { root, build } = await show({
      ...limpet,
      stages: [{ ...primary, driver: 15, driven: 52 }],
      mounts: [{ stage: "primary", pivot, opening: "0.05 mm", walls }],
    });
    assert.include(texts(root), "skid: 6.4 mm clear, needs 0.5 mm");
    assert.include(texts(root), "26.85 mm");
    assert.notOk(root.querySelector(".fault"));
    build.store.change({ "primary.driver": 23, "primary.driven": 67 });
    await settle();
    assert.deepEqual(texts(root, ".fault text"), ["skid: 0.4 mm clear, needs 0.5 mm"]);
  });

  it("stays still until it is asked, turns in the ratio of the teeth, and comes back", async () => {
    const { root, drawing } = await show(limpet);
    const gears = [...root.querySelectorAll(".teeth")];
    const button = root.querySelector("button")!;
    const angle = (gear: Element): number =>
      Number(/rotate\((.*)\)/.exec(gear.getAttribute("transform") ?? "rotate(0)")![1]);
    await settle();
    assert.isTrue(gears.every((gear) => !gear.hasAttribute("transform")));
    button.click();
    // As long as it takes: an engine under load draws few frames.
    for (let n = 0; n < 200 && angle(gears[0]!) <= 2; n++) await settle();
    assert.isAbove(angle(gears[0]!), 2);
    assert.closeTo(angle(gears[1]!) / angle(gears[0]!), -15 / 62, 0.01);
    assert.closeTo(angle(gears[2]!), angle(gears[1]!), 1e-9);
    assert.closeTo(angle(gears[4]!) / angle(gears[1]!), 18 / 45, 0.01);
    assert.equal(button.textContent!.trim(), "Hold it still");
    button.click();
    await drawing.updateComplete;
    assert.isTrue(gears.every((gear) => !gear.hasAttribute("transform")));
    button.click();
    await settle();
    drawing.remove();
    const before = angle(gears[0]!);
    await settle();
    assert.equal(angle(gears[0]!), before);
  });

  it("turns tooth by tooth, by button and arrow keys, without motion", async () => {
    const { root, drawing } = await show(limpet);
    await settle();
    const gears = [...root.querySelectorAll(".teeth")];
    const angle = (gear: Element): number =>
      Number(/rotate\((.*)\)/.exec(gear.getAttribute("transform") ?? "rotate(0)")![1]);
    const keys = [...root.querySelectorAll<HTMLElement>(".keys button")];
    keys[2]!.click();
    await drawing.updateComplete;
    // One of fifteen teeth, and one of sixty-two the other way.
    assert.closeTo(Math.abs(angle(gears[0]!)), 360 / 15, 0.01);
    assert.closeTo(Math.abs(angle(gears[1]!)), 360 / 62, 0.01);
    keys[2]!.dispatchEvent(new KeyboardEvent("keydown", { key: "ArrowLeft", bubbles: true }));
    keys[2]!.dispatchEvent(new KeyboardEvent("keydown", { key: "ArrowLeft", bubbles: true }));
    assert.closeTo(Math.abs(angle(gears[0]!)), 360 / 15, 0.01);
    keys[2]!.click();
    assert.isFalse(gears[0]!.hasAttribute("transform"));
  });

  it("never turns for a reader who asks for less motion", async () => {
    const own = globalThis.matchMedia;
    globalThis.matchMedia = (query: string) => ({ ...own.call(globalThis, query), matches: true }) as MediaQueryList;
    try {
      const { root } = await show(limpet);
      root.querySelector("button")!.click();
      await settle();
      assert.isTrue([...root.querySelectorAll(".teeth")].every((gear) => !gear.hasAttribute("transform")));
    } finally {
      globalThis.matchMedia = own;
    }
  });

  it("redraws itself for a narrow page; its lettering keeps its size", async () => {
    const { root, drawing } = await show(limpet, "", 640);
    const size = (): string => getComputedStyle(root.querySelector(".count")!).fontSize;
    const [before, wide] = [size(), root.querySelector("svg")!.getBoundingClientRect().width];
    page.style.width = "335px";
    await settle();
    const svg = root.querySelector("svg")!;
    assert.equal(wide, 640);
    assert.equal(svg.getBoundingClientRect().width, 335);
    assert.equal(size(), before);
    const edge = drawing.getBoundingClientRect();
    for (const text of root.querySelectorAll("text")) {
      const box = text.getBoundingClientRect();
      assert.isAtLeast(box.left, edge.left - 1, text.textContent);
      assert.isAtMost(box.right, edge.right + 1, text.textContent);
    }
  });

  it("letters nothing over anything else, wide or narrow", async () => {
    const walls = [{ label: "skid", distance: "28 mm", gap: "0.5 mm" }];
    for (const changes of [
      {},
      { "primary.driver": 17, "primary.driven": 66 },
      { "primary.driver": 14, "primary.driven": 60 },
    ])
      for (const width of [640, 335]) {
        const { root, build } = await show({ ...limpet, mounts: [{ ...slot, walls }] }, "", width);
        build.store.change(changes);
        await settle();
        const boxes = [...root.querySelectorAll("svg text")].map((text) => ({
          text: text.textContent,
          box: text.getBoundingClientRect(),
        }));
        boxes.forEach(({ text, box }, n) => {
          for (const other of boxes.slice(n + 1)) {
            const across = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
            const down = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top);
            assert.isFalse(across > 2 && down > 5, `${text} over ${other.text} at ${width}`);
          }
        });
        page.remove();
      }
  });

  it("draws teeth that are too fine as plain circles", async () => {
    const fine = { ...limpet, stages: [{ ...primary, driver: 90, driven: 400 }], mounts: [] };
    const { root } = await show(fine, "", 335);
    assert.equal(root.querySelectorAll(".teeth").length, 0);
    assert.deepEqual(texts(root, ".count").sort(), ["400", "90"]);
  });

  it("keeps the author's content where there is nothing to draw", async () => {
    const { root, build, drawing } = await show({ ...limpet, stages: [{ ...primary, module: undefined }], mounts: [] });
    assert.notOk(root.querySelector("svg"));
    assert.isAbove(drawing.querySelector("p")!.getBoundingClientRect().height, 0);
    assert.match((await build.checked).map((finding) => finding.message).join(), /No gears to draw/);
  });

  it("carries no inline style and leaves the author's content alone", async () => {
    const { root, drawing } = await show(limpet);
    assert.equal(root.querySelectorAll("[style]").length, 0);
    assert.equal(drawing.innerHTML, "<p>15 to 62, 30.8 mm</p>");
    assert.equal(drawing.querySelector("p")!.getBoundingClientRect().height, 0);
  });

  it("reads well to those who do not see it, and to axe", async () => {
    const { root, drawing } = await show(limpet);
    const svg = root.querySelector("svg")!;
    assert.equal(svg.getAttribute("role"), "img");
    assert.equal(svg.getAttribute("aria-label"), "Gears to scale: 15 drives 62, 18 drives 31, 31 drives 45");
    assert.match(
      plain(root.getElementById(svg.getAttribute("aria-describedby")!)!.textContent),
      /set from 30\.3 mm to 31\.3 mm/,
    );
    await import("axe-core");
    const { axe } = globalThis as unknown as { axe: { run(node: Element): Promise<{ violations: { id: string }[] }> } };
    const { violations } = await axe.run(drawing);
    assert.deepEqual(
      violations.map((one) => one.id),
      [],
    );
  });
});
