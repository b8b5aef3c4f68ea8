import { describe, expect, it } from "vitest";
import { changesFrom, linkOf, parseBuild } from "@meshwright/calc/document";
import type { Build, Change, ChangeSet } from "@meshwright/calc/drivetrain";
import type { Stage } from "@meshwright/calc/stages";
import { wholeEngine } from "../../src/third/engine.js";
import { BuildStore, runOn } from "../../src/shared/store/index.js";

runOn(wholeEngine);

// A reader and an author who do things in any order, against a model of what should come of it: lists of stages and values, and
// fractions of its own. Nothing of calc is used for what is expected.

type Fraction = readonly [top: bigint, bottom: bigint];
const times = (a: Fraction, b: Fraction): Fraction => [a[0] * b[0], a[1] * b[1]];
const lowest = ([top, bottom]: Fraction): string => {
  let [a, b] = [top, bottom];
  while (b) [a, b] = [b, a % b];
  return `${top / a}/${bottom / a}`;
};

/** Numbers that look random and are the same in every run. */
function randomFrom(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32) * below);
  };
}

interface Plain {
  readonly id: string;
  readonly kind: "pair" | "train" | "published";
  readonly set?: boolean;
  readonly values: Readonly<Record<string, number | string>>;
}
const lists = ["shared", "front", "rear"] as const;
type ListName = (typeof lists)[number];
/** Where stages stand, by id; which values are other than the author's, by address; which stages are new. */
interface Version {
  readonly places: Readonly<Record<ListName, readonly string[]>>;
  readonly values: ReadonlyMap<string, number | string>;
  readonly made: ReadonlyMap<string, Plain>;
}
type Author = ReadonlyMap<string, Plain>;

const document = (author: Author, places: Version["places"]): unknown => {
  const stageOf = (id: string) => {
    const { kind, set, values } = author.get(id)!;
    const teeth = Object.keys(values).some((field) => field.startsWith("teeth."));
    return {
      id,
      kind,
      label: `The ${id}`,
      ...(set && { set }),
      ...(teeth ? { teeth: Object.values(values) } : values),
    };
  };
  return {
    format: "meshwright-build/1",
    stages: places.shared.map(stageOf),
    outputs: (["front", "rear"] as const).map((id) => ({ id, stages: places[id].map(stageOf) })),
    mounts: [{ stage: "first", from: "20 mm", to: "40 mm" }],
    alternatives: [
      { id: "other", label: "Other", changes: { "first.driver": 30, "ring-a.driver": 9, "ring-a.driven": 40 } },
    ],
  };
};

/** The fields that are changed together with one. */
const unitOf = (stage: Plain, field: string): readonly string[] => (stage.set ? Object.keys(stage.values) : [field]);

/** A version without values that are the author's own, sets whole. */
function settled(author: Author, version: Version): Version {
  const present = new Set(lists.flatMap((list) => version.places[list]));
  const values = new Map<string, number | string>();
  for (const address of version.values.keys()) {
    const [id, ...rest] = address.split(".") as [string];
    const stage = author.get(id);
    if (!stage || !present.has(id)) continue;
    const unit = unitOf(stage, rest.join("."));
    const isOther = unit.some(
      (field) => (version.values.get(`${id}.${field}`) ?? stage.values[field]) !== stage.values[field],
    );
    if (isOther)
      for (const field of unit)
        values.set(`${id}.${field}`, version.values.get(`${id}.${field}`) ?? stage.values[field]!);
  }
  const made = new Map([...version.made].filter(([id]) => present.has(id)));
  return { places: version.places, values, made };
}

const same = (one: Version, other: Version): boolean =>
  JSON.stringify([one.places, [...one.values].sort(), [...one.made]]) ===
  JSON.stringify([other.places, [...other.values].sort(), [...other.made]]);

/** What a stage is in a version. */
const stageIn = (author: Author, { values, made }: Version, id: string): Plain => {
  const stage = made.get(id) ?? author.get(id)!;
  const now = Object.entries(stage.values).map(([field, value]) => [field, values.get(`${id}.${field}`) ?? value]);
  return { ...stage, values: Object.fromEntries(now) as Plain["values"] };
};

/** The ends of an axle's reduction. A printed ratio means half a unit of its last digit either way. */
function reductionOf(author: Author, version: Version, axle: "front" | "rear"): readonly [string, string] {
  const ends: [Fraction, Fraction] = [
    [1n, 1n],
    [1n, 1n],
  ];
  for (const id of [...version.places.shared, ...version.places[axle]]) {
    const { kind, values } = stageIn(author, version, id);
    const counts = Object.values(values);
    const [low, high]: readonly [Fraction, Fraction] =
      kind === "published"
        ? [
            [BigInt(Number(String(counts[0]).replace(".", "")) * 2 - 1), 200n],
            [BigInt(Number(String(counts[0]).replace(".", "")) * 2 + 1), 200n],
          ]
        : [
            [BigInt(counts.at(-1)!), BigInt(counts[0]!)],
            [BigInt(counts.at(-1)!), BigInt(counts[0]!)],
          ];
    ends[0] = times(ends[0], low);
    ends[1] = times(ends[1], high);
  }
  return [lowest(ends[0]), lowest(ends[1])];
}

const pair = (id: string, driver: number, driven: number, set?: boolean): Plain => ({
  id,
  kind: "pair",
  values: { driver, driven },
  ...(set && { set }),
});

const start: readonly Plain[] = [
  pair("first", 15, 62),
  { id: "row", kind: "train", values: { "teeth.0": 18, "teeth.1": 31, "teeth.2": 45 } },
  pair("ring-a", 13, 38, true),
  { id: "hub-a", kind: "published", values: { value: "1.50" } },
  pair("ring-b", 12, 35, true),
  pair("hub-b", 16, 23),
];
const home: Version["places"] = {
  shared: ["first", "row"],
  front: ["ring-a", "hub-a"],
  rear: ["ring-b", "hub-b"],
};

/** Few numbers, so that what is chosen is often what was there before. */
const countFrom = (random: (below: number) => number): number => [12, 13, 15, 16, 23, 35, 38, 62][random(8)]!;

describe("a reader and an author, in any order", () => {
  it.each(Array.from({ length: 40 }, (_, n) => n + 1))("come to what the model says: seed %i", (seed) => {
    const random = randomFrom(seed * 7919);
    let author: Author = new Map(start.map((stage) => [stage.id, stage]));
    const published = (): Build => parseBuild(document(author, home));
    let now: Version = { places: home, values: new Map(), made: new Map() };
    const authors: Version = now;
    const past: Version[] = [];
    let gesture: number | undefined;
    let gestures = 0;
    let made = 0;
    let arrived = false;
    const store = new BuildStore();
    store.publish(published());

    /** The reader asks; the model goes to `next`, or stays where nothing should come of it. */
    const ask = (request: ChangeSet | Change, next: Version | undefined, held: boolean): void => {
      const before = now;
      const isHeld = held && gesture !== undefined;
      const name = isHeld ? gesture : held ? ++gestures : undefined;
      const findings = store.change(request, name);
      expect(findings.length > 0, JSON.stringify(request)).toBe(next === undefined);
      if (!next) return;
      const after = settled(author, next);
      if (same(after, before)) return;
      arrived = false;
      if (!isHeld) past.push(before);
      else if (same(past.at(-1)!, after)) {
        past.pop();
        now = after;
        gesture = undefined;
        return;
      }
      gesture = name;
      now = after;
    };

    const changeValue = (): string => {
      const present = lists.flatMap((list) => now.places[list]);
      const id = present[random(present.length)];
      if (id === undefined) return "nothing";
      const stage = stageIn(author, now, id);
      const fields = Object.keys(stage.values);
      const field = fields[random(fields.length)]!;
      const to = stage.kind === "published" ? ["1.50", "2.61", "1.47"][random(3)]! : random(15) ? countFrom(random) : 0;
      const isWhole = !!stage.set && random(4) > 0;
      const request: Record<string, number | string> = isWhole
        ? Object.fromEntries(
            fields.map((one) => [
              `${id}.${one}`,
              one === field ? to : random(2) ? stage.values[one]! : countFrom(random),
            ]),
          )
        : { [`${id}.${field}`]: to };
      const isRefused = Object.values(request).includes(0) || (!!stage.set && !isWhole && to !== stage.values[field]);
      const own = now.made.get(id);
      const changed = Object.entries(request).map(([address, value]) => [address.slice(id.length + 1), value] as const);
      const next: Version = own
        ? {
            ...now,
            made: new Map(now.made).set(id, { ...own, values: { ...own.values, ...Object.fromEntries(changed) } }),
          }
        : { ...now, values: new Map([...now.values, ...Object.entries(request)]) };
      ask(request, isRefused ? undefined : next, random(3) === 0);
      return JSON.stringify(request);
    };

    const changeStructure = (): string => {
      const present = lists.flatMap((list) => now.places[list]);
      const id = present[random(present.length)];
      const list = lists[random(3)]!;
      const into = list === "shared" ? {} : { into: list };
      const without = (one: string | undefined): Version["places"] =>
        Object.fromEntries(
          lists.map((name) => [name, now.places[name].filter((other) => other !== one)]),
        ) as unknown as Version["places"];
      const put = (places: Version["places"], to: ListName, at: number, one: string): Version["places"] => ({
        ...places,
        [to]: places[to].toSpliced(at, 0, one),
      });
      const kind = random(6);
      if (kind === 0 && now.made.size < 3) {
        const stage = pair(`new-${++made}`, countFrom(random), countFrom(random));
        const at = random(now.places[list].length + 2);
        const request: Change = {
          insert: { id: stage.id, kind: "pair", ...stage.values } as unknown as Stage,
          ...into,
          at,
        };
        const isPlace = at <= now.places[list].length;
        const next = {
          ...now,
          places: put(now.places, list, at, stage.id),
          made: new Map(now.made).set(stage.id, stage),
        };
        ask(request, isPlace ? next : undefined, false);
        return JSON.stringify(request);
      }
      if (id === undefined) return "nothing";
      if (kind === 1) {
        ask({ remove: id }, { ...now, places: without(id) }, false);
        return `remove ${id}`;
      }
      const from = lists.find((name) => now.places[name].includes(id))!;
      const isNamed = list === "shared" ? from === "shared" : random(2) === 0 || list !== from;
      const to = isNamed ? list : from;
      const at = random(4);
      const places = without(id);
      const request: Change = { move: id, at, ...(isNamed ? into : {}) };
      if (isNamed && list === "shared" && from !== "shared") return "nothing";
      ask(request, at <= places[to].length ? { ...now, places: put(places, to, at, id) } : undefined, false);
      return JSON.stringify(request);
    };

    const act = (): string => {
      const kind = random(16);
      if (kind < 7) return changeValue();
      gesture = undefined;
      if (kind < 11) return changeStructure();
      if (kind < 13) {
        store.undo();
        if (past.length) arrived = false;
        const before = now;
        while (past.length) {
          now = settled(author, past.pop()!);
          if (!same(now, before)) break;
        }
        return "undo";
      }
      if (kind === 13) {
        store.reset();
        if (!same(now, authors)) {
          past.push(now);
          arrived = false;
        }
        now = authors;
        return "reset";
      }
      if (kind === 14) {
        // The author changes counts, and publishes again.
        const { id, values, ...stage } = start[random(start.length)]!;
        const fields = Object.entries(values).map(([field, value]) => [
          field,
          typeof value === "string" ? value : countFrom(random),
        ]);
        author = new Map(author).set(id, { ...stage, id, values: Object.fromEntries(fields) as Plain["values"] });
        store.publish(published());
        now = settled(author, now);
        arrived &&= !same(now, authors);
        return `publish ${id} ${JSON.stringify(fields)}`;
      }
      // Somebody else opens the link; then the reader opens it again.
      const link = linkOf(store.article!, store.layer.sets, store.layer.structure);
      const { changes, structure, findings } = changesFrom(link, published());
      expect(findings).toEqual([]);
      const other = new BuildStore();
      other.publish(published());
      other.arrive({ structure, sets: changes });
      for (const axle of ["front", "rear"] as const)
        expect(other.evaluation()!.output(axle)!.reduction!.bounds.low.toFraction()).toBe(
          reductionOf(author, now, axle)[0],
        );
      expect(other.changed).toBe(store.changed);
      if (now.made.size) return "link";
      store.arrive({ structure, sets: changes });
      if (!arrived && !same(now, authors)) past.push(now);
      arrived = !same(now, authors);
      return "arrive";
    };

    const done: string[] = [];
    for (let n = 0; n < 60; n++) {
      done.push(act());
      const story = `after ${done.slice(-6).join("; ")}`;
      const build = store.build!;
      const placed = { shared: build.stages, front: build.outputs[0]!.stages, rear: build.outputs[1]!.stages };
      for (const list of lists) {
        expect(
          placed[list].map(({ id }) => id),
          story,
        ).toEqual(now.places[list]);
        for (const stage of placed[list] as readonly (Stage & Record<string, unknown>)[]) {
          const { values } = stageIn(author, now, stage.id);
          for (const [field, value] of Object.entries(values)) {
            const [name, place] = field.split(".") as [string, string?];
            const found = place === undefined ? stage[name] : (stage[name] as unknown[])[Number(place)];
            expect([stage.id, field, found], story).toEqual([stage.id, field, value]);
          }
        }
      }
      for (const axle of ["front", "rear"] as const) {
        const { low, high } = store.evaluation()!.output(axle)!.reduction!.bounds;
        expect([low.toFraction(), high.toFraction()], story).toEqual(reductionOf(author, now, axle));
      }
      // The layer holds what differs, sets whole, and nothing else.
      expect(new Map(Object.entries(store.layer.sets)), story).toEqual(now.values);
      expect(store.changed === 0, story).toBe(same(now, authors));
      expect([store.canUndo, store.arrived], story).toEqual([past.length > 0, arrived]);
      expect(store.build === store.article, story).toBe(same(now, authors));
    }
    expect(done.length).toBe(60);
  });
});
