import type { Build } from "../drivetrain/index.js";

/** Whether a build has a version of a name, which may be one that cannot be made. */
export function hasVersion(build: Build, id: string): boolean {
  const { alternatives = [], references = [], revision, revisions = [] } = build;
  const number = Number(/^revision-(\d{1,7})$/.exec(id)?.[1]);
  return (
    id === "article" ||
    alternatives.some((one) => one.id === id) ||
    references.some((one) => one.id === id && one.build) ||
    [revision, ...revisions].some((one) => one?.number === number)
  );
}
