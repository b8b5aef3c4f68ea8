import { readFileSync } from "node:fs";
import fc from "fast-check";
import { isDeepStrictEqual } from "node:util";
import { buildFromAttributes, readBuild, type Reading } from "../../src/document/index.js";
import { leanFromAttributes, leanRead } from "../../src/document/lean/index.js";
import type { Build } from "../../src/drivetrain/index.js";
import { anyBuild } from "./any-build.js";

type Data = Record<string, unknown>;

/** Numbers that look random and are the same every time. */
class Dice {
  #state: number;

  constructor(seed: number) {
    this.#state = (seed % 2_147_483_646) + 1;
  }

  below(end: number): number {
    this.#state = (this.#state * 48_271) % 2_147_483_647;
    return this.#state % end;
  }

  one<T>(list: readonly T[]): T {
    return list[this.below(list.length)]!;
  }
}

const seeds = ["limpet", "dunlin", "turnstone"].map(
  (name) => JSON.parse(readFileSync(new URL(`../../../../seeds/${name}.json`, import.meta.url), "utf8")) as Data,
);

/** What the seeds do not have: references, belts, boxes that are the same, parts that are fitted, earlier revisions. */
const busy = (): Data => ({
  format: "meshwright-build/1.0",
  uses: ["pair", "belt"],
  "x-note": { any: [1, "two", null, true] },
  stages: [
    { id: "belt", kind: "belt", driver: 20, driven: "60", pitch: "2 mm", beltTeeth: 101, fitted: ["strap"] },
    { id: "turned", kind: "measured", turnsIn: 20, turnsOut: { from: "7.2", to: "7.3" } },
  ],
  outputs: [
    { id: "front", stages: [{ id: "box", kind: "published", value: "2.60" }], wheel: { diameter: "124 mm" } },
    { id: "rear", stages: [{ id: "other", kind: "published", value: "2.60", sameAs: "box" }] },
  ],
  parts: [{ id: "strap", is: "belt", teeth: 101, price: { amount: "4.20", currency: "EUR" } }],
  references: [
    { id: "sold", build: { format: "meshwright-build/1", outputs: [{ id: "front", stages: [] }] } },
    { id: "file", src: "other.json" },
  ],
  revision: { number: 3 },
  revisions: [
    { number: 1, back: [{ set: "belt.driver", to: 18 }] },
    { number: 2, back: [{ set: { belt: { driver: 19 }, "front.wheel.diameter": "120 mm" } }] },
  ],
  alternatives: [{ id: "deep", changes: { "belt.driven": 66, "rear.wheel": { diameter: "110 mm" } } }],
});

const notations: readonly Readonly<Record<string, string>>[] = [
  {
    stages: "Spur and pinion: 15 to 62, module 0.8; Gear row: 18 to 31 to 45",
    front: "Ring: 13 to 38, set, bevel; Hub: 15 to 22",
    rear: "Ring: 12 to 35, set; Hub: printed 1.5, reverses not",
    "front-wheel": "124 mm",
    "rear-wheel": "120 mm, under weight",
    target: "38 to 46",
    compare: "front with rear",
    mount: "Spur and pinion: known pair 23 to 53, closer 0.1 mm, farther 0.9 mm",
    title: "Limpet",
  },
  {
    stages: "",
    drive: "Belt: belt 20 to 60; Box: sun 18 in ring 60 × 2; Worm: worm 2 to 30; Disc: 19 lobes in 20 pins",
    "drive-motor": "1850 kv, 30000 rpm at most",
    battery: "3 cells lipo",
    controller: "12.6 V",
    lengths: "in",
    headline: "drive",
  },
  { stages: "A: turned 20 for 7.2 to 7.3", "axle-third": "", centre: "differential", wheelbase: "310 mm" },
];

const letters = 'abcdefghijklmnopqrstuvwxyz0123456789-.,:;/ {}[]"\\';

/** A text with one letter left out, put in, replaced or swapped. */
function slipped(text: string, dice: Dice): string {
  const at = dice.below(text.length + 1);
  const letter = letters[dice.below(letters.length)]!;
  const [before, after] = [text.slice(0, at), text.slice(at)];
  return dice.one([
    () => before + after.slice(1),
    () => before + letter + after,
    () => before + letter + after.slice(1),
    () => before + after.slice(1, 2) + after.slice(0, 1) + after.slice(2),
  ])();
}

/** Every object and list of a document. */
function* holdersIn(value: unknown): Generator<Data> {
  if (typeof value !== "object" || !value) return;
  yield value as Data;
  for (const one of Object.values(value)) yield* holdersIn(one);
}

const wrong = (): unknown[] => [
  ...[null, true, false, 0, 1, -1, 2.5, 1e-7, 1e21, 1e13, 120, "", "0", "15", "1.50", "15/62", "a", "front", "rear"],
  ...["118 mm", "0 mm", "not", [], [1, 2], {}, { from: 2, to: 1 }, { id: "x", kind: "pair", driver: 1, driven: 2 }],
];

/** A document with one thing in it that somebody may get wrong. */
function slip(document: Data, dice: Dice): Data {
  const copy = structuredClone(document);
  const holders = [...holdersIn(copy)];
  const holder = dice.one(holders);
  const keys = Object.keys(holder);
  const key = dice.one(keys.length ? keys : ["x"]);
  const value = holder[key];
  dice.one([
    () => void delete holder[key],
    () => {
      delete holder[key];
      holder[slipped(key, dice)] = value;
    },
    () => void (holder[key] = dice.one(wrong())),
    () => void (holder[key] = typeof value === "string" ? slipped(value, dice) : String(value as number)),
    () => void (holder[key] = typeof value === "number" ? value + dice.one([-1, 1, 0.5, 100]) : dice.one(wrong())),
    // What stands at another place, of the same name where there is one.
    () => {
      const other = dice.one(holders);
      holder[key] = structuredClone(Object.hasOwn(other, key) ? other[key] : Object.values(dice.one(holders))[0]);
    },
    () => void (Array.isArray(holder) ? holder.push(structuredClone(holder[0])) : (holder["x-more"] = { a: 1 })),
  ])();
  return copy;
}

const bothTo = (read: Reading, lean: Build | undefined): string => {
  if (!lean) return read.ok ? "full alone" : "neither";
  if (!read.ok) return `lean alone: ${read.findings.find(({ severity }) => severity === "error")!.message}`;
  return isDeepStrictEqual(read.build, lean) ? "both" : "different builds";
};

/** One document by each of the readers: what became of it. */
function readBoth(made: Data, seed: number): { readonly outcome: string; readonly source: unknown } {
  const dice = new Dice(seed);
  const way = dice.below(8);
  if (way === 0) {
    const attributes: Record<string, string> = { ...dice.one(notations) };
    for (let left = dice.below(3); left; left--) {
      const name = dice.one(Object.keys(attributes));
      const value = attributes[name]!;
      if (dice.below(4)) attributes[name] = slipped(value, dice);
      else {
        delete attributes[name];
        if (dice.below(2)) attributes[slipped(name, dice)] = value;
      }
    }
    return {
      outcome: bothTo(buildFromAttributes(attributes), leanFromAttributes(attributes)),
      source: attributes,
    };
  }
  let document = dice.one([made, busy(), ...seeds]);
  for (let left = dice.below(4) ? dice.below(3) : 0; left; left--) document = slip(document, dice);
  const text = JSON.stringify(document);
  const source = way === 1 ? slipped(text, dice) : way < 5 ? text : document;
  return { outcome: bothTo(readBuild(source), leanRead(source)), source };
}

/** Reads so many documents by both readers: how often each outcome came. */
export function readMany(runs: number, seed: number): ReadonlyMap<string, number> {
  const outcomes = new Map<string, number>();
  fc.assert(
    fc.property(anyBuild, fc.nat(), (made, dice) => {
      const plain = JSON.parse(JSON.stringify(made)) as Data;
      const { outcome, source } = readBoth(plain, dice);
      outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
      if (!/^(both|neither|full alone)$/.test(outcome)) throw new Error(`${outcome}\n${JSON.stringify(source)}`);
    }),
    { numRuns: runs, seed, endOnFailure: true },
  );
  return outcomes;
}
