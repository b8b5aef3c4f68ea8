import type { Toothed } from "../gears/index.js";
import type { Check, Direction, Display, Drawn, Effects, Needs, Notation, Sample, Shape, Sure } from "./facets.js";
import type { StageBase } from "./stage.js";
import { surePitch } from "./sure.js";
import { checkPitch } from "./teeth.js";

type Member = "sun" | "ring" | "carrier";

/** A planetary set, or several equal ones in a row. Reduction by Willis' equation. */
export interface PlanetaryStage extends StageBase, Toothed {
  /** What kind of stage it is. */
  readonly kind: "planetary";
  /** Teeth of the sun. */
  readonly sun: number;
  /** Teeth of the ring. */
  readonly ring: number;
  /** Which of the three stands still. */
  readonly fixed: Member;
  /** Which of the three is driven from the motor. */
  readonly input: Member;
  /** Which of the three drives on. */
  readonly output: Member;
  /** So many equal sets, one after the other; 1 where it is not said. */
  readonly repeat?: number;
  /** How many planets there are. */
  readonly planets?: number;
  /** Teeth of one planet. */
  readonly planet?: number;
}

const members = "sun|ring|carrier!";

export const shape: Shape = {
  sun: "count!",
  ring: "count!",
  fixed: members,
  input: members,
  output: members,
  repeat: "sets",
  planets: "count",
  planet: "count",
  module: "positive",
  diametralPitch: "positive",
  pressureAngle: "positive",
};

export const sample: Sample = { sun: 20, ring: 60, fixed: "ring", input: "sun", output: "carrier" };

export const check: Check<PlanetaryStage> = (stage, say) => {
  const { sun, ring, planet, planets, fixed, input, output } = stage;
  if (new Set([fixed, input, output]).size < 3) say("error", "members-repeated", "output", { fixed, input, output });
  if (ring <= sun) say("error", "ring-too-small", "ring", { ring, gear: sun });
  if (planet && ring !== sun + 2 * planet) say("warning", "planet-does-not-fit", "planet", { ring, sun, planet });
  // Neighbours stand twice their distance from the middle times sin(180° / planets) apart; their tips are planet + 2 modules across.
  if (planet && planets && planets > 1 && (sun + planet) * Math.sin(Math.PI / planets) < planet + 2 - 1e-9)
    say("warning", "planets-touch", "planets", { planets, planet });
  if (planets && (sun + ring) % planets) say("warning", "planets-uneven", "planets", { planets, sum: sun + ring });
  checkPitch(stage, say);
};

export const sure: Sure<PlanetaryStage> = (stage) =>
  new Set([stage.fixed, stage.input, stage.output]).size > 2 && stage.ring > stage.sun && surePitch(stage);

/**
 * Willis: (sun − carrier) / (ring − carrier) = −ring teeth / sun teeth, in turns. Give the carrier the weight
 * sun + ring and each gear its own teeth: sun·S + ring·R = carrier·(S + R). With one member still, the turns of the other
 * two are inversely as their weights, and they turn against each other only when it is the carrier that stands.
 */
export const effect: Effects<PlanetaryStage> = ({ sun, ring, input, output, repeat = 1 }, into) => {
  const weight = { sun, ring, carrier: sun + ring };
  for (let n = 0; n < repeat; n++) into.times(weight[output], weight[input]);
};

export const direction: Direction<PlanetaryStage> = {
  turn: ({ fixed, repeat = 1 }) => (fixed === "carrier" && repeat % 2 ? -1 : 1),
  isSaid: () => true,
};

export const notation: Notation<PlanetaryStage> = {
  examples: ["sun 18 in ring 60", "sun 18 in ring 60 × 2"],
  parse(text) {
    const [, sun, ring, repeat] = /^sun (\d+) in ring (\d+)(?: × (\d+))?$/.exec(text) ?? [];
    if (!sun) return undefined;
    const usual = { fixed: "ring", input: "sun", output: "carrier" };
    return { sun: +sun, ring: +ring!, ...usual, ...(repeat && { repeat: +repeat }) };
  },
  write: ({ sun, ring, repeat }) => `sun ${sun} in ring ${ring}${repeat ? ` × ${repeat}` : ""}`,
};

export const display: Display<PlanetaryStage> = ({ sun, ring, repeat }) => [
  { word: "sun" },
  { value: sun, field: "sun" },
  { word: "in ring" },
  { value: ring, field: "ring" },
  ...(repeat ? [{ word: "times" } as const, { value: repeat, field: "repeat" }] : []),
];

export const needs: Needs<PlanetaryStage> = ({ sun, ring, repeat, module, diametralPitch, pressureAngle }) => ({
  whole: {
    is: ["planetary"],
    pieces: repeat,
    driver: sun,
    driven: ring,
    pitch: { module, diametralPitch, pressureAngle } as Toothed,
  },
});

export const drawn: Drawn<PlanetaryStage> = () => undefined;
