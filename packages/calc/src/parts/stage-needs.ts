import type { Numeric, Toothed } from "../gears/index.js";
import type { PartKind } from "../drivetrain/index.js";
import { lengthOf, type Rational } from "../exact/index.js";
import { beltOf } from "../gears/index.js";
import type { BeltStage, Stage } from "../stages/index.js";

/** What is asked of one part, as far as it is known. */
export interface Spec {
  readonly is: readonly PartKind[];
  /** Of a belt its teeth, or the links of a chain; of a worm its starts. */
  readonly teeth?: number | undefined;
  /** Belts that set the wanted centre distance, a little closer or farther: one of them is needed. */
  readonly either?: readonly number[] | undefined;
  /** Of a planetary set sun and ring. */
  readonly driver?: number | undefined;
  readonly driven?: number | undefined;
  readonly value?: string | undefined;
  /** Of a wheel, by what it was measured: free, under the vehicle's weight, or by the ground it rolls. */
  readonly diameter?: string | undefined;
  readonly loadedDiameter?: string | undefined;
  readonly travel?: { readonly turns: Numeric; readonly length: string } | undefined;
  readonly pitch?: Toothed;
  /** From tooth to tooth of a belt and its pulleys. */
  readonly beltPitch?: string | undefined;
  /** Of a belt or chain of a known count, along its pitch line, in millimetres. */
  readonly length?: Rational | undefined;
  /** Of a sleeve: the shaft it goes on, and the bore that goes on it. */
  readonly bore?: string | undefined;
  readonly outside?: string | undefined;
  /** What it is called where it is described. */
  readonly label?: string | undefined;
}

/** What a stage is made of. */
export interface StageNeeds {
  /** Each part by itself. */
  readonly each: readonly Spec[];
  /** So many of each; one where not given. */
  readonly times?: number;
  /** Two gears: what they are where they are sold together, and the names of their counts on the stage. */
  readonly together?: {
    readonly spec: Spec;
    readonly fields: readonly [driver: string, driven: string];
    /** They are sold together: neither can be had by itself. */
    readonly only: boolean;
    /** Any two gears of one pitch that stand beside each other will do: both have their teeth outside, and straight. */
    readonly plain: boolean;
  };
}

const pitchOf = ({ module, diametralPitch, pressureAngle }: Toothed): Toothed => ({
  ...(module !== undefined && { module }),
  ...(diametralPitch !== undefined && { diametralPitch }),
  ...(pressureAngle !== undefined && { pressureAngle }),
});

/** The belts that a stage can have, where its centre distance is given and its count is not. */
function beltsFor(stage: BeltStage): readonly number[] | undefined {
  try {
    const { choices } = beltOf(stage);
    return choices.length ? choices.map(({ teeth }) => teeth) : undefined;
  } catch {
    // Pulleys that touch have no belt.
    return undefined;
  }
}

const sold: readonly PartKind[] = ["set", "hub"];

/** What a stage is made of, by its kind: nothing outside this function asks for the kind of a stage. */
export function needsOfStage(stage: Stage): StageNeeds {
  switch (stage.kind) {
    case "pair": {
      const { driver, driven, form = "spur", internal } = stage;
      const pitch = pitchOf(stage);
      return {
        each: [
          { is: ["pinion", "gear"], teeth: driver, pitch },
          { is: ["spur", "gear"], teeth: driven, pitch },
        ],
        together: {
          spec: { is: sold, driver, driven, pitch },
          fields: ["driver", "driven"],
          only: !!stage.set,
          plain: form === "spur" && !internal,
        },
      };
    }
    case "worm": {
      const { starts, teeth } = stage;
      const pitch = pitchOf(stage);
      return {
        each: [
          { is: ["worm"], teeth: starts, pitch },
          { is: ["gear"], teeth, pitch },
        ],
        together: {
          spec: { is: sold, driver: starts, driven: teeth, pitch },
          fields: ["starts", "teeth"],
          only: false,
          plain: false,
        },
      };
    }
    case "train": {
      const pitch = pitchOf(stage as Toothed);
      return { each: stage.teeth.map((teeth) => ({ is: ["gear", "pinion", "spur"], teeth, pitch })) };
    }
    case "planetary": {
      const { sun, ring, repeat } = stage;
      return {
        each: [{ is: ["planetary"], driver: sun, driven: ring, pitch: pitchOf(stage) }],
        ...(repeat && { times: repeat }),
      };
    }
    case "belt": {
      const { driver, driven, beltTeeth, pitch: beltPitch } = stage;
      const length = beltTeeth && beltPitch ? lengthOf(beltPitch).times(beltTeeth) : undefined;
      const either = beltTeeth ? undefined : beltsFor(stage);
      return {
        each: [
          ...[driver, driven].map((teeth): Spec => ({ is: ["pulley"], teeth, beltPitch })),
          { is: ["belt"], teeth: beltTeeth, either, beltPitch, length },
        ],
      };
    }
    case "published":
      return { each: [{ is: ["gearbox"], value: stage.value }] };
    case "selectable":
      return { each: [] };
  }
}
