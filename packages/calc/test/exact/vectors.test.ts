import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { printedInterval, type PrintedReading, rational, ratioOf, type Rounding } from "../../src/exact/index.js";

function vectors<T>(name: string): readonly T[] {
  const file = new URL(`../../../../tests/vectors/${name}.json`, import.meta.url);
  return JSON.parse(readFileSync(file, "utf8")) as readonly T[];
}

describe("answers worked out elsewhere", () => {
  it("rounds every case of rounding.json", () => {
    for (const { value, rounding, expect: text } of vectors<{ value: string; rounding: Rounding; expect: string }>(
      "rounding",
    ))
      expect(rational(value).toDecimal(rounding), `${value} ${JSON.stringify(rounding)}`).toBe(text);
  });

  it("finds every pair of identify.json", () => {
    type Case = { value: string; read: PrintedReading; driver: number[]; driven: number[]; expect: number[][] };
    for (const { value, read, driver, driven, expect: pairs } of vectors<Case>("identify")) {
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
