import type { BeltQuestion } from "../gears/index.js";
import type { Kind } from "./kind.js";
import type { StageBase } from "./stage.js";

/** Two pulleys with a belt, or two sprockets with a chain. Reduction: driven / driver. A belt keeps the direction. */
export interface BeltStage extends StageBase, Omit<BeltQuestion, "available" | "offsetLink"> {
  readonly kind: "belt";
  readonly driverLabel?: string;
  readonly drivenLabel?: string;
}

export const belt: Kind<BeltStage> = {
  shape: {
    driver: "count!",
    driven: "count!",
    driverLabel: "text",
    drivenLabel: "text",
    chain: "flag",
    pitch: "length",
    beltTeeth: "count",
    centre: "length",
    tensioner: "flag",
  },
  effect(stage, into) {
    into.times(stage.driven, stage.driver);
    return 1;
  },
  parse(text) {
    const [, by, driver, driven] = /^(belt|chain) (\d+) to (\d+)$/.exec(text) ?? [];
    return by && { driver: +driver!, driven: +driven!, ...(by === "chain" && { chain: true }) };
  },
  write: (stage) => `${stage.chain ? "chain" : "belt"} ${stage.driver} to ${stage.driven}`,
};
