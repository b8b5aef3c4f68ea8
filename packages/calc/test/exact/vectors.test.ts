import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { rational, type Rounding } from "../../src/exact/index.js";

type Case = { value: string; rounding: Rounding; expect: string };
const file = new URL("../../../../tests/vectors/rounding.json", import.meta.url);
const cases = JSON.parse(readFileSync(file, "utf8")) as readonly Case[];

describe("answers worked out elsewhere", () => {
  it("rounds every case of rounding.json", () => {
    for (const { value, rounding, expect: text } of cases)
      expect(rational(value).toDecimal(rounding), `${value} ${JSON.stringify(rounding)}`).toBe(text);
  });
});
