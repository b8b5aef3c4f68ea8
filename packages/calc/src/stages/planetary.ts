import type { Toothed } from "../gears/index.js";
import type { Check, Direction, Display, Drawn, Effects, Needs, Notation, Sample, Shape } from "./facets.js";
import type { StageBase } from "./stage.js";

type Member = "sun" | "ring" | "carrier";

/** A planetary set, or several equal ones in a row. Reduction by Willis' equation. */
export interface PlanetaryStage extends StageBase, Toothed {
  readonly kind: "planetary";
  readonly sun: number;
  readonly ring: number;
  readonly fixed: Member;
  readonly input: Member;
  readonly output: Member;
  /** So many equal sets, one after the other. */
  readonly repeat?: number;
  readonly planets?: number;
  readonly planet?: number;
}

const mostSets = 100;
const members = "sun|ring|carrier!";

export const shape: Shape = {
  sun: "count!",
  ring: "count!",
  fixed: members,
  input: members,
  output: members,
  repeat: "count",
  planets: "count",
  planet: "count",
  module: "positive",
  diametralPitch: "positive",
  pressureAngle: "positive",
};

export const sample: Sample = { sun: 20, ring: 60, fixed: "ring", input: "sun", output: "carrier" };

export const check: Check<PlanetaryStage> = (stage, say) => {
  const { sun, ring, planet, planets, fixed, input, output, repeat = 1 } = stage;
  if (new Set([fixed, input, output]).size < 3) say("error", "members-repeated", "output", { fixed, input, output });
  if (repeat > mostSets) say("error", "repeat-too-long", "repeat", { found: repeat, most: mostSets });
  if (ring <= sun) say("error", "ring-too-small", "ring", { ring, gear: sun });
  if (planet && ring !== sun + 2 * planet) say("warning", "planet-does-not-fit", "planet", { ring, sun, planet });
  if (planets && (sun + ring) % planets) say("warning", "planets-uneven", "planets", { planets, sum: sun + ring });
};

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
