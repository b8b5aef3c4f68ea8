import { assert } from "@esm-bundle/chai";
import { clear, find, limpet, lineOf, settle, show, turn, withLimpet } from "../../test/page.js";
import type { MwBuild } from "../build/index.js";
import type { MwOverdriveGauge } from "./index.js";

describe("mw-overdrive-gauge", () => {
  let page: HTMLElement;
  const gauge = () => find<MwOverdriveGauge>(page, "mw-overdrive-gauge");
  const label = () => find(gauge().shadowRoot!, "svg").getAttribute("aria-label")!;
  const bars = () =>
    [...gauge().shadowRoot!.querySelectorAll("path.bar")].slice(0, 2).map((bar) => {
      const [, from, to] = /M([\d.]+) [\d.]+H([\d.]+)/.exec(bar.getAttribute("d")!)!;
      return Math.abs(Number(to) - Number(from));
    });
  const selects = () => [...gauge().shadowRoot!.querySelectorAll("select")];
  const choose = async (select: HTMLSelectElement, value: string) => {
    select.value = value;
    select.dispatchEvent(new Event("change", { bubbles: true }));
    await settle();
  };
  const draw = async (markup: string, width = 640) => {
    page = await show(withLimpet(markup), width);
  };

  afterEach(clear);

  it("draws both lengths to scale from a common start, and the gap once more, enlarged", async () => {
    await draw("<mw-overdrive-gauge></mw-overdrive-gauge>");
    const [front, rear] = bars();
    assert.closeTo(front! / rear!, 1.0106, 0.001);
    assert.include(label(), "1.06% farther");
    const text = lineOf(find(gauge().shadowRoot!, "svg"));
    for (const word of ["Front", "Rear", "start", "the end, 10×", "1.06% farther"]) assert.include(text, word);
  });

  it("draws a large gap once", async () => {
    await draw(`<mw-overdrive-gauge at="deeper-rear"></mw-overdrive-gauge>`);
    assert.notInclude(lineOf(gauge()), "the end");
    assert.include(lineOf(gauge()), "13.39% farther");
  });

  it("says in words what it is measured against and what counts, and lets the reader choose", async () => {
    await draw(`<mw-overdrive-gauge at="deeper-rear"></mw-overdrive-gauge>`);
    const [scope, base] = selects();
    assert.include(
      find(gauge().shadowRoot!, "[part=basis]").textContent!.replace(/\s+/g, " "),
      "Counting gears and tyres",
    );
    await choose(base!, "front");
    assert.include(label(), "11.81% farther");
    await choose(base!, "mean");
    assert.include(label(), "12.55% farther");
    await choose(base!, "rear");
    await choose(scope!, "gears");
    assert.include(label(), "9.74% farther");
    assert.equal(gauge().getAttribute("base"), null);
  });

  it("hatches what is not known, and cannot tell across zero", async () => {
    await draw(`<mw-overdrive-gauge at="as-printed"></mw-overdrive-gauge>`);
    assert.include(lineOf(gauge()), "cannot tell: 4.38% less far to 2.22% farther");
    assert.include(label(), "cannot tell");
    assert.isAbove(
      [...gauge().shadowRoot!.querySelectorAll("path:not([class])")].filter(
        (path) => path.getAttribute("d")!.length > 200,
      ).length,
      0,
    );
  });

  it("shows axles that turn against each other as the fault that they are", async () => {
    page = await show(`<mw-build></mw-build><mw-overdrive-gauge></mw-overdrive-gauge>`);
    // Two pinions against each other are known to turn round where their form is said.
    const build = JSON.parse(limpet) as { outputs: { stages: Record<string, string>[] }[] };
    for (const { stages } of build.outputs)
      Object.assign(
        stages.find(({ label }) => label === "Hub")!,
        { form: "spur" },
      );
    build.outputs[0]!.stages[0]!.ringSide = "right";
    find<MwBuild>(page, "mw-build").json = JSON.stringify(build);
    await settle();
    assert.include(lineOf(gauge()), "Do not drive it.");
    assert.include(label(), "turn against each other");
    assert.lengthOf(selects(), 0);
  });

  it("names the turning circle that the lead matches", async () => {
    await draw("<mw-overdrive-gauge></mw-overdrive-gauge>");
    assert.match(lineOf(gauge()), /turning circle of 2\.13 m radius/);
  });

  it("compares axles with motors of their own at equal volts, and says so", async () => {
    page = await show(`<mw-build></mw-build><mw-overdrive-gauge></mw-overdrive-gauge>`);
    const axle = (id: string, kv: number, driven: number) => ({
      id,
      motor: { kv },
      stages: [{ id: `${id}-pair`, kind: "pair", driver: 10, driven }],
      wheel: { diameter: "100 mm" },
    });
    find<MwBuild>(page, "mw-build").json = JSON.stringify({
      format: "meshwright-build/1",
      outputs: [axle("front", 2000, 40), axle("rear", 1000, 22)],
    });
    await settle();
    assert.include(label(), "10.00% farther");
    assert.include(lineOf(gauge()), "equal volts");
  });

  it("says what an open differential takes up, and that the gap is of a locked drive", async () => {
    page = await show(`<mw-build></mw-build><mw-overdrive-gauge></mw-overdrive-gauge>`);
    find<MwBuild>(page, "mw-build").json = limpet.replace('"kind": "spool"', '"kind": "differential"');
    await settle();
    // Front 25916/585 over 124, rear 24955/576 over 120: 0.357266 and 0.361046, of which the mean is 0.359156.
    assert.include(lineOf(gauge()), "the open differential takes up the difference: 1.05% of the motor’s turns.");
    assert.include(label(), "1.06% farther.");
  });

  it("leaves the author's text where a word is none, and tells the nearest that is", async () => {
    for (const [attributes, told] of [
      ['base="raer"', "rear"],
      ['scope="gear"', "gears"],
      ['of="frnot"', "front"],
      ['at="articel"', "article"],
    ] as const) {
      await draw(`<mw-overdrive-gauge ${attributes}>Front 1.06 % ahead</mw-overdrive-gauge>`);
      assert.equal(lineOf(gauge()), "Front 1.06 % ahead", attributes);
      assert.include((await find<MwBuild>(page, "mw-build").checked)[0]!.message, told);
    }
  });

  it("follows the reader's changes in the same turn", async () => {
    await draw("<mw-overdrive-gauge></mw-overdrive-gauge>");
    find<MwBuild>(page, "mw-build").store.change({ "front-hub.driven": 23 });
    await turn();
    assert.include(label(), "3.34% less far");
  });

  it("redraws for the width that it has, lettering keeping its size", async () => {
    await draw("<mw-overdrive-gauge></mw-overdrive-gauge>");
    const size = () => getComputedStyle(find(gauge().shadowRoot!, "text")).fontSize;
    const before = size();
    page.style.width = "300px";
    await settle(6);
    const picture = find(gauge().shadowRoot!, "svg");
    assert.equal(picture.getAttribute("width"), "300");
    assert.equal(size(), before);
    for (const text of picture.querySelectorAll("text")) {
      const { left, right } = text.getBoundingClientRect();
      assert.isAtLeast(left, page.getBoundingClientRect().left - 1, text.textContent!);
      assert.isAtMost(right, page.getBoundingClientRect().right + 1, text.textContent!);
    }
  });

  it("sets the gap beside its dimension only where the frame has room for it, in a wide type as well", async () => {
    await draw(`<mw-overdrive-gauge at="as-exact"></mw-overdrive-gauge>`);
    page.style.font = "18px monospace";
    for (let width = 280; width <= 640; width += 20) {
      page.style.width = `${width}px`;
      await settle(2);
      const frame = find(gauge().shadowRoot!, "rect").getBoundingClientRect();
      for (const text of gauge().shadowRoot!.querySelectorAll("text.figure")) {
        const { left, right } = text.getBoundingClientRect();
        assert.isFalse(left < frame.left && right > frame.left, `${width}: ${text.textContent}`);
      }
    }
  });

  it("runs from the right where the page does", async () => {
    await draw("<mw-overdrive-gauge></mw-overdrive-gauge>");
    page.dir = "rtl";
    await settle(6);
    const [, from, to] = /M([\d.]+) [\d.]+H([\d.]+)/.exec(find(gauge().shadowRoot!, ".bar").getAttribute("d")!)!;
    assert.isAbove(Number(from), Number(to));
  });

  it("leaves the fallback where there are not two outputs to compare", async () => {
    page = await show(
      `<mw-build stages="Pair: 10 to 20" rear="Hub: 10 to 10"></mw-build><mw-overdrive-gauge>Front 1.06 % ahead</mw-overdrive-gauge>`,
    );
    assert.equal(lineOf(gauge()), "Front 1.06 % ahead");
  });
});
