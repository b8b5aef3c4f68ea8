import type { Toothed } from "../gears/index.js";

const modules = "0.2 0.25 0.3 0.35 0.4 0.5 0.6 0.7 0.8 0.9 1 1.25 1.5 1.75 2 2.5 3";
const diametral = "10 12 16 20 24 32 40 48 64 72 80 96 120";

/** The pitches that gears of small vehicles have: modules of ISO 54 and, below 1, of DIN 780; and diametral pitches. */
export const usualPitches = (): Toothed[] => [
  ...modules.split(" ").map((module) => ({ module })),
  ...diametral.split(" ").map((diametralPitch) => ({ diametralPitch })),
];

/** The pressure angles in use, in degrees. */
export const usualAngles = (): string[] => ["14.5", "20", "25"];
