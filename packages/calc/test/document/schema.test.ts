import Ajv2020 from "ajv/dist/2020.js";
import fc from "fast-check";
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { scalars, buildSchema, readBuild } from "../../src/document/index.js";
import { isNewer } from "../../src/document/check.js";
import { shapes, stageShape } from "../../src/drivetrain/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { stageShapes, type StageKind } from "../../src/stages/index.js";

const root = new URL("../../../../", import.meta.url);
const validate = new Ajv2020.default({ allErrors: false }).compile(buildSchema());

/** Whether readBuild has nothing to say against the shape. What is written for a later minor version is none of this Schema's. */
const shapely = (json: unknown) =>
  !isNewer((json as { format?: unknown } | null)?.format) &&
  !readBuild(json).findings.some((one) => one.severity === "error" && one.about === "shape");

const hostile = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    true,
    false,
    0,
    -1,
    1,
    1.5,
    1e6,
    1e6 + 1,
    1e12,
    1e300,
    "",
    "0",
    "1",
    "01",
    "-1",
    "1.5",
    "0.0",
    "62/15",
    "1/0",
    "0/5",
    "15 mm",
    "0 mm",
    "4.65in",
    "1/8 in",
    "12 km",
    "2026-10-03",
    "2026-13-40",
    "2026-02-31",
    "1900-02-29",
    "118\u00a0mm",
    "118 \u202f in ",
    "a--b",
    "lipo",
    21,
    22,
    25,
    30,
  ),
  fc.constantFrom<unknown>(
    "meshwright-build/1",
    "meshwright-build/1.0",
    "meshwright-build/1.1",
    "meshwright-build/10",
    "meshwright-build/2",
    "meshwright-build/",
    "spur",
    "front",
    "Front",
    "-",
    "2.74",
    "19:1",
    "19 : 1",
    "52/19",
    "1000000",
    "1000001",
    "100",
    "101",
  ),
  fc.constantFrom<unknown>(
    "x".repeat(5000),
    "x".repeat(5001),
    "🦀".repeat(5000),
    "🦀".repeat(5001),
    "\ud800".repeat(5000),
    "\ud800".repeat(5001),
    "1".repeat(12),
    "1".repeat(13),
    `a${"b".repeat(99)}`,
    `a${"b".repeat(100)}`,
  ),
  fc.jsonValue({ maxDepth: 2 }),
);

const whole = { format: "meshwright-build/1", outputs: [{ id: "rear", stages: [] }] };

/** Text that fits a scalar, or a number that does. */
const good: Record<string, fc.Arbitrary<unknown>> = {
  id: fc.stringMatching(/^[a-z]([a-z0-9]|-[a-z0-9]){0,8}$/),
  text: fc.string({ maxLength: 12 }),
  date: fc.constantFrom("2026-10-03", "1999-12-31", "2024-02-29"),
  format: fc.constantFrom("meshwright-build/1", "meshwright-build/1.0"),
  count: fc.oneof(fc.integer({ min: 1, max: 1e6 }), fc.constantFrom("1", "15", "1000000")),
  sets: fc.oneof(fc.integer({ min: 1, max: 100 }), fc.constantFrom("1", "99", "100")),
  significant: fc.oneof(fc.integer({ min: 1, max: 21 }), fc.constantFrom("1", "21")),
  increment: fc.constantFrom(1, 5, 25, "2500", 5000),
  digits: fc.oneof(fc.integer({ min: 0, max: 100 }), fc.constantFrom("0", "100")),
  whole: fc.oneof(fc.nat(1e6), fc.constantFrom("0", "12")),
  amount: fc.oneof(fc.nat(1e6), fc.constantFrom("4.20", "0", 3.5)),
  currency: fc.constantFrom("EUR", "GBP"),
  positive: fc.oneof(fc.integer({ min: 1 }), fc.constantFrom("0.8", "62/15", 0.001, 2.5)),
  number: fc.oneof(fc.integer(), fc.constantFrom("-0.25", "0", "7/3")),
  length: fc.constantFrom("0 mm", "118 mm", "1/8 in", "3.72m", "118\u00a0mm"),
  size: fc.constantFrom("118 mm", "4.65 in", "0.5 cm", "1 ft", " 118\u2009mm"),
  ratio: fc.constantFrom("2.74", "52/19", "19:1", "1.5", "3"),
};

/** One in so many values, keys and lists is not as it should be. */
const spoiled = (arbitrary: fc.Arbitrary<unknown>): fc.Arbitrary<unknown> =>
  fc.oneof({ weight: 40, arbitrary }, { weight: 1, arbitrary: hostile });

function valueOf(shape: string, depth: number): fc.Arbitrary<unknown> {
  const name = shape.replace("!", "");
  const list = /^\[(.+)\](\d+)-(\d+)$/.exec(name);
  let arbitrary: fc.Arbitrary<unknown>;
  if (scalars[name]) {
    expect(good, `a generator for ${name}`).toHaveProperty(name);
    arbitrary = good[name]!;
  } else if (name === "flag") arbitrary = fc.boolean();
  else if (name === "any") arbitrary = fc.jsonValue({ maxDepth: 1 });
  else if (name === "stage") arbitrary = stage(depth - 1);
  // A build in a build, once: deeper ones would never end.
  else if (name === "build") arbitrary = depth < 1 ? fc.constant(whole) : object(shapes.build!, depth - 1);
  else if (list) {
    const [least, most] = [+list[2]!, Math.min(+list[3]!, +list[2]! + 2)];
    const item = valueOf(list[1]!, depth);
    arbitrary = fc.oneof(
      {
        weight: 30,
        arbitrary: fc.array(item, { minLength: least, maxLength: list[1] === "stage" && depth < 1 ? least : most }),
      },
      { weight: 1, arbitrary: fc.array(item, { maxLength: 8 }) },
    );
  } else if (name.startsWith("{"))
    arbitrary = fc.dictionary(
      fc.constantFrom("front", "primary.driver", "row.teeth.1", "a.b.c", "A", "a b", "a.b.c.d", "1"),
      valueOf(name.slice(1, -1), depth),
      { maxKeys: 2 },
    );
  else if (name.includes("|")) arbitrary = fc.constantFrom(...name.split("|"));
  else if (name === "span") arbitrary = fc.oneof(good.positive!, object(shapes.span!, depth));
  else arbitrary = object(shapes[name]!, depth);
  return spoiled(arbitrary);
}

function object(shape: Readonly<Record<string, string>>, depth: number): fc.Arbitrary<unknown> {
  const keys = Object.keys(shape);
  const required = keys.filter((key) => shape[key]!.endsWith("!"));
  return fc
    .record({
      fields: fc.record(Object.fromEntries(keys.map((key) => [key, valueOf(shape[key]!, depth)])), {
        requiredKeys: required,
      }),
      keep: fc.array(fc.nat(keys.length - 1), { maxLength: 4 }),
      lost: fc.oneof({ weight: 40, arbitrary: fc.constant(-1) }, { weight: 1, arbitrary: fc.nat(keys.length) }),
      extra: fc.oneof(
        { weight: 30, arbitrary: fc.constant({}) },
        { weight: 3, arbitrary: fc.constant({ "x-note": [1] }) },
        { weight: 1, arbitrary: fc.constant({ note: 1 }) },
      ),
    })
    .map(({ fields, keep, lost, extra }) => {
      const kept = new Set([...required, ...keep.map((n) => keys[n]!)]);
      kept.delete(required[lost]!);
      return { ...Object.fromEntries(Object.entries(fields).filter(([key]) => kept.has(key))), ...extra };
    });
}

const stage = (depth: number): fc.Arbitrary<unknown> =>
  fc.constantFrom(...(Object.keys(stageShapes) as StageKind[])).chain((kind) =>
    object({ ...stageShape(kind), ...(depth < 1 && { positions: "flag", spans: "flag" }) }, depth).map((fields) => ({
      ...(fields as object),
      kind,
    })),
  );

describe("the Schema", () => {
  it("is JSON, and says what it is for", () => {
    const schema = buildSchema();
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
    expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
  });

  it("accepts the starter builds and every build of the vectors, as readBuild does", () => {
    const seeds = readdirSync(new URL("seeds/", root))
      .filter((name) => name.endsWith(".json"))
      .map((name) => JSON.parse(readFileSync(new URL(`seeds/${name}`, root), "utf8")) as unknown);
    const vectors = JSON.parse(readFileSync(new URL("tests/vectors/builds.json", root), "utf8")) as {
      build: unknown;
    }[];
    for (const json of [...seeds, ...vectors.map((one) => one.build)]) {
      expect(validate(json), JSON.stringify(validate.errors)).toBe(true);
      expect(readBuild(json).build).toBeDefined();
    }
  });

  it("accepts and refuses the shape of generated documents exactly as readBuild does", () => {
    const counts = { accepted: 0, refused: 0, built: 0 };
    fc.assert(
      fc.property(valueOf("build", 2), (json) => {
        const accepted = validate(json);
        counts[accepted ? "accepted" : "refused"]++;
        const { build } = readBuild(json);
        if (build) {
          counts.built++;
          // Whatever is a build can be worked out, and read again as it is.
          expect(readBuild(JSON.stringify(build)).build).toEqual(build);
          for (const mode of [undefined, ...(build.modes ?? []).map((one) => one.id)]) {
            const evaluation = evaluate(build, mode);
            for (const one of evaluation.outputs)
              expect([one.bounds, one.travel?.bounds, one.standing, one.steps, one.groups]).toHaveLength(5);
            expect(evaluation.findings.every((one) => one.severity === "warning")).toBe(true);
          }
        }
        expect(shapely(json), `${JSON.stringify(validate.errors)} ${JSON.stringify(readBuild(json).findings)}`).toBe(
          accepted,
        );
      }),
      { numRuns: 1500 },
    );
    expect(counts.accepted).toBeGreaterThan(100);
    expect(counts.refused).toBeGreaterThan(100);
    expect(counts.built).toBeGreaterThan(50);
  });

  it.each(Object.keys(scalars))("agrees on every value that may be a %s", (name) => {
    const $ref = `#/$defs/${name}`;
    const check = new Ajv2020.default().compile({
      ...buildSchema(),
      properties: { value: { $ref } },
      required: ["value"],
      additionalProperties: false,
      patternProperties: {},
    });
    const homes: Record<string, (value: unknown) => unknown> = {
      id: (headline) => ({ headline }),
      text: (title) => ({ title }),
      date: (date) => ({ revision: { date } }),
      sets: (repeat) => ({
        stages: [
          { id: "a", kind: "planetary", sun: 1, ring: 3, fixed: "sun", input: "ring", output: "carrier", repeat },
        ],
      }),
      significant: (maximumSignificantDigits) => ({ rounding: { maximumSignificantDigits } }),
      increment: (roundingIncrement) => ({ rounding: { roundingIncrement } }),
      count: (cells) => ({ battery: { cells } }),
      digits: (minimumFractionDigits) => ({ rounding: { minimumFractionDigits } }),
      positive: (from) => ({ target: { from, to: 1 } }),
      number: (from) => ({ mounts: [{ stage: "a", pivot: { distance: "1 mm", arm: "1 mm", from, to: 1 } }] }),
      length: (closer) => ({ mounts: [{ stage: "a", closer }] }),
      size: (wheelbase) => ({ wheelbase }),
      format: (format) => ({ format }),
      ratio: (value) => ({ stages: [{ id: "a", kind: "published", value }] }),
    };
    const home = homes[name];
    if (!home) return;
    const values = fc.oneof(
      hostile,
      ...Object.values(good),
      fc.double(),
      fc.string({ unit: fc.constantFrom(..."0123456789./-: mincft") }),
    );
    fc.assert(
      fc.property(values, (value) => {
        const json = {
          format: "meshwright-build/1",
          outputs: [{ id: "rear", stages: [] }],
          ...(home(value) as object),
        };
        expect(shapely(json), JSON.stringify(value)).toBe(check({ value }));
      }),
      { numRuns: 300 },
    );
  });
});
