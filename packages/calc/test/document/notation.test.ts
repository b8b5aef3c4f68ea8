import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { attributeFindings, buildFromAttributes, sealOf } from "../../src/document/index.js";
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
        stages: "",
        rear: "",
        "axle-mid": "",
        "axle-mid-wheel": "1/8 ft",
        "axle-mid-motor": "2400kv, 30000 rpm at most",
        motor: "1850 KV",
        battery: "3 cells LiPo, 2 parallel",
        controller: "12.6 V",
        centre: "differential: rear 3",
        wheelbase: "310 mm",
        headline: "mid",
        target: "38.5 to 46 at rear",
      }),
    ).toEqual({
      format: "meshwright-build/1",
      stages: [],
      outputs: [
        { id: "rear", stages: [] },
        { id: "mid", stages: [], wheel: { diameter: "1/8 ft" }, motor: { kv: "2400", maxRpm: "30000" } },
      ],
      motor: { kv: "1850" },
      battery: { cells: 3, chemistry: "lipo", parallel: 2 },
      controller: { maxVolts: "12.6" },
      centre: { kind: "differential", share: { rear: "3" } },
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
    // Cut where a word ends, so that a number behind it makes no second hyphen.
    const cut = `${"a".repeat(59)} b`;
    expect(ids(`${cut}: 1 to 2; ${cut}: 1 to 2`)).toEqual(["a".repeat(59), `${"a".repeat(59)}-2`]);
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
    const { build, findings } = buildFromAttributes({ stages: "", rear: "1 to 2", ...attributes });
    expect(build).toBeUndefined();
    return findings.map(({ at, message }) => `${at} ${message}`);
  };

  it.each([
    [{ stages: "15/62" }, '/stages stages: found "15/62", expected such as "Ring: 13 to 38".'],
    [{ stages: "Spur: 15-62" }, '/stages stages: found "Spur: 15-62", expected such as "Ring: 13 to 38".'],
    [{ stages: "Spur: 15 to" }, '/stages stages: found "Spur: 15 to", expected such as "Ring: 13 to 38".'],
    [{ stages: "Spur: -15 to 62" }, '/stages stages: found "Spur: -15 to 62", expected such as "Ring: 13 to 38".'],
    [
      { stages: "Spur: 15 to 62, modul 0.8" },
      '/stages stages: "modul 0.8" in "Spur: 15 to 62, modul 0.8" is not understood; nearest: module.',
    ],
    [
      { stages: "Spur: 15 to 62, constructor 0.8" },
      '/stages stages: "constructor 0.8" in "Spur: 15 to 62, constructor 0.8" is not understood.',
    ],
    [{ front: "Ring: 13 by 38" }, '/front front: found "Ring: 13 by 38", expected such as "Ring: 13 to 38".'],
    [{ target: "38-46" }, '/target target: found "38-46", expected such as "38 to 46".'],
    [{ compare: "front/rear" }, '/compare compare: found "front/rear", expected such as "front with rear".'],
    [{ motor: "1850" }, '/motor motor: found "1850", expected such as "1850 kv".'],
    [{ battery: "3S" }, '/battery battery: found "3S", expected such as "3 cells lipo".'],
    [{ centre: "" }, '/centre centre: found "", expected such as "spool".'],
    [{ "rear-wheel": "" }, '/rear-wheel rear-wheel: found "", expected such as "124 mm".'],
  ])("%j", (attributes, message) => expect(faults(attributes as never)).toEqual([message]));

  it("each piece has a finding of its own", () => {
    expect(faults({ stages: "a; 15 to 62; b", target: "?" })).toHaveLength(3);
  });

  it("what the document forbids is told of the attribute that says it", () => {
    const places = (attributes: Record<string, string>) => told(buildFromAttributes(attributes).findings);
    expect(
      places({ stages: "0 to 62", rear: "Ring: 13 to 2000000", "rear-wheel": "124", front: "", "front-motor": "0 kv" }),
    ).toEqual([
      "not-count at /stages/0/driver",
      "not-count at /rear/stages/0/driven",
      "not-size at /rear-wheel/diameter",
      "not-positive at /front-motor/kv",
    ]);
    expect(places({ stages: "", rear: "", target: "46 to 38" })).toEqual(["range-backwards at /target"]);
    expect(places({ stages: "", rear: "", compare: "front with rear" })).toEqual(["missing-reference at /compare/of"]);
    expect(places({ stages: "1 to 2" })).toEqual(["not-a-list at /outputs"]);
    expect(places({ stages: "Spur: 1 to 2", rear: "", mount: "Spur: 1 mm to 2 mm; Spurr: 1 mm to 2 mm" })).toEqual([
      "missing-reference at /mount/1/stage",
    ]);
    expect(places({ stages: "1 to 2", rear: "", "@click": "go()" })).toEqual([]);
  });

  it("never throws, whatever comes", () => {
    for (const name of ["__proto__", "constructor", "wheel", "-wheel", "", "toString"])
      for (const value of ["", ":", ";", ",", "; :,", "1 to 2", null, undefined, 5, {}])
        expect(() => buildFromAttributes({ [name]: value as string })).not.toThrow();
    expect(told(buildFromAttributes({ stages: "; ; ;", rear: ";" }).findings)).toEqual([]);
  });
});

describe("a name that is not known", () => {
  const build = { stages: "Spur and pinion: 15 to 62", front: "Ring: 13 to 38", rear: "Ring: 12 to 35" };
  const heard = (more: Record<string, string>) => buildFromAttributes({ ...build, ...more });

  it.each([
    ["fornt", "front"],
    ["reer", "rear"],
    ["stage", "stages"],
    ["taget", "target"],
    ["fornt-wheel", "front-wheel"],
    ["rear-whel", "rear-wheel"],
    ["moter", "motor"],
    ["titel", "title"],
    ["cente", "centre"],
    ["scr", "src"],
  ])("%s is told as %s, and there is no build", (name, nearest) => {
    const { ok, findings } = heard({ [name]: "38 to 46" });
    expect(ok).toBe(false);
    expect(findings[0]).toMatchObject({ code: "unknown-attribute", at: `/${name}`, values: { nearest: [nearest] } });
    expect(findings[0]!.message).toContain(`nearest: ${nearest}`);
  });

  it("is an axle only by that name", () => {
    expect(told(heard({ mid: "Ring: 12 to 35" }).findings)).toEqual(["unknown-attribute at /mid"]);
    expect(heard({ tail: "Ring: 12 to 35" }).findings[0]!.message).toContain("another axle is axle-tail");
    expect(heard({ "axle-tail": "Ring: 12 to 35" }).build!.outputs.map(({ id }) => id)).toEqual([
      "front",
      "rear",
      "tail",
    ]);
    expect(heard({ "trailing-wheel": "120 mm" }).ok).toBe(false);
    expect(heard({ "axle-second-rear": "1 to 2", "axle-second-rear-wheel": "90 mm" }).build!.outputs[2]).toMatchObject({
      id: "second-rear",
      wheel: { diameter: "90 mm" },
    });
  });

  it("that means nothing here is a warning, and the page's own is nothing at all", () => {
    const { ok, findings } = heard({ zoetrope: "7" });
    expect(ok).toBe(true);
    expect(findings).toMatchObject([{ severity: "warning", code: "unknown-attribute", at: "/zoetrope" }]);
    const names =
      "class id style lang dir hidden part slot title data-x aria-label onclick v-if x-data :class @click [foo] (bar) _nghost-abc hx-get wire:model ng-if #tag on:click".split(
        " ",
      );
    expect(heard(Object.fromEntries(names.map((name) => [name, "x"]))).findings).toEqual([]);
  });
});

describe("what arrives half", () => {
  const whole: Record<string, string> = {
    stages: "Spur and pinion: 15 to 62; Gear row: 18 to 31 to 45",
    front: "Ring: 13 to 38; Hub: 15 to 22",
    rear: "Ring: 12 to 35; Hub: 16 to 23",
    "front-wheel": "124 mm",
    "rear-wheel": "120 mm",
    target: "38 to 46",
  };
  const without = (names: readonly string[], from = whole) =>
    Object.fromEntries(Object.entries(from).filter(([name]) => !names.includes(name)));

  it("is no build without its list of stages", () => {
    expect(told(buildFromAttributes(without(["stages"])).findings)).toEqual(["stages-missing at /stages"]);
    expect(buildFromAttributes({ ...whole, stages: "" }).ok).toBe(true);
  });

  it("is no build where an axle is known by its wheel or motor alone", () => {
    expect(told(buildFromAttributes(without(["rear"])).findings)).toEqual(["axle-without-stages at /rear-wheel"]);
    expect(buildFromAttributes(without(["stages", "front", "rear"])).ok).toBe(false);
    expect(told(buildFromAttributes({ stages: "", "front-motor": "1850 kv" }).findings)).toEqual([
      "axle-without-stages at /front-motor",
    ]);
  });

  it("does not fit its seal, whatever was lost or changed", () => {
    const sealed = { ...whole, seal: sealOf(whole) };
    expect(buildFromAttributes(sealed)).toMatchObject({ ok: true, findings: [] });
    for (let subset = 1; subset < 2 ** 6; subset++) {
      const lost = Object.keys(whole).filter((_, n) => subset & (1 << n));
      expect(told(buildFromAttributes(without(lost, sealed)).findings), lost.join()).toContain("seal-broken at /seal");
    }
    expect(buildFromAttributes({ ...sealed, front: "Ring: 13 to 38" }).ok).toBe(false);
    expect(
      buildFromAttributes({ ...sealed, front: "Ring:\u00a013 to\u2009\u200b38;  Hub: 15 to 22", class: "x" }).ok,
    ).toBe(true);
    expect(buildFromAttributes({ ...sealed, seal: "aaaaa" }).findings[0]!.code).toBe("seal-broken");
  });

  it.each([
    "Ring: 13 to 38, Hub: 15 to 22",
    "Ring: 13 to 38 Hub: 15 to 22",
    "Ring: 13 to 38. Hub: 15 to 22",
    "Ring: 13 to 38: Hub: 15 to 22",
    "13 to 38, Hub: 15 to 22",
    "Box: printed 2.6, Hub: 15 to 22",
    "Set: sun 18 in ring 60, Hub: 15 to 22",
    "Row: 18 to 31 to 45, Hub: 15 to 22",
  ])("tells of a stage that a label has swallowed: %s", (rear) => {
    const { ok, findings } = buildFromAttributes({ stages: "", rear });
    expect(ok).toBe(false);
    expect(told(findings)).toEqual(["stage-swallowed at /rear"]);
  });
});

describe("what a short article needs can be said", () => {
  it.each([
    ["Ring: 13 to 38, bevel", { form: "bevel" }],
    ["Ring: 13 to 38, hypoid, set", { form: "hypoid", set: true }],
    ["Ring: 14 to 50, internal", { internal: true }],
    ["Spur: 15 to 62, 48 DP", { diametralPitch: "48" }],
    ["Spur: 15 to 62, reverses", { reverses: true }],
    ["Spur: 15 to 62, reverses not", { reverses: false }],
    ["Spur: 15 to 62, per axle", { per: "axle" }],
    ["Box: printed 2.61, truncated", { read: "truncated" }],
  ])("%s", (rear, fields) => expect(built({ stages: "", rear }).outputs[0]!.stages).toMatchObject([fields]));

  it("mounts by their ends, or by a pair that is known to mesh", () => {
    const stages = "Spur and pinion: 15 to 62, module 0.8; Row: 18 to 31 to 45";
    const mounts = (mount: string) => built({ stages, rear: "", mount }).mounts;
    expect(mounts("Spur and pinion: 30.3 mm to 31.3 mm, opening 0.05 mm")).toEqual([
      { stage: "spur-and-pinion", from: "30.3 mm", to: "31.3 mm", opening: "0.05 mm" },
    ]);
    expect(mounts("spur-and-pinion: 1.193 to 1.232 in")).toEqual([
      { stage: "spur-and-pinion", from: "1.193 in", to: "1.232 in" },
    ]);
    expect(mounts("Spur and pinion: known pair 23 to 53, closer 0.1 mm, farther 0.9 mm")).toEqual([
      { stage: "spur-and-pinion", knownPair: [23, 53], closer: "0.1 mm", farther: "0.9 mm" },
    ]);
    expect(told(buildFromAttributes({ stages, rear: "", mount: "Spur: 30 mm to 31 mm" }).findings)).toEqual([
      "missing-reference at /mount/0/stage",
    ]);
    expect(told(buildFromAttributes({ stages, rear: "", mount: "wide" }).findings)).toEqual([
      "not-understood at /mount",
    ]);
  });

  it("wheels under weight, or by the ground that they rolled", () => {
    const wheel = (text: string) => built({ stages: "", rear: "", "rear-wheel": text }).outputs[0]!.wheel;
    expect(wheel("118 mm under weight")).toEqual({ loadedDiameter: "118 mm" });
    expect(wheel("10 turns 3.71 m")).toEqual({ travel: { turns: "10", length: "3.71 m" } });
  });

  it("eight thousand stages of one label get ids of their own", () => {
    const stages = Array.from({ length: 8000 }, () => "Hub: 15 to 22").join(";");
    const { build } = buildFromAttributes({ stages, rear: "" });
    expect(new Set(build!.stages.map(({ id }) => id)).size).toBe(8000);
    expect(build!.stages[7999]!.id).toBe("hub-8000");
  });
});

describe("the names of an element's attributes", () => {
  it.each([
    ["mw-value", "figur", "figure"],
    ["mw-value", "off", "of"],
    ["mw-value", "unti", "unit"],
    ["mw-teeth", "mni", "min"],
    ["mw-working", "buld", "build"],
  ] as const)("%s %s: nearest %s", (tag, name, nearest) => {
    expect(attributeFindings(tag, [name])).toMatchObject([
      {
        severity: "error",
        code: "unknown-attribute",
        at: `/${name}`,
        values: { nearest: expect.arrayContaining([nearest]) as unknown },
      },
    ]);
  });

  it("pass where they are the element's own, every element's, or the page's", () => {
    expect(attributeFindings("mw-value", ["figure", "of", "build", "class", "title", "data-x", "v-on:click"])).toEqual(
      [],
    );
    expect(attributeFindings("mw-value", ["colour"])).toMatchObject([{ severity: "warning" }]);
    expect(attributeFindings("p", ["figur"])).toEqual([]);
  });
});

describe("words that are understood in part", () => {
  const heard = (more: Record<string, string>) => buildFromAttributes({ stages: "Spur: 15 to 62", rear: "", ...more });
  const faults = (more: Record<string, string>) => told(heard(more).findings);

  it.each([
    ["motor", "1850 kv, most rpm"],
    ["centre", "differential: front"],
    ["centre", "differential: front 2,"],
    ["wheelbase", ""],
    ["headline", ""],
    ["lengths", ""],
    ["mount", "Spur: between here and there"],
    ["mount", "Spur: 30 mm to 31 mm, somehow"],
    ["mount", "Spur: 30 mm to 31 mm; 30 mm"],
    ["mount", "30 mm to 31 mm"],
  ])("are an error at %s: %s", (name, text) => {
    expect(faults({ [name]: text })).toEqual([`not-understood at /${name}`]);
  });

  it.each(["15 to 62, module", "15 to 62, reverses maybe", "15 to 62, modul 0.8"])(
    "of a stage name the field that is not understood: %s",
    (rear) => {
      const { findings } = heard({ rear });
      expect(told(findings)).toEqual(["unknown-field at /rear"]);
      expect(findings[0]!.values.found).toBe(JSON.stringify(rear.split(", ")[1]));
    },
  );

  it("say the unit once for both ends of a mount, and its other fields by name", () => {
    const mounts = (mount: string) => heard({ mount }).build!.mounts;
    expect(mounts("Spur: 30 to 31 mm")).toEqual([{ stage: "spur", from: "30 mm", to: "31 mm" }]);
    expect(mounts("Spur: 30mm to 31mm, opening 0.1 mm;")).toEqual([
      { stage: "spur", from: "30mm", to: "31mm", opening: "0.1 mm" },
    ]);
    // No unit at all is for the check of the build to tell.
    expect(faults({ mount: "Spur: 30 to 31" })).toEqual(["not-size at /mount/0/from", "not-size at /mount/0/to"]);
    expect(mounts("")).toEqual([]);
  });

  it("say a centre by its kind alone, a flag by its name and its opposite, volts as well as turns", () => {
    expect(heard({ centre: "spool" }).build!.centre).toEqual({ kind: "spool" });
    expect(heard({ lengths: "in" }).build!.lengths).toBe("in");
    expect(heard({ motor: "1850 kv, 30000 rpm at most, 12.6 V at most" }).build!.motor).toEqual({
      ...{ kv: "1850", maxRpm: "30000", maxVolts: "12.6" },
    });
    expect(
      heard({ rear: "Ring: 12 to 35, reverses not; Hub: 16 to 23, reverses" }).build!.outputs[0]!.stages,
    ).toMatchObject([{ reverses: false }, { reverses: true }]);
  });
});

describe("what is said twice", () => {
  const heard = (more: Record<string, string>) =>
    buildFromAttributes({ stages: "Spur: 15 to 62, module 0.8", rear: "", ...more });

  it.each([
    ["stages", "15 to 62, driver 20"],
    ["stages", "15 to 62, module 0.8, module 1"],
    ["stages", "15 to 62, 32 dp, 48 dp"],
    ["stages", "15 to 62, spur, bevel"],
    ["stages", "15 to 62, internal, internal not"],
    ["rear", "Ring: 12 to 35, left, right"],
    ["rear", "printed 2.74, rounded, truncated"],
    ["rear", "sun 18 in ring 60, ring 80"],
    ["mount", "Spur: 30 mm to 31 mm, from 20 mm"],
    ["mount", "Spur: known pair 15 to 62, closer 0.1 mm, closer 0.2 mm"],
  ])("in %s is told, not chosen from: %s", (name, text) => {
    const { findings } = heard({ [name]: text });
    expect(told(findings)).toEqual([`word-repeated at /${name}`]);
    expect(findings[0]!.message).toContain(JSON.stringify(text.slice(text.lastIndexOf(", ") + 2)));
  });

  it("of an axle under both of its names, of its wheel, and of an axle's part of the torque", () => {
    const faults = (more: Record<string, string>) => told(heard(more).findings);
    expect(faults({ "axle-rear": "A: 1 to 2" })).toEqual(["id-repeated at /axle-rear"]);
    expect(faults({ "rear-wheel": "124 mm", "axle-rear-wheel": "90 mm" })).toEqual(["id-repeated at /axle-rear-wheel"]);
    expect(faults({ front: "", centre: "differential: front 2, front 3, rear 4" })).toEqual([
      "not-understood at /centre",
    ]);
  });

  it("of a mount's label that two stages share asks for an id", () => {
    const rings = { front: "Ring: 13 to 38, module 1", rear: "Ring: 12 to 35, module 1" };
    const { findings } = heard({ ...rings, mount: "ring: 23 mm to 24 mm" });
    expect(told(findings)).toEqual(["label-shared at /mount"]);
    expect(findings[0]!.message).toBe(
      'mount: "ring" is what several stages are called; expected the id of one: rear-ring, front-ring.',
    );
    expect(heard({ ...rings, mount: "rear-ring: 23 mm to 24 mm" }).build!.mounts).toMatchObject([
      { stage: "rear-ring" },
    ]);
  });
});
