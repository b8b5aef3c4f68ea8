// Work is counted, not timed: how often functions are called, as the engine itself counts it.
import { Session, type Profiler } from "node:inspector";
import { describe, expect, it } from "vitest";
import { checkFigures, mendFigures, type Format } from "../src/index.js";
import { build } from "./pages.js";

/** How many calls of functions there are in a call. */
function workOf(call: () => unknown): number {
  const session = new Session();
  session.connect();
  session.post("Profiler.enable");
  session.post("Profiler.startPreciseCoverage", { callCount: true, detailed: false });
  try {
    call();
  } catch {
    // To refuse is an answer as well, and may not take longer.
  }
  let work = 0;
  session.post("Profiler.takePreciseCoverage", (_, { result }: Profiler.TakePreciseCoverageReturnType) => {
    for (const { functions } of result)
      for (const { ranges } of functions) for (const { count } of ranges) work += count;
  });
  session.post("Profiler.stopPreciseCoverage");
  session.disconnect();
  return work;
}

/** How much more work twice as much text is. */
function growthOf(call: (text: string) => unknown, unit: string, size = 3000): number {
  const work = (length: number) => workOf(() => call(unit.repeat(length / unit.length)));
  // What is done once for all is done before.
  work(size / 4);
  return work(size * 2) / work(size);
}

const units = [
  ...[
    "*a_",
    "_*",
    "**a ",
    "`",
    "`a``",
    "[",
    "[a](",
    "![",
    "[x][",
    "]",
    "\\<",
    "&amp;",
    "|a",
    "<!-- ",
    "<?a ",
    "<!A ",
    "<![CDATA[",
  ],
  ...[
    "<a b='",
    "<a ",
    "{",
    "{a}",
    "> ",
    "- ",
    "a\n> b\n",
    "> a\n\n",
    "1. > - a\n",
    "      - a\n\n",
    "      - a\n\nb\n\n",
    "    ```\n\n",
    "[a]: x\n",
    "---\n",
    "{\n",
    "a\n",
    " ",
    "1.5 ",
  ],
  ...[
    "<b>",
    "<p><b>",
    "<x>",
    "</p>",
    "<li>1: ",
    "<table><tr><td>",
    "<mw-value>",
    "<mw-value />",
    "<mw-value></mw-value>",
  ],
  ...["<mw-build>", "<mw-ratio-summary>", "<mw-vlaue>", "export const a = `\n\n", "<mw-edits lang='de'>"],
];

describe("the work of twice the text", () => {
  it("is told apart by what is counted", () => {
    const once = (text: string) => [...text].filter((one) => one === "b").length;
    const eachWithEach = (text: string) => [...text].filter((one) => once(text) && one === "b").length;
    expect(growthOf(once, "ab", 600)).toBeLessThan(2.2);
    expect(growthOf(eachWithEach, "ab", 600)).toBeGreaterThan(3.8);
  });

  it.each(["html", "markdown", "mdx"] as const)("is about twice the work, for %s of any kind", (format: Format) => {
    const growths = units.map(
      (unit) => [unit, growthOf((text) => mendFigures(`${build}\n\n${text}`, { format }), unit)] as const,
    );
    expect(growths.filter(([, growth]) => growth > 2.5)).toEqual([]);
  });
});

describe("deep articles", () => {
  it.each(["html", "markdown", "mdx"] as const)("of %s are read however deep they are, or refused", (format) => {
    for (const tag of ["div", "b", "span", "mw-value", "mw-ratio-summary", "mw-build"]) {
      const source = `${build}\n\n${`<${tag}>`.repeat(5000)}9${`</${tag}>`.repeat(5000)}\n`;
      expect(mendFigures(source, { format }).text).toBe(source);
    }
    const deeper = `${build}\n\n${"<div>".repeat(50_000)}`;
    expect(() => checkFigures(deeper, { format })).toThrow(/nested/);
  });

  it("that stand for more elements than there are bytes are refused", () => {
    const open = Array.from({ length: 3000 }, (_, n) => `<b id=${n}>`).join("");
    expect(() => checkFigures(`${build}<p>${open}</p>${"<p>x</p>".repeat(3000)}`)).toThrow(/more elements/);
  });
});
