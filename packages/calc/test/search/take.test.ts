import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { applyChanges, parseBuild } from "../../src/document/index.js";
import { type Build, oneIn, type Part } from "../../src/drivetrain/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { type FitMount, fits, limitsOf } from "../../src/fit/index.js";
import type { ToothPair } from "../../src/gears/index.js";
import { needsOf, orderOf } from "../../src/parts/index.js";
import {
  askPairs,
  askTrains,
  findPairs,
  type FoundPair,
  findTrains,
  nearMisses,
  type PairQuestion,
  type Setting,
  takenIn,
  takePair,
  takeTrain,
  type TrainQuestion,
} from "../../src/search/index.js";
import { settingsFor } from "../../src/search/take.js";

const ask = (build: Build, stage: string, before?: Build) =>
  askPairs(evaluate(build), stage, before && { before }) as PairQuestion;
const pairsOf = (question: PairQuestion) => [...findPairs(question)].flatMap(({ found }) => found);
const stageOf = (build: Build, id: string) => oneIn(build)(id)!.stage!;
const plain = (settings: readonly Setting[]) => Object.fromEntries(settings.map(({ set, to }) => [set, to]));

/** The build with a pair taken. */
function taken(build: Build, stage: string, pair: FoundPair): Build {
  const { build: after, findings } = applyChanges(build, takePair(build, stage, pair));
  expect(findings.filter(({ severity }) => severity === "error")).toEqual([]);
  return after!;
}

const file = new URL("../../../../tests/vectors/mixed.json", import.meta.url);
const cases = JSON.parse(readFileSync(file, "utf8")) as readonly { readonly build: unknown; readonly stage: string }[];

describe("taking a pair", () => {
  it.each(cases.map(({ build, stage }, n) => [n, parseBuild(build), stage] as const))(
    "of shelf %i leaves the build, its fit and its order as the search said",
    (_, build, stage) => {
      for (const pair of pairsOf(ask(build, stage))) {
        const after = taken(build, stage, pair);
        const now = stageOf(after, stage) as unknown as ToothPair;
        const mount = after.mounts!.find((one) => one.stage === stage) as FitMount;
        const body = (part: Part) => part as Part & Record<string, unknown>;
        const { verdict, mesh, opening } = fits({
          pair: now,
          mount,
          driver: body(pair.driver),
          driven: body(pair.driven),
          sleeves: pair.sleeve
            ? [{ label: pair.sleeve.id, bore: pair.sleeve.bore!, outside: pair.sleeve.outside! }]
            : [],
          plates: pair.plate ? [{ label: pair.plate.id, circles: pair.plate.circles! }] : [],
        });
        expect(verdict).toBe("fits");
        expect(mesh.centreDistance!.low.equals(pair.centre!.low)).toBe(true);
        expect(opening!.low.equals(pair.opening!.low)).toBe(true);
        expect(evaluate(after).outputs[0]!.bounds!.low.equals(pair.totals[0]!.low)).toBe(true);

        const { sums, unpriced, buy, missing } = orderOf(needsOf(build), needsOf(after));
        const shown = (list: typeof sums) => list.map(({ currency, amount }) => `${currency} ${amount}`).sort();
        expect(shown(sums)).toEqual(shown(pair.pay.sums));
        expect([unpriced, missing]).toEqual([0, []]);
        const bought = (lines: typeof buy) => lines.map(({ part, packs }) => `${packs} ${part.id}`).sort();
        expect(bought(buy)).toEqual(bought(pair.pay.buy));
        expect(takenIn(after, stage)(pair)).toBe(true);
        // Counted from the state before, what was taken is to be paid as before; all else with it.
        const ids = ({ parts }: FoundPair) => parts.map(({ id }) => id).join();
        const again = pairsOf(ask(after, stage, build)).find((one) => ids(one) === ids(pair));
        expect(shown(again!.pay.sums)).toEqual(shown(pair.pay.sums));
      }
    },
  );

  const build = (more: object = {}, stage: object = {}): Build =>
    parseBuild({
      format: "meshwright-build/1",
      stages: [{ id: "primary", kind: "pair", driver: 23, driven: 53, module: "0.8", ...stage }],
      outputs: [{ id: "rear", stages: [] }],
      target: { from: 2, to: 6 },
      mounts: [{ stage: "primary", knownPair: [23, 53], closer: "0.1 mm", farther: "0.9 mm" }],
      ...more,
    });
  const dp = { diametralPitch: "48" };
  const fine: readonly Part[] = [
    { id: "p20", is: "pinion", teeth: 20, ...dp, shift: "0.2" },
    { id: "s96", is: "spur", teeth: 96, ...dp, shift: "-0.2", pressureAngle: 20 },
  ];

  it("of another pitch is listed, and left, at the centre distance of its own teeth", () => {
    // 48 DP: (20 + 96) × 25.4 / 96 = 30.69 mm. In the stage's module it would stand at 46.4 mm.
    const before = build({ parts: fine });
    const [pair] = pairsOf(ask(before, "primary"));
    expect([pair!.centre!.low.toDecimal({ maximumFractionDigits: 9 }), pair!.verdict]).toEqual([
      "30.691666667",
      "fits",
    ]);
    const changes = takePair(before, "primary", pair!);
    expect(plain(changes)).toMatchObject({
      "primary.driver": 20,
      "primary.driven": 96,
      "primary.module": null,
      "primary.diametralPitch": "48",
      "primary.driverShift": "0.2",
      "primary.drivenShift": "-0.2",
    });
    const { build: after } = applyChanges(before, changes);
    // The slot stays where it is, though no pair of 0.8 is there to count it in.
    expect(plain(changes)).toMatchObject({
      "mounts.0.from": "30.3 mm",
      "mounts.0.to": "31.3 mm",
      "mounts.0.knownPair": null,
    });
    const ends = (one: Build) =>
      limitsOf(one.mounts![0]!, one.stages[0] as ToothPair & (typeof one.stages)[0]).map(({ at }) => String(at.low));
    expect(ends(after!)).toEqual(ends(before));
    expect(fits({ pair: after!.stages[0] as unknown as ToothPair, mount: after!.mounts![0]! }).verdict).toBe("fits");
    // One edit: it can be made, and unmade, as one.
    const { build: back } = applyChanges(after!, [
      { set: "primary", to: before.stages[0] },
      { set: "mounts.0", to: before.mounts![0] },
    ]);
    expect(back).toEqual(before);
  });

  it("writes ends that are no decimals as fractions, and as they are measured", () => {
    const mount = { measured: "over shafts", shaft: "4 mm", drivenShaft: "6 mm", toothSum: [110, 130] };
    const before = build(
      {
        parts: [
          { id: "p15", is: "pinion", teeth: 15, module: "0.8" },
          { id: "s60", is: "spur", teeth: 60, module: "0.8" },
        ],
        mounts: [{ stage: "primary", ...mount }],
      },
      { module: undefined, diametralPitch: "48" },
    );
    const [pair] = pairsOf(ask(before, "primary"));
    // 110 teeth of 48 DP: 110 × 25.4 / 96 = 1397/48 mm between the axes, 5 mm more over both shafts.
    expect(plain(takePair(before, "primary", pair!))).toMatchObject({
      "mounts.0.from": "1637/48 mm",
      "mounts.0.to": "1891/48 mm",
    });
  });

  it("changes nothing that says the same, and takes along what went with the gears before", () => {
    const parts: readonly Part[] = [
      { id: "p15", is: "pinion", teeth: 15, diametralPitch: "31.75", pressureAngle: "20" },
      { id: "s62", is: "spur", teeth: 62, module: "0.8" },
    ];
    const before = build({ parts }, { thinning: "0.1 mm", driverShift: "0.1" });
    const [pair] = pairsOf(ask(before, "primary"));
    expect(plain(takePair(before, "primary", pair!))).toEqual({
      "primary.driver": 15,
      "primary.driven": 62,
      "primary.driverShift": null,
      "primary.thinning": null,
      "primary.fitted": ["p15", "s62"],
    });
    expect(takePair(before, "nowhere", pair!)).toEqual([]);
  });

  it("of a set takes it whole, and says that it is one", () => {
    const parts: readonly Part[] = [{ id: "ring", is: "set", driver: 13, driven: 38, module: "0.8" }];
    const before = build({ parts, mounts: [] });
    const [pair] = pairsOf(ask(before, "primary"));
    expect(pair!.set!.id).toBe("ring");
    expect(settingsFor(before, before.stages[0]!, pair!)).toEqual([
      { set: "primary.driver", to: 13 },
      { set: "primary.driven", to: 38 },
      { set: "primary.set", to: true },
      { set: "primary.fitted", to: ["ring"] },
    ]);
    const { build: after } = applyChanges(before, takePair(before, "primary", pair!));
    expect(needsOf(after!).map(({ part }) => part?.id)).toEqual(["ring"]);
    // A stage that is a set takes sets only.
    const loose: readonly Part[] = [
      { id: "p15", is: "pinion", teeth: 15, module: "0.8" },
      { id: "s62", is: "spur", teeth: 62, module: "0.8" },
    ];
    const question = ask(parseBuild({ ...after!, parts: [...parts, ...loose] }), "primary");
    expect([question.drivers, question.drivens, question.sets!.length]).toEqual([[], [], 1]);
  });

  it("names the sleeve and the plate with the gears", () => {
    const circles = (...sizes: readonly string[]) => sizes.map((diameter) => ({ count: 4, diameter }));
    const parts: readonly Part[] = [
      { id: "p15", is: "pinion", teeth: 15, module: "0.8", bore: "5 mm" },
      { id: "s62", is: "spur", teeth: 62, module: "0.8", circles: circles("20 mm") },
      { id: "sleeve", is: "sleeve", bore: "1/8 in", outside: "5 mm" },
      { id: "plate", is: "plate", circles: circles("20 mm", "24 mm") },
    ];
    const mounts = [{ stage: "primary", shaft: "1/8 in", hubHoles: circles("24 mm") }];
    const before = build({ parts, mounts });
    const [pair] = pairsOf(ask(before, "primary"));
    expect(settingsFor(before, before.stages[0]!, pair!)).toContainEqual({
      set: "primary.fitted",
      to: ["p15", "s62", "sleeve", "plate"],
    });
    // Taken away again with a bare pair of counts.
    const [bare] = pairsOf({ drivers: [15], drivens: [62], outputs: [{ id: "rear", from: 4, to: 5 }] });
    const stage = { ...before.stages[0]!, fitted: ["p15"] };
    expect(settingsFor(before, stage, bare!)).toContainEqual({ set: "primary.fitted", to: null });
    expect(settingsFor(before, before.stages[0]!, bare!).map(({ set }) => set)).not.toContain("primary.fitted");
  });

  it("puts a whole train on its stages, wheels as well", () => {
    const pitch = { module: "0.8" };
    const pair = (id: string) => ({ id, kind: "pair", driver: 15, driven: 60, ...pitch });
    const before = parseBuild({
      format: "meshwright-build/1",
      stages: [pair("primary")],
      outputs: [{ id: "rear", stages: [pair("ring")], wheel: { loadedDiameter: "110 mm" } }],
      target: { from: 9, to: 10 },
      parts: [
        ...[15, 16].map((teeth) => ({ id: `p${teeth}`, is: "pinion", teeth, ...pitch })),
        ...[47, 48].map((teeth) => ({ id: `s${teeth}`, is: "spur", teeth, ...pitch })),
        { id: "tyre", is: "wheel", diameter: "120 mm" },
      ],
    });
    const places = ["primary", "ring"];
    const question = askTrains(evaluate(before), places, { wheels: ["rear"] }) as TrainQuestion;
    const [train] = [...findTrains(question)].flatMap(({ found }) => found);
    // 16 in 48 and 15 in 48 lie 0.1 from the middle, as 15 in 48 and 16 in 48 do: by the first stage's driver.
    expect(train!.picks.map(({ counts }) => counts)).toEqual([
      [15, 47],
      [16, 48],
    ]);
    const changes = plain(
      takeTrain(
        before,
        places,
        question.outputs.map(({ id }) => id),
        train!,
      ),
    );
    expect(changes).toEqual({
      "primary.driver": 15,
      "primary.driven": 47,
      "ring.driver": 16,
      "ring.driven": 48,
      "primary.fitted": ["p15", "s47"],
      "ring.fitted": ["p16", "s48"],
      "rear.wheel": { diameter: "120 mm" },
    });
    const { build: after } = applyChanges(before, changes);
    expect(evaluate(after!).outputs[0]!.bounds!.low.equals(train!.totals[0]!.low)).toBe(true);
  });
});

describe("near misses", () => {
  it("begin with what needs least to change, not with what is nearest to the range", () => {
    const gears = (is: "pinion" | "spur", counts: readonly number[]) =>
      counts.map((teeth): Part => ({ id: `${is}-${teeth}`, is, teeth, module: 1 }));
    const question: PairQuestion = {
      drivers: gears("pinion", [10, 20]),
      drivens: gears("spur", [40, 41, 80]),
      outputs: [{ id: "pair", from: "3.9", to: "4.1" }],
      mount: { from: "25 mm", to: "26 mm" },
    };
    // 10 in 40 fits and reaches. 10 in 41 reaches and fits too. 20 in 80 is in the middle of the range, 24 mm out of the slot.
    expect(pairsOf(question).map(({ counts }) => counts)).toEqual([
      [10, 40],
      [10, 41],
    ]);
    const missed = [...nearMisses(question)].flatMap(({ found }) => found);
    // In teeth: 8 + 0 + 30 / 20.5…: worked out one by one.
    //  20:40 centre 30, 4 mm out: 8 teeth; total 2, 1.9 under: 1.9 ÷ (2 / 21) = 19.95. Together 27.95
    //  20:41 centre 30.5: 9; total 2.05, 1.85 under: 1.85 ÷ (2.05 / 21) = 18.95. Together 27.95…, a little more
    //  10:80 centre 45: 38; total 8, 3.9 over: 3.9 ÷ (8 / 11) = 5.3625. Together 43.36
    //  20:80 centre 50: 48; reaches. Together 48
    expect(missed.map(({ counts }) => counts)).toEqual([
      [20, 40],
      [20, 41],
      [10, 80],
      [20, 80],
    ]);
  });
});
