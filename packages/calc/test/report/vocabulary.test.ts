import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parseBuild } from "../../src/document/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { MeshwrightError } from "../../src/exact/index.js";
import { checkQuery, figureOf, figureSpecs, units, type QueryText } from "../../src/report/index.js";
import { document, pair, read } from "../make.js";

const limpet = parseBuild(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));

/** What is found, as `code at nearest`; a figure of such a query must not be shown. */
function told(query: QueryText, build = limpet): string[] {
  const findings = checkQuery(query, build);
  let thrown: unknown;
  try {
    figureOf(evaluate(build), query);
  } catch (error) {
    thrown = error;
  }
  expect(thrown instanceof MeshwrightError && thrown.code).toBe(findings[0]?.code ?? false);
  return findings.map(({ code, at, values }) =>
    `${code} ${at} ${(values.nearest as string[] | undefined)?.join() ?? ""}`.trim(),
  );
}

describe("a word that is none", () => {
  it.each<[QueryText, string]>([
    [{ figure: "leed" }, "unknown-figure /figure lead"],
    [{ figure: "Reduction" }, "unknown-figure /figure reduction"],
    [{ figure: "lead", scope: "gear" }, "unknown-word /scope gears"],
    [{ figure: "lead", scope: "Tyres" }, "unknown-word /scope tyres"],
    [{ figure: "lead", base: "nobody" }, "unknown-word /base"],
    [{ figure: "lead", base: "raer" }, "unknown-word /base rear"],
    [{ figure: "lead", base: "with" }, "unknown-word /base"],
    [{ figure: "mean", measure: "Arithmetic" }, "unknown-word /measure arithmetic"],
    [{ figure: "mean", measure: "nominal" }, "unknown-word /measure"],
    [{ figure: "change", sign: "x" }, "unknown-word /sign"],
    [{ figure: "travel", unit: "inch" }, "unknown-word /unit"],
    [{ figure: "travel", unit: "yd" }, "unknown-word /unit"],
    [{ figure: "travel", unit: "km" }, "unknown-word /unit mm,cm,m"],
    [{ figure: "travel", unit: "MM" }, "unknown-word /unit mm"],
    [{ figure: "speed", unit: "mm" }, "unknown-word /unit"],
    [{ figure: "volts", unit: "mV" }, "unknown-word /unit V"],
    [{ figure: "speed", unit: "KM/H" }, "unknown-word /unit km/h"],
    [{ figure: "drift", over: "10" }, "not-size /over"],
    [{ figure: "drift", over: "ten m" }, "not-size /over"],
    [{ figure: "hand-turns", over: "0" }, "not-positive /over"],
    [{ figure: "reduction", digits: "two" }, "not-digits /digits"],
    [{ figure: "reduction", digits: 101 }, "not-digits /digits"],
    [{ figure: "reduction", digits: -1 }, "not-digits /digits"],
    [{ figure: "reduction", drive: "lokced" }, "unknown-word /drive locked"],
    [{ figure: "lead", drive: "straight-on" }, "unknown-word /drive"],
    [{ figure: "change", from: "firsttry" }, "missing-reference /from first-try"],
    [{ figure: "reduction", of: "frnot" }, "missing-reference /of front"],
    [{ figure: "reduction", of: "Primary" }, "missing-reference /of primary"],
    [{ figure: "reduction", group: "gearbx" }, "missing-reference /group gearbox"],
    [{ figure: "standing", of: "primary" }, "missing-reference /of"],
    [{ figure: "centre", of: "row" }, "missing-reference /of"],
    [{ figure: "centre", of: "primray" }, "missing-reference /of primary"],
    [{ figure: "gap", with: "raer" }, "missing-reference /with rear"],
    [{ figure: "counts", of: "primry" }, "missing-reference /of primary"],
    [{ figure: "counts" }, "word-needed /of"],
    [{ figure: "count", of: "primry.driver" }, "missing-address /of primary.driver"],
    [{ figure: "count", of: "Primary.driver" }, "missing-address /of primary.driver"],
    [{ figure: "count", of: "primary.drivr" }, "missing-address /of primary.driver"],
    [{ figure: "count", of: "front.whel.diameter" }, "missing-address /of front.wheel.diameter"],
    [{ figure: "count", of: "front.wheel.diametre" }, "missing-address /of front.wheel.diameter"],
    [{ figure: "count", of: "row.teeth.3" }, "missing-address /of row.teeth.0,row.teeth.1,row.teeth.2"],
    [{ figure: "count", of: "front.wheel" }, "missing-address /of front.wheel.diameter"],
    [{ figure: "count", of: "taget.from" }, "missing-address /of target.from"],
    [{ figure: "count" }, "word-needed /of"],
    // A word that a figure does not take would change nothing, and nobody would know.
    [{ figure: "reduction", unit: "mm" }, "word-not-taken /unit"],
    [{ figure: "standing", digits: 2 }, "word-not-taken /digits"],
    [{ figure: "reduction", base: "rear" }, "word-not-taken /base"],
  ])("%j: %s", (query, finding) => {
    expect(told(query)).toEqual([finding]);
  });

  it("is told with every other one of the same query", () => {
    expect(told({ figure: "lead", scope: "gear", base: "nobody", of: "frotn" })).toEqual([
      "missing-reference /of front",
      "unknown-word /base",
      "unknown-word /scope gears",
    ]);
  });

  it("one slip from a word of the vocabulary is told with that word, or is a word itself", () => {
    const slips = (word: string): Set<string> => {
      const all = new Set<string>();
      for (let n = 0; n < word.length; n++) {
        all.add(word.slice(0, n) + word.slice(n + 1));
        all.add(word.slice(0, n) + "q" + word.slice(n));
        all.add(word.slice(0, n) + "q" + word.slice(n + 1));
        all.add(word.slice(0, n) + word[n + 1]! + word[n]! + word.slice(n + 2));
        all.add(word.slice(0, n) + word[n]!.toUpperCase() + word.slice(n + 1));
        all.add(word.slice(0, n) + word[n]!.toLowerCase() + word.slice(n + 1));
      }
      for (const one of all) if (one.includes("undefined") || !one) all.delete(one);
      return all;
    };
    let tried = 0;
    const check = (query: QueryText, field: keyof QueryText, known: readonly string[]) => {
      for (const word of known)
        for (const slip of slips(word)) {
          if (known.includes(slip)) continue;
          tried++;
          const [finding] = checkQuery({ ...query, [field]: slip }, limpet);
          expect(finding, `${field} ${slip}`).toBeDefined();
          // Of a word of two letters one is half of it: there is nothing to be near to.
          if (word.length > 2) expect(finding!.values.nearest, `${field} ${slip}`).toContain(word);
        }
    };
    const names = Object.keys(figureSpecs);
    for (const [figure, spec] of Object.entries(figureSpecs)) {
      const needed = spec.ofNeeded ? { of: spec.of === "address" ? "primary.driver" : "primary" } : {};
      if (spec.measure) check({ figure, ...needed }, "measure", spec.measure);
      if (spec.unit) check({ figure }, "unit", units[spec.unit]);
      if (spec.scope) check({ figure }, "scope", ["tyres", "gears"]);
      if (spec.drive) check({ figure }, "drive", spec.drive);
      if (spec.base) check({ figure }, "base", ["front", "rear", "mean"]);
    }
    for (const name of names)
      for (const slip of slips(name)) {
        if (names.includes(slip)) continue;
        tried++;
        expect(checkQuery({ figure: slip }, limpet)[0]!.values.nearest, slip).toContain(name);
      }
    expect(tried).toBeGreaterThan(1000);
  });

  it("says what is expected in a sentence", () => {
    expect(checkQuery({ figure: "travel", unit: "MM" }, limpet)[0]!.message).toBe(
      'There is no unit "MM" here; nearest: mm. Expected one of mm, cm, m, in, ft.',
    );
    expect(checkQuery({ figure: "reduction", unit: "mm" }, limpet)[0]!.message).toBe(
      "reduction takes no unit. It takes of, group, digits, drive.",
    );
  });
});

describe("words of the vocabulary", () => {
  it("are taken by the figures that name them, and a figure without any is shown", () => {
    for (const [figure, spec] of Object.entries(figureSpecs)) {
      const needed = spec.ofNeeded ? { of: spec.of === "address" ? "primary.driver" : "primary" } : {};
      expect(told({ figure, ...needed }), figure).toEqual([]);
      for (const measure of spec.measure ?? []) expect(told({ figure, ...needed, measure }), measure).toEqual([]);
      for (const unit of spec.unit ? units[spec.unit] : []) expect(told({ figure, unit }), unit).toEqual([]);
      for (const drive of spec.drive ?? []) expect(told({ figure, drive }), drive).toEqual([]);
    }
  });

  it("name axles by their own ids", () => {
    const sides = read(document([], { left: [pair("a", 10, 30)], right: [pair("b", 11, 30)] }));
    expect(told({ figure: "gap", base: "left" }, sides)).toEqual([]);
    expect(told({ figure: "gap", base: "front" }, sides)).toEqual(["unknown-word /base"]);
    expect(figureOf(evaluate(sides), { figure: "lead", scope: "gears" })).toBe("9.09% behind");
    expect(figureOf(evaluate(sides), { figure: "gap", scope: "gears", base: "left" })).toBe("10.00%");
  });

  it("ask for two axles where there is one, and for a pair where no mount names one", () => {
    const one = read(document([], { rear: [pair("ring", 10, 30)] }));
    expect(told({ figure: "lead" }, one)).toEqual(["word-needed /of"]);
    expect(told({ figure: "fit" }, one)).toEqual(["word-needed /of"]);
    expect(told({ figure: "fit", of: "ring" }, one)).toEqual([]);
  });

  it("know stages that a lever has not selected: nothing drives them now", () => {
    const positions = [
      { id: "low", stages: [pair("low-pair", 20, 60)] },
      { id: "high", stages: [pair("high-pair", 30, 50, { group: "fast" })] },
    ];
    const levered = read(document([{ id: "box", kind: "selectable", positions, selected: "low" }], { rear: [] }));
    expect(figureOf(evaluate(levered), { figure: "reduction", of: "low-pair" })).toBe("3.00");
    expect(figureOf(evaluate(levered), { figure: "reduction", of: "high-pair" })).toBe("not driven");
    expect(figureOf(evaluate(levered), { figure: "reduction", group: "fast" })).toBe("not driven");
    expect(told({ figure: "reduction", of: "hihg-pair" }, levered)).toEqual(["missing-reference /of high-pair"]);
  });
});
