import { describe, expect, it } from "vitest";
import { holderFault, readEmbedded, standsForBlock, standsForValue, type Content } from "../../src/article/index.js";
import { articleFrom, elementsIn } from "./documents.js";
import { treeOf } from "./expected.js";

const text = (one: string): Content => ({ tag: "", text: one });
const element = (tag: string, one: string, holds = false): Content => ({ tag, text: one, holds });

describe("what stands inside an element in a sentence", () => {
  it.each<[readonly Content[], string, boolean]>([
    [[], "43.32", true],
    [[text("43.32")], "43.32", true],
    [[text("\n  43,3 ")], "43.32", true],
    [[element("b", "43.3")], "43.32", true],
    [[element("font", "43,32", true)], "43.32", true],
    [[element("br", ""), text("43.32")], "43.32", true],
    [[element("script", "var x = 1"), text("43.32")], "43.32", true],
    [[text("٤٣٫٣٢")], "43.32", true],
    [[text("inside")], "inside", true],
    [[text("inside")], "43.32", false],
    [[text("43.32")], "inside", true],
    [[text("8.70 mm")], "not known", true],
    [[text("8.70 mm of sand")], "not known", false],
    [[text("+1.06%")], "level", true],
    [[text(" turns of the motor, and 2 more words.")], "43.32", false],
    [[text(", which is right.")], "43.32", false],
    [[element("p", "43.32")], "43.32", true],
    [[element("button", "43.32", true)], "44.30", true],
    [[element("p", "Front 43.32")], "43.32", false],
    [[element("table", "Front 43.32", true)], "43.32", false],
    [[text("43.32 and then a whole sentence that a self-closed tag has swallowed")], "43.32", false],
  ])("%j beside %s: %s", (inside, value, stands) => {
    expect(standsForValue(inside, value)).toBe(stands);
  });
});

describe("what stands inside an element of its own", () => {
  it.each<[readonly Content[], boolean]>([
    [[], true],
    [[text("  \n")], true],
    [[element("p", "  ")], true],
    [[element("table", "Front 44.30", true)], true],
    [[element("img", "")], true],
    [[element("p", "Front: 44.30")], true],
    [[text("Front: 44.30")], true],
    [[text("10 m: "), element("b", "1.06 %")], true],
    [[element("p", "And here the story goes on.")], false],
    [[element("p", "One 1."), element("p", "Two 2.")], false],
    [[text(", 44.30")], false],
    [[element("p", `4 ${"and on ".repeat(40)}`)], false],
  ])("%j: %s", (inside, stands) => {
    expect(standsForBlock(inside)).toBe(stands);
  });
});

describe("a build embedded in a page", () => {
  const json = (label = "Rear axle") =>
    `{ "format": "meshwright-build/1", "outputs": [{ "id": "rear", "label": "${label}", "stages": [{ "id": "ring", "kind": "pair", "driver": 12, "driven": 35 }] }] }`;
  const label = (text: unknown): string | undefined => {
    const reading = readEmbedded(text);
    return reading.ok ? reading.build.outputs[0]!.label : undefined;
  };

  it.each([
    ["curled quotation marks", json().replace(/"/g, (_, n: number) => (n % 2 ? "\u201c" : "\u201d"))],
    ["low and high ones", json().replaceAll('"', "\u201e")],
    ["character references", json().replaceAll('"', "&quot;")],
    ["numbered ones", json().replaceAll('"', "&#34;")],
    ["numbered ones of curled marks", json().replaceAll('"', "&#8220;")],
    ["numbered ones in sixteens", json().replaceAll('"', "&#x22;")],
    ["named ones of curled marks", json().replaceAll('"', "&rdquo;")],
    ["hard blanks between its pieces", json().replaceAll(": ", ":\u00a0").replaceAll("{ ", "{&nbsp;")],
    ["a line end within a text", json("Rear\n      axle")],
    ["a line end of another system within a text", json("Rear\r\naxle")],
    ["a mark of the encoding before it", `\ufeff${json()}`],
  ])("is read with %s", (_what, text) => {
    expect(label(text)).toBe("Rear axle");
  });

  it("keeps what its texts say: marks of their own, references that are none, escapes", () => {
    expect(label(json("the \u201cdeep\u201d set"))).toBe("the \u201cdeep\u201d set");
    expect(label(json("Rear &c; axle \\u0041\\n"))).toBe("Rear &c; axle A\n");
    expect(label(JSON.parse(json()))).toBe("Rear axle");
  });

  it("that cannot be mended is told of as it stands", () => {
    const reading = readEmbedded("{ \u201cformat\u201d: ");
    expect(reading.ok).toBe(false);
    expect(reading.findings[0]!.message).toContain("\u201c");
  });

  it("is mended in time that grows with its length", () => {
    const long = `{ "format": "meshwright-build/1", "title": "${"a\n".repeat(200_000)}`;
    expect(readEmbedded(long).ok).toBe(false);
  });
});

describe("a build that is asked for by name", () => {
  it("and that no build bears is told with the nearest", () => {
    const root = articleFrom(7);
    const tree = treeOf(root);
    const builds = [...elementsIn(root)].filter(({ name }) => name === "mw-build");
    const named = builds.map((one) => ({ ...one, attributes: { ...one.attributes, id: "limpet" } }));
    expect(holderFault(tree, named, "limpet")).toBeUndefined();
    expect(holderFault(tree, named, "limpt")!.values).toMatchObject({ id: "limpt", nearest: ["limpet"] });
    expect(holderFault(tree, [], "limpt")!.values.nearest).toEqual([]);
  });
});
