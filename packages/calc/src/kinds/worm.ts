import type { Kind } from "./kind.js";
import type { StageBase, Toothed } from "./stage.js";

/** A worm and its wheel. Reduction: teeth / starts. Which way it turns depends on its hand: not known until said. */
export interface WormStage extends StageBase, Toothed {
  readonly kind: "worm";
  readonly starts: number;
  readonly teeth: number;
  /** Reference diameter of the worm. */
  readonly diameter?: string;
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
