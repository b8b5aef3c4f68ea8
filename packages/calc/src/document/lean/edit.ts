import { finderIn, setOf, type Build, type ChangeSet } from "../../drivetrain/index.js";
import { sameValue } from "../same.js";
import { leanApply } from "./check.js";

/** The values of a reader that differ from the author's, sets whole; nothing where they were set in other ways than one by one. */
export function leanLayer(article: Build, build: Build, addresses: Iterable<string>): ChangeSet {
  const [was, is] = [finderIn(article), finderIn(build)];
  const sets: Record<string, unknown> = {};
  for (const address of addresses) {
    if (sameValue(was.value(address), is.value(address))) continue;
    const [id = ""] = address.split(".");
    const counts = Object.keys(setOf(is(id)?.stage) ?? {}).map((field) => `${id}.${field}`);
    for (const one of counts.includes(address) ? counts : [address]) sets[one] = is.value(one) ?? null;
  }
  return sets;
}

/**
 * An author's build with one more change of plain values over those made before; nothing where it cannot plainly be made.
 *
 * @param before the build as it stands, and the values that differ
 */
export function leanEdited(
  article: Build,
  before: { readonly build: Build; readonly sets: ChangeSet },
  request: ChangeSet,
): { readonly build: Build; readonly sets: ChangeSet } | undefined {
  const build = leanApply(before.build, request);
  if (!build) return undefined;
  const sets = leanLayer(article, build, new Set([...Object.keys(before.sets), ...Object.keys(request)]));
  return { build: Object.keys(sets).length ? build : article, sets };
}
