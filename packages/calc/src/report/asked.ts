import { pathTo, spotOf, valueAt, type Build } from "../drivetrain/index.js";
import { lengthOf, MeshwrightError, rational } from "../exact/index.js";
import { inners, type Stage } from "../stages/index.js";
import { comparedIn } from "./compared.js";
import { hasVersion } from "./has-version.js";
import { isToothPair } from "./tooth-pair.js";
import { figureSpecs, queryNames, scopes, units, type FigureSpec, type QueryText } from "./vocabulary.js";

/** The groups on the way to an output, those inside boxes with a lever too. */
export function groupsTo(build: Build, id: unknown): readonly string[] {
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

/** Whether something is read without an error. */
function isRead(read: () => { readonly sign: number }): boolean {
  try {
    return read().sign > 0;
  } catch (error) {
    if (error instanceof MeshwrightError) return false;
    throw error;
  }
}

/** Whether a text is a length above nothing. */
export const isAbove = (text: string): boolean => isRead(() => lengthOf(text));

/** Whether a text is a number of turns. */
export const isTurns = (text: string): boolean => isRead(() => rational(text));

/** Whether a query's word is one that the figure takes, or names something that the build has. */
function isKnown(build: Build, spec: FigureSpec, field: string, value: string, query: QueryText): boolean {
  const isOutput = build.outputs.some(({ id }) => id === value);
  switch (field) {
    case "of": {
      const { of } = spec;
      if (of === "address") return /^(string|number)$/.test(typeof valueAt(build, value));
      if (isOutput) return of === "output" || of === "output-or-stage";
      const stage = of === "output" ? undefined : spotOf(build, value)?.stage;
      return stage?.id === value && (of !== "pair" || isToothPair(stage));
    }
    case "with":
      return isOutput;
    case "group":
      return groupsTo(build, query.of).includes(value);
    case "base":
      return value === "mean" || !!comparedIn(build, query)?.includes(value);
    case "from":
      return hasVersion(build, value);
    case "over":
      return spec.over === "turns" ? isTurns(value) : isAbove(value);
    case "digits":
      return /^(\d{1,2}|100)$/.test(value);
    default: {
      const list = field === "scope" ? scopes : field === "unit" ? units[spec.unit!] : spec[field as "measure"];
      return field === "sign" ? value === "none" : (list as readonly string[]).includes(value);
    }
  }
}

/**
 * Whether a figure can be shown for a query: `checkQuery` finds nothing. A value that is not given, and a percentage without two axles
 * to choose among, are left to it.
 */
export function isAsked(query: QueryText, build: Build): boolean {
  const { figure = "reduction" } = query as Readonly<Record<string, string | undefined>>;
  const spec = Object.hasOwn(figureSpecs, figure) && figureSpecs[figure]!;
  return (
    !!spec &&
    queryNames.every((field) => {
      const value = query[field];
      return (
        field === "figure" ||
        value === undefined ||
        value === null ||
        (spec[field] !== undefined && isKnown(build, spec, field, String(value), query))
      );
    }) &&
    !(spec.ofNeeded && query.of === undefined) &&
    !(spec.with && !comparedIn(build, query)) &&
    !(spec.of === "pair" && query.of === undefined && !build.mounts?.length)
  );
}
