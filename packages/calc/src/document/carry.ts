import {
  finderFor,
  labelAt,
  oneIn,
  spotOf,
  type Build,
  type Change,
  type ChangeSet,
  type Finder,
} from "../drivetrain/index.js";
import type { FindingCode, FindingValues, Stage } from "../stages/index.js";

// Changes are carried out on a draft, which is then checked by whoever asks: the reader of documents tries alternatives this
// way, and has a check of its own.

/** What keeps a change from being made: no sentence, because whoever asks may have no use for one. */
export interface Obstacle {
  readonly code: FindingCode;
  readonly address: string;
  readonly values?: FindingValues | undefined;
}

const obstacle = (code: FindingCode, address: string, values?: FindingValues): Obstacle => ({ code, address, values });

/** A copy in which everything around one place is new, and nothing else: one value can be changed there. */
export function copyAround(build: Build, pointer: string): Build {
  const copy = { ...build };
  let at = copy as unknown as Record<string, object>;
  for (const step of pointer.split("/").slice(1, -1)) {
    const key = step.replace(/~1/g, "/").replace(/~0/g, "~");
    const inner = at[key]!;
    at = (at[key] = Array.isArray(inner) ? [...(inner as unknown[])] : { ...inner }) as Record<string, object>;
  }
  return copy;
}

/** So many places are copied one by one; beyond, a copy of everything is cheaper. */
const few = 4;

/** A build to carry changes out on; the given one is left as it is. */
function draftOf(build: Build, changes: readonly Change[]): Build {
  if (changes.length <= few)
    try {
      const spots = changes.map((change) => ("set" in change ? oneIn(build)(change.set) : undefined));
      if (spots.every((spot) => spot)) return spots.reduce((draft, spot) => copyAround(draft, spot!.pointer), build);
    } catch {
      // What is no build is for the check to tell.
    }
  return structuredClone(build);
}

/** The list that `into` names: shared stages, an output's, a branch's, or a position's by `stage.position`. */
export function listOf(build: Build, find: Finder, into: string | undefined): Stage[] | undefined {
  if (into === undefined) return build.stages as Stage[];
  const [id, position] = into.split(".");
  const value = find.value(id!) as { stages?: Stage[]; positions?: { id: string; stages?: Stage[] }[] } | undefined;
  return position ? value?.positions?.find((one) => one.id === position)?.stages : value?.stages;
}

function carryOut(draft: Build, change: Change, find: Finder): Obstacle | undefined {
  if ("set" in change) {
    const { set: address, to } = change;
    const spot = find(address);
    if (!spot) return obstacle("missing-address", address);
    const { holder, key } = spot;
    if (to !== null) holder[key] = structuredClone(to);
    else if (Array.isArray(holder)) return obstacle("not-optional", address);
    else delete holder[key];
    return undefined;
  }
  const id = "remove" in change ? change.remove : "move" in change ? change.move : undefined;
  const spot = id === undefined ? undefined : find(id);
  if (id !== undefined && spot?.stage?.id !== id) return obstacle("not-a-stage", id);
  const home = spot?.holder as unknown as Stage[];
  const take = (): Stage => home.splice(spot!.key as number, 1)[0]!;
  if ("remove" in change) {
    take();
    return undefined;
  }
  const list = "move" in change && change.into === undefined ? home : listOf(draft, find, change.into);
  if (!list) return obstacle("missing-address", String(change.into));
  const { at } = change;
  const most = "move" in change && list === home ? list.length - 1 : list.length;
  const label = id === undefined ? "" : labelAt(draft, id);
  if (!(Number.isInteger(at) && at >= 0 && at <= most))
    return obstacle("not-a-place", id ?? "", { found: String(at), most });
  const stage = "insert" in change ? structuredClone(change.insert) : take();
  list.splice(at, 0, stage);
  if (id === undefined || spotOf(draft, id)) return undefined;
  // What went into itself is out of reach now: it goes back to where it was.
  list.splice(at, 1);
  home.splice(spot!.key as number, 0, stage);
  return obstacle("into-itself", id, { address: label });
}

/** Changes in a list, whichever way they were given. */
export const listed = (changes: ChangeSet | readonly Change[]): readonly Change[] =>
  Array.isArray(changes) ? changes : Object.entries(changes).map(([set, to]) => ({ set, to }));

/** What came of carrying changes out, before anybody has checked it. */
export interface Drafted {
  readonly draft: Build;
  /** What kept a change from being made, with the change; the others were made. */
  readonly failed: readonly (readonly [Change, Obstacle])[];
  /** Whether only plain values took the place of plain values: then every id and address is where it was. */
  readonly plain: boolean;
  /** What was set is no data, or an earlier change has left nothing to find one's way in. */
  readonly broken: boolean;
}

/** A copy of a build with changes carried out one after the other. Nothing is checked but that there is a place for each. */
export function drafted(build: Build, changes: readonly Change[]): Drafted {
  const draft = draftOf(build, changes);
  const failed: (readonly [Change, Obstacle])[] = [];
  let find: Finder | undefined;
  let plain = true;
  for (const change of changes)
    try {
      find ??= finderFor(draft, changes.length);
      const isPlain =
        "set" in change &&
        typeof change.to !== "object" &&
        typeof find.value(change.set) !== "object" &&
        !change.set.endsWith(".id");
      const why = carryOut(draft, change, find);
      if (why) failed.push([change, why]);
      if (isPlain) continue;
      find = undefined;
      plain = false;
    } catch {
      return { draft, failed, plain: false, broken: true };
    }
  return { draft, failed, plain, broken: false };
}
