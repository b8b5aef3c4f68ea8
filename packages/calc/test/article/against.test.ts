// Versions held against another build, and trains that were found: what is said of them, by hand arithmetic.
import { describe, expect, it } from "vitest";
import {
  askedFindings,
  leadFrom,
  leadsFrom,
  sayChanges,
  sayTrain,
  speakerOf,
  stagesToChoose,
  type Reporter,
} from "../../src/article/index.js";
import type { Build } from "../../src/drivetrain/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { wordsFor } from "../../src/languages/all.js";
import { figures } from "../../src/report/index.js";
import { findTrains, type TrainQuestion } from "../../src/search/index.js";
import { document, pair, read, told } from "../make.js";

const reporter = (build: Build): Reporter => {
  const { figures: words, reports } = wordsFor("en");
  return speakerOf({ evaluation: evaluate(build), locale: "en", words, reports, figures });
};
const plain = (text: string | undefined): string => (text ?? "").replace(/\u00a0/g, " ");

// Dunlin: 15 to 60 and 10 to 30 are 12; as sold 20 to 60 and 10 to 30 are 9.
const dunlin = read(
  document([pair("spur", 15, 60, { group: "gearbox" })], {
    rear: { stages: [pair("ring", 10, 30)], wheel: { diameter: "100 mm" } },
  }),
);
const sold = read(
  document([pair("spur", 20, 60, { group: "gearbox" }), pair("idle", 10, 10, { group: "extra" })], {
    rear: { stages: [pair("ring", 10, 30)], wheel: { diameter: "90 mm" } },
  }),
);
const other = read(document([], { left: [pair("belt", 10, 30)] }));

/** The rows of a table by their heads. */
function table(now: Build, against: Build): Record<string, string[]> {
  const columns = [
    { label: "Now", speaker: reporter(now) },
    { label: "As sold", speaker: reporter(against) },
  ];
  const { groups } = sayChanges(columns[0]!.speaker, columns[0]!.speaker, columns, columns[1]);
  return Object.fromEntries(
    groups.flatMap(({ rows }) => rows.map(({ head, texts }) => [plain(head), texts.map(plain)])),
  );
}

describe("a build against another one", () => {
  it("is told by how much it is deeper, in all and group by group, each by its own base", () => {
    const rows = table(dunlin, sold);
    expect(rows.rear).toEqual(["12.00", "9.00"]);
    // 12 / 9 = +33.33 %; against the middle of both, 3 / 10.5 = +28.57 %; the wheel turns 9 / 12 as fast.
    expect(rows["reduction"]).toEqual(["+33.33%", "0.00%"]);
    expect(Object.entries(rows).find(([head]) => head.includes("gearbox") && head.includes("reduction"))?.[1]).toEqual([
      "+33.33%",
      "0.00%",
    ]);
    expect(Object.values(rows)).toContainEqual(["+28.57%", "0.00%"]);
    expect(Object.values(rows)).toContainEqual(["−25.00%", "0.00%"]);
    // Ground for one motor turn: 100 / 12 against 90 / 9.
    expect(Object.values(rows)).toContainEqual(["−16.67%", "0.00%"]);
  });

  it("says what one of them lacks", () => {
    const rows = table(dunlin, sold);
    const extra = Object.entries(rows).find(([head]) => head.includes("extra"))![1];
    expect(extra[0]).toContain("Now");
    const apart = table(dunlin, other);
    expect(apart.rear![1]).toContain("As sold");
    expect(apart["reduction"]![0]).toContain("As sold");
  });
});

describe("several stages at once", () => {
  const gear = (id: string, is: string, teeth: number, more: object = {}) => ({
    id,
    is,
    teeth,
    module: "0.8",
    ...more,
  });
  const build = read(
    document([pair("spur", 15, 60, { module: "0.8" })], {
      front: { stages: [pair("f", 10, 20)], wheel: { diameter: "100 mm" } },
      rear: { stages: [pair("r", 10, 20)], wheel: { diameter: "100 mm" } },
    }),
  );

  it("are asked for by stages that two gears can be chosen for", () => {
    expect(stagesToChoose(evaluate(build))).toEqual(["spur", "f", "r"]);
    expect(
      told(askedFindings("mw-train-finder", build, { of: "spur, f", wheels: "front rear", lead: "0% to 3%" })),
    ).toEqual([]);
    expect(told(askedFindings("mw-train-finder", build, { of: "spr", wheels: "fornt", lead: "3% to 0%" }))).toEqual([
      ...["missing-reference at /of", "missing-reference at /wheels", "not-understood at /lead"],
    ]);
    expect(["1.5%", "−2", "+3 %", "2,5%"].map((text) => leadFrom(text)?.toFraction())).toEqual([
      "3/200",
      "-1/50",
      "3/100",
      "1/40",
    ]);
    expect(["a", "-100%", "2 mm", ""].map(leadFrom)).toEqual([undefined, undefined, undefined, undefined]);
    expect(leadsFrom("0% to 3%")?.map((one) => one.toFraction())).toEqual(["0/1", "3/100"]);
    for (const text of ["3% to 0%", "1%", "0 to 1 to 2", "x to 3"]) expect(leadsFrom(text), text).toBeUndefined();
  });

  it("are said with their gears, their totals, the lead and what they cost", () => {
    const price = (amount: string, currency = "EUR") => ({ price: { amount, currency } });
    const stage = (drivers: object[], drivens: object[]) => ({ id: "spur", drivers, drivens });
    const ask = (drivers: object[], drivens: object[], wheels: object[] = []): TrainQuestion =>
      ({
        stages: [stage(drivers, drivens)],
        outputs: [
          { id: "front", rest: 2, from: 1, to: 99, ...(wheels.length && { wheels }) },
          {
            id: "rear",
            rest: 2,
            from: 1,
            to: 99,
            ...(wheels.length && { wheels: [{ id: "t100", name: "Tyre 100", is: "wheel", diameter: "100 mm" }] }),
          },
        ],
        ...(wheels.length && { compare: { of: "front", with: "rear", from: 0, to: "0.2" } }),
      }) as unknown as TrainQuestion;
    const first = (question: TrainQuestion) => {
      for (const { found } of findTrains(question))
        if (found[0]) return sayTrain(reporter(build), ["spur"], question, found[0]);
      throw new Error("Nothing was found.");
    };
    const priced = first(ask([gear("p15", "pinion", 15, price("4.20"))], [gear("s60", "spur", 60, price("8"))]));
    expect(priced.picks[0]!.slice(0, 2).map(plain)).toEqual(["spur", "15 → 60"]);
    expect(plain(priced.totals)).toBe("8.00 · 8.00");
    expect([plain(priced.price), priced.parts, priced.lead]).toEqual(["€12.20", "p15 (15) + s60 (60)", undefined]);
    const owned = first(ask([gear("p15", "pinion", 15, { owned: 1 })], [gear("s60", "spur", 60, { owned: 1 })]));
    const unpriced = first(ask([gear("p15", "pinion", 15)], [gear("s60", "spur", 60, price("8"))]));
    const mixed = first(ask([gear("p15", "pinion", 15, price("4", "USD"))], [gear("s60", "spur", 60, price("8"))]));
    const { ownedAlready, noPrice } = wordsFor("en").reports;
    expect([owned.price, unpriced.price, mixed.price]).toEqual([ownedAlready, noPrice, noPrice]);
    const wheels = first(
      ask(
        [gear("p15", "pinion", 15)],
        [gear("s60", "spur", 60)],
        [{ id: "t104", name: "Tyre 104", is: "wheel", diameter: "104 mm" }],
      ),
    );
    // 104 mm against 100 mm.
    expect(plain(wheels.lead)).toBe("4.00% ahead");
    expect(wheels.picks.slice(1).map(([place, text]) => [place, plain(text)])).toEqual([
      ["front", "front: Tyre 104"],
      ["rear", "rear: Tyre 100"],
    ]);
  });
});
