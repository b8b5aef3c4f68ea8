// A count, set or tyre for what is wanted: by hand arithmetic, and against trying every count.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isUnsaid, sayCounts, speakerOf, wantedExample, type SaidCounts } from "../../src/article/index.js";
import type { Build } from "../../src/drivetrain/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { wordsFor } from "../../src/languages/all.js";
import { figures } from "../../src/report/index.js";
import { countsFor, type CountsFound } from "../../src/search/index.js";
import { document, evaluated, pair, read } from "../make.js";

const shelf = [
  { id: "r30", name: "Ring 10 and 30", is: "set", driver: 10, driven: 30 },
  { id: "r25", name: "Ring 10 and 25", is: "set", driver: 10, driven: 25 },
  { id: "t102", name: "Tyre 102", is: "wheel", diameter: "102 mm" },
  { id: "t110", name: "Tyre 110", is: "wheel", diameter: "110 mm" },
];
// Tern: 60 / 15 = 4 at the front, 4 · 20 / 10 = 8 at the rear.
const tern = (more: object = {}): Build =>
  read(
    document(
      [pair("spur", 15, 60)],
      {
        front: { wheel: { diameter: "100 mm" } },
        rear: { stages: [pair("ring", 10, 20, { set: true })], wheel: { diameter: "200 mm" } },
      },
      { parts: shelf, headline: "rear", ...more },
    ),
  );

function said(attributes: Record<string, string>, build = tern()): SaidCounts {
  const { figures: words, reports } = wordsFor("en");
  const evaluation = evaluate(build);
  const speaker = speakerOf({ evaluation, locale: "en", words, reports, figures });
  const answer = sayCounts(speaker, evaluation, attributes);
  if (isUnsaid(answer)) throw new Error(answer.findings.map(({ code, at }) => `${code} at ${at}`).join(", "));
  return answer;
}
const plain = (text: string): string => text.replace(/\u00a0/g, " ");
const rows = (answer: SaidCounts): string[] => answer.rows.map(({ head, gives }) => plain(`${head}: ${gives}`));
const fast = { motor: { kv: 1000 }, battery: { cells: 1, chemistry: "lipo" } };

describe("a count for what is wanted", () => {
  it("is asked of the axle that heads the article, and begins with what stands there", () => {
    const answer = said({});
    expect([answer.output, answer.of, answer.wanted, answer.now]).toEqual(["rear", "spur.driver", "8", "8.00"]);
    expect(answer.figures).toEqual(["reduction", "travel", "lead"]);
    expect(answer.places.map(([address]) => address)).toEqual([
      ...["spur.driver", "spur.driven", "ring", "front.wheel", "rear.wheel"],
    ]);
    expect(rows(answer)).toEqual(["15: 8.00"]);
    expect(answer.rows[0]!.here).toBe(true);
  });

  it("begins in the middle of the range that is liked, if it is this axle's", () => {
    expect(said({}, tern({ target: { from: 7, to: 10 } })).wanted).toBe("8.5");
    expect(said({}, tern({ target: { from: 7, to: 10, output: "front" } })).wanted).toBe("8");
    expect(said({}, tern({ target: { from: 7, to: 10, output: "rear" } })).wanted).toBe("8.5");
  });

  it("stands between two of a total, with the count that would meet it", () => {
    // 60 · 2 / 13 = 9.23, / 14 = 8.57; 120 / 9.1 = 13.19.
    const answer = said({ of: "spur.driver", want: "9,1" });
    expect(rows(answer)).toEqual(["14: 8.57", "13: 9.23"]);
    expect(answer.rows.map(({ off }) => off)).toEqual(["−5.81%", "+1.44%"]);
    expect(answer.notes).toEqual(["Exactly: 13.19."]);
  });

  it("is there for ground rolled, in the build's unit of length or another", () => {
    // 200π / 8 = 78.54 mm; 80 mm needs 15.28 teeth.
    expect(said({ figure: "travel" }).wanted).toBe("78.54 mm");
    expect(rows(said({ figure: "travel", want: "80" }))).toEqual(["15: 78.54 mm", "16: 83.78 mm"]);
    expect(rows(said({ figure: "travel", want: "8 cm" }))).toEqual(["15: 78.54 mm", "16: 83.78 mm"]);
    // 78.54 / 25.4 = 3.092 in; 83.78 / 25.4 = 3.298 in.
    const inches = tern({ lengths: "in" });
    expect(said({ figure: "travel" }, inches).wanted).toBe("3.092 in");
    expect(rows(said({ figure: "travel", want: "3.2" }, inches))[1]).toMatch(/^16: 3\.29\d* in$/);
  });

  it("is there for a speed, where motor and pack are known", () => {
    const build = tern(fast);
    expect(said({}, build).figures).toEqual(["reduction", "travel", "speed", "lead"]);
    // 4200 / 8 turns a minute · 200π mm · 60 = 19.79 km/h.
    expect(said({ figure: "speed" }, build).wanted).toBe("19.79 km/h");
    // 4200 · 60 · 200π · n / 120 / 1609344 = 0.82 mph a tooth.
    const answer = said({ figure: "speed", want: "10 mph" }, build);
    expect(rows(answer)).toEqual(["12: 9.8 mph", "13: 10.7 mph"]);
    expect(answer.notes.join(" ")).toContain("no losses");
  });

  it("says why there is none", () => {
    const note = (attributes: Record<string, string>, build?: Build) => said(attributes, build).notes[0];
    const { reasons } = wordsFor("en").reports.counts;
    // A count before the split changes nothing about the lead.
    expect(note({ figure: "lead", want: "5%" })).toBe(reasons["no-effect"]);
    expect(note({ of: "ring", want: "9" }, tern({ parts: [] }))).toBe(reasons["no-choices"]);
    const none = said({ of: "rear.wheel", figure: "travel", want: "80" }, tern({ parts: [] }));
    // 80 mm · 8 / π = 203.72 mm.
    expect([none.rows, none.notes.map(plain)]).toEqual([[], ["Exactly: 203.72 mm."]]);
  });

  it("chooses sets and tyres from the list for a wanted lead", () => {
    // The rear rolls 200 / 8 against 100 / 4: level. 10 to 25 is 20 % behind, 10 to 30 a third.
    const set = said({ of: "ring", figure: "lead", with: "front", want: "−25 %" });
    expect(rows(set)).toEqual(["Ring 10 and 30: 33.33% behind", "Ring 10 and 25: 20.00% behind"]);
    const tyre = said({ of: "front.wheel", figure: "lead", output: "front", want: "5%" });
    expect(rows(tyre)).toEqual(["Tyre 102: 2.00% ahead", "Tyre 110: 10.00% ahead"]);
    expect(tyre.notes.map(plain)).toEqual(["Exactly: 105.0 mm."]);
    const fitted = read({
      ...tern(),
      outputs: tern().outputs.map((one, n) => (n ? one : { ...one, wheel: { diameter: "102 mm" } })),
    });
    expect(said({ of: "front.wheel", figure: "lead", output: "front", want: "2%" }, fitted).rows[0]!.here).toBe(true);
  });

  it("says of a lead without tyres that it is of the gears, of an open differential how it drives", () => {
    const bare = read(document([pair("spur", 15, 60)], { front: [pair("f", 10, 20)], rear: [pair("r", 10, 21)] }));
    expect(plain(said({ of: "f.driver", figure: "lead" }, bare).head)).toContain("gears alone");
    const open = read({ ...bare, centre: { kind: "differential" } });
    expect(said({ of: "f.driver", figure: "lead" }, open).head).toMatch(/gears alone.*locked/);
    expect(said({ of: "f.driver" }, open).head).toContain("straight on");
    expect(said({ of: "f.driver" }, bare).head).not.toContain("straight on");
  });

  it("compares with the axle that is named, that the build names, or another", () => {
    const against = (attributes: Record<string, string>, more: object = {}) =>
      said({ of: "front.wheel", figure: "lead", ...attributes }, tern(more)).wanted;
    // Level as it stands, from either side.
    expect(against({ output: "front", with: "rear" })).toBe("0%");
    expect(against({ output: "front" }, { compare: { of: "front", with: "rear" } })).toBe("0%");
    expect(against({ output: "front" }, { compare: { of: "rear", with: "front" } })).toBe("0%");
    expect(against({ output: "front", with: "front" })).toBe("0%");
  });

  it("tells what cannot be asked", () => {
    const told = (attributes: Record<string, string>, build?: Build) => {
      try {
        return said(attributes, build).of;
      } catch (error) {
        return (error as Error).message;
      }
    };
    expect(told({ of: "spur.drivr" })).toBe("missing-reference at /of");
    expect(told({ figure: "sped" })).toBe("unknown-word at /figure");
    expect(told({ output: "raer" })).toBe("missing-reference at /output");
    expect(told({ with: "fornt" })).toBe("missing-reference at /with");
    for (const want of ["nine", "-3", "0", "9 mm"]) expect(told({ want })).toBe("not-understood at /want");
    for (const want of ["-100%", "5 mm"]) expect(told({ figure: "lead", want })).toBe("not-understood at /want");
    expect(told({ figure: "speed", want: "9 knots" }, tern(fast))).toBe("not-understood at /want");
    expect(told({ figure: "travel", want: "9 miles" })).toBe("not-understood at /want");
    expect(told({}, read(document([], { rear: [{ id: "box", kind: "published", value: "2.6" }] })))).toBe(
      "missing-reference at /of",
    );
    for (const figure of ["reduction", "travel", "speed", "lead"] as const)
      expect(told({ figure, want: wantedExample(figure) }, tern(fast)), figure).toBe("spur.driver");
  });
});

describe("the counts on either side", () => {
  const size = fc.integer({ min: 1, max: 90 });

  it("are those that trying every count finds", () => {
    fc.assert(
      fc.property(
        size,
        size,
        size,
        fc.boolean(),
        fc.integer({ min: 1, max: 4000 }),
        (driver, driven, ring, isDriver, wanted) => {
          const evaluation = evaluated([pair("a", driver, driven)], { rear: [pair("b", ring, 37)] });
          const field = isDriver ? "driver" : "driven";
          const found = countsFor(evaluation, `a.${field}`, {
            figure: "reduction",
            of: "rear",
            value: `${wanted}/100`,
          });
          const total = (count: number) => ((isDriver ? driven / count : count / driver) * 37) / ring;
          const counts = Array.from({ length: 400_000 / 4 }, (_, n) => n + 1);
          const goal = wanted / 100;
          const near = 1e-9 * goal;
          const below = counts.filter((count) => total(count) <= goal + near);
          const above = counts.filter((count) => total(count) >= goal - near);
          const best = (list: readonly number[], isLow: boolean): number | undefined =>
            list.length ? (isDriver === isLow ? list[0] : list.at(-1)) : undefined;
          const expected = [...new Set([best(below, true), best(above, false)])].filter((one) => one !== undefined);
          const choices = (found as CountsFound).neighbours.map(({ choice }) => choice as number);
          // Beyond the counts tried here there is nothing to compare.
          expect(choices.filter((one) => one < 99_000)).toEqual(expected.filter((one) => one < 99_000));
        },
      ),
      { numRuns: 60 },
    );
  });

  it("are none where there is no such place, nothing to choose from, or nothing that it changes", () => {
    const evaluation = evaluate(tern());
    const of = (address: string) => countsFor(evaluation, address, { figure: "reduction", of: "rear", value: 9 });
    expect(["nobody.driver", "spur", "nobody.wheel", "spur.label", "ring.driven.x"].map(of)).toEqual([
      ...["no-address", "no-address", "no-address", "no-address", "no-address"],
    ]);
    // A count of two that are sold together does not change alone.
    expect(countsFor(evaluation, "ring.driver", { figure: "reduction", of: "rear", value: 4 })).toBe("no-choices");
    const apart = evaluated([], { front: [pair("f", 10, 20)], rear: [pair("r", 10, 21)] });
    expect(countsFor(apart, "r.driver", { figure: "reduction", of: "front", value: 4 })).toBe("no-effect");
    expect(countsFor(evaluation, "spur.driver", { figure: "travel", of: "nobody", value: 4 })).toBe("not-known");
    const bare = evaluated([pair("spur", 15, 60)], { rear: [] });
    expect(countsFor(bare, "spur.driver", { figure: "travel", of: "rear", value: 4 })).toBe("not-known");
    expect(countsFor(bare, "spur.driver", { figure: "lead", of: "rear", with: "rear", value: 0 })).toBeDefined();
  });
});
