import { spotOf, type Build, type Change, type WrittenChange } from "../drivetrain/index.js";

/** A build without what tells other versions of it: these are versions of the article, and of nothing else. */
export function bareOf(build: Build): Build {
  const { alternatives: _, references: __, revisions: ___, measurements: ____, ...bare } = build;
  return bare;
}

const isPlainObject = (value: unknown): value is object =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** Changes as a document writes them, one value each. What stands under an id without an `id` of its own are fields. */
export const plainChanges = (build: Build, written: readonly WrittenChange[]): readonly Change[] =>
  written.flatMap((change): readonly Change[] => {
    if (!("set" in change) || typeof change.set === "string") return [change as Change];
    return Object.entries(change.set).flatMap(([address, to]): Change[] => {
      const isFields = isPlainObject(to) && !("id" in to) && Array.isArray(spotOf(build, address)?.holder);
      return isFields
        ? Object.entries(to).map(([field, value]) => ({ set: `${address}.${field}`, to: value as unknown }))
        : [{ set: address, to }];
    });
  });

/** The changes that lead from a build back to an earlier revision, each revision's with its own number. */
export const stepsBackTo = (build: Build, number: number) =>
  [...(build.revisions ?? [])].sort((one, other) => other.number - one.number).filter((one) => one.number >= number);
