import type { Toothed } from "../gears/index.js";
import type { Kind } from "./kind.js";
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

const members = "sun|ring|carrier!";

export const planetary: Kind<PlanetaryStage> = {
  shape: {
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
  },
  /**
   * Willis: (sun − carrier) / (ring − carrier) = −ring teeth / sun teeth, in turns. Give the carrier the weight
   * sun + ring and each gear its own teeth: sun·S + ring·R = carrier·(S + R). With one member still, the turns of the other
   * two are inversely as their weights, and they turn against each other only when it is the carrier that stands.
   */
  effect(stage, into) {
    const weight = { sun: stage.sun, ring: stage.ring, carrier: stage.sun + stage.ring };
    const { repeat = 1 } = stage;
    for (let n = 0; n < repeat; n++) into.times(weight[stage.output], weight[stage.input]);
    return stage.fixed === "carrier" && repeat % 2 ? -1 : 1;
  },
  check(stage, say) {
    const { sun, ring, planet, planets, fixed, input, output, repeat = 1 } = stage;
    if (new Set([fixed, input, output]).size < 3)
      say(
        "error",
        "members-repeated",
        "output",
        `Fixed ${fixed}, input ${input}, output ${output}: expected all three.`,
      );
    if (repeat > 100) say("error", "repeat-too-long", "repeat", `${repeat} sets in a row; expected 100 at the most.`);
    if (ring <= sun) say("error", "ring-too-small", "ring", `A ring of ${ring} cannot hold a sun of ${sun}.`);
    if (planet && ring !== sun + 2 * planet)
      say("warning", "planet-does-not-fit", "planet", `Ring ${ring} is not sun ${sun} + 2 × planet ${planet}.`);
    if (planets && (sun + ring) % planets)
      say(
        "warning",
        "planets-uneven",
        "planets",
        `${planets} planets cannot be spaced evenly: ${sun + ring} does not divide.`,
      );
  },
  parse(text) {
    const [, sun, ring, repeat] = /^sun (\d+) in ring (\d+)(?: × (\d+))?$/.exec(text) ?? [];
    return (
      sun && {
        sun: +sun,
        ring: +ring!,
        fixed: "ring",
        input: "sun",
        output: "carrier",
        ...(repeat && { repeat: +repeat }),
      }
    );
  },
  write: (stage) => `sun ${stage.sun} in ring ${stage.ring}${stage.repeat ? ` × ${stage.repeat}` : ""}`,
};
