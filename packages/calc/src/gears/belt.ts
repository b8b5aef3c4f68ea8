import { MeshwrightError, type Rational } from "../exact/index.js";
import { checkAbove, checkNumber, checkTeeth, sizeOf } from "./check.js";
import type { Approximate } from "./measure.js";

/** What belt geometry asks, and which belts or chains there are. */
export interface BeltQuestion {
  /** Teeth of the pulley or sprocket that drives. */
  readonly driver: number;
  /** Teeth of the one that is driven. */
  readonly driven: number;
  /** A chain on sprockets, not a belt on pulleys. */
  readonly chain?: boolean;
  /** From tooth to tooth of the belt, or from pin to pin of the chain, a length with its unit. */
  readonly pitch?: string;
  /** Teeth of the belt, or links of the chain. */
  readonly beltTeeth?: number;
  /** The centre distance that is wanted, a length with its unit; without a tensioner the count of the belt's teeth sets it. */
  readonly centre?: string;
  /** Something takes up the slack, so that the belt may be longer than two pulleys need. */
  readonly tensioner?: boolean;
  /** The driven pulley runs on the belt's back: it turns round. */
  readonly backDriven?: boolean;
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
  /** The centre distance that it sets, in millimetres; with a tensioner, the farthest that it reaches. */
  readonly centre: Approximate;
  /** An odd count of links: a chain needs an offset link for it. */
  readonly offsetLink: boolean;
  /** With a tensioner: how much longer it is than two pulleys need at the wanted centre distance, for the tensioner to take up. */
  readonly slack?: Approximate;
}

/** What the geometry of a belt or chain comes to. */
export interface Belt {
  /** Why there are no figures. What is driven by the belt's back needs a third wheel, and its length hangs on that one. */
  readonly notKnown?:
    | "pitch-not-given"
    | "centre-not-given"
    | "pulleys-touch"
    | "sprocket-too-small"
    | "belt-too-short"
    | "driven-by-back";
  /** Whether the driven pulley turns against the driver: only what runs on the belt's back does. */
  readonly reverses: boolean;
  /** Around two pulleys, along the pitch line, for the wanted centre distance, in millimetres; absent where none is given. */
  readonly length?: Approximate;
  /**
   * The belt that is given, or those on either side of the wanted centre distance, the shorter one first. With a tensioner,
   * those that are longer than two pulleys need.
   */
  readonly choices: readonly BeltChoice[];
}

type Pulleys = Pick<BeltQuestion, "driver" | "driven"> & { readonly pitch: Rational };

/** Sum and difference of the pitch radii: a wheel is so many pitches around. */
function radii({ pitch, driver, driven }: Pulleys): readonly [sum: number, difference: number] {
  const radius = checkAbove(pitch, "pitch", "a length").toNumber() / (2 * Math.PI);
  const counts = [checkTeeth(driver, "driver"), checkTeeth(driven, "driven")] as const;
  return [radius * (counts[0] + counts[1]), radius * Math.abs(counts[0] - counts[1])];
}

/**
 * The pitch diameter of a pulley, so many pitches around; of a sprocket, on whose pitch circle the links lie as chords:
 * d = p / sin(180° / z) (ISO 606). Pitch and answer are in millimetres.
 *
 * @throws MeshwrightError `not-a-count`, `out-of-range`; `sprocket-too-small` for a sprocket of one tooth
 *
 * @example
 * pitchDiameter({ pitch: rational(2), teeth: 60 }).toFixed(3); // => "38.197"
 * pitchDiameter({ pitch: rational("6.35"), teeth: 6, chain: true }).toFixed(2); // => "12.70"
 */
export function pitchDiameter(wheel: {
  readonly pitch: Rational;
  readonly teeth: number;
  readonly chain?: boolean | undefined;
}): Approximate {
  const teeth = checkTeeth(wheel.teeth);
  const pitch = checkAbove(wheel.pitch, "pitch", "a length").toNumber();
  if (!wheel.chain) return (pitch * teeth) / Math.PI;
  if (teeth < 2)
    throw new MeshwrightError("sprocket-too-small", "teeth", "Found 1 tooth; expected a sprocket of 2 or more.");
  return pitch / Math.sin(Math.PI / teeth);
}

const touching = (at: string): MeshwrightError =>
  new MeshwrightError("pulleys-touch", at, "Too short: the pulleys would touch.");

/**
 * The length of an open belt (or chain) around two pulleys, along its pitch line, in millimetres: two straight runs, each the
 * long leg of a right triangle whose hypotenuse is the centre distance and whose short leg is the difference of the
 * radii; and two arcs, half a turn on each pulley, more on the large one and less on the small one by that triangle's angle.
 * For chains it is what the formulas of ISO 606 come to.
 *
 * @param centre in millimetres
 * @throws MeshwrightError `pulleys-touch` where it is less than the sum of the pitch radii; `not-a-count`, `out-of-range`
 */
export function beltLength(pulleys: Pulleys, centre: number): Approximate {
  const [sum, difference] = radii(pulleys);
  if (checkNumber(centre, "centre") < sum) throw touching("centre");
  const run = Math.sqrt((centre - difference) * (centre + difference));
  return 2 * (run + difference * Math.asin(difference / centre)) + Math.PI * sum;
}

/**
 * The centre distance that a belt of a length in millimetres sets.
 *
 * @throws MeshwrightError `pulleys-touch`, `not-a-count`, `out-of-range`
 */
export function beltCentre(pulleys: Pulleys, length: number): Approximate {
  const [sum, difference] = radii(pulleys);
  if (!(checkNumber(length, "length") >= beltLength(pulleys, sum))) throw touching("beltTeeth");
  // Without the arcs' surplus the centre distance comes out too large: Newton's method falls from there on a convex curve,
  // whose slope is twice the cosine of the angle of the runs.
  let centre = Math.hypot((length - Math.PI * sum) / 2, difference);
  for (let n = 0; n < 9; n++)
    centre -= (beltLength(pulleys, Math.max(centre, sum)) - length) / (2 * Math.sqrt(1 - (difference / centre) ** 2));
  return centre;
}

/** The counts on either side of so many teeth; where a tensioner takes up the rest, those from there on. */
function countsNear({ chain, tensioner, available, offsetLink }: BeltQuestion, teeth: number): number[] {
  const step = chain && !offsetLink ? 2 : 1;
  const below = Math.floor(teeth / step) * step;
  if (tensioner) return [...(available ?? [below + step])].filter((count) => count > teeth).sort((a, b) => a - b);
  const counts = available ?? [below, Math.ceil(teeth / step) * step];
  const nearest = [
    Math.max(...counts.filter((count) => count <= teeth)),
    Math.min(...counts.filter((count) => count >= teeth)),
  ];
  return [...new Set(nearest)].filter(Number.isFinite);
}

/**
 * The geometry of a belt or chain on two pulleys: its length for a centre distance, the centre distance for its count, and
 * which counts exist near by, each with the centre distance that it sets. Without a tensioner the count sets the centres.
 * With one it needs more than two pulleys do, and the slack that is taken up is told. Belts and chains keep the direction, but
 * for a pulley on the belt's back. A chain has an even count of links, unless an offset link joins it.
 *
 * @throws MeshwrightError `not-a-count`, `out-of-range`, and where a length cannot be read
 *
 * @example
 * const { choices } = beltOf({ driver: 20, driven: 60, pitch: "2 mm", centre: "60 mm" });
 * choices.map((one) => [one.teeth, one.centre.toFixed(3)]); // => [[101, "59.636"], [102, "60.659"]]
 * const [tight] = beltOf({ driver: 20, driven: 60, pitch: "2 mm", centre: "60 mm", tensioner: true }).choices;
 * [tight!.teeth, tight!.slack!.toFixed(2)]; // => [102, "1.29"]
 */
export function beltOf(question: BeltQuestion): Belt {
  const { driver, driven, beltTeeth, centre, chain, tensioner, available = [], backDriven = false } = question;
  checkTeeth(driver, "driver");
  checkTeeth(driven, "driven");
  for (const count of available) checkTeeth(count, "available");
  if (beltTeeth !== undefined) checkTeeth(beltTeeth, "beltTeeth");
  const wanted = centre === undefined ? undefined : sizeOf(centre, "centre").toNumber();
  const none = (notKnown: Belt["notKnown"] & string): Belt => ({ notKnown, reverses: backDriven, choices: [] });
  if (question.pitch === undefined) return none("pitch-not-given");
  const pulleys = { driver, driven, pitch: sizeOf(question.pitch, "pitch") };
  if (backDriven) return none("driven-by-back");
  if (chain && Math.min(driver, driven) < 2) return none("sprocket-too-small");
  const setsCentre = beltTeeth !== undefined && !tensioner;
  const [closest] = radii(pulleys);
  if (!setsCentre && wanted === undefined) return none("centre-not-given");
  if (!setsCentre && wanted! < closest) return none("pulleys-touch");
  const length = setsCentre ? undefined : beltLength(pulleys, wanted!);
  const pitch = pulleys.pitch.toNumber();
  const counts = beltTeeth === undefined ? countsNear(question, length! / pitch) : [beltTeeth];
  const isLongEnough = (count: number): boolean =>
    tensioner ? count * pitch > length! : count * pitch >= beltLength(pulleys, closest);
  const choices = counts.filter(isLongEnough).map((teeth): BeltChoice => {
    const long = pulleys.pitch.times(teeth);
    return {
      teeth,
      length: long,
      centre: beltCentre(pulleys, long.toNumber()),
      offsetLink: !!chain && teeth % 2 > 0,
      ...(tensioner && { slack: long.toNumber() - length! }),
    };
  });
  if (beltTeeth !== undefined && !choices.length) return none(tensioner ? "belt-too-short" : "pulleys-touch");
  return { reverses: false, ...(length !== undefined && { length }), choices };
}
