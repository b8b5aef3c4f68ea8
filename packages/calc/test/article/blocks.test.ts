import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  atFault,
  isUnsaid,
  sayCard,
  sayChanges,
  sayDrawing,
  sayOrder,
  sayParts,
  saySpeeds,
  saySummary,
  sayTeeth,
  sayTotals,
  speakerOf,
  summaryRows,
  versionOf,
  type Reporter,
} from "../../src/article/index.js";
import { parseBuild } from "../../src/document/index.js";
import type { Build } from "../../src/drivetrain/index.js";
import { evaluate, type OutputEvaluation } from "../../src/evaluate/index.js";
import { bounded } from "../../src/exact/index.js";
import { wordsFor } from "../../src/languages/all.js";
import { layoutOf } from "../../src/layout/index.js";
import { figures } from "../../src/report/index.js";
import { evaluated, pair } from "../make.js";

const limpet = parseBuild(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));
const reporter = (build: Build = limpet, locale = "en"): Reporter =>
  speakerOf({
    ...{
      evaluation: evaluate(build),
      locale,
      words: wordsFor(locale).figures,
      reports: wordsFor(locale).reports,
      figures,
    },
    version: (at) => evaluate(versionOf(limpet, at)!),
  });
const version = (at: string): Build => versionOf(limpet, at)!;
const nbsp = "\u00a0";

/** Rows as they come of looking through all of them for each stage. */
function rowsByHand(outputs: readonly OutputEvaluation[]): string[][] {
  const rows: { label: string; group: string | undefined; stages: (string | undefined)[] }[] = [];
  outputs.forEach(({ steps }, n) => {
    let at = 0;
    for (const { stage, group } of steps) {
      const label = stage.label ?? stage.id;
      const shared = (stages: readonly unknown[]) => new Set(stages).size < stages.length;
      const found = rows.findIndex(
        (row, place) =>
          place >= at &&
          !row.stages[n] &&
          (row.stages.includes(stage.id) ||
            (row.label === label && row.group === group && n > 0 && !shared(row.stages))),
      );
      const row = found < 0 ? { label, group, stages: [] as (string | undefined)[] } : rows[found]!;
      row.stages[n] = stage.id;
      if (found < 0) rows.splice(at, 0, row);
      at = (found < 0 ? at : found) + 1;
    }
  });
  return rows.map(({ stages }) => outputs.map((_, n) => stages[n] ?? ""));
}

describe("the rows of a summary", () => {
  it("stand as they would by looking through all of them, whatever shares a name", () => {
    let state = 5;
    const random = (below: number) => (state = (state * 48271) % 0x7fffffff) % below;
    for (let run = 0; run < 300; run++) {
      const stages = (prefix: string) =>
        Array.from({ length: random(6) }, (_, n) => ({
          ...pair(`${prefix}${n}`, 10, 20),
          label: `Stage ${random(3)}`,
          ...(random(2) && { group: "box" }),
        }));
      const { outputs } = evaluated(stages("s"), { a: stages("a"), b: stages("b"), c: stages("c") });
      const rows = summaryRows(outputs).filter(({ subtotal }) => !subtotal);
      expect(rows.map((row) => outputs.map((_, n) => row.stages[n]?.id ?? ""))).toEqual(rowsByHand(outputs));
    }
  });

  it("are many of one name in no time", () => {
    const stages = (prefix: string) =>
      Array.from({ length: 4000 }, (_, n) => ({ ...pair(`${prefix}${n}`, 10, 10), label: "Same" }));
    const { outputs } = evaluated([], { a: stages("a"), b: stages("b") });
    expect(summaryRows(outputs)).toHaveLength(4000);
  });

  it("have a subtotal after the last of a group, where it is neither all nor one", () => {
    const said = saySummary(reporter(), {});
    if (isUnsaid(said)) throw new Error();
    expect(said.tables[0]!.rows.map(({ head, kind }) => [head, kind].filter(Boolean).join(" "))).toEqual([
      "Spur and pinion",
      "Gear row",
      "Gearbox subtotal",
      "Ring and pinion",
      "Hub",
      "Axle subtotal",
      "Motor turns for one wheel turn total",
    ]);
    expect(said.range).toEqual({ ends: ["38", "46"], sentence: "The range is 38 to 46." });
  });
});

describe("what elements say", () => {
  it("of a count, of a set, of an address that there is not", () => {
    expect(sayTeeth(reporter(), { of: "primary.driver" })).toBe("15");
    expect(sayTeeth(reporter(), { of: "front-ring" })).toBe("13 driving 38");
    expect(sayTeeth(reporter(limpet, "de"), { of: "front-ring" })).toBe("13 auf 38");
    for (const of of ["primary", "primary.drivr", "", "nobody.driver"])
      expect(isUnsaid(sayTeeth(reporter(), { of }))).toBe(true);
  });

  it("of speeds, in every language, with what they take for granted; and nothing of a unit that there is not", () => {
    const said = saySpeeds(reporter(), { of: "front", loaded: "0.8 to 0.9" });
    if (isUnsaid(said)) throw new Error();
    expect(said.tables[0]!.rows.map(({ head, texts }) => [head, ...texts])).toEqual([
      [`Nominal, 11.10${nbsp}V`, "20,535", "464", `10.8${nbsp}km/h`],
      [`Full charge, 12.60${nbsp}V`, "23,310", "526", `12.3${nbsp}km/h`],
      ["Loaded, 80% to 90% of the free speed", "16,428 to 18,482", "370 to 418", `8.6 to 9.8${nbsp}km/h`],
    ]);
    expect(said.notes[0]).toContain(`Travel for one motor turn: 8.79${nbsp}mm.`);
    expect(saySpeeds(reporter(), { unit: "MPH" })).toMatchObject({
      findings: [{ code: "unknown-word", values: { nearest: ["mph"] } }],
    });
    expect(saySpeeds(reporter(), { loaded: "1.2" })).toMatchObject({ findings: [{ code: "not-understood" }] });
    expect(saySpeeds(reporter(), { of: "fornt" })).toMatchObject({ findings: [{ code: "missing-reference" }] });
    const german = saySpeeds(reporter(limpet, "de"), {});
    expect(isUnsaid(german) ? [] : german.tables[0]!.heads[0]).toBe("Zustand");
  });

  it("of versions side by side, tyres and all", () => {
    const columns = ["article", "first-try"].map((at) => ({ label: at, speaker: reporter(version(at)) }));
    const said = sayChanges(reporter(), columns[0]!.speaker, columns);
    const row = (head: string) => said.tables.flatMap(({ rows }) => rows).find((one) => one.head === head)!.texts;
    expect(row("Front")).toEqual(["44.30", "24.70"]);
    expect(row("reduction")).toEqual(["0.00%", "\u221244.25%"]);
    expect(row("wheel speed")).toEqual(["0.00%", "+79.37%"]);
    expect(row("travel for one motor turn")).toEqual(["0.00%", "+79.37%"]);
  });

  it("of versions side by side: that wheel speed and torque are for the same motor, in every language", () => {
    const notes = (locale: string) => sayChanges(reporter(limpet, locale), reporter(limpet, locale), []).notes[0]!;
    expect(notes("en")).toContain("Wheel speed and torque are for the same turns and torque of the motor.");
    expect(notes("de")).toContain("bei gleicher Drehzahl und gleichem Drehmoment des Motors");
  });

  it("of exact fractions: which one, where a differential is open", () => {
    const fractions = (build: Build) => {
      const said = saySummary(reporter(build), {});
      return "fractions" in said ? said.fractions : [];
    };
    // 62/15 × 45/18 × 38/13 × 22/15, and 62/15 × 45/18 × 35/12 × 23/16.
    expect(fractions(limpet)).toEqual(["Front: 25916/585", "Rear: 24955/576"]);
    const open = parseBuild(JSON.stringify({ ...limpet, centre: { kind: "differential" } }));
    expect(fractions(open)).toEqual(["Front, locked: 25916/585", "Rear, locked: 24955/576"]);
  });

  it("of parts, orders and the card", () => {
    expect(sayParts(reporter()).rows[0]!.texts[1]).toBe("Pinion 15, hardened");
    const order = sayOrder(reporter(version("tempting")), reporter());
    expect(order.buy.map(({ head }) => head)).toEqual(
      ["Pinion 17", "Spur 66"].map((name) => expect.stringMatching(`^${name}`) as string),
    );
    expect(order.notes).toContain("Fit, Spur and pinion: too far apart.");
    expect(order.text).toContain("To buy");
    expect(sayOrder(reporter(), reporter()).notes[0]).toBe("Nothing to buy.");
    const card = sayCard(reporter());
    expect(card.gears.rows[0]).toEqual({ head: "Spur and pinion", texts: ["15 → 62"] });
    expect(card.mesh.rows.map(({ texts }) => texts[0])).toContain(`30.3${nbsp}mm to 31.3${nbsp}mm`);
    expect(card.published).toBe("Revision 2, October 3, 2026");
  });

  it("of a drawing: what drives what, never as a range", () => {
    const layout = layoutOf(evaluate(version("tempting")).outputs[0]!.steps, limpet.mounts);
    const said = sayDrawing(reporter(version("tempting")), layout);
    expect(said.title).toContain("17 drives 66");
    expect(said.verdicts).toEqual([
      `Needs 33.2${nbsp}mm between centres. The slot ends at 31.3${nbsp}mm, 1.9${nbsp}mm short.`,
    ]);
    expect(sayDrawing(reporter(limpet, "ja"), layout).title).toContain("17が66を駆動");
  });

  it("of a pair that is offered: one total an output, its ends outward, cannot tell where the summary cannot", () => {
    const totals = [
      { id: "front", total: bounded("45.834", "48.441") },
      { id: "rear", total: bounded("46.1") },
    ];
    expect(sayTotals(reporter(), totals)).toEqual([
      { label: "Front", text: "45.83 to 48.45", outside: "Front 45.83 to 48.45: cannot tell." },
      { label: "Rear", text: "46.10", outside: "Rear 46.10: too many motor turns." },
    ]);
    expect(sayTotals(reporter(), [{ id: "rear", total: bounded(40, 42) }])[0]!.outside).toBeUndefined();
  });
});

describe("a version", () => {
  it("is the article, an alternative, or told with the nearest", () => {
    expect(versionOf(limpet, "article")).toBe(limpet);
    expect(versionOf(limpet, "frist-try")).toBeUndefined();
    expect(atFault(limpet, "frist-try")!.values.nearest).toEqual(["first-try"]);
    expect([atFault(limpet, "first-try"), atFault(limpet, ""), atFault(limpet, undefined)]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });
});
