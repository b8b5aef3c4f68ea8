// A hundred thousand documents with slips in them through both readers: the same build, or the lean one gives none.
import { expect, it } from "vitest";
import { readMany } from "../../packages/calc/test/document/slipped.js";
import { seed } from "./seed.js";

it("both readers give the same build, or the lean one gives none", () => {
  const outcomes = readMany(100_000, seed);
  process.stdout.write(`${JSON.stringify([...outcomes])}\n`);
  expect(outcomes.get("both")).toBeGreaterThan(10_000);
});
