import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { buildFromAttributes } from "../../src/document/index.js";
import { evaluate } from "../../src/evaluate/index.js";
import { notations } from "../../src/stages/index.js";
import { fraction, read, told } from "../make.js";

const limpet = {
  title: "Limpet",
  stages: "Spur and pinion: 15 to 62; Gear row: 18 to 31 to 45",
  front: "Ring: 13 to 38; Hub: 15 to 22",
  rear: "Ring: 12 to 35; Hub: 16 to 23",
  "front-wheel": "124 mm",
  "rear-wheel": "120 mm",
  target: "38 to 46",
  compare: "front with rear",
};

/** The build of attributes that have no fault. */
function built(attributes: Record<string, string>) {
  const { build, findings } = buildFromAttributes(attributes);
  expect(findings.filter((one) => one.severity === "error")).toEqual([]);
  return build!;
}
const stagesOf = (stages: string) => built({ stages, rear: "" }).stages;

describe("a build written as attributes", () => {
  it("comes to the same figures as the document", () => {
    const here = evaluate(built(limpet));
    const there = evaluate(read(readFileSync(new URL("../../../../seeds/limpet.json", import.meta.url), "utf8")));
    for (const id of ["front", "rear"]) expect(fraction(here, id)).toBe(fraction(there, id));
    expect(here.compare()!.difference("tyres")!.toJSON()).toEqual(there.compare()!.difference("tyres")!.toJSON());
    expect(here.output("front")!.standing).toBe("inside");
  });

  it("is a document like any other", () => {
    expect(built(limpet)).toEqual({
      format: "meshwright-build/1",
      title: "Limpet",
      stages: [
        { id: "spur-and-pinion", label: "Spur and pinion", kind: "pair", driver: 15, driven: 62 },
        { id: "gear-row", label: "Gear row", kind: "train", teeth: [18, 31, 45] },
      ],
      outputs: [
        {
          id: "front",
          stages: [
            { id: "front-ring", label: "Ring", kind: "pair", driver: 13, driven: 38 },
            { id: "front-hub", label: "Hub", kind: "pair", driver: 15, driven: 22 },
          ],
          wheel: { diameter: "124 mm" },
        },
        {
          id: "rear",
          stages: [
            { id: "rear-ring", label: "Ring", kind: "pair", driver: 12, driven: 35 },
            { id: "rear-hub", label: "Hub", kind: "pair", driver: 16, driven: 23 },
          ],
          wheel: { diameter: "120 mm" },
        },
      ],
      target: { from: "38", to: "46" },
      compare: { of: "front", with: "rear" },
    });
  });

  it("knows every word", () => {
    expect(
      built({
        rear: "",
        "mid-wheel": "1/8 ft",
        "mid-motor": "2400kv",
        motor: "1850 KV",
        battery: "3 cells",
        centre: "differential",
        wheelbase: "310 mm",
        headline: "mid",
        target: "38.5 to 46 at rear",
      }),
    ).toEqual({
      format: "meshwright-build/1",
      stages: [],
      outputs: [
        { id: "rear", stages: [] },
        { id: "mid", stages: [], wheel: { diameter: "1/8 ft" }, motor: { kv: "2400" } },
      ],
      motor: { kv: "1850" },
      battery: { cells: 3 },
      centre: { kind: "differential" },
      wheelbase: "310 mm",
      headline: "mid",
      target: { from: "38.5", to: "46", output: "rear" },
    });
  });

  it.each([
    ["pair", "15 to 62", { driver: 15, driven: 62 }],
    ["train", "18 to 31 to 45", { teeth: [18, 31, 45] }],
    ["train", "18 to 31 to 31 to 45", { teeth: [18, 31, 31, 45] }],
    ["belt", "belt 20 to 60", { driver: 20, driven: 60 }],
    ["belt", "chain 9 to 30", { driver: 9, driven: 30, chain: true }],
    ["worm", "worm 1 to 40", { starts: 1, teeth: 40 }],
    ["planetary", "sun 12 in ring 60", { sun: 12, ring: 60, fixed: "ring", input: "sun", output: "carrier" }],
    [
      "planetary",
      "sun 12 in ring 60 x 3",
      { sun: 12, ring: 60, fixed: "ring", input: "sun", output: "carrier", repeat: 3 },
    ],
    ["published", "printed 1.5", { value: "1.5" }],
    ["published", "printed 52/19", { value: "52/19" }],
    ["published", "printed 19:1", { value: "19:1" }],
  ])("reads a %s: %s", (kind, text, fields) => {
    expect(stagesOf(text)).toEqual([{ id: "stage-1", kind, ...fields }]);
    expect(stagesOf(`The box: ${text.toUpperCase()}`)).toEqual([{ id: "the-box", label: "The box", kind, ...fields }]);
    // What a kind writes, it reads.
    const [stage] = stagesOf(text);
    expect(stagesOf(notations[stage!.kind]!.write(stage!))).toEqual([stage]);
  });

  it("takes further fields by name", () => {
    expect(
      stagesOf(
        "Spur: 15 to 62, module 0.8, group gearbox, driverLabel motor pinion; Box: printed 2.74, read truncated, reverses",
      ),
    ).toEqual([
      {
        id: "spur",
        label: "Spur",
        kind: "pair",
        driver: 15,
        driven: 62,
        module: "0.8",
        group: "gearbox",
        driverLabel: "motor pinion",
      },
      { id: "box", label: "Box", kind: "published", value: "2.74", read: "truncated", reverses: true },
    ]);
  });

  it("bears what editors do to text", () => {
    const typed = built(limpet);
    const edited = Object.fromEntries(
      Object.entries(limpet).map(([name, text]) => [
        name,
        `“${text.replace(/ /g, "\u00a0").replace(/; /g, " ;\n\t")}” `,
      ]),
    );
    expect(built(edited)).toEqual(typed);
    expect(stagesOf("Spur\u202fand\u2009pinion\u00a0: 15\u00a0to\u00a062")).toEqual(typed.stages.slice(0, 1));
    expect(stagesOf("Spur–pinion: 15 to 62")).toMatchObject([{ id: "spur-pinion", label: "Spur-pinion" }]);
    expect(stagesOf("Spur‑pinion’s: 15 to 62;")).toMatchObject([{ id: "spur-pinion-s", label: "Spur-pinion’s" }]);
  });

  it("makes ids from labels: stable, unique, and no other than an id may be", () => {
    const ids = (stages: string, rear = "") => {
      const build = built({ stages, rear });
      return [...build.stages, ...build.outputs[0]!.stages].map((one) => one.id);
    };
    expect(
      ids(
        "Rear: 1 to 2; A: 1 to 2; A: 1 to 2; a!: 1 to 2; Stage 2: 1 to 2; 1 to 2; 2: 1 to 2",
        "A: 1 to 2; 1 to 2; 1 to 2; 9: 1 to 2",
      ),
    ).toEqual(["rear-2", "a", "a-2", "a-3", "stage-2", "stage-6", "stage-7", "rear-a", "rear-2-2", "rear-3", "rear-4"]);
    expect(ids("Zahnrädchen №1: 1 to 2; Шестерня: 1 to 2; 歯車: 1 to 2")).toEqual([
      "zahnradchen-1",
      "stage-2",
      "stage-3",
    ]);
    expect(ids(`${"long ".repeat(40)}: 1 to 2`)[0]!.length).toBeLessThan(80);
    // Another stage before it does not rename a stage.
    expect(ids("New: 9 to 9; Spur: 15 to 62")).toContain("spur");
  });

  it("lets a label hold colons, digits and words", () => {
    expect(stagesOf("Step 2: 15 to 62")).toMatchObject([{ label: "Step 2", driver: 15 }]);
    expect(stagesOf("Note: box: printed 19:1")).toMatchObject([{ label: "Note: box", value: "19:1" }]);
    expect(stagesOf("From 1 to 2: 15 to 62")).toMatchObject([{ label: "From 1 to 2", driver: 15 }]);
  });
});

describe("attributes that are not understood", () => {
  const faults = (attributes: Record<string, string>) => {
    const { build, findings } = buildFromAttributes({ rear: "1 to 2", ...attributes });
    expect(build).toBeUndefined();
    return findings.map(({ at, message }) => `${at} ${message}`);
  };

  it.each([
    [{ stages: "15/62" }, '/stages Found "15/62", expected such as "Ring: 13 to 38".'],
    [{ stages: "Spur: 15-62" }, '/stages Found "Spur: 15-62", expected such as "Ring: 13 to 38".'],
    [{ stages: "Spur: 15 to" }, '/stages Found "Spur: 15 to", expected such as "Ring: 13 to 38".'],
    [{ stages: "Spur: -15 to 62" }, '/stages Found "Spur: -15 to 62", expected such as "Ring: 13 to 38".'],
    [
      { stages: "Spur: 15 to 62, modul 0.8" },
      '/stages Found "Spur: 15 to 62, modul 0.8", expected such as "Ring: 13 to 38".',
    ],
    [
      { stages: "Spur: 15 to 62, constructor 0.8" },
      '/stages Found "Spur: 15 to 62, constructor 0.8", expected such as "Ring: 13 to 38".',
    ],
    [{ front: "Ring: 13 by 38" }, '/front Found "Ring: 13 by 38", expected such as "Ring: 13 to 38".'],
    [{ target: "38-46" }, '/target Found "38-46", expected such as "38 to 46".'],
    [{ compare: "front/rear" }, '/compare Found "front/rear", expected such as "front with rear".'],
    [{ motor: "1850" }, '/motor Found "1850", expected such as "1850 kv".'],
    [{ battery: "3S" }, '/battery Found "3S", expected such as "3 cells".'],
    [{ centre: "" }, '/centre Found "", expected such as "spool".'],
    [{ "rear-wheel": "" }, '/rear-wheel Found "", expected such as "124 mm".'],
  ])("%j", (attributes, message) => expect(faults(attributes as never)).toEqual([message]));

  it("each piece has a finding of its own", () => {
    expect(faults({ stages: "a; 15 to 62; b", target: "?" })).toHaveLength(3);
  });

  it("what the document forbids is told of the attribute that says it", () => {
    const places = (attributes: Record<string, string>) => told(buildFromAttributes(attributes).findings);
    expect(
      places({ stages: "0 to 62", rear: "Ring: 13 to 2000000", "rear-wheel": "124", "front-motor": "0 kv" }),
    ).toEqual([
      "not-count at /stages/0/driver",
      "not-count at /rear/stages/0/driven",
      "not-size at /rear-wheel/diameter",
      "not-positive at /front-motor/kv",
    ]);
    expect(places({ rear: "", target: "46 to 38" })).toEqual(["range-backwards at /target"]);
    expect(places({ rear: "", compare: "front with rear" })).toEqual(["missing-reference at /compare/of"]);
    expect(places({ stages: "1 to 2" })).toEqual(["not-a-list at /outputs"]);
    expect(places({ "@click": "go()" })).toEqual(["not-understood at /@click"]);
    expect(places({ Rear: "" })).toEqual(["not-id at /Rear/id"]);
  });

  it("never throws, whatever comes", () => {
    for (const name of ["__proto__", "constructor", "wheel", "-wheel", "", "toString"])
      for (const value of ["", ":", ";", ",", "; :,", "1 to 2", null, undefined, 5, {}])
        expect(() => buildFromAttributes({ [name]: value as string })).not.toThrow();
    expect(told(buildFromAttributes({ stages: "; ; ;", rear: ";" }).findings)).toEqual([]);
  });
});
