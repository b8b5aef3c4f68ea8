import { applyChanges, asPublished, edited, type Editing } from "@meshwright/calc/document";
import { oneIn, type Build, type Change, type ChangeSet } from "@meshwright/calc/drivetrain";

/**
 * Asks for a change. Kept ways that speak of what goes away with it lose only what they say of that, and keep the rest: a way
 * holds every count, and one stage that is taken out must not take all of them along.
 */
export function editedWithWays(build: Build, request: ChangeSet | Change): Editing {
  const now = edited(build, asPublished(build), request);
  const { alternatives: ways = [] } = build;
  if (!now.ok || "alternatives" in request || (now.build.alternatives?.length ?? 0) === ways.length) return now;
  const { value } = oneIn(now.build);
  const left = ways.flatMap((way) => {
    const changes = Object.entries(way.changes).filter(([address]) => value(address) !== undefined);
    return changes.length ? [{ ...way, changes: Object.fromEntries(changes) }] : [];
  });
  const trimmed = applyChanges(build, { alternatives: left.length ? left : null });
  if (!trimmed.ok) return now;
  const again = edited(trimmed.build, asPublished(trimmed.build), request);
  return again.ok ? again : now;
}
