import { nearestTo } from "../document/index.js";
import { pathTo, spotOf, stagesOf, type Build } from "../drivetrain/index.js";
import { lengthOf, rational } from "../exact/index.js";
import { errorOf, inners, type Finding, type FindingCode, type FindingValues, type Stage } from "../stages/index.js";
import { singleFault } from "./address.js";
import { isToothPair } from "./tooth-pair.js";
import { versionFault } from "./version.js";
import {
  figureSpecs,
  queryNames,
  scopes,
  units,
  type FigureSpec,
  type QueryName,
  type QueryText,
} from "./vocabulary.js";

const none: readonly Finding[] = [];
const fault = (code: FindingCode, field: QueryName, values: FindingValues): Finding =>
  errorOf("meaning", code, `/${field}`, values);

/** A word that has to be one of a few. */
const wordFault = (field: QueryName, found: string, known: readonly string[]): Finding =>
  fault("unknown-word", field, { field, found: JSON.stringify(found), known, nearest: nearestTo(found, known) });

/** An id that has to be one of the build's. */
const idFault = (field: QueryName, id: string, known: readonly string[]): Finding =>
  fault("missing-reference", field, { id, known, nearest: nearestTo(id, known) });

const outputIds = (build: Build): string[] => build.outputs.map(({ id }) => id);
const hasOutput = (build: Build, id: string): boolean => build.outputs.some((output) => output.id === id);
const stageIds = (build: Build): string[] => stagesOf(build).map(({ stage }) => stage.id);

/** The groups on the way to an output, those inside boxes with a lever too. */
function groupsTo(build: Build, id: string | undefined): readonly string[] {
  const output = build.outputs.find((one) => one.id === (id ?? build.headline)) ?? build.outputs[0]!;
  const groups = new Set<string>();
  const look = (stages: readonly Stage[]): void => {
    for (const stage of stages) {
      if (stage.group !== undefined) groups.add(stage.group);
      for (const position of inners[stage.kind]?.positions(stage) ?? [])
        look((position.stages ?? []) as readonly Stage[]);
    }
  };
  for (const list of pathTo(build, output)) look(list);
  return [...groups];
}

/** The two outputs that a query compares, by their ids: those named, those that the build compares, front and rear, or the only two. */
export function comparedIn(build: Build, query: QueryText): readonly [one: string, other: string] | undefined {
  const { compare, outputs } = build;
  const { of: asked, with: against } = query as Readonly<Record<string, string | undefined>>;
  const usual = [compare?.of ?? "front", compare?.with ?? "rear"].every((id) => hasOutput(build, id))
    ? [compare?.of ?? "front", compare?.with ?? "rear"]
    : outputs.length === 2
      ? outputs.map(({ id }) => id)
      : [];
  // Where one is named, it is held against the other of the usual two, never against itself.
  const other = (id: string): string | undefined => (usual[1] === id ? usual[0] : usual[1]);
  const of = asked ?? (against === undefined ? usual[0] : other(against));
  const rest = against ?? (of === undefined ? undefined : other(of));
  return of === undefined || rest === undefined ? undefined : [of, rest];
}

function ofFault(build: Build, { of: about }: FigureSpec, id: string): Finding | undefined {
  if (about === "address") {
    const found = singleFault(build, id);
    return found && fault("missing-address", "of", { ...found });
  }
  const takesOutput = about === "output" || about === "output-or-stage";
  if (takesOutput && hasOutput(build, id)) return undefined;
  const stage = about === "output" ? undefined : spotOf(build, id)?.stage;
  if (stage?.id === id && (about !== "pair" || isToothPair(stage))) return undefined;
  const known =
    about === "pair"
      ? stagesOf(build).flatMap((place) => (isToothPair(place.stage) ? place.stage.id : []))
      : about === "output"
        ? []
        : stageIds(build);
  return idFault("of", id, [...(takesOutput ? outputIds(build) : []), ...known]);
}

/** Whether something is read without an error. */
function isRead(read: () => { readonly sign: number }): boolean {
  try {
    return read().sign > 0;
  } catch {
    return false;
  }
}

function valueFault(build: Build, spec: FigureSpec, field: QueryName, value: string, query: QueryText) {
  switch (field) {
    case "of":
      return ofFault(build, spec, value);
    case "with":
      return hasOutput(build, value) ? undefined : idFault(field, value, outputIds(build));
    case "group": {
      const known = groupsTo(build, query.of as string | undefined);
      return known.includes(value) ? undefined : idFault(field, value, known);
    }
    case "base": {
      const known = [...(comparedIn(build, query) ?? outputIds(build)), "mean"];
      return known.includes(value) ? undefined : wordFault(field, value, known);
    }
    case "from": {
      const found = versionFault(build, value);
      return found && { ...found, at: `/${field}` };
    }
    case "over":
      if (spec.over === "turns")
        return isRead(() => rational(value))
          ? undefined
          : fault("not-positive", field, { found: JSON.stringify(value) });
      return isRead(() => lengthOf(value)) ? undefined : fault("not-size", field, { found: JSON.stringify(value) });
    case "digits":
      return /^(\d{1,2}|100)$/.test(value) ? undefined : fault("not-digits", field, { found: JSON.stringify(value) });
    default: {
      const known = { scope: scopes, sign: ["none"], unit: spec.unit && units[spec.unit] }[field as "scope"];
      const list: readonly string[] = known ?? (spec[field as "measure"] as readonly string[]);
      return list.includes(value) ? undefined : wordFault(field, value, list);
    }
  }
}

/**
 * What is wrong with a query: words that the vocabulary does not know, words that the figure does not take, ids and addresses that
 * the build does not have; each with the nearest that there are. Nothing where the figure can be shown.
 *
 * @example
 * const ring = { id: "ring", kind: "pair", driver: 12, driven: 35 };
 * const build = parseBuild({ format: "meshwright-build/1", outputs: [{ id: "rear", stages: [ring] }] });
 * checkQuery({ figure: "travel", of: "rear", unit: "mm" }, build); // => []
 * checkQuery({ figure: "travel", unit: "MM" }, build)[0]!.values.nearest; // => ["mm"]
 * checkQuery({ figure: "travle" }, build)[0]!.message.slice(0, 50); // => "There is no figure \"travle\"; nearest: travel. Expe"
 */
export function checkQuery(query: QueryText, build: Build): readonly Finding[] {
  const { figure = "reduction" } = query as Readonly<Record<string, string | undefined>>;
  const spec = Object.hasOwn(figureSpecs, figure) ? figureSpecs[figure]! : undefined;
  if (!spec) {
    const known = Object.keys(figureSpecs);
    return [
      fault("unknown-figure", "figure", { found: JSON.stringify(figure), nearest: nearestTo(figure, known), known }),
    ];
  }
  let findings: Finding[] | undefined;
  const add = (found: Finding | undefined): unknown => found && (findings ??= []).push(found);
  for (const field of queryNames) {
    const value = query[field];
    if (field === "figure" || value === undefined || value === null) continue;
    if (spec[field] === undefined) {
      const takes = queryNames.filter((name) => name !== "figure" && spec[name] !== undefined);
      add(fault("word-not-taken", field, { figure, field, takes, nearest: nearestTo(field, takes) }));
    } else add(valueFault(build, spec, field, String(value), query));
  }
  if (spec.ofNeeded && query.of === undefined) add(fault("word-needed", "of", { figure, field: "of" }));
  if (findings) return findings;
  if (spec.with && !comparedIn(build, query)) {
    const known = outputIds(build);
    return [fault("word-needed", known.length > 1 ? "with" : "of", { figure, field: ["of", "with"], known })];
  }
  if (spec.of === "pair" && query.of === undefined && !build.mounts?.length)
    return [
      fault("word-needed", "of", {
        figure,
        field: "of",
        known: stageIds(build).filter((id) => !ofFault(build, spec, id)),
      }),
    ];
  return none;
}
