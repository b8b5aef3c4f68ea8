import { elementAttributes, type ElementTag } from "../document/index.js";
import { stagesOf, type Build } from "../drivetrain/index.js";
import { needsOfStage } from "../parts/index.js";
import { evaluate } from "../evaluate/index.js";
import { checkQuery, noOthers, type Others, versionFault, versionOf } from "../report/index.js";
import { errorOf, type Finding } from "../stages/index.js";
import { countsFaults } from "./counts.js";
import { countFault, idFault, outputFault, outputIds, speedFaults } from "./faults.js";
import { quantityFault } from "./quantity.js";
import { queryOf } from "./query.js";
import { said, type Attributes } from "./said.js";
import { atFault } from "./speaker.js";
import { trainsFaults } from "./trains.js";
import { boxFault } from "./turn-count.js";

const stageIds = (build: Build): string[] => stagesOf(build).map(({ stage }) => stage.id);
const words = (text: string): string[] => text.split(/[\s,]+/).filter(Boolean);

function limitFaults(attributes: Attributes): Finding[] {
  const [min, max] = [said(attributes, "min"), said(attributes, "max")];
  const isCount = (text: string) => /^\d{1,7}$/.test(text) && +text >= 1 && +text <= 1_000_000;
  const faults = Object.entries({ min, max }).flatMap(([name, text]) =>
    text === undefined || isCount(text)
      ? []
      : errorOf("meaning", "not-count", `/${name}`, { found: JSON.stringify(text) }),
  );
  if (faults.length || min === undefined || max === undefined || +min <= +max) return faults;
  return [errorOf("meaning", "range-backwards", "/min", { from: min, to: max })];
}

/** What is drawn: an output, or stages. */
function drawnFaults(build: Build, of: string | undefined): Finding[] {
  const [outputs, stages] = [outputIds(build), stageIds(build)];
  const asked = of === undefined ? [] : words(of);
  if (outputs.includes(asked[0] ?? "")) {
    const [, second] = asked;
    return second === undefined ? [] : [idFault("of", second, [])];
  }
  return asked.filter((id) => !stages.includes(id)).map((id) => idFault("of", id, [...outputs, ...stages]));
}

/** The pair or set that is looked for: the one named, else the first that has a mount. */
function pairFaults(build: Build, of: string | undefined): Finding[] {
  const pairs = stagesOf(build).flatMap(({ stage }) => (needsOfStage(stage).together ? stage.id : []));
  if (of !== undefined) return pairs.includes(of) ? [] : [idFault("of", of, pairs)];
  return build.mounts?.length
    ? []
    : [errorOf("meaning", "word-needed", "/of", { figure: "mw-pair-finder", field: "of", known: pairs })];
}

function shownFaults(build: Build, show: string | undefined): Finding[] {
  const known = (build.alternatives ?? []).map(({ id }) => id);
  return words(show ?? "")
    .filter((id) => !known.includes(id))
    .map((id) => idFault("show", id, known));
}

/** A version that others are held against. */
function againstFaults(build: Build, against: string | undefined, others: Others): Finding[] {
  const found = against === undefined ? undefined : versionFault(build, against, others);
  if (!found) return [];
  const known = (found.values.known ?? []) as readonly string[];
  return found.code === "missing-reference" ? [idFault("against", against!, known)] : [{ ...found, at: "/against" }];
}

/** A version that an order is counted from, or nothing at all. */
function startFaults(build: Build, from: string | undefined): Finding[] {
  const found = from === undefined || from === "nothing" ? undefined : versionFault(build, from);
  if (!found) return [];
  const known = ["nothing", ...((found.values.known ?? []) as readonly string[])];
  return found.code === "missing-reference" ? [idFault("from", from!, known)] : [{ ...found, at: "/from" }];
}

/** What is chosen in the line of drive may have gone since: told, and nothing is chosen. */
function chosenFaults(build: Build, chosen: string | undefined): Finding[] {
  const known = stagesOf(build).map(({ stage }) => stage.id);
  if (chosen === undefined || chosen.includes(":") || known.includes(chosen)) return [];
  return [{ ...idFault("chosen", chosen, known), severity: "warning" }];
}

type Check = (build: Build, attributes: Attributes, others: Others) => readonly Finding[];

const ofOutput: Check = (build, attributes) => outputFault(build, said(attributes, "of"));

/** By element: what is wrong with what it asks of a build. */
const checks: Readonly<Record<string, Check>> = {
  "mw-value": (build, attributes, others) => checkQuery(queryOf(attributes), build, others),
  "mw-teeth": (build, attributes) => [
    ...[countFault(build, said(attributes, "of")) ?? []].flat(),
    ...limitFaults(attributes),
  ],
  "mw-quantity": (build, attributes) => [quantityFault(build, said(attributes, "of")) ?? []].flat(),
  "mw-ratio-summary": ofOutput,
  "mw-working": ofOutput,
  "mw-measurements": ofOutput,
  "mw-overdrive-gauge": (build, attributes) => {
    const asked = ["of", "with", "base", "scope"].map((name) => [name, said(attributes, name)]);
    return checkQuery({ figure: "farther", ...(Object.fromEntries(asked) as object) }, build);
  },
  "mw-wheel-speed": (build, attributes) => [
    ...ofOutput(build, attributes, noOthers),
    ...speedFaults(said(attributes, "unit"), said(attributes, "loaded")),
  ],
  "mw-train-drawing": (build, attributes) => drawnFaults(build, said(attributes, "of")),
  "mw-drive-line": (build, attributes) => chosenFaults(build, said(attributes, "chosen")),
  "mw-pair-finder": (build, attributes) => pairFaults(build, said(attributes, "of")),
  "mw-count-finder": (build, attributes) => countsFaults(evaluate(build), attributes),
  "mw-train-finder": trainsFaults,
  "mw-turn-count": (build, attributes) => boxFault(build, said(attributes, "of")),
  "mw-change-table": (build, attributes, others) => [
    ...shownFaults(build, said(attributes, "show")),
    ...againstFaults(build, said(attributes, "against"), others),
  ],
  "mw-order-list": (build, attributes) => startFaults(build, said(attributes, "from")),
};

/**
 * What is wrong with what an element asks of a build: words, ids, addresses and versions that are not there, each with the
 * nearest that are. Nothing where it can say all that it is asked for.
 *
 * @param tag the element's name
 * @param version a version of the build by its name; nothing where it cannot be made
 * @param others the ids of the other builds that the page has
 *
 * @example
 * const ring = { id: "ring", kind: "pair", driver: 12, driven: 35 };
 * const build = parseBuild({ format: "meshwright-build/1", outputs: [{ id: "rear", stages: [ring] }] });
 * askedFindings("mw-teeth", build, { of: "ring.drivr" })[0]!.values.nearest; // => ["ring.driver"]
 * askedFindings("mw-working", build, { of: "raer" })[0]!.at; // => "/of"
 * askedFindings("mw-value", build, { at: "articel" })[0]!.values.nearest; // => ["article"]
 */
export function askedFindings(
  tag: string,
  build: Build,
  attributes: Attributes,
  version: (at: string) => Build | undefined = (at) => versionOf(build, at),
  others: Others = noOthers,
): readonly Finding[] {
  // What takes no version shows the build as it stands.
  const takes: readonly string[] = Object.hasOwn(elementAttributes, tag)
    ? elementAttributes[tag as ElementTag]
    : ["at"];
  const at = takes.includes("at") ? said(attributes, "at") : undefined;
  const fault = atFault(build, at);
  if (fault) return [fault];
  const about = at === undefined || at === "article" ? build : version(at);
  return about && Object.hasOwn(checks, tag) ? checks[tag]!(about, attributes, others) : [];
}
