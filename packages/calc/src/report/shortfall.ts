import type { ReasonCode } from "../fit/index.js";
import type { FigureWords } from "../languages/index.js";

/** What each reason is about; none for what speaks against nothing. */
export const lackOf: Readonly<Record<ReasonCode, keyof FigureWords["lacks"] | undefined>> = {
  "too-close": "centre",
  "too-far": "centre",
  "no-centre": "centre",
  "no-hole": "hole",
  wall: "wall",
  "bore-too-small": "bore",
  "bore-too-large": "bore",
  "hub-holes": "hubHoles",
  reach: "shaft",
  "shafts-not-given": "shaft",
  "hub-too-long": "boss",
  "pitch-near": "pitch",
  "pitch-different": "pitch",
  "pitch-not-given": "pitch",
  "angle-different": "angle",
  "helix-not-given": "helix",
  "shift-not-given": "shift",
  "angle-gears": "axes",
  "ring-too-small": "ring",
  "no-contact": "contact",
  "no-line-of-action": "contact",
  "tooth-pointed": "tooth",
  "tooth-missing": "tooth",
  undercut: undefined,
  "same-teeth-meet": undefined,
  sleeve: undefined,
  plate: undefined,
  facing: undefined,
};
