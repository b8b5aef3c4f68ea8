import {
  finderFor,
  oneIn,
  setOf,
  stagesOf,
  type Build,
  type Change,
  type ChangeSet,
  type Finder,
} from "../drivetrain/index.js";
import { inners, type Stage } from "../stages/index.js";
import { drafted } from "./carry.js";
import { changedBy, told, type Check } from "./changes.js";
import { checkBuild } from "./check.js";
import { asPublished, sameLayer, type Edited, type Editing, type Layer } from "./edited.js";
import { goneWith, hasTwins, withoutNamesOf } from "./names.js";
import type { Reading } from "./reading.js";
import { sameValue } from "./same.js";

/** Checks a reader's drafts without what names things that are gone, and says whether there was such. */
class TidyCheck {
  trimmed = false;
  readonly #before: Build;

  constructor(before: Build) {
    this.#before = before;
  }

  readonly check: Check = (draft, plain) => {
    let tidy = draft;
    try {
      if (!plain || hasTwins(draft)) tidy = withoutNamesOf(this.#before, draft);
    } catch {
      // What is no build any more is for the check to tell.
    }
    this.trimmed ||= tidy !== draft;
    return checkBuild(tidy);
  };
}

/** A build with a layer's values set. */
export function valued(base: Build, sets: ChangeSet): { readonly reading: Reading; readonly trimmed: boolean } {
  const tidy = new TidyCheck(base);
  return { reading: changedBy(base, sets, tidy.check), trimmed: tidy.trimmed };
}

export const idOf = (change: Change): string =>
  "insert" in change
    ? change.insert.id
    : "move" in change
      ? change.move
      : "remove" in change
        ? change.remove
        : change.set;

export const rootOf = (address: string): string => address.split(".", 1)[0]!;

/** The author's build with the structure of a layer, not checked yet; and the changes that could not be made. */
export function based(article: Build, structure: readonly Change[]) {
  if (!structure.length) return { base: article, failed: [] };
  const { draft, broken, ...made } = drafted(article, structure);
  const failed = made.failed.map(([change, why]) => [change, told(why)] as const);
  try {
    if (!broken) return { base: withoutNamesOf(article, draft), failed };
  } catch {
    // What is no build any more has no names.
  }
  return { base: article, failed, broken: true };
}

/** Which stages stand where. */
export const arrangementOf = (build: Build): string =>
  stagesOf(build)
    .map(({ stage, pointer }) => `${stage.id} ${pointer}`)
    .join("\n");

/** So many steps are looked through, each at the price of a copy of the build. */
const fewSteps = 20;

/** Structure that comes to the same with fewer steps: each guess is tried. */
function simplest(
  article: Build,
  before: readonly Change[],
  change: Change,
  after: Build,
): readonly Change[] | undefined {
  const wanted = arrangementOf(after);
  const id = idOf(change);
  const made = before.findLastIndex((one) => "insert" in one && one.insert.id === id);
  const isMoveOf = (one: Change) => "move" in one && one.move === id;
  const guesses: (readonly Change[])[] = [
    [...before.filter((one) => !isMoveOf(one)), change],
    [...before, change],
  ];
  if (made >= 0) {
    const others = before.filter((one, n) => n < made || (n > made && idOf(one) !== id));
    const { insert } = before[made] as { insert: Stage };
    if ("remove" in change) guesses.unshift(others);
    else if ("move" in change) {
      const { into = intoOf(after, id), at } = change;
      guesses.unshift([...others, { insert, at, ...(into !== undefined && { into }) }]);
    }
  }
  const isSettled = (changes: readonly Change[]) => changes.every((one) => "move" in one || "remove" in one);
  if ("move" in change) guesses.unshift(before);
  if (isSettled([...before, change])) guesses.unshift([]);
  const isRight = (guess: readonly Change[]) => {
    const { base, failed } = based(article, guess);
    return !failed.length && arrangementOf(base) === wanted;
  };
  let best = guesses.find(isRight);
  // A move that others have made needless goes, too.
  for (let fewer = best; fewer && fewer.length <= fewSteps;) {
    best = fewer;
    fewer = best
      .map((one, n) => ("move" in one ? best!.filter((_, at) => at !== n) : best!))
      .find((some) => some !== best && isRight(some));
  }
  return best;
}

/** How changes name the list that a stage stands in. */
function intoOf(build: Build, id: string): string | undefined {
  const { list } = stagesOf(build).find(({ stage }) => stage.id === id)!;
  const shaft = [...(build.branches ?? []), ...build.outputs].find(({ stages }) => stages === list);
  if (shaft) return shaft.id;
  for (const { stage } of stagesOf(build))
    for (const position of inners[stage.kind]?.positions(stage) ?? [])
      if ((position.stages as unknown) === list) return `${stage.id}.${position.id}`;
  return undefined;
}

/** Stages that a layer puts in, as they stand now: what was changed of them since is no change of its own. */
function folded(structure: readonly Change[], build: Build, ids: ReadonlySet<string>): readonly Change[] {
  const find = oneIn(build);
  return structure.map((change) => {
    const id = "insert" in change ? change.insert.id : "";
    const now = ids.has(id) ? find(id)?.stage : undefined;
    if (!now || !("insert" in change)) return change;
    // What stands inside may have come from elsewhere.
    const positions = "positions" in change.insert && "positions" in now ? { positions: change.insert.positions } : {};
    return { ...change, insert: { ...now, ...positions } as Stage };
  });
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/**
 * The values by which one build differs from another at the addresses that were touched: no more than differs, as deep as
 * addresses go, sets whole. Nothing where an address was left without its id: then the changes stand as they were made.
 */
export function settled(base: Build, build: Build, touched: readonly string[]): ChangeSet | undefined {
  const [was, is] = [finderFor(base, touched.length), finderFor(build, touched.length)];
  const sets = new Map<string, unknown>();
  const put = (find: Finder, address: string) => sets.set(address, find.value(address) ?? null);
  const compare = (address: string): void => {
    const [before, now] = [was.value(address), is.value(address)];
    if (sameValue(before, now)) return;
    const depth = address.split(".").length;
    const keys = Object.keys({ ...(before ?? {}), ...(now ?? {}) });
    const isWritten = keys.every((key) => /^[A-Za-z0-9-]{1,99}$/.test(key));
    const isSplit =
      depth < 3 &&
      isWritten &&
      ((isObject(before) && isObject(now) && before.kind === now.kind && before.id === now.id) ||
        (depth === 2 && Array.isArray(before) && Array.isArray(now) && before.length === now.length));
    if (isSplit) for (const key of keys) compare(`${address}.${key}`);
    else {
      const [id] = address.split(".") as [string];
      const [one, other] = [setOf(was(id)?.stage), setOf(is(id)?.stage)];
      const field = address.slice(id.length + 1);
      const isWhole = one && other && field in one && Object.keys(one).join() === Object.keys(other).join();
      for (const each of isWhole ? Object.keys(one) : [field]) put(is, each ? `${id}.${each}` : id);
    }
  };
  for (const address of touched) {
    const id = rootOf(address);
    if (!was(id) && !is(id)) continue;
    if (!was(id) || !is(id)) return undefined;
    let at = address;
    while (!was(at) || !is(at)) at = at.slice(0, at.lastIndexOf("."));
    compare(at);
  }
  const isInside = (address: string) => {
    for (let end = address.lastIndexOf("."); end > 0; end = address.lastIndexOf(".", end - 1))
      if (sets.has(address.slice(0, end))) return true;
    return false;
  };
  return Object.fromEntries([...sets].filter(([address]) => !isInside(address)));
}

export function editedTo(
  article: Build,
  layer: Layer,
  { base, build, trimmed }: Pick<Edited, "base" | "build" | "trimmed">,
): { readonly ok: true } & Edited {
  const { structure, sets } = layer;
  if (!structure.length && !Object.keys(sets).length) return { ok: true, ...asPublished(article), layer };
  return { ok: true, layer, base, build, trimmed, gone: structure.length || trimmed ? goneWith(article, build) : [] };
}

const isStructural = (request: ChangeSet | Change): request is Change =>
  "insert" in request || "remove" in request || "move" in request;

/**
 * One more change on top of a layer: new values by address, or a change of structure. What names a stage that goes away
 * goes with it.
 *
 * @param before what the same author's build was edited to; it is answered itself where nothing has changed
 */
export function edited(article: Build, before: Edited, request: ChangeSet | Change): Editing {
  const structural = isStructural(request);
  const tidy = new TidyCheck(before.build);
  const asked = changedBy(before.build, structural ? [request] : request, tidy.check);
  if (!asked.ok) return asked;
  const { structure, sets } = before.layer;
  /** The build by the whole layer, where the way to it could make a difference. */
  const reached = (layer: Layer, base: Build, isAnew: boolean): Editing => {
    const anew = isAnew ? valued(base, layer.sets) : undefined;
    const build = anew?.reading.build ?? asked.build;
    const now = editedTo(article, layer, { base, build, trimmed: anew?.trimmed ?? false });
    return sameLayer(before.layer, layer) ? { ok: true, ...before } : now;
  };
  if (structural) {
    if ("move" in request && arrangementOf(asked.build) === arrangementOf(before.build)) return { ok: true, ...before };
    const simple = simplest(article, structure, request, asked.build);
    const { base } = based(article, simple ?? []);
    const left = simple && settled(base, asked.build, Object.keys(sets));
    if (left) return reached({ structure: simple, sets: left }, base, true);
    // What depends on values that were changed before stays in the order in which it was done.
    const all = [...structure, ...Object.entries(sets).map(([set, to]) => ({ set, to })), request];
    return reached({ structure: all, sets: {} }, based(article, all).base, true);
  }
  const ids = new Set(Object.keys(request).map(rootOf));
  const isOfNew = structure.some((change) => "insert" in change && ids.has(change.insert.id));
  const now = isOfNew ? folded(structure, asked.build, ids) : structure;
  const base = isOfNew ? based(article, now).base : before.base;
  const touched = [...Object.keys(sets), ...Object.keys(request)];
  const left = settled(base, asked.build, touched) ?? inOrder(sets, request);
  return reached({ structure: now, sets: left }, base, before.trimmed || tidy.trimmed);
}

/** Changes as they were made, the later of two at one address alone. */
function inOrder(sets: ChangeSet, request: ChangeSet): ChangeSet {
  const all: Record<string, unknown> = { ...sets };
  for (const [address, to] of Object.entries(request)) {
    delete all[address];
    all[address] = to;
  }
  return all;
}
