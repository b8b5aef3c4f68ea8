import { describe, expect, it } from "vitest";
import { stringsFrom, type Table } from "../../src/languages/index.js";

describe("strings of a language", () => {
  it("are the same table's for a list and for the first part of it, whoever asks first", () => {
    const first = { one: "one" };
    const whole = { ...first, two: "two", three: "three" };
    for (const table of [{ one: "eins", two: "zwei" }, ["eins", "zwei"]] as Table<typeof whole>[]) {
      expect(stringsFrom(first, table as Table<typeof first>).one).toBe("eins");
      expect(stringsFrom(whole, table)).toMatchObject({ one: "eins", two: "zwei", three: "three" });
    }
  });
});
