import type { Toothed } from "../gears/index.js";
import type { Kind } from "./kind.js";
import type { StageBase } from "./stage.js";

/** A row of gears, each in mesh with the next. Reduction: last / first, whatever stands between. */
export interface TrainStage extends StageBase, Toothed {
  readonly kind: "train";
  readonly teeth: readonly number[];
}

export const train: Kind<TrainStage> = {
  shape: { teeth: "[count]2-100!", module: "positive", diametralPitch: "positive", pressureAngle: "positive" },
  effect({ teeth }, into) {
    into.times(teeth[teeth.length - 1]!, teeth[0]!);
    return teeth.length % 2 ? 1 : -1;
  },
  parse: (text) => (/^\d+( to \d+){2,}$/.test(text) ? { teeth: text.split(" to ").map(Number) } : undefined),
  write: (stage) => stage.teeth.join(" to "),
};
