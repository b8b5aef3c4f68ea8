import { applyChanges } from "@meshwright/calc/document";
import { spotOf, valueAt, type Build } from "@meshwright/calc/drivetrain";
import { evaluate, type Evaluation } from "@meshwright/calc/evaluate";
import { figureOf, queryNames, Writer, type FigureQuery } from "@meshwright/calc/report";
import type { PairStage } from "@meshwright/calc/stages";
import type { Rounding } from "@meshwright/calc/exact";
import { attributeOf, type Element } from "./source.js";

/** What an element in a sentence says: one text. What stands on its own says rows, by their heads. */
export type Expected =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "rows"; readonly rows: ReadonlyMap<string, readonly string[]> };

function queryOf(element: Element): FigureQuery {
  const given = queryNames.flatMap((name) => {
    const value = attributeOf(element, name);
    return value ? [[name, value] as const] : [];
  });
  return { figure: "reduction", ...Object.fromEntries(given) };
}

/** The build as published, or one of its alternatives. */
function versionOf(build: Build, at: string | undefined, mode: string | undefined): Evaluation {
  const alternative = build.alternatives?.find((one) => one.id === at);
  if (at && at !== "article" && !alternative)
    throw new Error(`No alternative "${at}"; expected article or one of the build's.`);
  const changed = alternative ? applyChanges(build, alternative.changes).build : build;
  if (!changed) throw new Error(`Alternative "${at}" cannot be made.`);
  return evaluate(changed, build.modes?.some((one) => one.id === mode) ? mode : undefined);
}

type Maker = (element: Element, build: Build, locale: string, mode: string | undefined) => Expected;

/** What a row's head is looked up by: "Gearbox" begins a row as well as "gearbox". */
export const headOf = (text: string): string => text.trim().toLowerCase();

/** Rows of one head are one: a column for each. */
function rowsOf(rows: Iterable<readonly [string, readonly string[]]>): Expected {
  const merged = new Map<string, readonly string[]>();
  for (const [head, texts] of rows) merged.set(headOf(head), [...(merged.get(headOf(head)) ?? []), ...texts]);
  return { kind: "rows", rows: merged };
}

const makers: Readonly<Record<string, Maker>> = {
  "mw-value": (element, build, locale, mode) => ({
    kind: "text",
    text: figureOf(versionOf(build, attributeOf(element, "at"), mode), queryOf(element), { locale }),
  }),
  "mw-teeth": (element, build, locale) => {
    const of = attributeOf(element, "of") ?? "";
    const stage = spotOf(build, of)?.stage as PairStage | undefined;
    if (stage?.set && of === stage.id)
      return { kind: "text", text: figureOf(evaluate(build), { figure: "counts", of }, { locale }) };
    if (valueAt(build, of) === undefined)
      throw new Error(`Nothing is at "${of}"; expected an address such as primary.driver.`);
    return { kind: "text", text: figureOf(evaluate(build), { figure: "count", of }, { locale }) };
  },
  "mw-ratio-summary": (_, build, locale, mode) => {
    const writer = new Writer({ locale, rounding: build.rounding as Rounding | undefined });
    return rowsOf(
      versionOf(build, undefined, mode).outputs.flatMap((output) => {
        const total = output.bounds ? writer.number(output.bounds) : writer.words.none;
        const steps = output.steps.map(
          ({ stage, reduction }) => [stage.label ?? stage.id, [writer.number(reduction.bounds)]] as const,
        );
        const groups = output.groups.map(({ group, reduction }) => [group, [writer.number(reduction.bounds)]] as const);
        return [[output.label, [total]] as const, ...steps, ...groups];
      }),
    );
  },
  "mw-overdrive-gauge": (element, build, locale, mode) => {
    const evaluation = versionOf(build, undefined, mode);
    const figure = (name: string, scope?: string) =>
      figureOf(evaluation, { ...queryOf(element), figure: name, ...(scope && { scope }) }, { locale });
    return rowsOf(["tyres", "gears"].map((scope) => [scope, [figure("gap", scope)]] as const));
  },
};

/** Whether an element is one whose content is checked. */
export const isChecked = (element: Element): boolean => Object.prototype.hasOwnProperty.call(makers, element.tagName);

/**
 * What an element's content should say, worked out from its build.
 *
 * @throws where it asks for something that the build does not have
 */
export const expectedOf = (element: Element, build: Build, locale: string, mode: string | undefined): Expected =>
  makers[element.tagName]!(element, build, locale, mode);
