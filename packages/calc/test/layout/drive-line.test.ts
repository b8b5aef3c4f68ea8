import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evaluate, type Evaluation } from "../../src/evaluate/index.js";
import {
  driveLineOf,
  openedBeneath,
  placeDriveLine,
  strandsOf,
  strokesOf,
  type Box,
  type Lettering,
  type Mark,
  type PlacedLine,
} from "../../src/layout/index.js";
import { document, evaluated, pair, read } from "../make.js";

type Data = Record<string, unknown>;

/** Lettering of sizes that a name, a line of counts and a note take on a page of 16 pixels. */
const lettering: Lettering = {
  head: (key) => (key.includes(":") ? [] : [{ width: 96, height: 20 }]),
  foot: () => [
    { width: 70, height: 24 },
    { width: 110, height: 16 },
  ],
  shaft: (key) => (key.includes(":") ? undefined : { width: 34, height: 16 }),
  total: () => [
    { width: 60, height: 18 },
    { width: 70, height: 24 },
  ],
  label: () => ({ width: 60, height: 20 }),
};

const place = (evaluation: Evaluation, width: number, isRightToLeft = false): PlacedLine =>
  placeDriveLine(evaluation, { width, lettering, isUpright: width < 760, isRightToLeft });

const stage = (id: string, seed: number): Data => {
  const [a, b] = [8 + (seed % 40), 12 + ((seed * 7) % 90)];
  const module = ["0.5", "0.8", "1", "1.5"][seed % 4]!;
  const kinds: readonly Data[] = [
    { kind: "pair", driver: a, driven: b, module },
    { kind: "pair", driver: a, driven: b },
    { kind: "pair", driver: a, driven: b, form: "bevel", ringSide: seed % 2 ? "left" : "right" },
    { kind: "pair", driver: a, driven: a + b, internal: true, module },
    { kind: "train", teeth: [a, b, a + 3, 20], module },
    { kind: "belt", driver: a, driven: b, pitch: "3 mm" },
    { kind: "belt", driver: a, driven: b, chain: true },
    { kind: "worm", starts: 1 + (seed % 4), teeth: b, module },
    {
      kind: "planetary",
      sun: a,
      ring: a + 2 * b,
      planets: 3,
      planet: b,
      fixed: "ring",
      input: "sun",
      output: "carrier",
    },
    { kind: "cycloidal", lobes: a, pins: a + 1 },
    { kind: "published", value: "2.6" },
    { kind: "measured", turnsIn: 20, turnsOut: { from: "7.2", to: "7.4" } },
    {
      kind: "selectable",
      selected: "low",
      positions: [
        { id: "low", stages: [pair(`${id}-low`, a, b)] },
        { id: "neutral", released: "free" },
      ],
    },
  ];
  return { id, label: `Stage ${id}`, ...kinds[seed % kinds.length] };
};

interface Made {
  readonly seeds: readonly number[];
  readonly axles: number;
  readonly branched: boolean;
  readonly own: boolean;
}

/** One to twelve stages, one to six axles, some behind a branch, some with a motor of their own. */
function made({ seeds, axles, branched, own }: Made): Evaluation {
  const at = seeds.map((seed, n) => ({ where: n % (axles + 1), stage: stage(`s-${n}`, seed) }));
  const list = (where: number): Data[] => at.filter((one) => one.where === where).map((one) => one.stage);
  const outputs = Object.fromEntries(
    Array.from({ length: axles }, (_, n) => [
      `axle-${n}`,
      {
        stages: list(n + 1),
        wheel: { diameter: "110 mm" },
        ...(n % 2 ? { axle: "spool" } : { axle: "differential" }),
        ...(branched && n < 2 && axles > 2 && { from: "bow" }),
        ...(own && n === axles - 1 && axles > 1 && { motor: { kv: 900 } }),
      },
    ]),
  );
  const branches = branched && axles > 2 ? { branches: [{ id: "bow", stages: [stage("bow-stage", seeds[0]!)] }] } : {};
  return evaluate(read(document(list(0), outputs, branches)));
}

const anyBuild = fc
  .record({
    seeds: fc.array(fc.nat(500), { minLength: 1, maxLength: 12 }),
    axles: fc.integer({ min: 1, max: 6 }),
    branched: fc.boolean(),
    own: fc.boolean(),
  })
  .map(made);

const widths = fc.constantFrom(320, 375, 640, 768, 1024, 1440, 1600);

const over = (one: Box, other: Box): boolean =>
  Math.min(one.x + one.width, other.x + other.width) - Math.max(one.x, other.x) > 0.5 &&
  Math.min(one.y + one.height, other.y + other.height) - Math.max(one.y, other.y) > 0.5 &&
  one.height > 0 &&
  other.height > 0;

/** Everything that takes room, each with its name. */
const boxesOf = ({ cells, labels, totals, shafts }: PlacedLine): (readonly [string, Box])[] =>
  [
    ...cells.flatMap(({ key, drawn, head, foot }) => [
      [`${key} drawn`, drawn] as const,
      [`${key} head`, head] as const,
      [`${key} foot`, foot] as const,
    ]),
    ...labels.map((box) => [`label of ${box.strand}`, box] as const),
    ...totals.map((box) => [`total of ${box.output}`, box] as const),
    ...shafts.flatMap(({ note, after }) => (note ? [[`shaft after ${after}`, note] as const] : [])),
  ].filter(([, { height }]) => height > 0);

const wheelsOf = (line: PlacedLine): Extract<Mark, { is: "wheel" }>[] =>
  line.cells.flatMap(({ marks }) => marks.flatMap((mark) => (mark.is === "wheel" ? [mark] : [])));

describe("the line of drive as a list", () => {
  it("has every stage once, in the order of drive", () => {
    const line = driveLineOf(
      evaluated([pair("one", 15, 62), pair("two", 18, 45)], {
        front: [pair("front-ring", 13, 38)],
        rear: [pair("rear-ring", 12, 35), pair("rear-hub", 16, 23)],
      }),
    );
    const strands = strandsOf(line).map(({ id, stages }) => [id, ...stages.map((one) => one.stage.id)]);
    expect(strands).toEqual([
      ["", "one", "two"],
      ["front", "front-ring"],
      ["rear", "rear-ring", "rear-hub"],
    ]);
    expect(line[0]!.split!.id).toBe("centre");
  });

  it("goes on where nothing splits, and begins again at every motor", () => {
    const alone = driveLineOf(evaluated([pair("one", 15, 62)], { rear: [pair("ring", 12, 35)] }));
    expect(alone.map(({ id, stages, split }) => [id, stages.length, split])).toEqual([["rear", 2, undefined]]);
    const apart = evaluated([], {
      front: { stages: [pair("a", 10, 20)], motor: { kv: 500 } },
      rear: { stages: [pair("b", 10, 30)], motor: { kv: 500 } },
    });
    expect(driveLineOf(apart).map(({ id, motor, output }) => [id, motor?.kv, output?.id])).toEqual([
      ["front", 500, "front"],
      ["rear", 500, "rear"],
    ]);
  });

  it("tells which way each shaft turns, and whether that is established", () => {
    const [line] = driveLineOf(
      evaluated(
        [pair("said", 15, 62, { form: "spur" }), pair("taken", 10, 20), { id: "box", kind: "published", value: "2" }],
        {
          rear: [],
        },
      ),
    );
    expect(line!.stages.map(({ turn, isEstablished }) => [turn, isEstablished])).toEqual([
      [-1, true],
      [1, false],
      [0, false],
    ]);
  });

  it("takes the stages of a lever as it stands, and knows what is let go of", () => {
    const lever = (selected: string): Evaluation =>
      evaluated(
        [stage("box", 12), pair("behind", 10, 20)].map((one) => ("selected" in one ? { ...one, selected } : one)),
        {
          rear: [],
        },
      );
    const [low] = driveLineOf(lever("low"));
    expect(low!.stages.map((one) => [one.stage.id, one.inside?.id, one.isDriven])).toEqual([
      ["box", undefined, true],
      ["box-low", "box", true],
      ["behind", undefined, true],
    ]);
    const [neutral] = driveLineOf(lever("neutral"));
    expect(neutral!.stages.map((one) => [one.stage.id, one.isDriven])).toEqual([
      ["box", false],
      ["behind", false],
    ]);
  });
});

describe("the line of drive in its place", () => {
  it("lays nothing over anything, in any width, from either side", () => {
    fc.assert(
      fc.property(anyBuild, widths, fc.boolean(), (evaluation, width, isRightToLeft) => {
        const boxes = boxesOf(place(evaluation, width, isRightToLeft));
        const met: string[] = [];
        for (let n = 0; n < boxes.length; n++)
          for (let m = n + 1; m < boxes.length; m++)
            if (over(boxes[n]![1], boxes[m]![1])) met.push(`${boxes[n]![0]} over ${boxes[m]![0]}`);
        expect(met).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  it("keeps within its width, and within its height", () => {
    fc.assert(
      fc.property(anyBuild, widths, fc.boolean(), (evaluation, width, isRightToLeft) => {
        const line = place(evaluation, width, isRightToLeft);
        for (const [name, { x, y, width: wide, height }] of boxesOf(line)) {
          expect([name, x > -0.5 && y > -0.5 && x + wide < width + 0.5 && y + height < line.height + 0.5]).toEqual([
            name,
            true,
          ]);
        }
      }),
      { numRuns: 150 },
    );
  });

  it("draws gears between 24 and 160 pixels across, to one scale unless it says so", () => {
    fc.assert(
      fc.property(anyBuild, widths, (evaluation, width) => {
        const line = place(evaluation, width);
        for (const cell of line.cells) {
          const isInside = cell.marks.filter((mark) => mark.is === "wheel").some(({ tip, root }) => tip < root);
          for (const mark of cell.marks)
            if (mark.is === "wheel" && !isInside) {
              expect(2 * mark.pitch).toBeGreaterThanOrEqual(24 - 1e-6);
              expect(2 * mark.pitch).toBeLessThanOrEqual(160 + 1e-6);
            }
        }
        expect(line.scale).toBeGreaterThan(0);
      }),
      { numRuns: 100 },
    );
    const line = place(evaluated([pair("one", 15, 62, { module: "0.8" })], { rear: [] }), 1024);
    const [pinion, spur] = wheelsOf(line);
    expect(line.isToScale).toBe(true);
    expect(2 * pinion!.pitch).toBeCloseTo(15 * 0.8 * line.scale, 9);
    expect(2 * spur!.pitch).toBeCloseTo(62 * 0.8 * line.scale, 9);
  });

  it("has every stage once, along the line in the order of drive", () => {
    fc.assert(
      fc.property(anyBuild, widths, (evaluation, width) => {
        const line = place(evaluation, width);
        for (const { id, stages } of strandsOf(driveLineOf(evaluation))) {
          const cells = line.cells.filter(({ strand, key }) => strand === id && !key.includes(":"));
          expect(cells.map(({ key }) => key)).toEqual(stages.map((one) => one.stage.id));
          if (line.form !== "wrapped") {
            const along = cells.map(({ x, y }) => (line.form === "upright" ? y : x));
            expect(along).toEqual([...along].sort((one, other) => one - other));
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  it("has room for what is lettered on every shaft", () => {
    fc.assert(
      fc.property(anyBuild, widths, (evaluation, width) => {
        const line = place(evaluation, width);
        const lettered = line.shafts.flatMap(({ note, after }) => (note && after !== undefined ? [after] : []));
        const stages = line.cells.flatMap(({ key }) => (key.includes(":") ? [] : [key]));
        expect(lettered.sort()).toEqual(stages.sort());
      }),
      { numRuns: 100 },
    );
  });

  it("joins every thing to the next: no shaft ends in the open", () => {
    const evaluation = evaluated([pair("one", 15, 62), pair("two", 18, 45)], {
      front: [pair("front-ring", 13, 38)],
      rear: [pair("rear-ring", 12, 35)],
    });
    for (const width of [360, 900, 1500]) {
      const line = place(evaluation, width);
      const ends = line.shafts.map(({ points }) => points.at(-1)!);
      for (const { key, x, y } of line.cells)
        if (!key.startsWith("motor"))
          expect([key, ends.some((end) => Math.hypot(end[0] - x, end[1] - y) < 1)]).toEqual([key, true]);
    }
  });

  it("stands side by side where there is room, wraps where there is not, and upright where it is asked to", () => {
    const evaluation = evaluated([pair("one", 15, 62), pair("two", 18, 45)], {
      front: [pair("front-ring", 13, 38)],
      rear: [pair("rear-ring", 12, 35)],
    });
    expect([1500, 800, 375].map((width) => place(evaluation, width).form)).toEqual(["level", "wrapped", "upright"]);
  });

  it("puts a tooth of one gear in a space of the other", () => {
    const teeth = [18, 31, 45];
    const line = place(evaluated([{ id: "row", kind: "train", teeth, module: "0.8" }], { rear: [] }), 1024);
    const wheels = wheelsOf(line);
    expect(wheels.map((wheel) => wheel.teeth)).toEqual(teeth);
    const off = (wheel: (typeof wheels)[0], angle: number): number => {
      const steps = ((angle - wheel.phase) * wheel.teeth) / (2 * Math.PI);
      return steps - Math.floor(steps);
    };
    wheels.slice(1).forEach((wheel, n) => {
      // At the pitch point one has as much of a tooth as the other lacks, seen from the other side.
      const sum = off(wheels[n]!, 0) + off(wheel, Math.PI);
      expect(Math.abs(sum - Math.floor(sum) - 0.5)).toBeLessThan(1e-9);
    });
  });

  it("draws as many teeth as there are, and strokes of finite numbers for every kind", () => {
    const line = place(evaluated([pair("one", 15, 62, { module: "0.8" })], { rear: [] }), 1024);
    const [pinion] = wheelsOf(line);
    // Four corners a tooth.
    expect(strokesOf(pinion!)[0]!.path.split(/[ML]/).length - 1).toBe(4 * 15);
    fc.assert(
      fc.property(anyBuild, widths, (evaluation, width) => {
        for (const { marks } of place(evaluation, width).cells)
          for (const mark of marks)
            for (const { path } of strokesOf(mark)) expect(path).not.toMatch(/NaN|Infinity|undefined/);
      }),
      { numRuns: 40 },
    );
  });

  it("makes room beneath a thing: nothing lies in it, nothing is parted, and what stands lower is lower by as much", () => {
    fc.assert(
      fc.property(
        anyBuild,
        fc.constantFrom(320, 375, 640),
        fc.nat(),
        fc.constantFrom(0, 40, 300),
        (evaluation, width, n, height) => {
          const line = place(evaluation, width);
          const { key } = line.cells[n % line.cells.length]!;
          const opened = openedBeneath(line, key, height)!;
          const gap = { x: 0, y: opened.y, width, height };
          const before = new Map(boxesOf(line));
          const after = boxesOf(opened.line);
          expect(after.map(([name]) => name)).toEqual([...before.keys()]);
          const moves = new Set(after.map(([name, box]) => Math.round((box.y - before.get(name)!.y) * 1e6) / 1e6));
          expect([...moves].every((by) => by === 0 || by > height)).toBe(true);
          expect(moves.size).toBeLessThanOrEqual(2);
          expect(after.filter(([, box]) => over(box, gap))).toEqual([]);
          const own = opened.line.cells.find((cell) => cell.key === key)!;
          for (const { y, height: high } of [own.drawn, own.head, own.foot])
            expect(y + high).toBeLessThanOrEqual(gap.y);
          expect(opened.line.height).toBeGreaterThan(line.height);
          after.forEach(([name, box], m) =>
            after
              .slice(m + 1)
              .forEach(([other, another]) => expect(over(box, another), `${name}, ${other}`).toBe(false)),
          );
        },
      ),
      {
        numRuns: 60,
        // A note on the shaft that reaches over the edge of what stands above it.
        examples: [
          [made({ seeds: [0, 0, 2, 0, 146, 0], axles: 2, branched: false, own: false }), 320, 1913353437, 300],
        ],
      },
    );
    const [line] = [place(evaluated([pair("one", 15, 62)], { rear: [] }), 375)];
    expect(openedBeneath(line, "nobody", 40)).toBeUndefined();
  });
});
