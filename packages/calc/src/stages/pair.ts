import type { ToothPair } from "../gears/index.js";
import type { Kind } from "./kind.js";
import type { StageBase } from "./stage.js";

/** Two gears in mesh. Reduction: driven / driver. */
export interface PairStage extends StageBase, ToothPair {
  readonly kind: "pair";
  readonly driverLabel?: string;
  readonly drivenLabel?: string;
  /** Both gears are sold together and changed together. */
  readonly set?: boolean;
  /** Which side of the pinion the ring gear sits on, seen from the driver's seat. */
  readonly ringSide?: "left" | "right";
  /** Whether the pinion lies ahead of the axle or behind it. */
  readonly pinionSide?: "ahead" | "behind";
}

export const pair: Kind<PairStage> = {
  shape: {
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
    driverTip: "length",
    drivenTip: "length",
    thinning: "length",
  },
  effect(stage, into) {
    into.times(stage.driven, stage.driver);
    const { form = "spur", ringSide, pinionSide } = stage;
    // A ring to the left of a shaft that comes from behind the axle rolls forwards for a shaft that turns clockwise
    // seen from behind. Either side changed turns the wheel round; both changed, it is as it was.
    if (ringSide && pinionSide) return (ringSide === "left") === (pinionSide === "behind") ? 1 : -1;
    if (form !== "spur" && form !== "helical") return 0;
    return stage.internal ? 1 : -1;
  },
  check(stage, say) {
    if (stage.internal && stage.driven <= stage.driver)
      say("error", "ring-too-small", "driven", `A ring of ${stage.driven} cannot hold a gear of ${stage.driver}.`);
  },
  parse(text) {
    const [, driver, driven] = /^(\d+) to (\d+)$/.exec(text) ?? [];
    return driver && { driver: +driver, driven: +driven! };
  },
  write: (stage) => `${stage.driver} to ${stage.driven}`,
};
