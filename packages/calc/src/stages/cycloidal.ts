import type { Check, Direction, Display, Drawn, Effects, Needs, Notation, Sample, Shape, Sure } from "./facets.js";
import type { StageBase } from "./stage.js";

/**
 * A disc that an eccentric rolls round inside a ring of pins. Reduction: lobes / (pins − lobes), turning round, where the pins are
 * held and the disc drives on; pins / (pins − lobes), the same way, where the disc is held from turning and the pins drive on.
 */
export interface CycloidalStage extends StageBase {
  /** What kind of stage it is. */
  readonly kind: "cycloidal";
  /** Lobes of the disc. */
  readonly lobes: number;
  /** Pins in the ring, more than the disc has lobes. */
  readonly pins: number;
  /** Which of the two does not turn; the pins where it is not said. */
  readonly fixed?: "pins" | "disc";
}

export const shape: Shape = { lobes: "count!", pins: "count!", fixed: "pins|disc" };

export const sample: Sample = { lobes: 19, pins: 20 };

export const check: Check<CycloidalStage> = ({ lobes, pins }, say) => {
  if (pins <= lobes) say("error", "pins-too-few", "pins", { pins, lobes });
};

export const sure: Sure<CycloidalStage> = ({ lobes, pins }) => pins > lobes;

/**
 * While the eccentric goes round once, the disc rolls past all pins with its lobes: by as many as there are pins more, the other
 * way round where the pins stand still. So the disc turns (pins − lobes) / lobes; or, held from turning, pushes the
 * pins (pins − lobes) / pins along.
 */
export const effect: Effects<CycloidalStage> = ({ lobes, pins, fixed }, into) =>
  into.times(fixed === "disc" ? pins : lobes, pins - lobes);

export const direction: Direction<CycloidalStage> = {
  turn: ({ fixed }) => (fixed === "disc" ? 1 : -1),
  isSaid: () => true,
};

export const notation: Notation<CycloidalStage> = {
  examples: ["19 lobes in 20 pins"],
  parse(text) {
    const [, lobes, pins] = /^(\d+) lobes in (\d+) pins$/.exec(text) ?? [];
    return lobes ? { lobes: +lobes, pins: +pins! } : undefined;
  },
  write: ({ lobes, pins }) => `${lobes} lobes in ${pins} pins`,
};

export const display: Display<CycloidalStage> = ({ lobes, pins }) => [
  { value: lobes, field: "lobes" },
  { word: "pins" },
  { value: pins, field: "pins" },
];

export const needs: Needs<CycloidalStage> = ({ lobes, pins }) => ({
  whole: { is: ["gearbox"], driver: lobes, driven: pins },
});

export const drawn: Drawn<CycloidalStage> = () => undefined;
