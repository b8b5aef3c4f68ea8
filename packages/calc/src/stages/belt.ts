import type { MeshwrightError } from "../exact/index.js";
import { beltOf, type BeltQuestion } from "../gears/index.js";
import type { Check, Direction, Display, Drawn, Effects, Needs, Notation, Sample, Shape, Sure } from "./facets.js";
import type { StageBase } from "./stage.js";

/** Two pulleys with a belt, or two sprockets with a chain. Reduction: driven / driver. A belt keeps the direction. */
export interface BeltStage extends StageBase, Omit<BeltQuestion, "available" | "offsetLink"> {
  /** What kind of stage it is. */
  readonly kind: "belt";
  /** What the driver is called: "motor pulley". */
  readonly driverLabel?: string;
  /** What the driven pulley is called: "axle pulley". */
  readonly drivenLabel?: string;
}

export const shape: Shape = {
  driver: "count!",
  driven: "count!",
  driverLabel: "text",
  drivenLabel: "text",
  chain: "flag",
  pitch: "size",
  beltTeeth: "count",
  centre: "size",
  tensioner: "flag",
};

export const sample: Sample = { driver: 20, driven: 40 };

/** Whether pulleys touch is for the geometry to say, while a belt is being chosen; figures that are none are refused. */
export const check: Check<BeltStage> = (stage, say) => {
  try {
    beltOf(stage);
  } catch (error) {
    const { code } = error as MeshwrightError;
    const field = stage.beltTeeth === undefined ? "centre" : "beltTeeth";
    if (code !== "pulleys-touch") say("error", "belt-refused", field);
  }
};

const usual = /^\d?[1-9]\d?(\.\d{1,4})? ?(mm|cm|in)$/;

/** Lengths beyond the usual are for geometry to judge. */
export const sure: Sure<BeltStage> = ({ pitch, centre, beltTeeth = 1 }) =>
  beltTeeth < 1e5 && [pitch, centre].every((length) => length === undefined || usual.test(length));

export const effect: Effects<BeltStage> = (stage, into) => into.times(stage.driven, stage.driver);

export const direction: Direction<BeltStage> = { turn: () => 1, isSaid: () => true };

export const notation: Notation<BeltStage> = {
  examples: ["belt 20 to 60", "chain 14 to 42"],
  parse(text) {
    const [, by, driver, driven] = /^(belt|chain) (\d+) to (\d+)$/.exec(text) ?? [];
    return by ? { driver: +driver!, driven: +driven!, ...(by === "chain" && { chain: true }) } : undefined;
  },
  write: ({ chain, driver, driven }) => `${chain ? "chain" : "belt"} ${driver} to ${driven}`,
};

export const display: Display<BeltStage> = ({ chain, driver, driven }) => [
  { word: chain ? "chain" : "belt" },
  { value: driver, field: "driver" },
  { word: "drives" },
  { value: driven, field: "driven" },
];

export const needs: Needs<BeltStage> = (stage) => {
  const { driver, driven, beltTeeth, pitch: beltPitch } = stage;
  return {
    pieces: [
      { is: ["pulley"], teeth: driver, beltPitch },
      { is: ["pulley"], teeth: driven, beltPitch },
      { is: ["belt"], teeth: beltTeeth, beltPitch, belt: stage },
    ],
  };
};

export const drawn: Drawn<BeltStage> = (stage) => (stage.pitch === undefined ? undefined : { belt: stage });
