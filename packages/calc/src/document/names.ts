import {
  finderIn,
  labelAt,
  stagesOf,
  type Build,
  type Split,
  type Change,
  type Measurement,
} from "../drivetrain/index.js";
import { findingOf, type Finding, type FindingTerm, type Stage } from "../stages/index.js";
import { copyAround } from "./carry.js";
import { sameValue } from "./same.js";

// A document names its stages and axles in many places. Where a reader takes a stage away, what speaks of nothing else goes
// with it; what an author says is checked instead, and refused where it names what is not there.

type Named = { readonly id: string };

const idsIn = (build: Build): Set<string> =>
  new Set([
    ...stagesOf(build).map(({ stage }) => stage.id),
    ...[...build.outputs, ...(build.branches ?? [])].map(({ id }) => id),
  ]);

/** What one build has and another has not. */
function lostIn(before: Build, after: Build): Set<string> {
  const left = idsIn(after);
  return new Set([...idsIn(before)].filter((id) => !left.has(id)));
}

const rootOf = (address: string): string => address.split(".", 1)[0]!;

/** The first address of an alternative at which a build has nothing. */
const deadEnd = (find: (address: string) => unknown, changes: object): string | undefined =>
  Object.keys(changes).find((address) => !find(address));

/** The stages that one step back in the history speaks of. */
const spokenOf = (change: Change | { readonly set: object }): readonly string[] =>
  Object.values(change).flatMap((one) =>
    typeof one === "string" ? [rootOf(one)] : typeof one === "object" && one ? Object.keys(one).map(rootOf) : [],
  );

/** The counts that a measurement was made with, by address. */
const madeWith = (one: Measurement): object => (one as { with?: object }).with ?? {};

/** A list without some of its entries; nothing where none is left. The list itself where all are. */
function only<T>(list: readonly T[] | undefined, keep: (one: T) => boolean): readonly T[] | undefined {
  const left = list?.filter(keep);
  return left?.length === list?.length ? list : left?.length ? left : undefined;
}

type Loose = Record<string, unknown>;

/** What two stages of one bought thing have in common: all but what they are called, and where they stand. */
function thingIn(stage: Stage | undefined): Loose {
  const { id: _, label: __, group: ___, per: ____, reverses: _____, ...thing } = { ...stage } as Loose;
  return { ...thing, sameAs: undefined, fitted: undefined };
}

const sameAsOf = (stage: Stage): string | undefined => (stage as { sameAs?: string }).sameAs;

/** Whether stages say that they are the same thing: then a value of one says something about another. */
export const hasTwins = (build: Build): boolean => stagesOf(build).some(({ stage }) => sameAsOf(stage) !== undefined);

/** Stages that are no longer the same thing as the one that they name: it is gone, or one of them was swapped. */
function formerTwins(before: Build, draft: Build, lost: ReadonlySet<string>): ReadonlySet<Stage> {
  const twins = stagesOf(draft).flatMap(({ stage }) => (sameAsOf(stage) === undefined ? [] : [stage]));
  if (!twins.length) return new Set();
  const [was, is] = [finderIn(before), finderIn(draft)];
  return new Set(
    twins.filter((stage) => {
      const other = sameAsOf(stage)!;
      if (lost.has(other)) return true;
      const isSwapped = [stage.id, other].some((id) => !sameValue(thingIn(was(id)?.stage), thingIn(is(id)?.stage)));
      return isSwapped && !sameValue(thingIn(stage), thingIn(is(other)?.stage));
    }),
  );
}

/** Fields of stages that name others: taken away, or shortened, in copies of what is around them. */
function withoutFields(draft: Build, former: ReadonlySet<Stage>, parts: ReadonlySet<string>): Build {
  let copy = draft;
  for (const { stage, pointer } of stagesOf(draft)) {
    const { sameAs, fitted } = stage as { sameAs?: string; fitted?: readonly string[] };
    const left = only(fitted, (id) => !parts.has(id));
    const twin = former.has(stage) ? undefined : sameAs;
    if (left === fitted && twin === sameAs) continue;
    copy = copyAround(copy, `${pointer}/id`);
    const own = stagesOf(copy).find((place) => place.pointer === pointer)!.stage as unknown as Loose;
    for (const [key, value] of Object.entries({ sameAs: twin, fitted: left }))
      if (value === undefined) delete own[key];
      else own[key] = value;
  }
  return copy;
}

/**
 * A draft without what names stages or axles that `before` had and the draft has not: their mounts, parts and measurements,
 * alternatives and modes that speak of them. An alternative goes whole: half of it would be something that nobody proposed.
 * The draft itself where there is nothing of that kind.
 */
export function withoutNamesOf(before: Build, draft: Build): Build {
  const lost = lostIn(before, draft);
  const find = finderIn(draft);
  const isLost = (id: string | undefined) => id !== undefined && lost.has(id);
  const changes: Partial<Record<keyof Build, unknown>> = {};
  const put = <Key extends keyof Build>(key: Key, value: Build[Key] | undefined) => {
    if (value !== draft[key]) changes[key] = value;
  };
  put(
    "alternatives",
    only(draft.alternatives, (one) => deadEnd(find, one.changes) === undefined),
  );
  put(
    "measurements",
    only(draft.measurements, (one) => !isLost(one.what) && deadEnd(find, madeWith(one)) === undefined),
  );
  const former = formerTwins(before, draft, lost);
  if (!lost.size && !former.size && !Object.keys(changes).length) return draft;
  put(
    "mounts",
    only(draft.mounts, ({ stage }) => !isLost(stage)),
  );
  const parts = only(draft.parts, ({ stage }) => !isLost(stage));
  put("parts", parts);
  const modes = draft.modes?.map((mode) => {
    const entries = Object.entries(mode.positions);
    const left = entries.filter(([id]) => !isLost(id));
    return left.length === entries.length ? mode : { ...mode, positions: Object.fromEntries(left) };
  });
  if (modes?.some((mode, n) => mode !== draft.modes![n]))
    put(
      "modes",
      only(modes, ({ positions }) => Object.keys(positions).length > 0),
    );
  const { target, compare, headline, centre } = draft;
  if (isLost(target?.output)) put("target", undefined);
  if (isLost(compare?.of) || isLost(compare?.with)) put("compare", undefined);
  if (isLost(headline)) put("headline", undefined);
  const sharesLost = ({ share }: Split) => Object.keys(share ?? {}).some(isLost);
  if (centre && sharesLost(centre)) put("centre", { kind: centre.kind });
  const branches = draft.branches?.map((one) =>
    one.split && sharesLost(one.split) ? { ...one, split: { kind: one.split.kind } } : one,
  );
  if (branches?.some((one, n) => one !== draft.branches![n])) put("branches", branches);
  // A revision is what the next later one becomes by going back: where one step cannot be made, nothing behind it can.
  const { revisions } = draft as { revisions?: readonly { back?: readonly Change[] }[] };
  if (revisions?.some(({ back = [] }) => back.some((change) => spokenOf(change).some(isLost))))
    (changes as Loose).revisions = undefined;

  const left = parts && new Set(parts.map(({ id }) => id));
  const gone = new Set(draft.parts?.map(({ id }) => id).filter((id) => !left?.has(id)));
  const copy = { ...withoutFields(draft, former, gone) } as unknown as Loose;
  for (const [key, value] of Object.entries(changes))
    if (value === undefined) delete copy[key];
    else copy[key] = value;
  return copy as unknown as Build;
}

const idsOf = (list: readonly Named[] | undefined): Set<string> => new Set(list?.map(({ id }) => id));

/** What a reader's version lacks because the stages that it spoke of are others, a finding for each stage, by its label. */
export function goneWith(article: Build, build: Build): readonly Finding[] {
  const taken = new Map<string, (string | FindingTerm)[]>();
  const say = (id: string, what: string | FindingTerm): void => void taken.set(id, [...(taken.get(id) ?? []), what]);
  const lost = lostIn(article, build);
  for (const id of lost) {
    if (article.mounts?.some(({ stage }) => stage === id)) say(id, { term: "mount" });
    const pieces = article.parts?.filter(({ stage }) => stage === id).length;
    if (pieces) say(id, { term: "parts", amount: pieces });
    const measured = article.measurements?.filter(
      (one) => one.what === id || Object.keys(madeWith(one)).some((address) => rootOf(address) === id),
    ).length;
    if (measured) say(id, { term: "measurements", amount: measured });
  }
  const [modes, alternatives] = [idsOf(build.modes), idsOf(build.alternatives)];
  for (const { id, label = id, positions } of article.modes ?? []) {
    const culprit = modes.has(id) ? undefined : Object.keys(positions).find((one) => lost.has(one));
    if (culprit) say(culprit, label);
  }
  const missing = article.alternatives?.filter(({ id }) => !alternatives.has(id)) ?? [];
  const find = missing.length ? finderIn(build) : undefined;
  for (const { id, label = id, changes } of missing) {
    const culprit = deadEnd(find!, changes);
    if (culprit) say(rootOf(culprit), label);
  }
  return [...taken].map(([id, what]) =>
    findingOf("warning", "meaning", "went-along", id, { label: labelAt(article, id), what }),
  );
}
