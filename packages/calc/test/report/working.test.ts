import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { applyChanges, parseBuild } from "../../src/document/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { wordsFor } from "../../src/languages/all.js";
import { toHtml, toMarkdown, toText, working, workingTable, Writer } from "../../src/report/index.js";
import { document, evaluated, pair, read } from "../make.js";

const limpet = parseBuild(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));
const printed = evaluate(
  applyChanges(limpet, limpet.alternatives!.find(({ id }) => id === "as-printed")!.changes).build!,
);

/** A fraction above zero with two digits, half up, by whole numbers alone. */
function twoDigits(top: bigint, bottom: bigint): string {
  const hundredths = (200n * top + bottom) / (2n * bottom);
  return `${hundredths / 100n}.${String(hundredths % 100n).padStart(2, "0")}`;
}

/** Counts that look random and are the same in every run. */
function countsFrom(seed: number): () => number {
  let state = seed;
  return () => 8 + ((state = (state * 48271) % 0x7fffffff) % 90);
}

describe("the working", () => {
  it("drifts by what rounding at every step costs", () => {
    const [front] = working(evaluate(limpet));
    expect(front!.total!.low.toFraction()).toBe("25916/585");
    expect(front!.stepwise!.toDecimal()).toBe("44.34");
    expect(working(printed)[0]).toMatchObject({ stepwise: undefined, drift: undefined });
  });

  it("has every running product as whole numbers have it, near the end of a long row as at its beginning", () => {
    const count = countsFrom(11);
    const stages = Array.from({ length: 600 }, (_, n) => pair(`s${n}`, count(), count()));
    const [one] = working(evaluated([], { rear: stages }));
    const writer = new Writer();
    let [top, bottom] = [1n, 1n];
    one!.steps.forEach((step, n) => {
      const { driver, driven } = stages[n] as { driver: number; driven: number };
      top *= BigInt(driven);
      bottom *= BigInt(driver);
      expect(step.runningText(writer).replaceAll(",", ""), `${n}`).toBe(twoDigits(top, bottom));
    });
    const { low } = one!.steps.at(-1)!.running;
    expect(low.numerator * bottom).toBe(top * low.denominator);
  });

  it("has products that end on a half, and those that grow past every plain number", () => {
    // 1 / 8 = 0.125 → 0.13; then doubled so often that it has three hundred digits.
    const halves = [pair("a", 8, 1), ...Array.from({ length: 1000 }, (_, n) => pair(`s${n}`, 10, 20))];
    const [one] = working(evaluated([], { rear: halves }));
    const writer = new Writer();
    expect(one!.steps[0]!.runningText(writer)).toBe("0.13");
    const last = one!.steps.at(-1)!.runningText(writer).replaceAll(",", "");
    expect(last).toBe(`${2n ** 997n}.00`);
    expect(one!.steps.at(-1)!.running.low.toFraction()).toBe(`${2n ** 997n}/1`);
  });

  it("keeps the interval of printed ratios, ends outward", () => {
    const boxes = Array.from({ length: 40 }, (_, n) => ({ id: `b${n}`, kind: "published", value: "1.5" }));
    const [one] = working(evaluated([], { rear: boxes }));
    let [low, high, bottom] = [1n, 1n, 1n];
    one!.steps.forEach((step, n) => {
      [low, high, bottom] = [low * 145n, high * 155n, bottom * 100n];
      const [floor, ceil] = [(100n * low) / bottom, (100n * high + bottom - 1n) / bottom];
      const text = (hundredths: bigint) => `${hundredths / 100n}.${String(hundredths % 100n).padStart(2, "0")}`;
      expect(step.runningText(new Writer()).replaceAll(",", ""), `${n}`).toBe(`${text(floor)} to ${text(ceil)}`);
    });
  });

  it("is rounded as the build says, at every step and where it is written", () => {
    const rounding = { minimumFractionDigits: 1, maximumFractionDigits: 1, roundingMode: "floor" };
    const build = read(document([pair("a", 13, 38), pair("b", 15, 22)], { rear: [] }, { rounding }));
    const [one] = working(evaluate(build));
    // 38 / 13 = 2.92 → 2.9; 22 / 15 = 1.46 → 1.4; 2.9 · 1.4 = 4.06 → 4.0.
    expect(one!.stepwise!.toDecimal()).toBe("4");
    expect(workingTable(one!).rows.map((row) => row.slice(3))).toEqual([
      ["2.9", "2.9", "2.9"],
      ["1.4", "4.2", "4.0"],
      ["4.2", "", "4.0"],
    ]);
    // 4 / (836 / 195) − 1 = −6.699 %: −6.7 % downward.
    expect(toText([one!])).toContain("rear: rounding at every step would be \u22126.7% off.");
  });

  it("does not hide a drift behind the rounding that it is written in", () => {
    const rounding = { minimumFractionDigits: 0, maximumFractionDigits: 0 };
    const build = read(document([pair("a", 10, 1003)], { rear: [] }, { rounding }));
    // 100.3 → 100: −0.299 %.
    expect(toText(working(evaluate(build)))).toContain("would be \u22120.3% off.");
  });

  it("is written as text, Markdown and HTML, with labels made harmless", () => {
    const steps = working(evaluate(limpet));
    expect(toText(steps)).toContain("15 → 62");
    expect(toText(working(printed))).toContain("17081/390 to 18259/390");
    const stage = { ...pair("a", 10, 20), label: '<img src="x">' };
    const hostile = working(evaluated([], { drive: { label: "<b>|x|</b>", stages: [stage] } }));
    expect(toHtml(hostile)).not.toMatch(/<(b|img)/);
    expect(toMarkdown(hostile)).toContain("\\|x\\|");
    expect(toHtml(steps)).toContain("<td>25916/585</td>");
    expect(toMarkdown(steps)).toContain("Front: rounding at every step would be \\+0.09% off.");
  });

  it("speaks a language: heads, counts, numbers and remarks", () => {
    const german = wordsFor("de-DE");
    const text = toMarkdown(working(evaluate(limpet)), {
      locale: "de-DE",
      words: german.figures,
      reports: german.reports,
    });
    expect(text).toContain("| Stufe | Zähne | Genau | Dezimal | Bis hierher | In jedem Schritt gerundet |");
    expect(text).toContain("| Spur and pinion | 15 → 62 | 62/15 | 4,13 | 4,13 | 4,13 |");
    expect(text).toContain("Motorumdrehungen je Radumdrehung");
    const arabic = wordsFor("ar-EG");
    expect(toText(working(evaluate(limpet)), { locale: "ar-EG", words: arabic.figures })).toContain("١٥ ← ٦٢");
  });

  it("says of an open differential what is locked and what goes straight on", () => {
    const axle = (driven: number, diameter: string) => ({
      stages: [pair(`ring-${driven}`, 12, driven)],
      wheel: { diameter },
    });
    const outputs = { front: axle(36, "124 mm"), rear: axle(35, "120 mm") };
    const [front] = working(evaluated([], outputs, { centre: { kind: "differential" } }));
    const { rows, totals } = workingTable(front!);
    expect(totals).toBe(2);
    // (3 / 124 + (35 / 12) / 120) / 2 · 124 = 3.0069.
    expect(rows.slice(-2).map((row) => [row[0], row[3]])).toEqual([
      ["Motor turns for one wheel turn, locked", "3.00"],
      ["Motor turns for one wheel turn, straight on", "3.01"],
    ]);
  });

  it("of ten thousand stages is written within a test's time, and no line is padded to the length of its longest fraction", () => {
    const count = countsFrom(5);
    const stages = Array.from({ length: 10_000 }, (_, n) => pair(`s${n}`, count(), count()));
    const [one] = working(evaluated([], { rear: stages }));
    const text = toText([one!]);
    expect(text.split("\n")).toHaveLength(10_004);
    expect(text.length).toBeLessThan(3_000_000);
    expect(toMarkdown([one!]).length).toBeLessThan(3_000_000);
    expect(toHtml([one!]).length).toBeLessThan(3_000_000);
  });
});
