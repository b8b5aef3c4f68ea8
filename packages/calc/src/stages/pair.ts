import type { ToothPair, Toothed } from "../gears/index.js";
import type { Check, Direction, Display, Drawn, Effects, Needs, Notation, Sample, Shape, Sure } from "./facets.js";
import type { StageBase } from "./stage.js";
import { surePitch } from "./sure.js";
import { checkTeeth } from "./teeth.js";

/** Two gears in mesh. Reduction: driven / driver. */
export interface PairStage extends StageBase, ToothPair {
  /** What kind of stage it is. */
  readonly kind: "pair";
  /** What the driver is called: "motor pinion". */
  readonly driverLabel?: string;
  /** What the driven gear is called: "spur". */
  readonly drivenLabel?: string;
  /** Both gears are sold together and changed together. */
  readonly set?: boolean;
  /** Which side of the pinion the ring gear sits on, seen from the driver's seat. */
  readonly ringSide?: "left" | "right";
  /** Whether the pinion lies ahead of the axle or behind it. */
  readonly pinionSide?: "ahead" | "behind";
}

export const shape: Shape = {
  driver: "count!",
  driven: "count!",
  driverLabel: "text",
  drivenLabel: "text",
  internal: "flag",
  set: "flag",
  form: "spur|helical|bevel|hypoid|crown",
  module: "positive",
  diametralPitch: "positive",
  pressureAngle: "positive",
  helixAngle: "number",
  ringSide: "left|right",
  pinionSide: "ahead|behind",
  driverShift: "number",
  drivenShift: "number",
  driverTip: "size",
  drivenTip: "size",
  thinning: "length",
};

export const sample: Sample = { driver: 20, driven: 40 };

export const check: Check<PairStage> = (stage, say) => {
  const { internal, driver, driven } = stage;
  if (internal && driven <= driver) say("error", "ring-too-small", "driven", { ring: driven, gear: driver });
  else checkTeeth(stage, say);
};

/** What more is said of its teeth than a pitch is for geometry to judge. */
export const sure: Sure<PairStage> = (stage) =>
  !(stage.internal && stage.driven <= stage.driver) &&
  (stage.helixAngle ??
    stage.driverShift ??
    stage.drivenShift ??
    stage.driverTip ??
    stage.drivenTip ??
    stage.thinning) === undefined &&
  surePitch(stage);

export const effect: Effects<PairStage> = (stage, into) => into.times(stage.driven, stage.driver);

export const direction: Direction<PairStage> = {
  turn({ form = "spur", ringSide, pinionSide, internal }) {
    // A ring to the left of a shaft that comes from behind the axle rolls forwards for a shaft that turns clockwise
    // seen from behind. Either side changed turns the wheel round; both changed, it is as it was.
    if (ringSide && pinionSide) return (ringSide === "left") === (pinionSide === "behind") ? 1 : -1;
    if (form !== "spur" && form !== "helical") return 0;
    return internal ? 1 : -1;
  },
  isSaid: ({ form, internal, ringSide, pinionSide }) =>
    !!(ringSide && pinionSide) || internal !== undefined || form === "spur" || form === "helical",
};

export const notation: Notation<PairStage> = {
  examples: ["13 to 38"],
  parse(text) {
    const [, driver, driven] = /^(\d+) to (\d+)$/.exec(text) ?? [];
    return driver ? { driver: +driver, driven: +driven! } : undefined;
  },
  write: ({ driver, driven }) => `${driver} to ${driven}`,
};

export const display: Display<PairStage> = ({ driver, driven }) => [
  { value: driver, field: "driver" },
  { word: "drives" },
  { value: driven, field: "driven" },
];

export const needs: Needs<PairStage> = (stage) => {
  const { driver, driven, set, internal, module, diametralPitch, pressureAngle } = stage;
  const { driverShift, drivenShift, driverTip, drivenTip } = stage;
  const pitch = { module, diametralPitch, pressureAngle } as Toothed;
  // A helix angle alone says that teeth are wound: of which form, nobody has said.
  const form = stage.form ?? (drawn(stage) && stage.helixAngle === undefined ? "spur" : undefined);
  return {
    whole: { is: ["set", "hub", "gearbox"], driver, driven, form: internal ? "internal" : form },
    pieces: set
      ? undefined
      : [
          { is: ["pinion", "gear"], teeth: driver, pitch, form, shift: driverShift, tipDiameter: driverTip },
          {
            is: ["gear", "spur"],
            teeth: driven,
            pitch,
            form: internal ? "internal" : form,
            shift: drivenShift,
            tipDiameter: drivenTip,
          },
        ],
  };
};

/** Gears are measured as spur gears only where that is said. */
export const drawn: Drawn<PairStage> = (stage) => {
  const { form, internal, module, diametralPitch } = stage;
  return (form ?? internal ?? module ?? diametralPitch) === undefined ? undefined : { pairs: [stage] };
};
