import { lengthOf } from "../exact/index.js";
import { moduleOf, type Toothed } from "../gears/index.js";
import { displays, inners, type Joint, type Stage } from "../stages/index.js";

/** A wheel as it is sketched: its count, and the diameter of its pitch circle in millimetres. */
interface SketchedWheel {
  readonly teeth: number;
  readonly diameter: number;
}

/** What a stage looks like from the side, in millimetres; `isGuessed` where its pitch is not known, and with it its size. */
export interface Sketch {
  readonly by: "mesh" | "inside" | "cones" | "belt" | "chain" | "worm" | "planets" | "pins" | "box" | "lever" | "break";
  /** In the order of drive. Of planets: the sun and the ring; of pins: the disc and the ring of pins. */
  readonly wheels: readonly SketchedWheel[];
  readonly isGuessed: boolean;
  /** How many planets there are. */
  readonly planets?: number;
  /** The side of the pinion that its ring sits on. */
  readonly side?: "left" | "right" | undefined;
  /** What is known of a box comes from what is printed on it, or from turning it. */
  readonly from?: "printed" | "turned";
  /** Of a lever: how many ways it can stand, and which of them does. */
  readonly lanes?: number;
  readonly lane?: number;
}

/** What a stage is sketched as, by the words between its counts: the first that has an answer. */
const byWord: Readonly<Record<Joint, Sketch["by"] | undefined>> = {
  belt: "belt",
  chain: "chain",
  worm: "worm",
  sun: "planets",
  pins: "pins",
  printed: "box",
  turned: "box",
  drives: undefined,
  "in ring": undefined,
  times: undefined,
  for: undefined,
  "up to": undefined,
};

/** What stages may say of their shape, whatever their kind. */
type Shaped = Toothed & {
  readonly form?: string;
  readonly internal?: boolean;
  readonly ringSide?: "left" | "right";
  readonly pinionSide?: "ahead" | "behind";
  readonly pitch?: string;
  readonly planets?: number;
};

/** A gear's module in millimetres, where its stage says it. */
function moduleIn(stage: Stage): number | undefined {
  try {
    return moduleOf(stage as Toothed)?.toNumber();
  } catch {
    return undefined;
  }
}

/** The module that gears are taken to have which do not say it: the middle of those that are known. */
export function usualModule(stages: readonly Stage[]): number {
  const known = stages.flatMap((stage) => moduleIn(stage) ?? []).sort((one, other) => one - other);
  return known[known.length >> 1] ?? 1;
}

const across = (teeth: readonly number[], module: number): SketchedWheel[] =>
  teeth.map((count) => ({ teeth: count, diameter: count * module }));

/** Whole ratios of the diameter of sun and ring where nothing tells the size: a box as large as a thumb is long. */
const usualRing = 34;

/**
 * What a stage looks like, in millimetres.
 *
 * @param usual the module that is taken for gears that say none
 *
 * @example
 * sketchOf({ id: "one", kind: "pair", driver: 15, driven: 60, module: "0.8" }, 1).wheels[1]!.diameter; // => 48
 */
export function sketchOf(stage: Stage, usual: number): Sketch {
  if (inners[stage.kind]) return { by: "lever", wheels: [], isGuessed: false };
  const pieces = displays[stage.kind](stage);
  const words = pieces.flatMap((piece) => ("word" in piece ? [piece.word] : []));
  const counts = pieces.flatMap((piece) => ("value" in piece && typeof piece.value === "number" ? [piece.value] : []));
  const { form, internal, ringSide, pinionSide, pitch, planets } = stage as Shaped;
  const module = moduleIn(stage);
  const isGuessed = module === undefined;
  const by = words.map((word) => byWord[word]).find((one) => one !== undefined);
  switch (by) {
    case "box":
      return { by, wheels: [], isGuessed: false, from: words.includes("turned") ? "turned" : "printed" };
    case "belt":
    case "chain": {
      const step = pitch === undefined ? usual * 2 : lengthOf(pitch, "pitch").toNumber();
      return { by, wheels: across(counts.slice(0, 2), step / Math.PI), isGuessed: pitch === undefined };
    }
    case "planets":
    case "pins": {
      const [inner, outer] = counts as [number, number];
      return {
        by,
        wheels: across([inner, outer], module ?? usualRing / outer),
        isGuessed,
        ...(planets && { planets }),
      };
    }
    case "worm":
      return { by, wheels: across(counts.slice(0, 2), module ?? usual), isGuessed };
    default: {
      const isAngled = (form !== undefined && form !== "spur" && form !== "helical") || ringSide !== undefined;
      const wheels = across(counts, module ?? usual);
      if (!isAngled) return { by: internal ? "inside" : "mesh", wheels, isGuessed };
      // Seen from the driver's seat; a pinion ahead of the axle looks at the same ring from its other side.
      const flipped =
        ringSide && pinionSide === "ahead" ? ({ left: "right", right: "left" } as const)[ringSide] : ringSide;
      return { by: "cones", wheels, isGuessed, side: flipped };
    }
  }
}
