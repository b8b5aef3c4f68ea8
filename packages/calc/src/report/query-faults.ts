import { spotOf, stagesOf, type Build } from "../drivetrain/index.js";
import type { FindingCode, FindingValues } from "../stages/index.js";
import { comparedIn } from "./compared.js";
import { groupsTo, isAbove, isTurns } from "./asked.js";
import { hasVersion } from "./has-version.js";
import { singleFault } from "./address.js";
import { isToothPair } from "./tooth-pair.js";
import {
  figureSpecs,
  queryNames,
  scopes,
  units,
  type FigureSpec,
  type QueryName,
  type QueryText,
} from "./vocabulary.js";

/** What is wrong with a query, in a code: no sentence, because whoever asks may have no use for one. */
export interface QueryFault {
  readonly code: FindingCode;
  readonly field: QueryName;
  readonly values: FindingValues;
  /** The word that is not known, for which the nearest of `values.known` are looked for. */
  readonly word?: string | undefined;
}

const none: readonly QueryFault[] = [];
const fault = (code: FindingCode, field: QueryName, values: FindingValues, word?: string): QueryFault => ({
  code,
  field,
  values,
  word,
});

/** A word that has to be one of a few. */
const wordFault = (field: QueryName, found: string, known: readonly string[]): QueryFault =>
  fault("unknown-word", field, { field, found: JSON.stringify(found), known }, found);

/** An id that has to be one of the build's. */
const idFault = (field: QueryName, id: string, known: readonly string[]): QueryFault =>
  fault("missing-reference", field, { id, known }, id);

const outputIds = (build: Build): string[] => build.outputs.map(({ id }) => id);
const hasOutput = (build: Build, id: string): boolean => build.outputs.some((output) => output.id === id);
const stageIds = (build: Build): string[] => stagesOf(build).map(({ stage }) => stage.id);

function ofFault(build: Build, { of: about }: FigureSpec, id: string): QueryFault | undefined {
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

function valueFault(build: Build, spec: FigureSpec, field: QueryName, value: string, query: QueryText, others: Others) {
  switch (field) {
    case "of":
      return ofFault(build, spec, value);
    case "with":
      return hasOutput(build, value) ? undefined : idFault(field, value, outputIds(build));
    case "group": {
      const known = groupsTo(build, query.of);
      return known.includes(value) ? undefined : idFault(field, value, known);
    }
    case "base": {
      const known = [...(comparedIn(build, query) ?? outputIds(build)), "mean"];
      return known.includes(value) ? undefined : wordFault(field, value, known);
    }
    case "from":
      return hasVersion(build, value) || others().includes(value)
        ? undefined
        : fault("missing-reference", field, { id: value });
    case "over":
      if (spec.over === "turns")
        return isTurns(value) ? undefined : fault("not-positive", field, { found: JSON.stringify(value) });
      return isAbove(value) ? undefined : fault("not-size", field, { found: JSON.stringify(value) });
    case "digits":
      return /^(\d{1,2}|100)$/.test(value) ? undefined : fault("not-digits", field, { found: JSON.stringify(value) });
    default: {
      const known = { scope: scopes, sign: ["none"], unit: spec.unit && units[spec.unit] }[field as "scope"];
      const list: readonly string[] = known ?? (spec[field as "measure"] as readonly string[]);
      return list.includes(value) ? undefined : wordFault(field, value, list);
    }
  }
}

/** The ids of other builds that a page has, and that a build can be held against. */
export type Others = () => readonly string[];
/** Where there is no other build: what asks for one finds none. */
export const noOthers: Others = () => [];

/** What is wrong with a query; nothing where the figure can be shown. */
export function queryFaults(query: QueryText, build: Build, others: Others = noOthers): readonly QueryFault[] {
  const { figure = "reduction" } = query as Readonly<Record<string, string | undefined>>;
  const spec = Object.hasOwn(figureSpecs, figure) ? figureSpecs[figure]! : undefined;
  if (!spec) {
    const known = Object.keys(figureSpecs);
    return [fault("unknown-figure", "figure", { found: JSON.stringify(figure), known }, figure)];
  }
  let findings: QueryFault[] | undefined;
  const add = (found: QueryFault | undefined): unknown => found && (findings ??= []).push(found);
  for (const field of queryNames) {
    const value = query[field];
    if (field === "figure" || value === undefined || value === null) continue;
    if (spec[field] === undefined) {
      const takes = queryNames.filter((name) => name !== "figure" && spec[name] !== undefined);
      add(fault("word-not-taken", field, { figure, field, takes }, field));
    } else add(valueFault(build, spec, field, String(value), query, others));
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
