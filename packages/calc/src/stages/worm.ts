import type { Toothed, WormPair } from "../gears/index.js";
import type { Check, Direction, Display, Drawn, Effects, Needs, Notation, Sample, Shape, Sure } from "./facets.js";
import type { StageBase } from "./stage.js";
import { surePitch } from "./sure.js";
import { checkPitch } from "./teeth.js";

/** A worm and its wheel. Reduction: teeth / starts. Which way it turns depends on its hand: not known until said. */
export interface WormStage extends StageBase, WormPair {
  /** What kind of stage it is. */
  readonly kind: "worm";
}

export const shape: Shape = {
  starts: "count!",
  teeth: "count!",
  module: "positive",
  diametralPitch: "positive",
  pressureAngle: "positive",
  diameter: "size",
};

export const sample: Sample = { starts: 1, teeth: 30 };

export const check: Check<WormStage> = (stage, say) => {
  const { starts, teeth } = stage;
  if (starts >= teeth) say("warning", "worm-backwards", "starts", { starts, teeth });
  checkPitch(stage, say);
};

export const sure: Sure<WormStage> = surePitch;

export const effect: Effects<WormStage> = (stage, into) => into.times(stage.teeth, stage.starts);

export const direction: Direction<WormStage> = { turn: () => 0, isSaid: () => false };

export const notation: Notation<WormStage> = {
  examples: ["worm 2 to 30"],
  parse(text) {
    const [, starts, teeth] = /^worm (\d+) to (\d+)$/.exec(text) ?? [];
    return starts ? { starts: +starts, teeth: +teeth! } : undefined;
  },
  write: ({ starts, teeth }) => `worm ${starts} to ${teeth}`,
};

export const display: Display<WormStage> = ({ starts, teeth }) => [
  { word: "worm" },
  { value: starts, field: "starts" },
  { word: "drives" },
  { value: teeth, field: "teeth" },
];

export const needs: Needs<WormStage> = ({ starts, teeth, module, diametralPitch, pressureAngle }) => {
  const pitch = { module, diametralPitch, pressureAngle } as Toothed;
  return {
    whole: { is: ["set", "hub", "gearbox"], driver: starts, driven: teeth, form: "worm" },
    pieces: [
      { is: ["worm"], teeth: starts, pitch },
      { is: ["gear"], teeth, pitch, form: "worm" },
    ],
  };
};

export const drawn: Drawn<WormStage> = () => undefined;
