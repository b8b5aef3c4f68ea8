import {
  finderIn,
  pointerTo,
  shapes,
  stagesOf,
  type Build,
  type Change,
  type Finder,
  type Output,
  type Spot,
} from "../drivetrain/index.js";
import { checks, inners, unknowns, type FindingCode, type FindingValues, type Stage } from "../stages/index.js";
import { applyChanges } from "./changes.js";
import { ShapeReader } from "./read.js";
import { roundingFault } from "./rounding.js";
import { bareOf, plainChanges, stepsBackTo } from "./versions.js";

/** Tells what keeps a version from being made, and where the document says it. */
type Tell = (code: FindingCode, at: string, values: FindingValues) => void;

/** A change to be tried, and where the document says it. */
interface Tried {
  readonly change: Change;
  readonly where: string;
}

/** Keys of the document whose value says nothing about the rest of it. */
const apart: ReadonlySet<string> = new Set([
  ...["title", "wheelbase", "motor", "battery", "controller", "rounding", "lengths", "revision"],
]);
/** Fields of an output of which the same is true. */
const apartOfOutput: ReadonlySet<string> = new Set(["label", "wheel", "wheels", "axle"]);

/** Trying a version as a whole costs as much as reading the build: so many stages may be read again for all of them. */
const mostAgain = 250_000;

/** Sets a value inside a copy; everything on the way is copied too. Whether it can be. */
function put(copy: object, [key = "", ...more]: readonly string[], to: unknown): boolean {
  const holder = copy as Record<string, unknown>;
  if (!more.length) {
    if (to === null && Array.isArray(copy)) return false;
    if (to === null) delete holder[key];
    else holder[key] = to;
    return true;
  }
  const inner = holder[key];
  if (typeof inner !== "object" || inner === null) return false;
  return put((holder[key] = Array.isArray(inner) ? [...(inner as unknown[])] : { ...inner }), more, to);
}

/** What stands at the place of a finding: the change that is the nearest to it. */
function blamed(tried: readonly { readonly path: string; readonly where: string }[], pointer: string): string {
  const exact = tried.find(({ path }) => pointer === path || pointer.startsWith(`${path}/`));
  if (exact) return exact.where + pointer.slice(exact.path.length);
  return (tried.find(({ path }) => path.startsWith(`${pointer}/`)) ?? tried[0])?.where ?? "";
}

/** Tries versions of one build: what touches only what stands for itself is looked at alone, and all else as a whole. */
class Trial {
  readonly #build: Build;
  readonly #find: Finder;
  readonly #named: ReadonlySet<string>;

  constructor(build: Build) {
    this.#build = build;
    this.#find = finderIn(build);
    this.#named = new Set(stagesOf(build).flatMap(({ stage }) => unknowns[stage.kind]?.sameAs(stage) ?? []));
  }

  /** Whether a stage says nothing about others, and none about it. */
  #isAlone(stage: Stage): boolean {
    const unknown = unknowns[stage.kind];
    const isNamed = unknown && (this.#named.has(stage.id) || unknown.sameAs(stage) !== undefined);
    return !inners[stage.kind] && !isNamed && !unknown?.spans(stage).length;
  }

  /** Looks at each part that is touched; false where more than these parts has to be looked at. */
  alone(tried: readonly Tried[], tell: Tell): boolean {
    const parts = new Map<object | string, { spot: Spot; keys: string[]; to: unknown; where: string }[]>();
    for (const { change, where } of tried) {
      if (!("set" in change)) return false;
      const { set: address, to } = change;
      const spot = this.#find(address);
      const [id = "", ...keys] = address.split(".");
      if (!spot) return false;
      const owner =
        spot.stage ?? (apart.has(id) ? id : apartOfOutput.has(keys[0] ?? "") ? this.#outputOf(id) : undefined);
      if (!owner) return false;
      const list = parts.get(owner) ?? [];
      // A whole part and something inside it depend on their order.
      if (list.length && (!keys.length || !list[0]!.keys.length)) return false;
      parts.set(owner, [...list, { spot, keys, to, where }]);
    }
    for (const [owner, changes] of parts) {
      const reader = new ShapeReader();
      const told = changes.map(({ keys, where }) => ({ path: keys.map((key) => `/${key}`).join(""), where }));
      const say = (code: FindingCode, pointer: string, values: FindingValues = {}) =>
        tell(code, blamed(told, pointer), values);
      const isStage = changes[0]!.spot.stage !== undefined;
      const value = typeof owner === "string" ? this.#build[owner as "title"] : owner;
      const whole = changes.find(({ keys }) => !keys.length);
      let draft: unknown = whole ? whole.to : { ...Object(value) };
      if (whole?.to === null && isStage) {
        say("not-optional", "", { address: changes[0]!.spot.stage!.id });
        continue;
      }
      const unset = whole ? undefined : changes.find(({ keys, to }) => !put(draft as object, keys, to));
      if (unset) {
        tell("not-optional", unset.where, { address: unset.keys.join(".") });
        continue;
      }
      if (whole?.to === null) continue;
      const isOutput = typeof owner !== "string" && !isStage;
      if (isOutput) draft = { ...(draft as Output), stages: [] };
      const copy = reader.read(draft, isStage ? "stage" : isOutput ? "output" : shapes.build![owner as string]!);
      for (const { code, at, values, severity } of reader.findings) if (severity === "error") say(code, at, values);
      if (reader.failed) continue;
      if (isStage) {
        const [before, after] = [owner as Stage, copy as Stage];
        const isSame = before.id === after.id && JSON.stringify(before.fitted) === JSON.stringify(after.fitted);
        if (!isSame || !this.#isAlone(before) || !this.#isAlone(after)) return false;
        checks[after.kind](after, (severity, code, field, values) => {
          if (severity === "error") say(code, `/${field}`, values);
        });
        const counts = changes.filter(({ keys: [key] }) => key === "driver" || key === "driven");
        if ("set" in after && after.set && !whole && new Set(counts.map(({ keys }) => keys[0])).size === 1)
          tell("set-in-part", counts[0]!.where, { label: after.label ?? after.id });
      } else if (isOutput) {
        const { wheel } = copy as Output;
        if (wheel && Object.keys(wheel).filter((key) => !key.startsWith("x-")).length !== 1)
          say("wheel-unclear", "/wheel");
      } else if (owner === "rounding") {
        const fault = roundingFault(copy as NonNullable<Build["rounding"]>);
        if (fault) say(fault[1], `/${fault[0]}`, fault[2]);
      }
    }
    return true;
  }

  #outputOf(id: string): Output | undefined {
    return this.#build.outputs.find((output) => output.id === id);
  }

  /** Makes the whole version; the build it comes to. */
  whole(tried: readonly Tried[], tell: Tell, otherwise: string): Build | undefined {
    const reading = applyChanges(
      this.#build,
      tried.map(({ change }) => change),
    );
    if (reading.ok) return reading.build;
    const told = tried.flatMap(({ change, where }) => {
      const address = "set" in change ? change.set : undefined;
      const spot = address === undefined ? undefined : this.#find(address);
      return spot
        ? [
            { path: spot.pointer, where },
            { path: address!, where },
          ]
        : [];
    });
    for (const { code, at, values, severity } of reading.findings)
      if (severity === "error")
        tell(
          code,
          told.some(({ path }) => at === path || at.startsWith(`${path}/`)) ? blamed(told, at) : otherwise,
          values,
        );
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
    if (again > mostAgain) tell("too-long", at, { found: again, most: mostAgain });
    return again <= mostAgain;
  };
  let trial = new Trial(bare);
  const setsOf = (changes: object, at: string): Tried[] =>
    Object.entries(changes).map(([set, to]) => ({ change: { set, to: to as unknown }, where: pointerTo(at, set) }));
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
      plainChanges(made, [written]).map((change): Tried => ({ change, where: `${at}/${n}` })),
    );
    if (trial.alone([...before, ...now], tell)) before.push(...now);
    else {
      const next = mayTry(at) ? trial.whole([...before, ...now], tell, at) : undefined;
      if (!next) return;
      [made, before] = [next, []];
      trial = new Trial(made);
    }
  }
}
