import type { Stage } from "../stages/index.js";
import { sameSet, setOf, type GearSet } from "./sets.js";
import type { Build, Change, ChangeSet } from "./types.js";
import { finderIn, oneIn, type Finder } from "./walk.js";

/** Changes that stand or fall together: all that belongs to one set, else one value alone. */
export interface Unit {
  /** The address; of a set, its stage's id. */
  readonly address: string;
  readonly sets: ChangeSet;
}

/** An address taken apart where it first parts: the id, and the field there. */
function halves(address: string): readonly [id: string, field: string] {
  const at = address.indexOf(".");
  return at < 0 ? [address, ""] : [address.slice(0, at), address.slice(at + 1)];
}

/** Whether naming a field names a count of a set as well: itself, or the list that it stands in. */
const names = (field: string, count: string): boolean => field === count || count.startsWith(`${field}.`);

/** Whether a field is of a set, or says that it is one. */
const isOfSet = (set: GearSet | undefined, field: string): boolean =>
  !!set && (field === "set" || Object.keys(set).some((count) => names(field, count)));

/**
 * Changes of values by what belongs together, in the order of their first.
 *
 * @param build what they are changes of
 */
export function unitsOf(build: Build, sets: ChangeSet): readonly Unit[] {
  const addresses = Object.keys(sets);
  const find = finderFor(build, addresses.length);
  const units = new Map<string, Record<string, unknown>>();
  for (const address of addresses) {
    const [id, field] = halves(address);
    const key = isOfSet(setOf(find(id)?.stage), field) ? id : address;
    const unit = units.get(key);
    if (unit) unit[address] = sets[address];
    else units.set(key, { [address]: sets[address] });
  }
  return [...units].map(([address, unit]) => ({ address, sets: unit }));
}

/** A table of all addresses is worth its making where more than one is looked up. */
export const finderFor = (build: Build, lookups: number): Finder => (lookups > 1 ? finderIn : oneIn)(build);

/**
 * Whether a change of some fields parts a set: some of its counts are named and others not, and what results is another set. A
 * stage that is a set no longer is not parted.
 */
export function partsSet(before: Stage, after: Stage | undefined, fields: ReadonlySet<string>): boolean {
  const set = setOf(before);
  const counts = Object.keys(set ?? {});
  const isNamed = (count: string) => [...fields].some((field) => names(field, count));
  if (!counts.some(isNamed) || counts.every(isNamed)) return false;
  const result = setOf(after);
  return !!result && !sameSet(set, result);
}

/** The sets that changes would part; a stage that is named whole is not parted. */
export function partedSets(before: Build, after: Build, changes: readonly Change[]): readonly Stage[] {
  const was = finderFor(before, changes.length);
  const is = finderFor(after, changes.length);
  const named = new Map<string, Set<string>>();
  for (const change of changes)
    if ("set" in change) {
      const [id, field] = halves(change.set);
      named.set(id, (named.get(id) ?? new Set()).add(field));
    }
  return [...named].flatMap(([id, fields]) => {
    const { stage } = was(id) ?? {};
    return stage && !fields.has("") && partsSet(stage, is(id)?.stage, fields) ? [stage] : [];
  });
}
