import { nearestTo } from "../document/index.js";
import { setOf, spotOf, stageShape, valueAt, type Build } from "../drivetrain/index.js";
import type { Loaded } from "../motion/index.js";
import { addressFault, singleFault, units } from "../report/index.js";
import { errorOf, type Finding } from "../stages/index.js";

/** A word that has to be one of a few. */
export const wordFault = (field: string, found: string, known: readonly string[]): Finding =>
  errorOf("meaning", "unknown-word", `/${field}`, {
    ...{ field, found: JSON.stringify(found), known, nearest: nearestTo(found, known) },
  });

/** An id that has to be one of some. */
export const idFault = (field: string, id: string, known: readonly string[]): Finding =>
  errorOf("meaning", "missing-reference", `/${field}`, { id, known, nearest: nearestTo(id, known) });

export const outputIds = (build: Build): string[] => build.outputs.map(({ id }) => id);

/** The one output that a block may be asked for. */
export function outputFault(build: Build, of: string | undefined): Finding[] {
  const known = outputIds(build);
  return of === undefined || known.includes(of) ? [] : [idFault("of", of, known)];
}

/** The counts that a stage has, by address. */
export function countsIn(build: Build, id: string): string[] {
  const stage = spotOf(build, id)?.stage;
  if (stage?.id !== id) return [];
  const values = stage as unknown as Readonly<Record<string, unknown>>;
  return Object.entries(stageShape(stage.kind)).flatMap(([field, shape]) => {
    const value = /^\[?count\b/.test(shape) ? values[field] : undefined;
    if (Array.isArray(value)) return value.map((_, n) => `${id}.${field}.${n}`);
    return typeof value === "number" ? `${id}.${field}` : [];
  });
}

/** What is wrong with the address of a count, or of a set that is one value. */
export function countFault(build: Build, of: string | undefined): Finding | undefined {
  if (of === undefined) return errorOf("meaning", "word-needed", "/of", { figure: "mw-teeth", field: "of" });
  const stage = spotOf(build, of)?.stage;
  if (stage?.id === of && setOf(stage)) return undefined;
  const counts = countsIn(build, of.split(".")[0]!);
  if (counts.includes(of)) return undefined;
  const fault = singleFault(build, of);
  const isThere = !fault && valueAt(build, of) !== undefined;
  const isWhole = !addressFault(build, of);
  const nearest = !isWhole && fault?.nearest.length ? fault.nearest : counts.slice(0, 3);
  return isThere
    ? errorOf("meaning", "not-count", "/of", { found: `${of}: ${JSON.stringify(valueAt(build, of))}` })
    : errorOf("meaning", "missing-address", "/of", { address: of, nearest });
}

/** "0.8 to 0.9", or one number: what load leaves of the free speed. */
export function loadedFrom(text: string): Loaded | undefined {
  const [, from, to = from] = /^\s*([\d.]+)(?:\s*to\s*([\d.]+))?\s*$/.exec(text) ?? [];
  const isShare = (share: string | undefined): share is string => Number(share) > 0 && Number(share) <= 1;
  return isShare(from) && isShare(to) && Number(from) <= Number(to) ? { from, to } : undefined;
}

/** What is wrong with how speeds are asked for. */
export function speedFaults(unit: string | undefined, loaded: string | undefined): Finding[] {
  return [
    ...(unit === undefined || units.speed.includes(unit) ? [] : [wordFault("unit", unit, units.speed)]),
    ...(loaded === undefined || loadedFrom(loaded)
      ? []
      : [
          errorOf("meaning", "not-understood", "/loaded", {
            name: "loaded",
            found: JSON.stringify(loaded),
            example: "0.8 to 0.9",
          }),
        ]),
  ];
}
