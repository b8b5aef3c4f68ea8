import { describe, expect, test } from "vitest";
import type { Marking } from "@meshwright/calc/article";
import { parseBuild } from "@meshwright/calc/document";
import { checkFigures } from "../../packages/figures/src/index.js";
import { handedOut, schema } from "../../packages/notebook/src/writing/index.js";

const build = parseBuild({
  format: "meshwright-build/1",
  title: "Limpet",
  stages: [{ id: "primary", label: "Primary", kind: "pair", driver: 15, driven: 60 }],
  outputs: [
    { id: "front", label: "Front", wheel: { diameter: "110 mm" }, stages: [] },
    { id: "rear", label: "Rear", wheel: { diameter: "100 mm" }, stages: [] },
  ],
});
const text = (words: string) => ({ type: "text", text: words });
const post = schema.nodeFromJSON({
  type: "doc",
  content: [
    {
      type: "paragraph",
      content: [
        text("It turns "),
        { type: "figure", attrs: { tag: "mw-value", ask: { of: "front" } } },
        text(" times."),
      ],
    },
    { type: "drawn", attrs: { tag: "mw-overdrive-gauge", ask: {} } },
    { type: "drawn", attrs: { tag: "mw-ratio-summary", ask: {} } },
  ],
});
const out = (writing: Marking): string => handedOut(post, build, writing);

describe("a post that the notebook hands out", () => {
  test("is text with every figure where no tag goes", () => {
    expect(out("text")).toContain("It turns 4.00 times.");
    expect(out("text")).not.toMatch(/[<{]/);
  });

  test("has the build in its first paragraph of Markdown, so that an excerpt has words", () => {
    const [first] = out("markdown").split("\n\n");
    expect(first).toMatch(/^<mw-build [^>]*><\/mw-build>\nIt turns <mw-value of="front">4\.00<\/mw-value> times\.$/);
  });

  test.each(["html", "markdown"] as const)(
    "keeps blocks of %s whole on a line, each with what it says today",
    (writing) => {
      const lines = out(writing).split("\n");
      // Travel is as the diameters: 110 to 100.
      expect(lines.find((line) => line.includes("mw-overdrive-gauge"))).toMatch(
        /^<div><mw-overdrive-gauge><p>.*10\.00% farther.*<\/p><\/mw-overdrive-gauge><\/div>$/,
      );
      expect(lines.find((line) => line.includes("mw-ratio-summary"))).toMatch(
        /^<div><mw-ratio-summary><table>(?:<caption>.*<\/caption>)?<tbody>.*4\.00.*<\/tbody><\/table>.*<\/mw-ratio-summary><\/div>$/,
      );
    },
  );

  test("holds no tag of ours as shortcodes, and nothing that a site without HTML would take out", () => {
    const written = out("shortcodes");
    expect(written).not.toMatch(/<\/?(?:mw-|div)/);
    expect(written.match(/\{\{< mw-/g)).toHaveLength(4);
    expect(written.match(/\{\{< \/mw-/g)).toHaveLength(4);
  });

  test.each(["html", "markdown", "shortcodes"] as const)("as %s is right to the command of figures", (writing) => {
    const { compared, differences } = checkFigures(out(writing), { format: writing === "html" ? "html" : "markdown" });
    expect(differences).toEqual([]);
    expect(compared).toBeGreaterThanOrEqual(2);
  });
});
