import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { sayCard, sayOrder, speakerOf, type Reporter, type SaidCard } from "../../src/article/index.js";
import { parseBuild } from "../../src/document/index.js";
import type { Build } from "../../src/drivetrain/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { wordsFor } from "../../src/languages/all.js";
import { figures } from "../../src/report/index.js";
import { document, pair, read } from "../make.js";

const limpet = parseBuild(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8"));
const nbsp = "\u00a0";
const reporter = (build: Build, locale = "en"): Reporter => {
  const { figures: words, reports } = wordsFor(locale);
  return speakerOf({ evaluation: evaluate(build), locale, words, reports, figures });
};
const cardOf = (...parts: Parameters<typeof document>): SaidCard => sayCard(reporter(read(document(...parts))));
const lines = (rows: SaidCard["mesh"]["rows"]): string[] =>
  rows.map(({ head, texts }) => `${head} = ${texts[0]}`.replaceAll(nbsp, " "));

describe("what does not fit", () => {
  const misfits = (mount: object, pinion: object): readonly string[] => {
    const stages = [{ ...pair("spur", 15, 62, { module: "0.8" }), fitted: ["p15"] }];
    const parts = [{ id: "p15", is: "pinion", teeth: 15, ...pinion }];
    const mounts = [{ stage: "spur", from: "30 mm", to: "32 mm", ...mount }];
    const card = cardOf(stages, { rear: [] }, { mounts, parts });
    return card.misfits.map((line) => line.replaceAll(nbsp, " "));
  };

  it("is told on the card with what falls short", () => {
    expect(misfits({ shaft: "5 mm" }, { bore: "5 mm" })).toEqual([]);
    expect(misfits({ shaft: "5 mm" }, { bore: "3 mm" })).toEqual(["Fit, spur: does not fit, 2.0 mm, bore."]);
    expect(misfits({ shaft: "5 mm" }, { diametralPitch: 48 })).toEqual(["Fit, spur: does not fit, 33.85%, pitch."]);
    expect(misfits({ from: "33 mm", to: "34 mm" }, {})).toEqual(["Fit, spur: too close."]);
  });
});

describe("the mesh on a card", () => {
  it("in inches: 20 in 87 of 48 DP, opened by 0.003 in", () => {
    // (20 + 87) / (2 · 48) = 1.11458 in; + 0.003 = 1.11758; 2 · 0.003 · tan 20° = 0.00218; · cos 20° = 0.00205.
    const mount = { stage: "spur", from: "1.0996 in", to: "1.2504 in", opening: "0.003 in" };
    const spur = { ...pair("spur", 20, 87, { diametralPitch: 48 }), label: "Spur" };
    const card = cardOf([spur], { rear: [] }, { mounts: [mount], lengths: "in" });
    expect(lines(card.mesh.rows)).toEqual([
      "Spur: Centre distance without play = 1.115 in",
      "Spur: The mount can set = 1.100 in to 1.250 in",
      "Spur: Opening wanted = 0.003 in",
      "Spur: Centre distance as set = 1.118 in",
      "Spur: Play along the pitch circle = 0.002 in",
      "Spur: Play straight across, by paper or feeler = 0.002 in",
      "Spur: Turns of the driven gear until every pairing was met = 20",
    ]);
    expect(card.setting).toContain("Plastic");
  });

  it("of two mounts: whose each is, to the hundredth of a millimetre, limits inward", () => {
    // 50 teeth of 32 DP: 50 · 25.4 / 64 = 19.84 mm. 15 and 35 share 5: three turns of the 35. A slot that ends at 20.005 ends at 20.
    const stages = [
      pair("a", 15, 35, { diametralPitch: 32 }),
      { ...pair("b", 15, 62, { module: "0.8" }), label: "Second" },
    ];
    const mounts = [
      { stage: "a", from: "19.5 mm", to: "20.005 mm" },
      { stage: "b", to: "31 mm" },
    ];
    expect(lines(cardOf(stages, { rear: [] }, { mounts }).mesh.rows)).toEqual([
      "a: Centre distance without play = 19.84 mm",
      "a: The mount can set = 19.5 mm to 20.0 mm",
      "a: Turns of the driven gear until every pairing was met = 3",
      "Second: Centre distance without play = 30.8 mm",
      "Second: The mount can set = up to 31.0 mm",
      "Second: Turns of the driven gear until every pairing was met = 15",
    ]);
  });

  it("of a ring: set closer than its centre distance, with play", () => {
    // (50 − 14) / 2 = 18 mm, closer by 0.05.
    const stages = [pair("ring", 14, 50, { module: 1, internal: true })];
    const rows = lines(cardOf(stages, { rear: [] }, { mounts: [{ stage: "ring", opening: "0.05 mm" }] }).mesh.rows);
    expect(rows).toContain("ring: Centre distance as set = 17.95 mm");
    expect(rows).toContain("ring: Play along the pitch circle = 0.04 mm");
  });

  it("opened as far as a slot pushes it", () => {
    // 77 · 0.8 / 2 = 30.8 mm in a slot that begins at 30.9.
    const mounts = [{ stage: "a", from: "30.9 mm", openingTo: "0.2 mm" }];
    const rows = lines(cardOf([pair("a", 15, 62, { module: "0.8" })], { rear: [] }, { mounts }).mesh.rows);
    expect(rows).toContain("a: Opening wanted = 0.1 mm");
    expect(rows).toContain("a: Centre distance as set = 30.9 mm");
  });
});

describe("belts", () => {
  const belt = { id: "belt", kind: "belt", driver: 20, driven: 60, pitch: "2 mm", centre: "60 mm" };

  it("name the counts that there are, each with the centre that it sets; a tensioner what it takes up", () => {
    const card = (more: object, lengths = "mm") =>
      lines(cardOf([{ ...belt, ...more }], { rear: [] }, { lengths }).mesh.rows);
    expect(card({})).toEqual([
      "belt: 101 teeth = sets 59.64 mm between centres",
      "belt: 102 teeth = sets 60.66 mm between centres",
    ]);
    // 60.659 / 25.4
    expect(card({ beltTeeth: 102 }, "in")).toEqual(["belt: 102 teeth = sets 2.388 in between centres"]);
    expect(card({ tensioner: true })).toEqual(["belt: 102 teeth = the tensioner takes up 1.29 mm"]);
    expect(card({ pitch: undefined })).toEqual([]);
  });

  it("name them in the order as well", () => {
    const { missing } = sayOrder(reporter(read(document([belt], { rear: [] }))), undefined);
    expect(missing.join("; ").replaceAll(nbsp, " ")).toContain(
      "101 teeth: sets 59.64 mm between centres or 102 teeth: sets 60.66 mm between centres",
    );
  });
});

/** A train's reduction from the first driven gear on, in floating point: far finer than a third of a turn. */
const product = (pairs: readonly (readonly [number, number])[]): number =>
  pairs.reduce((all, [driver, driven]) => (all * driven) / driver, 1);

/** How many turns of the wheel a row asks for, and how many are to be counted. */
const asked = ({ head, texts }: SaidCard["turns"]["rows"][number]): readonly [number, number] => [
  Number(/(\d+)×/.exec(head)![1]),
  Number(texts[0]!.replace(",", "")),
];

describe("what is turned by hand", () => {
  it("of Limpet: two turns of a wheel, by the spur", () => {
    // 5/2 · 38/13 · 22/15 = 10.718 and 5/2 · 35/12 · 23/16 = 10.482. The 45 of the row matters least: 10.718 / 46 = 0.233, twice is 0.466.
    // Held, the free wheel counts half: 3 · 10.718 / 2 = 16.08; 1/46 of that is 0.350.
    expect(lines(sayCard(reporter(limpet)).turns.rows)).toEqual([
      "Front, both wheels 2× round; turns of: spur = 21.44",
      "Front, one wheel held, the other 3× round; turns of: spur = 16.08",
      "Rear, both wheels 2× round; turns of: spur = 20.96",
    ]);
  });

  it("shows one tooth off as a third of a turn, shallow and deep, and asks for no more turns than that", () => {
    let state = 11;
    const random = (below: number): number => (state = (state * 48271) % 0x7fffffff) % below;
    for (let run = 0; run < 200; run++) {
      const pairs = Array.from({ length: 2 + random(4) }, () => [8 + random(30), 10 + random(80)] as const);
      const stages = pairs.map(([driver, driven], n) => pair(`p${n}`, driver, driven));
      const [row] = cardOf(stages, { rear: [] }).turns.rows;
      const [wheel, counted] = asked(row!);
      const rest = pairs.slice(1);
      const right = product(rest);
      expect(Math.abs(counted - wheel * right)).toBeLessThan(0.0051);
      const off = rest.flatMap((_, n) =>
        [0, 1].flatMap((side) =>
          [-1, 1].map((by) => {
            const other = rest.map((one, place) =>
              place === n
                ? (one.map((teeth, at) => teeth + (at === side ? by : 0)) as unknown as [number, number])
                : one,
            );
            return Math.abs(product(other) - right);
          }),
        ),
      );
      const least = Math.min(...off);
      expect(wheel * least).toBeGreaterThan(1 / 3 - 1e-9);
      if (wheel > 1) expect((wheel - 1) * least).toBeLessThan(1 / 3);
    }
  });

  it("of one stage alone counts the motor; of a printed box both ends, outward", () => {
    // 62/15, the 62 a tooth more: 4.1333 / 62 = 0.0667; a pinion of 16 is 0.26 less. 5 · 0.0667 = 0.333.
    expect(lines(cardOf([pair("a", 15, 62)], { rear: [] }).turns.rows)).toEqual([
      "rear, both wheels 5× round; turns of: motor = 20.67",
    ]);
    const box = { id: "box", kind: "published", value: "19.2" };
    // 1/60 of 19.15 is 0.319: two turns, 38.3 to 38.5.
    expect(lines(cardOf([box], { rear: [] }).turns.rows)).toEqual([
      "rear, both wheels 2× round; turns of: motor = 38.30 to 38.50",
    ]);
  });

  it("behind an open centre differential holds the other axles, and counts the share", () => {
    // Even: half of 10.718 and of 10.482.
    const open = { ...limpet, centre: { kind: "differential" as const } };
    const rows = sayCard(reporter(read(JSON.parse(JSON.stringify(open))))).turns.rows;
    const [wheel, counted] = asked(rows[0]!);
    expect(rows[0]!.head).toMatch(/^Other axles held: Front/);
    expect(counted / wheel).toBeCloseTo(10.718 / 2, 1);
  });
});

describe("what concerns hands", () => {
  const build = document(
    [{ id: "box", label: "Box", kind: "published", value: "19" }],
    { rear: [] },
    {
      battery: { cells: 3, chemistry: "lipo" },
      controller: { maxVolts: "8.4" },
      motor: { kv: 3000, maxRpm: 30000, maxVolts: 12 },
    },
  );

  it("stands on the card, in every language", () => {
    // 3 · 4.2 = 12.6 V; 3 · 3.7 = 11.1; 3000 · 12.6 = 37,800 turns a minute.
    expect(sayCard(reporter(read(build))).warnings).toEqual([
      "Box: 19 is a nominal figure; count the teeth.",
      "3 full cells reach 12.60 V, not 11.1. Controller limit: 8.4 V.",
      "3 full cells reach 12.60 V, not 11.1. Motor limit: 12 V.",
      "3000 kV at 12.60 V is above 30000 turns a minute.",
    ]);
    expect(sayCard(reporter(read(build), "de")).warnings[0]).toBe("Box: 19 ist ein Nennwert; die Zähne zählen.");
    expect(sayCard(reporter(limpet)).warnings).toEqual([]);
  });
});

describe("turns by hand of stages that a tooth more or less would break", () => {
  it("compare with such as there can be: ten pins for nine lobes are never nine", () => {
    // 9 lobes in 10 pins: 9 / (10 − 9) = 9 turns; the nearest that there can be, 8 lobes in 10 pins, is 4.
    const cycloid = { id: "cycloid", kind: "cycloidal", lobes: 9, pins: 10 };
    const card = sayCard(reporter(read(document([], { rear: [cycloid] }))));
    expect(lines(card.turns.rows).map((line) => line.replace(/^.*= /, ""))).toEqual(["9.00"]);
  });

  it("a ring of one tooth more than its gear has no gear of one tooth more", () => {
    const ring = { ...pair("ring", 30, 31), internal: true };
    const card = sayCard(reporter(read(document([], { rear: [ring] }))));
    expect(card.turns.rows).toHaveLength(1);
  });
});
