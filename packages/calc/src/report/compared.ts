import type { Build } from "../drivetrain/index.js";
import type { QueryText } from "./vocabulary.js";

/** The two outputs that a query compares, by their ids: those named, those that the build compares, front and rear, or the only two. */
export function comparedIn(build: Build, query: QueryText): readonly [one: string, other: string] | undefined {
  const { compare, outputs } = build;
  const { of: asked, with: against } = query as Readonly<Record<string, string | undefined>>;
  const usual = [compare?.of ?? "front", compare?.with ?? "rear"].every((id) =>
    outputs.some((output) => output.id === id),
  )
    ? [compare?.of ?? "front", compare?.with ?? "rear"]
    : outputs.length === 2
      ? outputs.map(({ id }) => id)
      : [];
  // Where one is named, it is held against the other of the usual two, never against itself.
  const other = (id: string): string | undefined => (usual[1] === id ? usual[0] : usual[1]);
  const of = asked ?? (against === undefined ? usual[0] : other(against));
  const rest = against ?? (of === undefined ? undefined : other(of));
  return of === undefined || rest === undefined ? undefined : [of, rest];
}
