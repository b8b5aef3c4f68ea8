import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { sayEffects, sayGauge, sayWheels, speakerOf } from "../../src/article/index.js";
import { applyChanges, parseBuild } from "../../src/document/index.js";
import type { ChangeSet } from "../../src/drivetrain/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { languageCodes, wordsFor } from "../../src/languages/all.js";
import { figures } from "../../src/report/index.js";

const limpet = parseBuild(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));

function speakers(changes: ChangeSet, locale = "en") {
  const { figures: words, reports } = wordsFor(locale);
  const versions = [applyChanges(limpet, changes).build!, limpet].map((build) => evaluate(build));
  return versions.map((evaluation) =>
    speakerOf({ evaluation, locale, words, reports, figures, version: () => versions[1] }),
  ) as [ReturnType<typeof speakerOf>, ReturnType<typeof speakerOf>];
}

describe("what an edit does", () => {
  // 62/15 × 45/18 × 38/13 × 23/15 = 46.31; the wheels turn 22/23 as fast.
  test("is said by the total that moves, with what it was and where it stands now", () => {
    expect(sayEffects(...speakers({ "front-hub.driven": 23 }))).toEqual([
      "Front 46.31, was 44.30: now above the author’s 38 to 46",
      "Rear as before",
    ]);
    expect(sayWheels(...speakers({ "front-hub.driven": 23 }))).toEqual(["Front wheels 4.3% slower"]);
  });

  test("names no standing that is as it was, and says faster of fewer turns", () => {
    // 61/62 of 44.301 and 43.325; the wheels turn 62/61 as fast: 1.6 % more.
    expect(sayEffects(...speakers({ "primary.driven": 61 }))).toEqual([
      "Front 43.59, was 44.30",
      "Rear 42.63, was 43.32",
    ]);
    expect(sayWheels(...speakers({ "primary.driven": 61 }))).toEqual([
      "Front wheels 1.6% faster",
      "Rear wheels 1.6% faster",
    ]);
  });

  test("is said of a range of one's own", () => {
    expect(sayEffects(...speakers({ "target.to": 44 }))).toEqual([
      "Front 44.30: now above your 38 to 44",
      "Rear as before",
    ]);
  });

  test("is said of the ground where no total moves, and of nothing where nothing does", () => {
    // π · 130 mm / 44.30 = 9.22 mm; π · 124 mm / 44.30 = 8.79 mm.
    expect(sayEffects(...speakers({ "front.wheel.diameter": "130 mm" }))).toEqual([
      "Front rolls 9.22\u00a0mm for one motor turn, was 8.79\u00a0mm",
      "Rear as before",
    ]);
    expect(sayEffects(...speakers({ "row.teeth.1": 40 }))).toEqual(["No total changes"]);
    expect(sayWheels(...speakers({ "row.teeth.1": 40 }))).toEqual([]);
  });

  // 4.2 V × 3 cells × 1850 kV / 43.32 × π × 120 mm · 60 / 10⁶: 12.17 km/h; another motor turns 2600 / 1850 as fast.
  test("is said by the ideal speed where the motor or the pack turns faster, whatever else changes", () => {
    const faster = [
      "Front ideal speed 17.3\u00a0km/h, was 12.3\u00a0km/h",
      "Rear ideal speed 17.1\u00a0km/h, was 12.2\u00a0km/h",
    ];
    expect(sayEffects(...speakers({ "motor.kv": 2600 }))).toEqual(faster);
    expect(sayWheels(...speakers({ "motor.kv": 2600 }))).toEqual(faster);
    expect(sayEffects(...speakers({ "motor.kv": 2600, "front-hub.driven": 23 }))).toEqual([
      "Front 46.31, was 44.30: now above the author’s 38 to 46",
      "Front ideal speed 16.5\u00a0km/h, was 12.3\u00a0km/h",
      faster[1],
    ]);
    expect(sayWheels(...speakers({ "motor.kv": 2600, "front-hub.driven": 23 }))).toEqual([
      "Front ideal speed 16.5\u00a0km/h, was 12.3\u00a0km/h",
      faster[1],
    ]);
  });

  test("is said of the ground for each axle, though the total of another one moves", () => {
    expect(sayEffects(...speakers({ "front-hub.driven": 23, "rear.wheel.diameter": "124 mm" }))).toEqual([
      "Front 46.31, was 44.30: now above the author’s 38 to 46",
      "Rear rolls 8.99\u00a0mm for one motor turn, was 8.70\u00a0mm",
    ]);
  });

  test("is said in every language, with no word of English, no brace and no full stop left", () => {
    for (const locale of languageCodes.filter((code) => code !== "en")) {
      const said = [
        ...sayEffects(...speakers({ "front-hub.driven": 23, "motor.kv": 2600 }, locale)),
        ...sayEffects(...speakers({ "row.teeth.1": 40 }, locale)),
        ...sayWheels(...speakers({ "front-hub.driven": 23 }, locale)),
      ].join(" ");
      expect(said, locale).not.toMatch(/[.。](\s|$)/);
      expect(said, locale).not.toMatch(/[{}]|\b(was|now|slower|before|speed)\b/);
    }
  });
});

describe("front against rear", () => {
  const notes = (changes: ChangeSet) => {
    const said = sayGauge(speakers(changes)[0], {});
    return said && "notes" in said ? said.notes : [];
  };

  test("is an overdrive or an underdrive in so many words", () => {
    expect(notes({})).toContain("Overdrive, Front over Rear: 1.06%.");
    expect(notes({ "front-hub.driven": 23 })).toContain("Underdrive, Front under Rear: 3.34%.");
  });

  test("says its turning circle in the words that there are now, though the numbers came before them", () => {
    const wheel = { diameter: "120 mm" };
    const build = parseBuild({
      format: "meshwright-build/1",
      wheelbase: "310 mm",
      outputs: [
        { id: "front", wheel, stages: [{ id: "box", kind: "published", value: "1.9" }] },
        { id: "rear", wheel, stages: [{ id: "ring", kind: "pair", driver: 20, driven: 40 }] },
      ],
    });
    const said = (words: string) => {
      const { figures: own, reports } = wordsFor(words);
      const evaluation = evaluate(build);
      const speaker = speakerOf({ evaluation, locale: "de", words: own, reports, figures, version: () => evaluation });
      return JSON.stringify(sayGauge(speaker, {}));
    };
    expect(said("en")).toMatch(/turning circle[^"]*\d to \d/i);
    expect(said("de")).toMatch(/Wendekreis[^"]*\d bis \d/);
  });

  test("is neither where nobody can tell, nor where both roll alike", () => {
    const printed = limpet.alternatives!.find(({ id }) => id === "as-printed")!.changes;
    const alike = {
      "front-ring.driver": 12,
      "front-ring.driven": 35,
      "front-hub.driver": 16,
      "front-hub.driven": 23,
      "front.wheel.diameter": "120 mm",
    };
    for (const changes of [printed, alike]) expect(notes(changes as ChangeSet).join()).not.toMatch(/drive,/);
  });
});
