import { spotOf, type Build, type Part } from "@meshwright/calc/drivetrain";

/** Two gears that are sold together. */
export interface GearSet {
  readonly driver: number;
  readonly driven: number;
  readonly name: string;
}

/** The sets that can be had for a stage, the one that is in it first where no part holds it; nothing where it is no set. */
export function setsFor(build: Build, address: string): readonly GearSet[] | undefined {
  const stage = spotOf(build, address)?.stage;
  if (stage?.kind !== "pair" || !stage.set) return undefined;
  const sets: GearSet[] = [];
  for (const { is, stage: place = stage.id, driver, driven, name = "", available, owned } of (build.parts ??
    []) as readonly Part[])
    if (/^(set|hub)$/.test(is) && place === stage.id && driver && driven && (available !== false || owned))
      sets.push({ driver, driven, name });
  if (!sets.some((set) => set.driver === stage.driver && set.driven === stage.driven))
    sets.unshift({ driver: stage.driver, driven: stage.driven, name: "" });
  return sets;
}
