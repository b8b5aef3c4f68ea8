import { applyChanges } from "../document/index.js";
import { type Build, changesOf, type ChangeSet, spotOf } from "../drivetrain/index.js";
import type { Toothed } from "../gears/index.js";
import { slotKept } from "./take.js";

/**
 * What to ask for where one value of a build is to be another: all that a set is made of, where it belongs to one; and of a pair
 * that gets another pitch, the slot as lengths where it was counted in teeth of the old one, because it stays where it is.
 *
 * @param address of the value: `primary.driver`, `row.teeth.1`, `rear.wheel.diameter`
 *
 * @example
 * const stages = [{ id: "primary", kind: "pair", driver: 15, driven: 62, module: "0.8" } as const];
 * const mounts = [{ stage: "primary", toothSum: [75, 80] } as const];
 * const build = { format: "meshwright-build/1", stages, outputs: [{ id: "rear", stages: [] }], mounts } as const;
 * changesAt(build, "primary.driver", 16); // => { "primary.driver": 16 }
 * const changes = changesAt(build, "primary.module", "0.5");
 * [changes["mounts.0.from"], changes["mounts.0.to"]]; // => ["30 mm", "32 mm"]
 */
export function changesAt(build: Build, address: string, value: unknown): ChangeSet {
  const [id = "", ...fields] = address.split(".");
  const stage = spotOf(build, id)?.stage;
  if (stage?.id !== id || !fields.length) return { [address]: value };
  const field = fields.join(".");
  const changes = changesOf(stage, { [field]: value });
  if (field !== "module" && field !== "diametralPitch") return changes;
  // What is refused is asked for as it is.
  const made = applyChanges(build, changes).build;
  const kept = made ? slotKept(build, stage, spotOf(made, id)!.stage as Toothed) : [];
  return { ...changes, ...Object.fromEntries(kept.map(({ set, to }) => [set, to])) };
}
