import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { ratioOf } from "../../src/exact/index.js";
import { printedInterval, type PrintedReading } from "../../src/stages/index.js";
import { refuses } from "../exact/errors.js";

type Case = { value: string; read: PrintedReading; driver: number[]; driven: number[]; expect: number[][] };
const file = new URL("../../../../tests/vectors/identify.json", import.meta.url);
const cases = JSON.parse(readFileSync(file, "utf8")) as readonly Case[];

describe("printed ratios", () => {
  const ends = (value: string, read?: PrintedReading): string[] => {
    const { low, high } = printedInterval(value, read);
    return [low.toDecimal({ maximumFractionDigits: 6 }), high.toDecimal({ maximumFractionDigits: 6 })];
  };

  it("mean half a unit either way, one unit up, or both", () => {
    expect(ends("2.74")).toEqual(["2.735", "2.745"]);
    expect(ends("2.74", "rounded")).toEqual(["2.735", "2.745"]);
    expect(ends("2.74", "truncated")).toEqual(["2.74", "2.75"]);
    expect(ends("2.74", "unsure")).toEqual(["2.735", "2.75"]);
    expect(ends("19")).toEqual(["18.5", "19.5"]);
    expect(ends("19", "truncated")).toEqual(["19", "20"]);
    expect(ends("2.700")).toEqual(["2.6995", "2.7005"]);
    expect(ends("0.98", "unsure")).toEqual(["0.975", "0.99"]);
  });

  it("are exact as fractions", () => {
    for (const read of ["rounded", "truncated", "unsure"] as const) {
      expect(printedInterval("13/5", read).isExact).toBe(true);
      expect(printedInterval("13/5", read).low.toFraction()).toBe("13/5");
    }
  });

  it.each(["", "0", "0.00", "-2.74", "+2", "2,74", "2.74:1", "1e2", "x2", "2x", "0/5"])("refuse %j", (text) =>
    refuses(
      () => printedInterval(text),
      "not-a-printed-ratio",
      "value",
      `Found ${JSON.stringify(text)}; expected a ratio such as "2.74".`,
    ),
  );

  it("finds every pair of identify.json", () => {
    for (const { value, read, driver, driven, expect: pairs } of cases) {
      const interval = printedInterval(value, read);
      const found: number[][] = [];
      for (let a = driver[0]!; a <= driver[1]!; a++)
        for (let b = driven[0]!; b <= driven[1]!; b++) {
          const ratio = ratioOf(b, a);
          if (interval.contains(ratio) && (read === "rounded" || ratio.compare(interval.high) < 0)) found.push([a, b]);
        }
      expect(found, value).toEqual(pairs);
    }
  });
});
