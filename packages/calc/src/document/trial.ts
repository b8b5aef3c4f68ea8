import {
  finderIn,
  partsSet,
  pointerTo,
  setOf,
  shapes,
  stageShape,
  stagesOf,
  type Build,
  type Change,
  type Finder,
} from "../drivetrain/index.js";
import {
  checks,
  inners,
  unknowns,
  type FindingCode,
  type FindingValues,
  type Shape,
  type Stage,
} from "../stages/index.js";
import { applyChanges } from "./changes.js";
import { isNewer } from "./check.js";
import { isClear } from "./clear.js";
import { ShapeReader } from "./read.js";
import { roundingFault } from "./rounding.js";
import { bareOf, plainChanges, stepsBackTo } from "./steps-back.js";

/** Tells what keeps a version from being made, and where the document says it. */
type Tell = (code: FindingCode, at: string, values: FindingValues) => void;

/** A change to be tried, and where the document says it. */
interface Tried {
  readonly change: Change;
  /** The pointer of the list or map that holds it, and its key there. */
  readonly at: string;
  readonly key: string | number;
}

const whereOf = ({ at, key }: Pick<Tried, "at" | "key">): string => pointerTo(at, key);

/** Keys of the document whose value says nothing about the rest of it. */
const apart: ReadonlySet<string> = new Set([
  ...["title", "wheelbase", "motor", "battery", "controller", "rounding", "lengths", "revision"],
]);
/** Fields of an output of which the same is true. */
const apartOfOutput: ReadonlySet<string> = new Set(["label", "wheel", "wheels", "axle"]);

/** Trying a version as a whole costs as much as reading the build: so many stages may be read again for all of them. */
const mostAgain = 20_000;

/** What stands at the place of a finding: the change that is the nearest to it. */
function blamed(tried: readonly (Pick<Tried, "at" | "key"> & { readonly path: string })[], pointer: string): string {
  const exact = tried.find(({ path }) => pointer === path || pointer.startsWith(`${path}/`));
  if (exact) return whereOf(exact) + pointer.slice(exact.path.length);
  return whereOf(tried.find(({ path }) => path.startsWith(`${pointer}/`)) ?? tried[0]!);
}

/** A change of a part: by the keys inside it. */
interface PartChange extends Omit<Tried, "change"> {
  readonly place: Place;
  readonly keys: readonly string[];
  readonly to: unknown;
}

/** One part of a build that says nothing about the rest: a stage, an output as far as its wheels go, a key of the document. */
interface Part {
  readonly name: string;
  readonly shape: () => Shape;
  readonly stage?: Stage | undefined;
  readonly before: object;
  /** What the version that is being tried does to it. */
  changes: PartChange[];
}

/** Where an address points to. */
interface Place {
  readonly part: Part | undefined;
  readonly keys: readonly string[];
  /** Plain values that were tried there with nothing else changed, and leave nothing to tell. */
  readonly fine: Set<unknown>;
}

/** Sets a value inside a copy of a list or object; nothing where there is no such place. */
function put(holder: unknown, [key = "", ...more]: readonly string[], to: unknown): unknown {
  if (typeof holder !== "object" || holder === null) return undefined;
  const copy = (Array.isArray(holder) ? [...(holder as unknown[])] : { ...holder }) as Record<string, unknown>;
  if (more.length) {
    const inner = put(copy[key], more, to);
    if (inner === undefined) return undefined;
    copy[key] = inner;
  } else if (to !== null) copy[key] = to;
  else if (Array.isArray(copy)) return undefined;
  else delete copy[key];
  return copy;
}

/** Tries versions of one build: what touches only what stands for itself is looked at alone, and all else as a whole. */
class Trial {
  readonly #build: Build;
  readonly #find: Finder;
  readonly #named: ReadonlySet<string>;
  readonly #newer: boolean;
  readonly #places = new Map<string, Place>();
  readonly #parts = new Map<object, Part>();

  constructor(build: Build) {
    this.#build = build;
    this.#find = finderIn(build);
    this.#named = new Set(stagesOf(build).flatMap(({ stage }) => unknowns[stage.kind]?.sameAs(stage) ?? []));
    this.#newer = isNewer(build.format);
  }

  /** Whether a stage says nothing about others, and none about it. */
  #isAlone(stage: Stage): boolean {
    if (inners[stage.kind]) return false;
    const unknown = unknowns[stage.kind];
    return (
      !unknown || (!this.#named.has(stage.id) && unknown.sameAs(stage) === undefined && !unknown.spans(stage).length)
    );
  }

  /** Where an address points to. Versions of one build mostly change the same few places. */
  #placeOf(address: string): Place {
    let place = this.#places.get(address);
    if (!place) {
      const [id = "", ...keys] = address.split(".");
      const made = this.#partOf(address, keys);
      const part = made && (this.#parts.get(made.before) ?? made);
      if (part) this.#parts.set(part.before, part);
      place = { part, keys: part?.name === "build" ? [id, ...keys] : keys, fine: new Set() };
      this.#places.set(address, place);
    }
    return place;
  }

  /** The part that an address belongs to, with nothing changed yet. */
  #partOf(address: string, [first = ""]: readonly string[]): Part | undefined {
    const spot = this.#find(address);
    const stage = spot?.stage;
    if (stage) {
      const { kind } = stage;
      return { name: `${kind} stage`, shape: () => stageShape(kind), stage, before: stage, changes: [] };
    }
    if (!spot) return undefined;
    const key = address.split(".")[0]!;
    if (apart.has(key)) return { name: "build", shape: () => shapes.build!, before: this.#build, changes: [] };
    const output = apartOfOutput.has(first) && this.#build.outputs.find(({ id }) => id === key);
    return output ? { name: "output", shape: () => shapes.output!, before: output, changes: [] } : undefined;
  }

  /** Looks at each part that is touched; false where more than these parts has to be looked at. */
  alone(tried: readonly Tried[], tell: Tell): boolean {
    const touched: Part[] = [];
    try {
      return this.#touch(tried, touched) && this.#lookAt(touched, tell);
    } finally {
      for (const part of touched) part.changes = [];
    }
  }

  /** Puts changes to the parts that they touch. */
  #touch(tried: readonly Tried[], touched: Part[]): boolean {
    for (const { change, at, key } of tried) {
      if (!("set" in change)) return false;
      const place = this.#placeOf(change.set);
      const { part, keys } = place;
      if (!part) return false;
      // Whatever replaces a stage has to be read as a whole, and nothing else of it besides.
      const isWhole = (one: readonly string[]): boolean => !!part.stage && (!one.length || one[0] === "kind");
      if (part.changes.some((one) => isWhole(one.keys) || isWhole(keys))) return false;
      if (!part.changes.length) touched.push(part);
      part.changes.push({ place, keys, to: change.to, at, key });
    }
    return true;
  }

  #lookAt(parts: readonly Part[], tell: Tell): boolean {
    const told: Parameters<Tell>[] = [];
    for (const part of parts) {
      const [first, second] = part.changes;
      const { place, to } = first!;
      const isPlain = !!part.stage && !second && (typeof to === "number" || typeof to === "string");
      if (isPlain && place.fine.has(to)) continue;
      const before = told.length;
      if (!this.#look(part, (...one) => told.push(one))) return false;
      if (isPlain && told.length === before) place.fine.add(to);
    }
    for (const one of told) tell(...one);
    return true;
  }

  #look(part: Part, tell: Tell): boolean {
    const { name, shape, stage, before, changes } = part;
    const reader = new ShapeReader(this.#newer);
    const [first] = changes;
    let draft = { ...before } as Record<string, unknown>;
    if (stage && (!first!.keys.length || first!.keys[0] === "kind")) {
      if (first!.keys.length || first!.to === null) return false;
      draft = reader.read(first!.to, "stage") as typeof draft;
    } else
      for (const { keys, to, at, key } of changes) {
        const [field = "", ...more] = keys;
        const value = more.length ? put(draft[field], more, to) : (to ?? undefined);
        if (more.length && value === undefined) {
          tell("not-optional", whereOf({ at, key }), { address: keys.join(".") });
          return true;
        }
        const copy = reader.readField(name, shape, field, value);
        if (copy === undefined) delete draft[field];
        else draft[field] = copy;
      }
    const say: Tell = (code, pointer, values) => {
      const paths = changes.map(({ keys, at, key }) => ({ path: keys.map((one) => `/${one}`).join(""), at, key }));
      tell(code, blamed(paths, pointer), values);
    };
    for (const { code, at, values, severity } of reader.findings) if (severity === "error") say(code, at, values);
    if (reader.failed) return true;
    if (stage) return this.#lookAtStage(stage, draft as unknown as Stage, part, say);
    const { wheel } = draft as { wheel?: object };
    if (name === "output" && wheel && !isClear(wheel)) say("wheel-unclear", "/wheel", {});
    const { rounding } = draft as { rounding?: NonNullable<Build["rounding"]> };
    const fault = name === "build" && rounding ? roundingFault(rounding) : undefined;
    if (fault) say(fault[1], `/rounding/${fault[0]}`, fault[2]);
    return true;
  }

  #lookAtStage(before: Stage, after: Stage, { changes }: Part, say: Tell): boolean {
    if (before.id !== after.id || before.fitted !== after.fitted) return false;
    if (!this.#isAlone(before) || !this.#isAlone(after)) return false;
    checks[after.kind](after, (severity, code, field, values = {}) => {
      if (severity === "error") say(code, `/${field}`, values);
    });
    if (!setOf(before)) return true;
    const fields = new Set(changes.map(({ keys }) => keys.join(".")));
    if (!fields.has("") && partsSet(before, after, fields)) {
      const [count] = Object.keys(setOf(after)!).filter((field) => fields.has(field));
      say("set-in-part", `/${count ?? ""}`, { label: after.label ?? after.id });
    }
    return true;
  }

  /** Makes the whole version; the build it comes to. */
  whole(tried: readonly Tried[], tell: Tell, otherwise: string): Build | undefined {
    const reading = applyChanges(
      this.#build,
      tried.map(({ change }) => change),
    );
    if (reading.ok) return reading.build;
    const told = tried.flatMap(({ change, at, key }) => {
      const address = "set" in change ? change.set : undefined;
      const spot = address === undefined ? undefined : this.#find(address);
      return spot ? [spot.pointer, address!].map((path) => ({ path, at, key })) : [];
    });
    for (const { code, at, values, severity } of reading.findings) {
      if (severity !== "error") continue;
      const isNear = told.some(
        ({ path }) => at === path || at.startsWith(`${path}/`) || (at && path.startsWith(`${at}/`)),
      );
      tell(code, isNear ? blamed(told, at) : otherwise, values);
    }
    return undefined;
  }
}

/**
 * Tries once each version that a document tells (its alternatives, its earlier revisions, its measurements' own values), and
 * tells what keeps it from being one, where the document says it.
 */
export function tryVersions(build: Build, tell: Tell): void {
  const { alternatives = [], revisions = [], measurements = [] } = build;
  if (!alternatives.length && !revisions.length && !measurements.some((one) => one.with)) return;
  const bare = bareOf(build);
  const size = stagesOf(build).length;
  let again = 0;
  const mayTry = (at: string): boolean => {
    again += size + 1;
    if (again > mostAgain) tell("too-many-versions", at, { found: again, most: mostAgain });
    return again <= mostAgain;
  };
  let trial = new Trial(bare);
  const setsOf = (changes: object, at: string): Tried[] =>
    Object.entries(changes).map(([set, to]) => ({ change: { set, to: to as unknown }, at, key: set }));
  const attempt = (changes: object, at: string): void => {
    const tried = setsOf(changes, at);
    if (!trial.alone(tried, tell) && mayTry(at)) trial.whole(tried, tell, at);
  };
  alternatives.forEach(({ changes }, n) => attempt(changes, `/alternatives/${n}/changes`));
  measurements.forEach((one, n) => attempt(one.with ?? {}, `/measurements/${n}/with`));

  // Each revision goes on from the next later one: what has been changed on the way is kept until all has to be made anew.
  let made = bare;
  let before: Tried[] = [];
  for (const revision of stepsBackTo(build, 0)) {
    const at = `/revisions/${revisions.indexOf(revision)}/back`;
    const now = revision.back.flatMap((written, n) =>
      plainChanges(made, [written]).map((change): Tried => ({ change, at, key: n })),
    );
    let failed = false;
    const isAlone = trial.alone([...before, ...now], (...one) => {
      failed = true;
      tell(...one);
    });
    if (failed) return;
    if (isAlone) before.push(...now);
    else {
      const next = mayTry(at) ? trial.whole([...before, ...now], tell, at) : undefined;
      if (!next) return;
      [made, before] = [next, []];
      trial = new Trial(made);
    }
  }
}
