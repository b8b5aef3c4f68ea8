import type { Toothed } from "../gears/index.js";
import type { Check, Direction, Display, Drawn, Effects, Needs, Notation, Sample, Shape, Sure } from "./facets.js";
import type { StageBase } from "./stage.js";
import { surePitch } from "./sure.js";
import { checkPitch } from "./teeth.js";

/** A row of gears, each in mesh with the next. Reduction: last / first, whatever stands between. */
export interface TrainStage extends StageBase, Toothed {
  /** What kind of stage it is. */
  readonly kind: "train";
  /** The counts in the order of drive, the first driver first. */
  readonly teeth: readonly number[];
}

export const shape: Shape = {
  teeth: "[count]2-100!",
  module: "positive",
  diametralPitch: "positive",
  pressureAngle: "positive",
};

export const sample: Sample = { teeth: [20, 30, 40] };

export const check: Check<TrainStage> = checkPitch;

export const sure: Sure<TrainStage> = surePitch;

export const effect: Effects<TrainStage> = ({ teeth }, into) => into.times(teeth[teeth.length - 1]!, teeth[0]!);

/** A row of gears is what it is: it turns round once a mesh. */
export const direction: Direction<TrainStage> = {
  turn: ({ teeth }) => (teeth.length % 2 ? 1 : -1),
  isSaid: () => true,
};

export const notation: Notation<TrainStage> = {
  examples: ["18 to 31 to 45"],
  parse: (text) => (/^\d+( to \d+){2,}$/.test(text) ? { teeth: text.split(" to ").map(Number) } : undefined),
  write: ({ teeth }) => teeth.join(" to "),
};

export const display: Display<TrainStage> = ({ teeth }) =>
  teeth.flatMap((value, n) => [...(n ? [{ word: "drives" } as const] : []), { value, field: `teeth.${n}` }]);

export const needs: Needs<TrainStage> = ({ teeth, module, diametralPitch, pressureAngle }) => ({
  pieces: teeth.map((count) => ({
    is: ["gear", "pinion", "spur"],
    teeth: count,
    form: "spur",
    pitch: { module, diametralPitch, pressureAngle } as Toothed,
  })),
});

export const drawn: Drawn<TrainStage> = ({ teeth, module, diametralPitch, pressureAngle }) => {
  const pitch = { module, diametralPitch, pressureAngle } as Toothed;
  return { pairs: teeth.slice(1).map((driven, n) => ({ ...pitch, driver: teeth[n]!, driven })) };
};
