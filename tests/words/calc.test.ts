import { attributeFindings, buildFromAttributes, elementAttributes, readBuild } from "@meshwright/calc/document";
import { spotOf, valueAt } from "@meshwright/calc/drivetrain";
import { addressFault, checkQuery } from "@meshwright/calc/report";
import { notations, stageShapes, type Finding, type StageKind } from "@meshwright/calc/stages";
import { describe, expect, it } from "vitest";
import { buildAt } from "../../packages/calc/src/document/index.js";
import { axleNames, axleParts, buildWords } from "../../packages/calc/src/document/notation-names.js";
import { chemistryNames } from "../../packages/calc/src/drivetrain/chemistry.js";
import { shapes, stageShape } from "../../packages/calc/src/drivetrain/shapes.js";
import { asked } from "./queries.js";
import { sample, versions } from "./sample.js";
import { lettersOf, nearWords, slipsOf } from "./slips.js";

type Data = Record<string, unknown>;

const isSame = (one: readonly string[], other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

/**
 * Tries a word with every slip: each has to be told with the nearest words, unless it is a word itself.
 *
 * @param told the finding about a slip; several slips may be tried at once
 */
function tryAll(
  word: string,
  words: readonly string[],
  told: (slips: readonly string[]) => readonly (Finding | undefined)[],
  isWord = (slip: string): boolean => words.includes(slip),
  atOnce = 1,
): void {
  const slips = slipsOf(word, lettersOf(words)).filter((slip) => !isWord(slip));
  expect(slips.length).toBeGreaterThan(25);
  const wrong: string[] = [];
  for (let at = 0; at < slips.length; at += atOnce) {
    const some = slips.slice(at, at + atOnce);
    const found = told(some);
    some.forEach((slip, n) => {
      const near = nearWords(slip, words);
      const finding = found[n];
      if (!finding || !isSame(near, finding.values.nearest))
        wrong.push(`${slip}: ${finding ? finding.message : "nothing"}; nearest: ${near.join(", ")}`);
      else if (!finding.message.includes(near.join(", "))) wrong.push(`${slip}: ${finding.message}`);
    });
  }
  expect(wrong.slice(0, 20).join("\n")).toBe("");
}

const cases = <T extends { readonly word: string }>(list: readonly T[], name: (one: T) => string) =>
  list.map((one) => [name(one), one] as const);

describe("a query", () => {
  it.each(cases(asked(), ({ field, word, query }) => `${String(query.figure ?? "")} ${field}=${word}`))(
    "%s",
    (_, { field, word, words, query }) => {
      tryAll(word, words, ([slip]) => [
        checkQuery({ ...query, [field]: slip }, sample).find(({ at }) => at === `/${field}`),
      ]);
    },
  );

  const addresses = [
    ...["primary", "front-ring", "rear-ring"].flatMap((id) => [`${id}.driver`, `${id}.driven`, `${id}.module`]),
    ...["row.teeth.0", "row.teeth.2", "front.wheel.diameter", "target.from", "battery.cells", "motor.kv", "wheelbase"],
  ];
  it.each(addresses)("of=%s", (address) => {
    const isThere = (slip: string) => spotOf(sample, slip) !== undefined || valueAt(sample, slip) !== undefined;
    const slips = slipsOf(address, lettersOf(addresses)).filter((slip) => !isThere(slip));
    const wrong = slips.flatMap((slip) => {
      const [finding] = checkQuery({ figure: "count", of: slip }, sample);
      const nearest = (finding?.values.nearest ?? []) as readonly string[];
      const areThere = nearest.every((one) => addressFault(sample, one) === undefined);
      return areThere && (nearest.includes(address) || nearest.length === 3)
        ? []
        : [`${slip}: ${finding?.message ?? "nothing"}`];
    });
    expect(wrong.slice(0, 20).join("\n")).toBe("");
  });
});

describe("a version", () => {
  it.each(versions)("%s", (word) => {
    tryAll(word, versions, ([slip]) => [buildAt(sample, slip!).findings[0]]);
  });
});

const notationWords = [
  ...buildWords,
  ...axleNames.flatMap((axle) => [axle, ...axleParts.map((part) => `${axle}-${part}`)]),
];

describe("an attribute", () => {
  const elements = Object.entries(elementAttributes).filter(([tag]) => tag !== "mw-build");
  const names = elements.flatMap(([tag, own]) =>
    [...own, "build"].map((word) => ({ tag, word, words: [...own, "build"] })),
  );
  it.each(cases(names, ({ tag, word }) => `${tag} ${word}`))("%s", (_, { tag, word, words }) => {
    // An id names an element, whatever else stands near.
    tryAll(
      word,
      words,
      (slips) => {
        const findings = attributeFindings(tag, slips);
        return slips.map((slip) => findings.find(({ at, severity }) => at === `/${slip}` && severity === "error"));
      },
      (slip) => words.includes(slip) || isHtml(slip),
      100,
    );
  });

  const words = [...elementAttributes["mw-build"], "build", ...notationWords];
  it.each(words)("mw-build %s", (word) => {
    tryAll(
      word,
      words,
      (slips) =>
        slips.map((slip) => {
          const { ok, findings } = buildFromAttributes({ stages: "", rear: "Ring: 12 to 35", [slip]: "1" });
          return ok ? undefined : findings.find(({ at, code }) => at === `/${slip}` && code === "unknown-attribute");
        }),
      (slip) => words.includes(slip) || isHtml(slip),
      100,
    );
  });
});

/** Names that HTML gives to every element, or a framework's with its sign. */
const isHtml = (name: string): boolean =>
  /^(?:is|id|key|ref|dir|lang|part|slot|title|[@:#*_[(].*|.*[.[\]()@:].*)$/.test(name);

const ring: Data = { id: "ring", kind: "pair", driver: 12, driven: 35 };
const rear: Data = { id: "rear", stages: [ring] };
const made = (more: Data): Data => ({ format: "meshwright-build/1", outputs: [rear], ...more });
const mounted = (more: Data) => made({ mounts: [{ stage: "ring", ...more }] });

/** A document in which an object of a shape stands. */
const holders: Readonly<Record<string, (one: Data) => Data>> = {
  build: (one) => made(one),
  revision: (one) => made({ revision: one }),
  earlier: (one) => made({ revisions: [one] }),
  change: (one) => made({ revisions: [{ number: 1, back: [one] }] }),
  split: (one) => made({ centre: one }),
  output: (one) => made({ outputs: [one] }),
  branch: (one) => made({ branches: [one] }),
  mode: (one) => made({ modes: [one] }),
  target: (one) => made({ target: one }),
  compare: (one) => made({ compare: one }),
  wheel: (one) => made({ outputs: [{ ...rear, wheel: one }] }),
  rolled: (one) => made({ outputs: [{ ...rear, wheel: { travel: one } }] }),
  motor: (one) => made({ motor: one }),
  battery: (one) => made({ battery: one }),
  controller: (one) => made({ controller: one }),
  mount: mounted,
  line: (one) => mounted({ line: one }),
  pivot: (one) => mounted({ pivot: one }),
  wall: (one) => mounted({ walls: [one] }),
  circle: (one) => mounted({ hubHoles: [one] }),
  rounding: (one) => made({ rounding: one }),
  alternative: (one) => made({ alternatives: [one] }),
  reference: (one) => made({ references: [one] }),
  measurement: (one) => made({ measurements: [one] }),
  span: (one) => made({ measurements: [{ what: "rear", motorTurns: 1, wheelTurns: one }] }),
  position: (one) => made({ stages: [{ id: "box", kind: "selectable", selected: "a", positions: [one] }] }),
  part: (one) => made({ parts: [one] }),
  price: (one) => made({ parts: [{ id: "p", is: "other", price: one }] }),
};

const kinds = Object.keys(stageShapes) as StageKind[];
const objects = [
  ...Object.entries(shapes).map(([name, shape]) => ({ name, shape, hold: holders[name]! })),
  ...kinds.map((kind) => ({
    name: `${kind} stage`,
    shape: stageShape(kind),
    hold: (one: Data) => made({ stages: [{ kind, ...one }] }),
  })),
];

describe("a document", () => {
  it("has a place here for every object", () => {
    expect(Object.keys(holders).sort()).toEqual(Object.keys(shapes).sort());
  });

  const keys = objects.flatMap(({ name, shape, hold }) =>
    Object.keys(shape).map((word) => ({ name, word, words: Object.keys(shape), hold })),
  );
  it.each(cases(keys, ({ name, word }) => `${name} ${word}`))("%s", (_, { word, words, hold }) => {
    tryAll(
      word,
      words,
      (slips) => {
        const { findings } = readBuild(hold(Object.fromEntries(slips.map((slip) => [slip, 1]))));
        const told = new Map(findings.map((one) => [one.code === "unknown-key" ? one.values.found : "", one]));
        return slips.map((slip) => told.get(JSON.stringify(slip)));
      },
      (slip) => words.includes(slip) || slip.startsWith("x-"),
      80,
    );
  });

  const choices = objects.flatMap(({ name, shape, hold }) =>
    Object.entries(shape).flatMap(([field, letters]) => {
      const words = letters.includes("|") ? letters.replace("!", "").split("|") : [];
      return words.map((word) => ({ name, field, word, words, hold }));
    }),
  );
  it.each(cases(choices, ({ name, field, word }) => `${name} ${field} "${word}"`))(
    "%s",
    (_, { field, word, words, hold }) => {
      tryAll(word, words, ([slip]) => [
        readBuild(hold({ [field]: slip })).findings.find(
          ({ at, code }) => code === "not-a-choice" && at.endsWith(`/${field}`),
        ),
      ]);
    },
  );

  it.each(kinds)("kind %s", (word) => {
    tryAll(word, kinds, ([slip]) => [
      readBuild(made({ stages: [{ id: "a", kind: slip }] })).findings.find(({ code }) => code === "unknown-kind"),
    ]);
  });

  const uses = [
    ...new Set([
      ...kinds,
      ...Object.values(shapes).flatMap((one) => Object.keys(one)),
      ...kinds.flatMap((one) => Object.keys(stageShapes[one])),
    ]),
  ];
  it.each(kinds)("uses %s", (word) => {
    tryAll(
      word,
      uses,
      (slips) => {
        const { findings } = readBuild(made({ uses: slips }));
        return slips.map((slip) =>
          findings.find(({ values, code }) => code === "unknown-use" && values.found === JSON.stringify(slip)),
        );
      },
      (slip) => uses.includes(slip),
      50,
    );
  });

  const references: Readonly<Record<string, readonly [words: readonly string[], document: (id: string) => Data]>> = {
    headline: [["front", "rear"], (id) => ({ headline: id })],
    "target.output": [["front", "rear"], (id) => ({ target: { from: 1, to: 2, output: id } })],
    "compare.of": [["front", "rear"], (id) => ({ compare: { of: id, with: "rear" } })],
    "mounts.stage": [
      ["primary", "front-ring", "rear-ring"],
      (id) => ({ mounts: [{ stage: id, from: "1 mm", to: "2 mm" }] }),
    ],
    "measurements.what": [["front", "rear"], (id) => ({ measurements: [{ what: id, motorTurns: 1, wheelTurns: 1 }] })],
    fitted: [
      ["pinion-a", "pinion-b"],
      (id) => ({
        stages: [{ ...ring, id: "primary", fitted: [id] }],
        parts: ["pinion-a", "pinion-b"].map((one) => ({ id: one, is: "pinion", teeth: 12 })),
      }),
    ],
    selected: [
      ["low", "high"],
      (id) => ({
        stages: [
          ring,
          {
            id: "box",
            kind: "selectable",
            selected: id,
            positions: ["low", "high"].map((one) => ({ id: one, released: "free" })),
          },
        ],
      }),
    ],
    sameAs: [
      ["hub-a", "hub-b"],
      (id) => ({
        stages: [
          ...["hub-a", "hub-b"].map((one) => ({ id: one, kind: "published", value: "2.5" })),
          { id: "third", kind: "published", value: "2.5", sameAs: id },
        ],
      }),
    ],
  };
  const ids = Object.entries(references).flatMap(([name, [words, document]]) =>
    words.map((word) => ({ name, word, words, document })),
  );
  it.each(cases(ids, ({ name, word }) => `${name} ${word}`))("%s", (_, { word, words, document }) => {
    const axle = (id: string, stage: string) => ({ id, stages: [{ ...ring, id: stage }] });
    const base = {
      stages: [{ ...ring, id: "primary" }],
      outputs: [axle("front", "front-ring"), axle("rear", "rear-ring")],
    };
    tryAll(
      word,
      words,
      ([slip]) => [
        readBuild(made({ ...base, ...document(slip!) })).findings.find(({ code }) =>
          /^(missing-reference|position-missing)$/.test(code),
        ),
      ],
      (slip) => words.includes(slip) || !/^(?!.*--)[a-z][a-z0-9-]*$/.test(slip) || slip === "third",
    );
  });
});

describe("a notation", () => {
  /** Words of a notation beside its counts, and where they stand. */
  const values: Readonly<Record<string, readonly [words: readonly string[], attributes: (word: string) => Data]>> = {
    chemistry: [chemistryNames, (word) => ({ battery: `3 cells ${word}` })],
    centre: [["spool", "differential"], (word) => ({ centre: word })],
    lengths: [["mm", "in"], (word) => ({ lengths: word })],
    headline: [["front", "rear"], (word) => ({ headline: word })],
    compare: [["front", "rear"], (word) => ({ compare: `${word} with rear` })],
    target: [["front", "rear"], (word) => ({ target: `38 to 46 at ${word}` })],
    field: [
      Object.keys(stageShape("pair")).filter((name) => name !== "kind" && name !== "id"),
      (word) => ({ rear: `Ring: 12 to 35, ${word} 7` }),
    ],
  };
  const all = Object.entries(values).flatMap(([name, [words, attributes]]) =>
    words.map((word) => ({ name, word, words, attributes })),
  );
  it.each(cases(all, ({ name, word }) => `${name} ${word}`))("%s", (_, { name, word, words, attributes }) => {
    tryAll(
      word,
      words,
      ([slip]) => {
        const { ok, findings } = buildFromAttributes({
          stages: "",
          front: "Ring: 13 to 38",
          rear: "Ring: 12 to 35",
          ...attributes(slip!),
        } as Record<string, string>);
        return ok ? [] : [findings.find(({ values: { nearest }, code }) => nearest !== undefined || code === "not-id")];
      },
      (slip) =>
        words.includes(slip) ||
        !/^(?!.*--)[a-z][a-z0-9-]*$/.test(slip) ||
        (name === "chemistry" && words.includes(slip.toLowerCase())),
    );
  });

  const examples = kinds.flatMap((kind) =>
    (notations[kind]?.examples ?? []).map((example) => ({ kind, word: example })),
  );
  it.each(cases(examples, ({ kind, word }) => `${kind}: ${word}`))("%s", (_, { word }) => {
    const read = (text: string) => {
      const { build } = buildFromAttributes({ stages: text, rear: "" });
      return build && JSON.stringify({ ...build.stages[0], label: undefined, id: undefined });
    };
    const own = read(word);
    expect(own).toBeDefined();
    const wrong: string[] = [];
    const letters = [...word];
    const isLetter = (at: number) => /[a-z]/i.test(letters[at] ?? "");
    letters.forEach((letter, at) => {
      if (!isLetter(at)) return;
      const before = word.slice(0, at);
      const after = word.slice(at + 1);
      const slips = [
        before + after,
        ...lettersOf([]).flatMap((one) => [before + one + after, before + one + letter + after]),
      ];
      if (isLetter(at + 1)) slips.push(before + letters[at + 1]! + letter + word.slice(at + 2));
      for (const slip of slips) {
        const found = read(slip);
        if (found !== undefined && found !== own && slip !== word) wrong.push(`${slip}: ${found}`);
      }
    });
    expect(wrong.slice(0, 20).join("\n")).toBe("");
  });
});
