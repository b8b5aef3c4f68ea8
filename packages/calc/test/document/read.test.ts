import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readBuild } from "../../src/document/index.js";
import { stageShapes } from "../../src/stages/index.js";
import { document, pair, told } from "../make.js";

const good = document([pair("primary", 15, 62)], { rear: [pair("rear-ring", 12, 35)] });
const kinds = Object.keys(stageShapes).join(", ");
const text = (json: unknown) => JSON.stringify(json);

/** The one finding that a document gives, with nothing built. */
function only(json: unknown) {
  const { build, findings } = readBuild(json);
  expect(build).toBeUndefined();
  expect(findings).toHaveLength(1);
  expect(findings[0]!.severity).toBe("error");
  return findings[0]!;
}

describe("JSON text", () => {
  it("is read as the data that it stands for", () => {
    expect(readBuild(text(good))).toEqual(readBuild(good));
    expect(readBuild(` \t\r\n${JSON.stringify(good, undefined, "\t")}\n`).build).toEqual(good);
    const escaped = text(good).replace('"primary"', '"\\u0070rimary"').replace('"rear-ring"', '"rear\\u002dring"');
    expect(readBuild(escaped).build).toEqual(good);
    expect(
      readBuild('{"x-\\u00e9\\n\\/\\"\\\\":[-0.5e+2,1E-3,true,false,null,{},[],""],' + text(good).slice(1)).build,
    ).toEqual({
      'x-é\n/"\\': [-50, 0.001, true, false, null, {}, [], ""],
      ...good,
    });
  });

  it.each([
    ["", "", "Line 1:1: found the end, expected a value."],
    ['{"format": }', "/format", 'Line 1:12: found "}", expected a value.'],
    ['{\n  "format": "meshwright-build/1",\n}', "", 'Line 3:1: found "}", expected a key in double quotes.'],
    ['{\r\n"title":\r\r"a" "b"}', "", 'Line 4:5: found "\\"b\\"}", expected "," or "}".'],
    ["[1, 2", "", 'Line 1:6: found the end, expected "," or "]".'],
    ["[1,]", "/1", 'Line 1:4: found "]", expected a value.'],
    ['{"stages":[{"id" 1}]}', "/stages/0/id", 'Line 1:18: found "1}]}", expected ":".'],
    ['{"title":"no end', "/title", "Line 1:17: found the end, expected the rest of a text and a closing quote."],
    [
      '{"title":"two\nlines"}',
      "/title",
      'Line 1:14: found "\\nlines\\"}", expected the rest of a text and a closing quote.',
    ],
    ['{"title":"\\x41"}', "/title", 'Line 1:11: found "\\\\x41\\"}", expected the rest of a text and a closing quote.'],
    ['{"title":"\\u12"}', "/title", 'Line 1:11: found "\\\\u12\\"}", expected the rest of a text and a closing quote.'],
    ["{'title': 1}", "", `Line 1:2: found "'title': 1}", expected a key in double quotes.`],
    ['{"a":01}', "", 'Line 1:7: found "1}", expected "," or "}".'],
    ['{"a":.5}', "/a", 'Line 1:6: found ".5}", expected a value.'],
    ['{"a":NaN}', "/a", 'Line 1:6: found "NaN}", expected a value.'],
    ["{} {}", "", 'Line 1:4: found "{}", expected the end.'],
    ["\ufeff{}", "", 'Line 1:1: found "\ufeff{}", expected a value.'],
    ["[1] // note", "", 'Line 1:5: found "// note", expected the end.'],
  ])("tells where %j stops being JSON", (json, at, message) => {
    expect(only(json)).toMatchObject({ severity: "error", about: "shape", code: "not-json", at, message });
  });

  it("is JSON exactly where JSON.parse says so", () => {
    const bits = [
      "{",
      "}",
      "[",
      "]",
      ",",
      ":",
      '"',
      "\\",
      "\\u00",
      "0",
      "-",
      ".",
      "e",
      "1",
      "true",
      "nul",
      " ",
      "\n",
      "\t",
      "\f",
      "\u0000",
      "x",
      "é",
    ];
    const spoil = fc.array(fc.record({ at: fc.nat(), cut: fc.nat(3), put: fc.constantFrom("", ...bits) }), {
      minLength: 0,
      maxLength: 3,
    });
    const parses = (json: string) => {
      try {
        JSON.parse(json);
        return true;
      } catch {
        return false;
      }
    };
    fc.assert(
      fc.property(fc.json({ maxDepth: 4 }), spoil, (json, changes) => {
        for (const { at, cut, put } of changes) {
          const place = at % (json.length + 1);
          json = json.slice(0, place) + put + json.slice(place + cut);
        }
        const { findings } = readBuild(json);
        const fault = findings.find((one) => one.code === "not-json");
        expect(fault === undefined || !parses(json)).toBe(true);
        expect(findings.every((one) => one.code !== "not-data")).toBe(true);
        if (!parses(json)) expect(["not-json", "key-repeated"]).toContain(findings[0]!.code);
      }),
      { numRuns: 2000 },
    );
  });

  it("finds a key that an object has twice, however it is written, at any depth", () => {
    expect(only('{"a":1,\n"\\u0061":2}')).toMatchObject({
      code: "key-repeated",
      at: "/a",
      message: 'Line 2:1: found the key "a" again, expected each key once.',
    });
    expect(only('{"x":[{"a/b":{"a":1,"b":{"a":1},"a":2}}]}')).toMatchObject({
      code: "key-repeated",
      at: "/x/0/a~1b/a",
    });
    expect(only('{"x":{"a":1},"y":{"a":1},"x":1}')).toMatchObject({ code: "key-repeated", at: "/x" });
    expect(only('{"__proto__":1,"__proto__":2}')).toMatchObject({ code: "key-repeated" });
    // The same key in objects beside, inside and around is no repetition.
    const nested = {
      ...good,
      "x-a": [{ a: 1 }, { a: { a: { a: 2 } } }],
      "x-b": {
        a: [
          { a: 1, b: 2 },
          { b: 1, a: 2 },
        ],
      },
    };
    expect(readBuild(text(nested)).build).toEqual(nested);
  });
});

describe("bad input", () => {
  const change = (act: (json: typeof good & Record<string, never>) => void) => {
    const json = structuredClone(good);
    act(json as never);
    return json;
  };
  it.each<[string, unknown, string, string]>([
    ["no object", 5, "not-an-object at ", "Expected an object, found 5."],
    ["null", null, "not-an-object at ", "Expected an object, found null."],
    ["a list", [], "not-an-object at ", "Expected an object, found a list of 0."],
    [
      "an unknown key",
      { ...good, outptus: [] },
      "unknown-key at /outptus",
      'There is no "outptus" here; nearest: outputs. Expected one of format, uses, title, revision, stages, centre, outputs, branches, modes, target, compare, wheelbase, …, or x-….',
    ],
    [
      "a count of 0",
      document([], { rear: [pair("a", 0, 10)] }),
      "not-count at /outputs/0/stages/0/driver",
      "Expected a whole number from 1 to 1000000, found 0.",
    ],
    [
      "a count of 1e9",
      document([], { rear: [pair("a", 1e9, 10)] }),
      "not-count at /outputs/0/stages/0/driver",
      "Expected a whole number from 1 to 1000000, found 1000000000.",
    ],
    [
      "a count and a half",
      document([], { rear: [pair("a", 22.5, 10)] }),
      "not-count at /outputs/0/stages/0/driver",
      "Expected a whole number from 1 to 1000000, found 22.5.",
    ],
    [
      "a count in words",
      document([], { rear: [pair("a", "fifteen" as never, 10)] }),
      "not-count at /outputs/0/stages/0/driver",
      'Expected a whole number from 1 to 1000000, found "fifteen".',
    ],
    [
      "no stages",
      change((json) => delete (json.outputs[0] as Record<string, unknown>).stages),
      "missing at /outputs/0",
      'Expected "stages", found nothing.',
    ],
    [
      "a kind that is none",
      document([{ id: "a", kind: "toroid" }], { rear: [] }),
      "unknown-kind at /stages/0/kind",
      `Expected one of ${kinds}, found "toroid".`,
    ],
    [
      "a kind that every object inherits",
      document([{ id: "a", kind: "constructor" }], { rear: [] }),
      "unknown-kind at /stages/0/kind",
      `Expected one of ${kinds}, found "constructor".`,
    ],
    [
      "a selected position that does not exist",
      document([{ id: "box", kind: "selectable", positions: [{ id: "low", stages: [] }], selected: "high" }], {
        rear: [],
      }),
      "position-missing at /stages/0/selected",
      'No position "high"; expected one of low.',
    ],
    [
      "a newer format",
      { ...good, format: "meshwright-build/2", anything: 1 },
      "newer-format at /format",
      "Written for meshwright-build/2; this reads meshwright-build/1.",
    ],
    [
      "a minor format that is none",
      { ...good, format: "meshwright-build/1.01" },
      "newer-format at /format",
      "Written for meshwright-build/1.01; this reads meshwright-build/1.",
    ],
    [
      "another format",
      { ...good, format: "gears/1" },
      "not-format at /format",
      'Expected "meshwright-build/1", found "gears/1".',
    ],
    ["no output", document([], {}), "not-a-list at /outputs", "Expected a list of 1 to 6, found a list of 0."],
    [
      "seven outputs",
      document([], { a: [], b: [], c: [], d: [], e: [], f: [], g: [] }),
      "not-a-list at /outputs",
      "Expected a list of 1 to 6, found a list of 7.",
    ],
    [
      "10,001 stages in one list",
      document([], { rear: Array.from({ length: 10_001 }, (_, n) => pair(`s${n}`, 10, 20)) }),
      "not-a-list at /outputs/0/stages",
      "Expected a list of 0 to 10000, found a list of 10001.",
    ],
    [
      "10,001 stages in two lists",
      document([pair("first", 10, 20)], { rear: Array.from({ length: 10_000 }, (_, n) => pair(`s${n}`, 10, 20)) }),
      "too-many-stages at /stages",
      "10001 stages, expected up to 10000.",
    ],
    ["text of another shape", "[]", "not-an-object at ", "Expected an object, found a list of 0."],
    [
      "a megabyte of text",
      { ...good, title: "x".repeat(1e6) },
      "not-text at /title",
      `Expected text of up to 5000 characters, found "${"x".repeat(40)}".`,
    ],
    [
      "an id in capitals",
      document([pair("Primary", 1, 2)], { rear: [] }),
      "not-id at /stages/0/id",
      'Expected an id of small letters, digits and single hyphens, a letter first, found "Primary".',
    ],
    [
      "a length without a unit",
      { ...good, wheelbase: "310" },
      "not-size at /wheelbase",
      'Expected a length above 0 such as "118 mm", found "310".',
    ],
    [
      "no flag",
      document([pair("a", 1, 2, { set: "yes" })], { rear: [] }),
      "not-a-flag at /stages/0/set",
      'Expected true or false, found "yes".',
    ],
    [
      "no choice",
      document([pair("a", 1, 2, { form: "conical" })], { rear: [] }),
      "not-a-choice at /stages/0/form",
      'Expected one of spur, helical, bevel, hypoid, crown, found "conical".',
    ],
    [
      "no list",
      document([{ id: "a", kind: "train", teeth: 18 }], { rear: [] }),
      "not-a-list at /stages/0/teeth",
      "Expected a list of 2 to 100, found 18.",
    ],
    [
      "a long number",
      { ...good, target: { from: 0.1 + 0.2, to: 1 } },
      "number-long at /target/from",
      expect.stringContaining("0.30000000000000004") as never,
    ],
    [
      "a number above all",
      { ...good, target: { from: Infinity, to: 1 } },
      "not-positive at /target/from",
      "Expected a number above 0 with up to 12 digits either side of the point, found Infinity.",
    ],
    [
      "an address that is none",
      { ...good, alternatives: [{ id: "a", changes: { "a b": 1 } }] },
      "not-an-address at /alternatives/0/changes/a b",
      'Expected an address such as rear-ring.driven, found "a b".',
    ],
  ])("%s", (_, json, place, message) => {
    const finding = only(json);
    expect(told([finding])).toEqual([place]);
    expect(finding.message).toEqual(message);
  });

  it("gathers what is wrong in one go", () => {
    const json = document([pair("a", 0, 1.5), { id: "b" }], { rear: {} }, { tilte: 1 });
    expect(told(readBuild(json).findings)).toEqual([
      "not-count at /stages/0/driver",
      "not-count at /stages/0/driven",
      "unknown-kind at /stages/1/kind",
      "unknown-key at /tilte",
    ]);
  });

  it("stops at a hundred findings, and never loses the error among warnings", () => {
    const nominal = Array.from({ length: 300 }, (_, n) => ({ id: `s${n}`, kind: "published", value: "19:1" }));
    expect(readBuild(document(nominal, { rear: [] })).findings).toHaveLength(100);
    expect(readBuild(document(nominal, { rear: [] })).build).toBeDefined();
    const { build, findings } = readBuild(document(nominal, { rear: [pair("s0", 1, 2)] }));
    expect(build).toBeUndefined();
    expect(findings.filter((one) => one.severity === "error").map((one) => one.code)).toEqual(["id-repeated"]);
  });
});

describe("what is carried along and what is left out", () => {
  it("keeps x- keys as they are, at every object, without sharing them", () => {
    const json = document(
      [pair("a", 1, 2, { "x-note": { deep: [1, { two: null }] } })],
      { rear: { "x-colour": "ink" } },
      { "x-author": "me" },
    );
    const { build } = readBuild(json);
    expect(build).toEqual(json);
    expect((build!.stages[0] as never)["x-note"]).not.toBe((json.stages[0] as never)["x-note"]);
  });

  it("reads counts in text, and fills in no more than the list of shared stages", () => {
    const { build } = readBuild({
      format: "meshwright-build/1.0",
      outputs: [{ id: "rear", stages: [pair("a", "15" as never, "062" as never)] }],
    });
    expect(build).toBeUndefined();
    const other = readBuild({
      format: "meshwright-build/1.0",
      outputs: [{ id: "rear", stages: [pair("a", "15" as never, "62" as never)] }],
    });
    expect(other.build).toEqual({
      format: "meshwright-build/1.0",
      stages: [],
      outputs: [{ id: "rear", stages: [pair("a", 15, 62)] }],
    });
  });

  it("takes undefined for nothing", () => {
    expect(readBuild({ ...good, title: undefined }).build).toEqual(good);
    expect(told(readBuild({ ...good, outputs: undefined }).findings)).toEqual(["missing at "]);
  });

  it("lets no key of an object's prototype in or through", () => {
    const json = `{"__proto__":{"polluted":1},${text(good).slice(1)}`;
    expect(told(readBuild(json).findings)).toEqual(["unknown-key at /__proto__"]);
    expect(told(readBuild(text(good).replace('"kind"', '"constructor":{"prototype":{}},"kind"')).findings)).toEqual([
      "unknown-key at /stages/0/constructor",
    ]);
    const carried = `{"x-a":{"__proto__":{"polluted":1}},${text(good).slice(1)}`;
    const { build } = readBuild(carried);
    expect((build as never)["x-a"]).not.toHaveProperty("polluted");
    expect(JSON.stringify(build)).toContain('{"__proto__":{"polluted":1}}');
    expect(({} as { polluted?: number }).polluted).toBeUndefined();
    const changes = `{"alternatives":[{"id":"a","changes":{"__proto__":{"polluted":1}}}],${text(good).slice(1)}`;
    expect(told(readBuild(changes).findings)).toEqual(["not-an-address at /alternatives/0/changes/__proto__"]);
  });
});

describe("what JSON cannot say", () => {
  const circle: Record<string, unknown> = { ...good };
  circle["x-self"] = circle;
  const wide: unknown[] = [];
  for (let n = 0, one: unknown = 1; n < 40; n++) wide[0] = one = [one, one];
  const deep = (depth: number) => {
    let value: unknown = 1;
    for (let n = 0; n < depth; n++) value = [value];
    return value;
  };
  const revoked = Proxy.revocable({}, {});
  revoked.revoke();

  it.each<[string, unknown, string]>([
    ["a circle", circle, "too-deep"],
    ["lists that share and share again", { ...good, "x-a": wide }, "too-deep"],
    ["a list without end", { ...good, "x-a": new Array(4e9) }, "too-deep"],
    ["nesting beyond measure", { ...good, "x-a": deep(100_000) }, "too-deep"],
    ["a function", { ...good, "x-a": () => 1 }, "not-a-value"],
    ["a symbol", { ...good, "x-a": Symbol("a") }, "not-a-value"],
    ["NaN", { ...good, "x-a": [NaN] }, "not-a-value"],
    ["a bigint", { ...good, "x-a": 1n }, "not-a-value"],
    ["nothing in a list", { ...good, "x-a": [undefined] }, "not-a-value"],
    ["a count that is a symbol", document([pair("a", Symbol("a") as never, 1)], { rear: [] }), "not-count"],
    [
      "a getter that throws",
      {
        ...good,
        get title() {
          throw new Error("no");
        },
      },
      "not-data",
    ],
    [
      "a format that throws",
      {
        get format() {
          throw new Error("no");
        },
      },
      "not-data",
    ],
    ["a proxy that was taken back", revoked.proxy, "not-data"],
    ["a function alone", () => 1, "not-an-object"],
    ["nothing at all", undefined, "not-an-object"],
    ["a date", new Date(0), "missing"],
  ])("%s is a finding", (_, json, code) => {
    const { build, findings } = readBuild(json);
    expect(build).toBeUndefined();
    expect(findings[0]!.code).toBe(code);
    expect(() => JSON.stringify(findings)).not.toThrow();
  });

  it("nesting up to a measure is carried along", () => {
    expect(readBuild({ ...good, "x-a": deep(200) }).build).toBeDefined();
    expect(readBuild(text({ ...good, "x-a": deep(200) })).build).toBeDefined();
  });

  it("stages nest fifty deep and no deeper", () => {
    const nested = (depth: number): Record<string, unknown> =>
      depth
        ? { id: `s${depth}`, kind: "selectable", selected: "a", positions: [{ id: "a", stages: [nested(depth - 1)] }] }
        : pair("last", 1, 2);
    expect(readBuild(document([nested(49)], { rear: [] })).build).toBeDefined();
    expect(readBuild(text(document([nested(49)], { rear: [] }))).build).toBeDefined();
    expect(told(readBuild(document([nested(50)], { rear: [] })).findings)).toEqual([
      `too-deep at /stages/0${"/positions/0/stages/0".repeat(50)}`,
    ]);
  });
});
