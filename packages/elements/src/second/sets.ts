import { sameSet, setOf, spotOf, type Build, type GearSet, type Part } from "@meshwright/calc/drivetrain";

/** A set that can be chosen: its counts, and what it is sold as. */
export interface Choice {
  readonly set: GearSet;
  readonly name: string;
}

/** What a part brings of a set, if it brings all of it. */
function setIn(part: Part, like: GearSet): GearSet | undefined {
  const counts = Object.keys(like).map((field) => [field, part[field as keyof Part]]);
  return counts.every(([, count]) => count) ? (Object.fromEntries(counts) as GearSet) : undefined;
}

/** The sets that can be had for a stage, the one that is in it first where no part holds it; nothing where it is no set. */
export function choicesFor(build: Build, address: string): readonly Choice[] | undefined {
  const stage = spotOf(build, address)?.stage;
  const fitted = setOf(stage);
  if (!stage || !fitted) return undefined;
  const choices: Choice[] = [];
  for (const part of build.parts ?? []) {
    const { is, stage: place = stage.id, name = "", available, owned } = part;
    const set = setIn(part, fitted);
    if (set && /^(set|hub)$/.test(is) && place === stage.id && (available !== false || owned))
      choices.push({ set, name });
  }
  if (!choices.some(({ set }) => sameSet(set, fitted))) choices.unshift({ set: fitted, name: "" });
  return choices;
}
