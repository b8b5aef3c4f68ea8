import { describe, expect, it } from "vitest";
import { sayUnmarked, speakerOf, type AskedGear, type SaidUnmarked } from "../../src/article/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { wordsFor } from "../../src/languages/all.js";
import { figures } from "../../src/report/index.js";
import { document, pair, read } from "../make.js";

const nbsp = /\u00a0/g;
const said = (asked: AskedGear, lengths = "mm", locale = "en"): SaidUnmarked => {
  const { figures: words, reports } = wordsFor(locale);
  const evaluation = evaluate(read(document([pair("a", 10, 20)], { rear: [] }, { lengths })));
  return sayUnmarked(speakerOf({ evaluation, locale, words, reports, figures }), asked);
};
const texts = ({ canBe }: SaidUnmarked): string[] => canBe.map(({ text }) => text);
const notes = (one: SaidUnmarked): string => one.notes.join(" ").replace(nbsp, " ");

describe("a gear without a mark", () => {
  it("of 20 teeth, 17.6 mm over the tips: module 0.8, or 32 DP by a hair, which a better reading tells apart", () => {
    // Module 0.8: 0.8 · 22 = 17.6. 32 DP: 25.4 · 22 / 32 = 17.4625, 0.1375 less.
    const near = said({ teeth: "20", outside: "17.6", height: "1" });
    expect(texts(near)).toEqual(["module 0.8"]);
    expect(near.cannotBe.map((text) => text.replace(nbsp, " "))).toContain(
      "32 DP: over the tips it would read 17.46 mm, not 17.58 to 17.62 mm",
    );
    const rough = said({ teeth: "20", outside: "17.53", within: "0.1", height: "1" });
    expect(texts(rough)).toEqual(["module 0.8", "32 DP"]);
    expect(notes(rough)).toContain("What this never tells, however well it is read: the pressure angle.");
    expect(notes(rough)).toMatch(/module 0\.8 and 32 DP are not told apart: 0\.14 mm between them/);
    expect(notes(rough)).toMatch(/This would settle it: .*module 0\.8: .*; 32 DP: /);
  });

  it("of an odd count, as jaws read it", () => {
    // 15 teeth of module 1: tips across 17 mm; jaws (1 + cos 12°) / 2 of it = 16.81, and a little more with flat tips.
    expect(texts(said({ teeth: "15", outside: "16.83", jaws: true, height: "1", angle: "20" }))).toEqual([
      "module 1 at 20°",
    ]);
    expect(texts(said({ teeth: "15", outside: "16.83", height: "1", angle: "20" }))).toEqual([]);
  });

  it("by a calliper over 3 and 4 teeth, whatever its tips: pitch and angle", () => {
    // 22 teeth, module 0.5 at 20°: W3 = 0.5 · 0.93969 · (2.5 π + 22 · 0.014904) = 3.844; W4 = W3 + π · 0.5 · 0.93969 = 5.320.
    const one = said({ teeth: "22", spanTeeth: "3", span: "3.844", spanNext: "5.32", spanWithin: "0.005" });
    expect(texts(one)).toContain("module 0.5 at 20°");
    expect(texts(one).every((text) => /^module 0\.5 /.test(text))).toBe(true);
    expect(notes(one)).toContain("the height of the teeth");
  });

  it("by its pair's centre distance, in inches where the build is", () => {
    // 20 and 60 of 48 DP: 80 / 96 = 0.8333 in.
    const one = said({ teeth: "20", centre: "0.834", otherTeeth: "60" }, "in");
    expect([one.unit, texts(one)]).toEqual(["in", ["48 DP"]]);
    expect(one.canBe[0]!.part).toEqual({
      id: "gear-20-48-dp",
      is: "gear",
      teeth: 20,
      diametralPitch: "48",
      owned: 1,
    });
  });

  it("is a part that a build takes", () => {
    const [{ part }] = said({ teeth: "20", outside: "17.6", height: "1", angle: "20" }).canBe as [
      SaidUnmarked["canBe"][number],
    ];
    expect(read(document([pair("a", 10, 20)], { rear: [] }, { parts: [part] })).parts).toHaveLength(1);
    expect(part).toMatchObject({ module: "0.8", pressureAngle: "20" });
  });

  it("tells in the field what was found and what is expected; says nothing before enough was typed", () => {
    expect(said({}).outcome).toBe("");
    expect(said({ teeth: "20" }).canBe).toEqual([]);
    expect(said({ teeth: "2o", outside: "17.6 km", within: "x", shiftFrom: "?" }).faults).toEqual({
      teeth: "Found 2o; expected a whole number from 1.",
      outside: "Found 17.6 km; expected a length such as 17.6 mm or 0.69 in.",
      within: "Found x; expected a length such as 17.6 mm or 0.69 in.",
      shiftFrom: "Found ?; expected a number, such as 0.3.",
    });
    expect(said({ teeth: "20", outside: "40.03" }).outcome).toMatch(/^No usual pitch reads so/);
    expect(texts(said({ teeth: "20", outside: "0,693 in", height: "1" }, "mm", "de"))).toEqual(["Modul 0.8"]);
  });
});
