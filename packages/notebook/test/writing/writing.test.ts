import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { elementsOf, attributesOf, textOf } from "../../../../tests/demo/page.js";
import { parseFragment, type DefaultTreeAdapterTypes } from "parse5";
import { applyChanges, buildFromAttributes, parseBuild, readBuild } from "@meshwright/calc/document";
import { evaluate } from "@meshwright/calc/evaluate";
import {
  figureText,
  matchesIn,
  postFromMarkdown,
  postOf,
  postToHtml,
  postToMarkdown,
  schema,
  wouldRead,
} from "../../src/writing/index.js";

const limpet = parseBuild(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));
/** A drivetrain of this test's own: everything in it can be said in attributes. */
const knot = parseBuild({
  format: "meshwright-build/1",
  title: "Knot, a survey rover",
  stages: [
    { id: "first", label: "Motor gears", kind: "pair", driver: 17, driven: 54, module: "0.5" },
    { id: "box", label: "Box", kind: "published", value: "3.7" },
  ],
  outputs: [
    {
      id: "front",
      label: "Front",
      stages: [{ id: "fr", label: "Ring", kind: "pair", driver: 10, driven: 31, set: true }],
      wheel: { diameter: "96 mm" },
    },
    {
      id: "rear",
      label: "Rear",
      stages: [{ id: "rr", label: "Ring", kind: "pair", driver: 11, driven: 33, reverses: false }],
      wheel: { diameter: "98 mm" },
    },
  ],
  compare: { of: "front", with: "rear" },
  target: { from: 35, to: 37 },
  rounding: { minimumFractionDigits: 2, maximumFractionDigits: 2 },
});

const paragraph = (...content: (string | object)[]) =>
  postOf({
    type: "doc",
    content: [
      {
        type: "paragraph",
        content: content.map((one) =>
          typeof one === "string" ? { type: "text", text: one } : { type: "figure", attrs: one },
        ),
      },
    ],
  });

describe("numbers of a post that are the drivetrain's", () => {
  it("are those that equal a figure as it reads, and none that is near one", () => {
    const post = paragraph(
      "The front turns once for 44.30 turns, not 44.31, and 144.30 or 44.305 is another matter. It is 1.06 % ahead.",
    );
    expect(matchesIn(post, limpet).map(({ text }) => text)).toEqual(["44.30", "1.06 %"]);
  });

  it("pass over dates, prices, code and what somebody else has said", () => {
    const post = postFromMarkdown(
      "On 2026-10-15 and 15 October I paid €15 and 15.00 EUR for `15` of them.\n\n> 44.30, said the maker\n\n    15\n",
    );
    expect(matchesIn(post, limpet)).toEqual([]);
  });

  it("take a range for one figure", () => {
    const post = paragraph("It comes to 35.85 to 36.84 in front.");
    const total = figureText(knot, { tag: "mw-value", ask: { of: "front" } })!;
    expect(total).toMatch(/ to /);
    const found = matchesIn(paragraph(`It comes to ${total} in front.`), knot);
    expect(found.map(({ text }) => text)).toEqual([total]);
    expect(matchesIn(post, knot).map(({ text }) => text)).toEqual([]);
  });

  it("are offered with what each would do, whole ones never as if they were decided", () => {
    const [fifteen, total] = matchesIn(paragraph("With 15 teeth it is 44.30."), limpet);
    expect(fifteen!.preselected).toBeUndefined();
    expect(fifteen!.choices.map(({ ask }) => ask.of)).toContain("primary.driver");
    expect(total!.preselected?.ask).toEqual({ of: "front" });
    expect(
      wouldRead(
        limpet,
        fifteen!,
        fifteen!.choices.find(({ ask }) => ask.of === "primary.driver")!,
      ),
    ).toBe("If motor pinion becomes 16, this reads: With 16 teeth it is 44.30.");
    // 25916/585 · 15/16, by hand: 41.53.
    expect(wouldRead(limpet, total!, total!.preselected!)).toBe(
      "If motor pinion becomes 16, this reads: With 15 teeth it is 41.53.",
    );
  });

  it("are not asked about again where they were refused", () => {
    const post = paragraph("With 15 teeth.");
    const [one] = matchesIn(post, limpet);
    expect(matchesIn(post, limpet, [one!.key])).toEqual([]);
  });

  it("stand at their places in the post", () => {
    const post = postFromMarkdown("# Limpet\n\nFirst *some* words, then 44.30.\n");
    const { from, to } = matchesIn(post, limpet)[0]!;
    expect(post.textBetween(from, to)).toBe("44.30");
  });
});

const inHtml = (html: string) => elementsOf(parseFragment(html) as unknown as DefaultTreeAdapterTypes.Element);

describe("a post that is handed out", () => {
  const post = paragraph(
    "With ",
    { tag: "mw-teeth", ask: { of: "first.driver" } },
    " teeth & <more> it is ",
    { tag: "mw-value", ask: { of: "front" } },
    ".",
  );

  it("reads right without scripts, and carries a drivetrain that comes to the same", () => {
    const all = inHtml(postToHtml(post, knot));
    const build = all.find(({ tagName }) => tagName === "mw-build")!;
    const read = buildFromAttributes(attributesOf(build));
    expect(read.findings).toEqual([]);
    // 54/17 · 3.7 · 31/10, the box within half a unit of its last digit: 35.94 to 36.93, outward.
    const [low, high] = [3.65, 3.75].map((box) => (((54 / 17) * box * 31) / 10).toFixed(4)).map(Number) as [
      number,
      number,
    ];
    const bounds = evaluate(read.build!).output("front")!.bounds!;
    expect([bounds.low.toNumber(), bounds.high.toNumber()]).toEqual([expect.closeTo(low, 3), expect.closeTo(high, 3)]);
    const teeth = all.find(({ tagName }) => tagName === "mw-teeth")!;
    expect(textOf(teeth)).toBe("17");
    expect(textOf(all.find(({ tagName }) => tagName === "p")!)).toMatch(
      /^With 17 teeth & <more> it is [\d.]+ to [\d.]+\.$/,
    );
    // Its address is one that the drivetrain has where it goes.
    expect(applyChanges(read.build!, { [attributesOf(teeth).of!]: 18 }).ok).toBe(true);
  });

  it("carries the whole drivetrain as data where a figure is about more than attributes say", () => {
    const pinned = paragraph("At first it was ", { tag: "mw-value", ask: { of: "front", at: "first-try" } }, ".");
    const html = postToHtml(pinned, limpet);
    const json = /<script type="application\/json">(.*)<\/script>/.exec(html)![1]!;
    expect(readBuild(json).ok).toBe(true);
    // 53/23 · 45/18 · 38/13 · 22/15 = 24.70
    expect(html).toContain('at="first-try">24.70</mw-value>');
    expect(html).not.toContain("pinion-13");
  });

  it("has no blank line in it, and every figure on one line in Markdown", () => {
    const long = postFromMarkdown("# Knot\n\nOne.\n\n- two\n- three\n\n> four\n");
    expect(postToHtml(long, knot)).not.toMatch(/\n\s*\n/);
    const markdown = postToMarkdown(post, knot);
    // The build heads the first paragraph: an excerpt that ends with it has words.
    const [build, body] = markdown.split("\n");
    expect(build).toMatch(/^<mw-build stages=".*" seal="[a-z]{5}"><\/mw-build>$/);
    expect(body).toContain('<mw-teeth of="motor-gears.driver">17</mw-teeth>');
  });

  it("keeps Markdown's own marks, there and back", () => {
    const text = "# One\n\nTwo *three* **four** `five` [six](https://example.org/)\n\n* seven\n\n* eight\n";
    const there = postToMarkdown(postFromMarkdown(text), undefined);
    expect(postFromMarkdown(there).toJSON()).toEqual(postFromMarkdown(text).toJSON());
  });

  it("puts a table's text of today into the block that draws it", () => {
    const drawn = postOf({ type: "doc", content: [{ type: "drawn", attrs: { tag: "mw-ratio-summary", ask: {} } }] });
    const table = inHtml(postToHtml(drawn, limpet)).find(({ tagName }) => tagName === "table")!;
    expect(textOf(table)).toContain("44.30");
    expect(textOf(table)).toContain("43.32");
  });
});

describe("a post out of data", () => {
  it("is an empty one where the data are none", () => {
    for (const data of [
      undefined,
      null,
      1,
      "x",
      {},
      { type: "doc", content: [{ type: "evil" }] },
      { type: "paragraph" },
    ])
      expect(postOf(data).type.name).toBe("doc");
  });

  it("comes back from what was kept", () => {
    const post = paragraph("With ", { tag: "mw-teeth", ask: { of: "primary.driver" } }, ".");
    expect(postOf(JSON.parse(JSON.stringify(post.toJSON()))).eq(post)).toBe(true);
    expect(schema.nodes.figure!.isAtom).toBe(true);
  });
});
