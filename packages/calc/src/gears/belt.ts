import { lengthOf, MeshwrightError, type Rational } from "../exact/index.js";
import type { Approximate } from "./measure.js";

/** What belt geometry asks, and which belts or chains there are. */
export interface BeltQuestion {
  readonly driver: number;
  readonly driven: number;
  readonly chain?: boolean;
  readonly pitch?: string;
  /** Teeth of the belt, or links of the chain. */
  readonly beltTeeth?: number;
  readonly centre?: string;
  readonly tensioner?: boolean;
  /** Counts of teeth that belts are sold with; all where none is given. */
  readonly available?: readonly number[];
  /** Allow a chain with an odd count of links, joined by an offset link. */
  readonly offsetLink?: boolean;
}

/** A belt with a whole count of teeth, or a chain with a whole count of links. */
export interface BeltChoice {
  readonly teeth: number;
  /** In millimetres, exactly. */
  readonly length: Rational;
  /** The centre distance that it sets, in millimetres. */
  readonly centre: Approximate;
  /** An odd count of links: a chain needs an offset link for it. */
  readonly offsetLink: boolean;
}

export interface Belt {
  /** With a tensioner the belt runs around more than two wheels. */
  readonly notKnown?: "tensioner" | "pitch-not-given" | "centre-not-given";
  /** Along the pitch line for the wanted centre distance, in millimetres; absent where a belt is given instead. */
  readonly length?: Approximate;
  /** The belt that is given, or those on either side of the wanted centre distance, the shorter one first. */
  readonly choices: readonly BeltChoice[];
}

type Pulleys = Pick<BeltQuestion, "driver" | "driven"> & { readonly pitch: Rational };

/** Sum and difference of the pitch radii: a wheel is so many pitches around. */
function radii({ pitch, driver, driven }: Pulleys): readonly [sum: number, difference: number] {
  const radius = pitch.toNumber() / (2 * Math.PI);
  return [radius * (driver + driven), radius * Math.abs(driver - driven)];
}

const touching = (at: string): MeshwrightError =>
  new MeshwrightError("pulleys-touch", at, "Too short: the pulleys would touch.");

/**
 * The length of an open belt (or chain) around two pulleys, along its pitch line, in millimetres: two straight runs, each the
 * long leg of a right triangle whose hypotenuse is the centre distance and whose short leg is the difference of the
 * radii; and two arcs, half a turn on each pulley, more on the large one and less on the small one by that triangle's angle.
 *
 * @param centre in millimetres
 * @throws MeshwrightError `pulleys-touch` where it is less than the sum of the pitch radii
 */
export function beltLength(pulleys: Pulleys, centre: number): Approximate {
  const [sum, difference] = radii(pulleys);
  if (centre < sum) throw touching("centre");
  return 2 * (Math.sqrt(centre ** 2 - difference ** 2) + difference * Math.asin(difference / centre)) + Math.PI * sum;
}

/**
 * The centre distance that a belt of a length in millimetres sets.
 *
 * @throws MeshwrightError `pulleys-touch`
 */
export function beltCentre(pulleys: Pulleys, length: number): Approximate {
  const [sum, difference] = radii(pulleys);
  if (!(length >= beltLength(pulleys, sum))) throw touching("beltTeeth");
  // Without the arcs' surplus the centre distance comes out too large: Newton's method falls from there on a convex curve,
  // whose slope is twice the cosine of the angle of the runs.
  let centre = Math.hypot((length - Math.PI * sum) / 2, difference);
  for (let n = 0; n < 9; n++)
    centre -= (beltLength(pulleys, centre) - length) / (2 * Math.sqrt(1 - (difference / centre) ** 2));
  return centre;
}

/**
 * The geometry of a belt or chain on two pulleys: its length for a centre distance, the centre distance for its count, and
 * which counts exist near by. Belts and chains keep the direction.
 *
 * @throws MeshwrightError `pulleys-touch` where the centre distance or the belt is too short for the pulleys
 *
 * @example
 * const { choices } = beltOf({ driver: 20, driven: 60, pitch: "2 mm", centre: "60 mm" });
 * choices.map((one) => [one.teeth, one.centre.toFixed(3)]); // => [[101, "59.636"], [102, "60.659"]]
 */
export function beltOf(question: BeltQuestion): Belt {
  const { driver, driven, beltTeeth, centre, chain, available, offsetLink } = question;
  if (question.tensioner) return { notKnown: "tensioner", choices: [] };
  if (question.pitch === undefined) return { notKnown: "pitch-not-given", choices: [] };
  const pulleys = { driver, driven, pitch: lengthOf(question.pitch, "pitch") };
  const choice = (teeth: number): BeltChoice => {
    const length = pulleys.pitch.times(teeth);
    const set = beltCentre(pulleys, length.toNumber());
    return { teeth, length, centre: set, offsetLink: !!chain && teeth % 2 > 0 };
  };
  if (beltTeeth !== undefined) return { choices: [choice(beltTeeth)] };
  if (centre === undefined) return { notKnown: "centre-not-given", choices: [] };
  const length = beltLength(pulleys, lengthOf(centre, "centre").toNumber());
  const teeth = length / pulleys.pitch.toNumber();
  const step = chain && !offsetLink ? 2 : 1;
  const counts = available ?? [Math.floor(teeth / step) * step, Math.ceil(teeth / step) * step];
  const nearest = [
    Math.max(...counts.filter((count) => count <= teeth)),
    Math.min(...counts.filter((count) => count >= teeth)),
  ];
  const touchesNot = (count: number): boolean =>
    Number.isFinite(count) && count * pulleys.pitch.toNumber() >= beltLength(pulleys, radii(pulleys)[0]);
  return { length, choices: [...new Set(nearest)].filter(touchesNot).map(choice) };
}
