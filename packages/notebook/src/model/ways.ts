import { freeId, stagesOf, type Alternative, type Build, type ChangeSet } from "@meshwright/calc/drivetrain";
import { displays } from "@meshwright/calc/stages";
import type { Finding } from "@meshwright/calc/stages";
import type { Session } from "./session.js";

// Other ways to build the same drivetrain, kept by name: each holds all counts as they stood.

/** Every count and printed ratio of a drivetrain as it stands, by address. */
function countsOf(build: Build): ChangeSet {
  return Object.fromEntries(
    stagesOf(build).flatMap(({ stage }) =>
      displays[stage.kind](stage).flatMap((piece) => {
        if (!("field" in piece) || piece.field === undefined) return [];
        // A printed ratio is text.
        const isOwn = typeof piece.value === "number" || piece.field === "value";
        return isOwn && piece.value !== undefined ? [[`${stage.id}.${piece.field}`, piece.value]] : [];
      }),
    ),
  );
}

/** Keeps the counts as they stand under a name; the same name again holds what stands now. */
export function keepWay(session: Session, name: string): readonly Finding[] {
  const build = session.build!;
  const before = build.alternatives ?? [];
  const known = before.find(({ label, id }) => (label ?? id) === name);
  const way: Alternative = { id: known?.id ?? freeId("way", [build]), label: name, changes: countsOf(build) };
  const alternatives = known ? before.map((one) => (one === known ? way : one)) : [...before, way];
  return session.change([{ set: "alternatives", to: alternatives }], `${name} kept as another way to build it`);
}

/** Changes the drivetrain to a way that was kept; how it stood is in Undo. */
export const changeToWay = (session: Session, { label, id, changes }: Alternative): readonly Finding[] =>
  session.change(changes, `Changed to ${label ?? id}`);

/** Forgets a way that was kept. */
export function forgetWay(session: Session, way: Alternative): readonly Finding[] {
  const left = (session.build!.alternatives ?? []).filter(({ id }) => id !== way.id);
  return session.change([{ set: "alternatives", to: left.length ? left : null }], `${way.label ?? way.id} forgotten`);
}
