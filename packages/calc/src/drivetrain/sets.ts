import { displays, type Stage } from "../stages/index.js";
import type { ChangeSet } from "./types.js";

// Gears that are sold together are one value. What such a value is made of, when two are the same, and what has to be asked
// for together is decided here and nowhere else.

/** The values that are changed together, by field, in the order of drive. */
export type GearSet = Readonly<Record<string, number | string>>;

/**
 * The counts of a stage whose gears are sold as a set; nothing where each can be changed alone. Which fields they are is
 * what the kind shows of itself.
 *
 * @example
 * setOf({ id: "ring", kind: "pair", set: true, driver: 13, driven: 38 }); // => { driver: 13, driven: 38 }
 * setOf({ id: "ring", kind: "pair", driver: 13, driven: 38 }); // => undefined
 */
export function setOf(stage: Stage | undefined): GearSet | undefined {
  if (!stage || !("set" in stage) || stage.set !== true) return undefined;
  const shown = displays[stage.kind](stage).flatMap((piece) => ("field" in piece ? [[piece.field, piece.value]] : []));
  return Object.fromEntries(shown) as GearSet;
}

/** Whether two sets are the same: the same fields, with the same values. */
export function sameSet(one: GearSet | undefined, other: GearSet | undefined): boolean {
  if (!one || !other) return one === other;
  const fields = Object.keys(one);
  return (
    fields.length === Object.keys(other).length && fields.every((field) => String(one[field]) === String(other[field]))
  );
}

/**
 * What to ask for where values of a stage are to be others: those alone, or, where one of them belongs to a set, all
 * that the set is made of, because half a set is refused.
 *
 * @param values by field: `driver`, `teeth.1`
 *
 * @example
 * const ring = { id: "ring", kind: "pair", set: true, driver: 13, driven: 38 } as const;
 * changesOf(ring, { driver: 12 }); // => { "ring.driver": 12, "ring.driven": 38 }
 * changesOf({ ...ring, set: false }, { driver: 12 }); // => { "ring.driver": 12 }
 */
export function changesOf(stage: Stage, values: Readonly<Record<string, unknown>>): ChangeSet {
  const set = setOf(stage);
  const all = set && Object.keys(values).some((field) => field in set) ? { ...set, ...values } : values;
  return Object.fromEntries(Object.entries(all).map(([field, to]) => [`${stage.id}.${field}`, to]));
}
