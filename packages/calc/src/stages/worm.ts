import type { WormPair } from "../gears/index.js";
import type { Kind } from "./kind.js";
import type { StageBase } from "./stage.js";

/** A worm and its wheel. Reduction: teeth / starts. Which way it turns depends on its hand: not known until said. */
export interface WormStage extends StageBase, WormPair {
  readonly kind: "worm";
}

export const worm: Kind<WormStage> = {
  shape: {
    starts: "count!",
    teeth: "count!",
    module: "positive",
    diametralPitch: "positive",
    pressureAngle: "positive",
    diameter: "length",
  },
  effect(stage, into) {
    into.times(stage.teeth, stage.starts);
    return 0;
  },
  parse(text) {
    const [, starts, teeth] = /^worm (\d+) to (\d+)$/.exec(text) ?? [];
    return starts && { starts: +starts, teeth: +teeth! };
  },
  write: (stage) => `worm ${stage.starts} to ${stage.teeth}`,
};
