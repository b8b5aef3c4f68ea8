import { rational } from "../exact/index.js";
import {
  checks,
  inners,
  unknowns,
  type FindingCode,
  type FindingValues,
  type Say,
  type Stage,
} from "../stages/index.js";
import {
  branchesOf,
  finderIn,
  isReserved,
  placesOf,
  pointerTo,
  splitsOf,
  stagesOf,
  type Branch,
  type Build,
  type Finder,
  type Output,
  type Part,
  type Place,
  type WrittenChange,
} from "../drivetrain/index.js";
import { isClear } from "./clear.js";
import { checkMounts } from "./mounts.js";
import { nearestTo } from "./nearest.js";
import { partFaults, type PartFault } from "./parts.js";
import type { ShapeReader } from "./read.js";
import { roundingFault } from "./rounding.js";
import { unknownUses } from "./uses.js";

const mostStages = 10_000;
const mostCompared = 30_000;
/** As many words as a sentence lists, and one more. */
const mostListed = 13;

const idsOf = (list: readonly { readonly id: string }[] | undefined): string[] => list?.map((one) => one.id) ?? [];

/** Tells what is wrong with one build: from where it stands in the document. */
class Teller {
  readonly #reader: ShapeReader;
  readonly #base: string;
  #compared = 0;

  constructor(reader: ShapeReader, base: string) {
    this.#reader = reader;
    this.#base = base;
  }

  /** Whether one more finding would be told: what takes time to find is worth it only then. */
  get hasRoom(): boolean {
    return this.#reader.hasRoom;
  }

  say(severity: "error" | "warning", code: FindingCode, at: string, values?: FindingValues): void {
    this.#reader.say(severity, "meaning", code, this.#base + at, values);
  }

  bad(code: FindingCode, at: string, values: FindingValues = {}): void {
    this.say("error", code, at, values);
  }

  /** Tells where an id is none of those that there are. */
  refer(
    id: string | undefined,
    known: ReadonlySet<string> | readonly string[],
    at: string,
    severity: "error" | "warning" = "error",
  ): void {
    if (id === undefined || ("has" in known ? known.has(id) : known.includes(id))) return;
    const names = this.hasRoom ? [...known] : [];
    this.say(severity, "missing-reference", at, {
      id,
      known: names.slice(0, mostListed),
      nearest: this.nearest(id, names),
    });
  }

  /** The known words nearest to what was found; after many comparisons, none: whoever has so much to mend will look again. */
  nearest(found: string, known: readonly string[]): readonly string[] {
    this.#compared += known.length;
    return this.#compared > mostCompared ? [] : nearestTo(found, known);
  }

  /** Values with the known words nearest to the one that is none of them. */
  near(values: FindingValues = {}): FindingValues {
    const { id, known } = values;
    return typeof id === "string" && Array.isArray(known) ? { ...values, nearest: this.nearest(id, known) } : values;
  }

  range({ from, to }: { readonly from: string | number; readonly to: string | number }, at: string): void {
    if (rational(from).compare(to) > 0) this.bad("range-backwards", at, { from, to });
  }

  /** Tells where a list has an id twice. */
  unique(ids: readonly string[], pointer: string): void {
    const seen = new Set<string>();
    ids.forEach((id, n) => {
      if (seen.has(id)) this.bad("id-repeated", `${pointer}/${n}/id`, { id });
      seen.add(id);
    });
  }
}

/** Stages, outputs, branches, alternatives and references have names of their own, and none that addresses or versions bear already. */
function checkNames(build: Build, places: readonly Place[], teller: Teller): void {
  const { branches = [], outputs, alternatives = [], references = [] } = build;
  const seen = new Set<string>();
  const name = (id: string, pointer: string): void => {
    if (seen.has(id)) teller.bad("id-repeated", `${pointer}/id`, { id });
    else if (isReserved(id) || Object.hasOwn(build, id)) teller.bad("id-reserved", `${pointer}/id`, { id });
    seen.add(id);
  };
  for (const { stage, pointer } of places) name(stage.id, pointer);
  for (const [key, list] of Object.entries({ branches, outputs, alternatives, references }))
    list.forEach(({ id }, n) => name(id, `/${key}/${n}`));
  teller.unique(idsOf(build.modes), "/modes");
}

/** What a stage's kind has to say, and that of those which were turned along with it. */
function checkStage(stage: Stage, pointer: string, teller: Teller): void {
  const say: Say = (severity, code, field, values) =>
    teller.say(severity, code, pointerTo(pointer, field), teller.near(values));
  checks[stage.kind](stage, say);
  unknowns[stage.kind]?.spans(stage).forEach((one, n) => {
    const at = `${pointer}/spans/${n}`;
    if (inners[(one as Stage).kind]) teller.bad("span-lever", at, { id: one.id });
    else checkStage(one as Stage, at, teller);
  });
}

/** The same thing twice says the same twice, and does not come back to itself. */
function checkSame(places: readonly Place[], teller: Teller): void {
  let byId: ReadonlyMap<string, Stage> | undefined;
  const known = new Map<string, boolean>();
  /** Whether the way from a stage to what it is the same as has an end. */
  const ends = (id: string): boolean => {
    const passed: string[] = [];
    let next: string | undefined = id;
    while (next !== undefined && !known.has(next)) {
      passed.push(next);
      known.set(next, false);
      const stage = byId!.get(next);
      next = stage && unknowns[stage.kind]?.sameAs(stage);
    }
    const isEnd = next === undefined || known.get(next)!;
    for (const one of passed) known.set(one, isEnd);
    return isEnd;
  };
  for (const { stage, pointer } of places) {
    const unknown = unknowns[stage.kind];
    const same = unknown?.sameAs(stage);
    if (same === undefined) continue;
    byId ??= new Map(places.map((place) => [place.stage.id, place.stage]));
    const at = `${pointer}/sameAs`;
    const other = byId.get(same);
    if (!other) {
      teller.refer(same, idsOf([...byId.values()].filter(({ kind }) => kind === stage.kind)), at);
      continue;
    }
    if (other.kind !== stage.kind || unknown!.text(other) !== unknown!.text(stage))
      teller.bad("same-as-differs", at, { id: same });
    if (!ends(stage.id)) teller.bad("reference-loop", at, { id: same });
  }
}

interface KnownParts {
  readonly ids: ReadonlySet<string>;
  readonly faults: readonly PartFault[];
}

/** What is known of lists that nobody can change any more, where each part has its own id. */
const knownParts = new WeakMap<readonly Part[], KnownParts>();

/** Tells where parts share an id, and answers which ids there are, and what is odd about the parts. */
function partsKnown(parts: readonly Part[], teller: Teller): KnownParts {
  let known = knownParts.get(parts);
  if (known) return known;
  known = { ids: new Set(idsOf(parts)), faults: partFaults(parts) };
  if (known.ids.size < parts.length) teller.unique(idsOf(parts), "/parts");
  else if (Object.isFrozen(parts)) knownParts.set(parts, known);
  return known;
}

/** Parts have names of their own, and those that are fitted are among them. */
function checkParts(build: Build, places: readonly Place[], teller: Teller): void {
  const { parts = [], outputs } = build;
  const { ids: known, faults } = partsKnown(parts, teller);
  for (const { n, code, field, values, spoils } of faults)
    teller.say(spoils ? "error" : "warning", code, `/parts/${n}/${field}`, values);
  for (const { stage, pointer } of places) {
    const { fitted } = stage;
    if (!fitted) continue;
    fitted.forEach((id, n) => {
      teller.refer(id, known, `${pointer}/fitted/${n}`);
      if (fitted.indexOf(id) < n) teller.bad("id-repeated", `${pointer}/fitted/${n}`, { id });
    });
  }
  if (!parts.some(({ stage }) => stage !== undefined)) return;
  const homes = new Set([...places.map(({ stage }) => stage.id), ...idsOf(outputs)]);
  parts.forEach(({ stage }, n) => teller.refer(stage, homes, `/parts/${n}/stage`, "warning"));
}

/** Where everything is driven from, and what drives it there. */
function checkDrive(build: Build, teller: Teller): void {
  const { branches = [], outputs } = build;
  const known = idsOf(branches);
  const ends: readonly (readonly [Branch | Output, string])[] = [
    ...branches.map((end, n) => [end, `/branches/${n}`] as const),
    ...outputs.map((end, n) => [end, `/outputs/${n}`] as const),
  ];
  for (const [end, pointer] of ends) {
    teller.refer(end.from, known, `${pointer}/from`);
    const first = branchesOf(build, end)[0];
    if (first?.from && known.includes(first.from)) teller.bad("reference-loop", `${pointer}/from`, { id: end.from });
    if ("motor" in end && end.motor && end.from !== undefined)
      teller.bad("driven-twice", `${pointer}/from`, { id: end.id, from: end.from });
    if ("wheel" in end && end.wheel && !isClear(end.wheel)) teller.bad("wheel-unclear", `${pointer}/wheel`);
  }
  for (const { split, feeds, pointer } of splitsOf(build)) {
    if (split?.share && split.kind === "spool") teller.say("warning", "share-on-spool", `${pointer}/share`);
    const named = Object.keys(split?.share ?? {});
    const fed = idsOf(feeds);
    for (const id of named) teller.refer(id, fed, pointerTo(`${pointer}/share`, id));
    const missing = fed.filter((id) => !named.includes(id));
    if (named.length && missing.length) teller.bad("share-incomplete", `${pointer}/share`, { named, missing });
  }
}

/** Whether a change says one thing, and all of it. */
function checkChange(change: WrittenChange, at: string, teller: Teller): void {
  const acts = ["set", "insert", "remove", "move"].filter((act) => act in change);
  const { set } = change as { set?: unknown };
  const isMap = typeof set === "object" && set !== null && !Array.isArray(set);
  const needed = typeof set === "string" ? ["to"] : "insert" in change || "move" in change ? ["at"] : [];
  const whole = needed.every((key) => key in change) && ("set" in change ? isMap || typeof set === "string" : true);
  if (acts.length !== 1 || !whole) teller.bad("change-unclear", at, { needed });
}

/** What refers to stages, outputs and earlier states. */
function checkReferences(build: Build, places: readonly Place[], teller: Teller): void {
  const { modes = [], alternatives = [], measurements = [], mounts = [], revisions = [], revision, target } = build;
  const outputs = idsOf(build.outputs);
  teller.refer(target?.output, outputs, "/target/output");
  teller.refer(build.compare?.of, outputs, "/compare/of");
  teller.refer(build.compare?.with, outputs, "/compare/with");
  if (build.compare && build.compare.of === build.compare.with)
    teller.say("warning", "compare-itself", "/compare/with", { id: build.compare.of });
  teller.refer(build.headline, outputs, "/headline");
  if (target) teller.range(target, "/target");
  let stages: ReadonlyMap<string, Stage> | undefined;
  const byId = () => (stages ??= new Map(places.map(({ stage }) => [stage.id, stage])));
  mounts.forEach(({ stage }, n) => {
    if (!byId().has(stage)) teller.refer(stage, [...byId().keys()], `/mounts/${n}/stage`);
  });
  modes.forEach(({ positions }, n) => {
    for (const id in positions) {
      const stage = byId().get(id);
      const at = `/modes/${n}/positions/${id}`;
      if (stage && inners[stage.kind]) teller.refer(positions[id], idsOf(inners[stage.kind]!.positions(stage)), at);
      else {
        const levers = [...byId().values()].filter(({ kind }) => inners[kind]);
        teller.bad("missing-reference", at, { id, known: idsOf(levers), nearest: teller.nearest(id, idsOf(levers)) });
      }
    }
  });
  let finder: Finder | undefined;
  // Versions of one build mostly change the same few places.
  const found = new Set<string>();
  const isThere = (address: string): boolean => found.has(address) || !!(finder ??= finderIn(build))(address);
  const addresses = (changes: object, at: string): void => {
    for (const address in changes) {
      if (isThere(address)) {
        found.add(address);
        continue;
      }
      const [id = "", ...rest] = address.split(".");
      const near = teller.hasRoom ? teller.nearest(id, [...placesOf(build).keys()]) : [];
      const nearest = near.filter((one) => one !== id).map((one) => [one, ...rest].join("."));
      teller.bad("missing-address", pointerTo(at, address), { address, nearest });
    }
  };
  alternatives.forEach(({ changes }, n) => addresses(changes, `/alternatives/${n}/changes`));
  if (mounts.length) checkMounts(build, byId(), (...told) => teller.say(...told));
  measurements.forEach((one, n) => {
    teller.refer(one.what, outputs, `/measurements/${n}/what`);
    if (typeof one.wheelTurns === "object") teller.range(one.wheelTurns, `/measurements/${n}/wheelTurns`);
    addresses(one.with ?? {}, `/measurements/${n}/with`);
  });
  const numbers = new Set<number>();
  revisions.forEach(({ number, back }, n) => {
    const at = `/revisions/${n}`;
    if (numbers.has(number)) teller.bad("id-repeated", `${at}/number`, { id: String(number) });
    numbers.add(number);
    if (revision?.number !== undefined && number >= revision.number)
      teller.bad("revision-late", `${at}/number`, { found: number, number: revision.number });
    back.forEach((change, place) => checkChange(change, `${at}/back/${place}`, teller));
  });
}

/**
 * What the shape of a build cannot show: names, references, order, and what each kind of stage has to say.
 *
 * @param base the pointer of the build in its document
 */
export function checkMeaning(build: Build, reader: ShapeReader, base = ""): void {
  const teller = new Teller(reader, base);
  for (const { code, at, values } of unknownUses(build.uses)) teller.bad(code, at, values);
  const places = stagesOf(build);
  if (places.length > mostStages)
    return teller.bad("too-many-stages", "/stages", { found: places.length, most: mostStages });
  checkNames(build, places, teller);
  for (const { stage, pointer } of places) checkStage(stage, pointer, teller);
  checkSame(places, teller);
  checkParts(build, places, teller);
  checkDrive(build, teller);
  checkReferences(build, places, teller);
  const fault = build.rounding && roundingFault(build.rounding);
  if (fault) teller.bad(fault[1], `/rounding/${fault[0]}`, fault[2]);
  build.references?.forEach((one, n) => {
    const at = `/references/${n}`;
    if (!one.build === (one.src === undefined)) teller.bad("reference-unclear", at);
    if (one.build?.references) teller.bad("references-nested", `${at}/build/references`);
    else if (one.build) checkMeaning(one.build, reader, `${base}${at}/build`);
  });
}
