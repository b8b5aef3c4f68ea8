import type { Build, Part } from "@meshwright/calc/drivetrain";
import type { Evaluation } from "@meshwright/calc/evaluate";
import type { PairStage } from "@meshwright/calc/stages";
import { canBeHad, costOf } from "@meshwright/calc/parts";
import { fitBy, type FoundPair, type Order, type PairQuestion } from "@meshwright/calc/search";

/** A part that is one gear. */
export type GearPart = Part & { readonly teeth: number };

/** Among which parts a reader looks. */
export type Among = "all" | "had" | "owned";

export interface Asked {
  readonly question: PairQuestion<GearPart>;
  readonly stage: PairStage;
  /** Whether a ratio in the train is an interval: then both its ends have to be in the range. */
  readonly unsure: boolean;
}

export type Found = FoundPair<GearPart>;

const counts = (part: Part, kinds: readonly Part["is"][]): part is GearPart =>
  part.teeth !== undefined && kinds.includes(part.is);

/** The currency that most prices are in. */
function currencyOf(parts: readonly Part[]): string {
  const seen = new Map<string, number>();
  for (const { price } of parts) if (price) seen.set(price.currency, (seen.get(price.currency) ?? 0) + 1);
  return [...seen].sort((a, b) => b[1] - a[1])[0]?.[0] ?? "";
}

/** The pair that is looked for: the one named, or the first that has a mount. */
export function pairToFind(build: Build, id: string | null): PairStage | undefined {
  const wanted = id ?? build.mounts?.[0]?.stage;
  return build.stages.find((stage): stage is PairStage => stage.id === wanted && stage.kind === "pair");
}

/** What is asked of the search, from the build as it stands. Undefined where it has no range or no such pair. */
export function askFor(
  evaluation: Evaluation,
  parts: readonly Part[],
  { id, among, adapters, order }: { id: string | null; among: Among; adapters: boolean; order: Order },
): Asked | undefined {
  const { build } = evaluation;
  const { target } = build;
  const stage = pairToFind(build, id);
  if (!stage || !target) return undefined;
  const usable = parts.filter(
    (part) =>
      among === "all" || (among === "owned" ? part.owned || part.status === "fitted" : canBeHad(part) !== false),
  );
  const outputs = evaluation.outputs
    .filter((output) => (target.output ?? output.id) === output.id && output.reduction)
    .flatMap((output) => {
      const own = output.steps.find((step) => step.stage.id === stage.id)?.reduction;
      if (!own) return [];
      const { low, high } = output.reduction!.over(own).bounds;
      const range = { from: target.from, to: target.to };
      const ends = low.equals(high) ? [low] : [low, high];
      return ends.map((rest) => ({ id: output.id, rest, ...range }));
    });
  if (!outputs.length) return undefined;
  const loose = adapters ? usable.filter(({ is }) => is === "sleeve" || is === "plate") : [];
  const currency = currencyOf(parts);
  const { module, diametralPitch, pressureAngle } = stage;
  const pitch = JSON.parse(JSON.stringify({ module, diametralPitch, pressureAngle })) as PairQuestion["pitch"] & object;
  const found = build.mounts?.find((one) => one.stage === stage.id);
  // A known pair is counted in the stage's own pitch, whatever gear is held against it.
  const mount = found && { ...pitch, ...found };
  return {
    stage,
    unsure: new Set(outputs.map(({ id }) => id)).size < outputs.length,
    question: {
      drivers: usable.filter((part) => counts(part, ["pinion", "gear"])),
      drivens: usable.filter((part) => counts(part, ["spur", "gear"])),
      outputs,
      pitch,
      order,
      ...(mount && { mount }),
      fit: fitBy(mount ?? {}, loose),
      costOf: (part) => costOf(part as Part, currency),
    },
  };
}
