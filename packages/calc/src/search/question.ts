import type { Part } from "../drivetrain/index.js";
import { type Bounded, MeshwrightError, type Rational, type RationalInput } from "../exact/index.js";
import type { FitMount } from "../fit/index.js";
import { checkPair, checkTeeth as countOf, type Toothed, type ToothPair } from "../gears/index.js";
import type { Stock } from "../parts/index.js";
import type { Order } from "./batch.js";
import type { WantedTotal, WantedPairTotal } from "./wanted.js";

/** A part, or a bare count of the question's pitch. */
export type GearOrCount = Part | number;

/** What a place in a train may hold: any of these gears with any of those that mesh and fit, or one of these sets. */
export interface GearChoice {
  readonly drivers?: readonly GearOrCount[];
  readonly drivens?: readonly GearOrCount[];
  /** Gears that are sold together: parts with `driver` and `driven`. */
  readonly sets?: readonly Part[];
  /**
   * Of each set, in their order, its reduction, and what that would be with one tooth more on the driver: of planetary sets.
   * Driven over driver where not given.
   */
  readonly reductions?: readonly (readonly [own: Rational, oneMore: Rational])[];
  /** The sets are no pairs of gears that mesh, but planetary ones, or worms with their wheels: nothing is asked of their teeth. */
  readonly whole?: boolean;
  /** How the teeth of the gears run, where not straight. */
  readonly form?: ToothPair["form"];
  readonly helixAngle?: ToothPair["helixAngle"];
  /** The pitch of bare counts, and the one that a mount's known pair and tooth sums are counted in. */
  readonly pitch?: Toothed;
  /** What the pair must fit. */
  readonly mount?: FitMount;
  /** The driven gears are rings with their teeth inside. */
  readonly internal?: boolean;
  /** Sleeves and plates that may be used. */
  readonly adapters?: readonly Part[];
  /** How many of each gear the place takes; 1 where not given. */
  readonly pieces?: number;
}

/** What every search goes by. */
interface Asked {
  readonly order?: Order;
  /** What there is of the parts; all is to be bought that they do not say is owned, where not given. */
  readonly stock?: Stock;
  /** The currency that the cheapest are found in; the one that most prices are in, where not given. */
  readonly currency?: string;
  /** Looked at a few times in 50 ms; once it is aborted, the search ends without another find. */
  readonly signal?: { readonly aborted: boolean };
}

export interface PairQuestion extends GearChoice, Asked {
  readonly outputs: readonly WantedPairTotal[];
}

/** One stage of a train, and what it may be. */
export interface StageChoice extends GearChoice {
  readonly id: string;
  /** The outputs that it drives; all where none is named. */
  readonly on?: readonly string[];
}

export interface WantedOutput extends WantedTotal {
  /** Wheels that the output could have: parts with a diameter. */
  readonly wheels?: readonly Part[];
  /** How many of them it takes; 1 where not given. */
  readonly pieces?: number;
}

/** What a train is looked for with: stages, what they may be, and what every axle has to come to. */
export interface TrainQuestion extends Asked {
  readonly stages: readonly StageChoice[];
  readonly outputs: readonly WantedOutput[];
  /** How much farther `of` may roll than `with`, as a share of `with`: 0.02 is 2 %. Ends included. Without wheels: gears alone. */
  readonly compare?: {
    readonly of: string;
    readonly with: string;
    readonly from: RationalInput;
    readonly to: RationalInput;
    /**
     * The rest of `with` over the rest of `of`, wheels included that are not chosen: what both share cancels in it. Worked
     * out from the two where not given.
     */
    readonly rest?: RationalInput | Bounded;
    /** Whether wheels that are chosen count; where not given, they do if both outputs choose theirs. */
    readonly tyres?: boolean;
  };
}

/** Names the place of whatever is wrong with one part. */
function inside(at: string, check: () => void): void {
  try {
    check();
  } catch (error) {
    if (!(error instanceof MeshwrightError)) throw error;
    throw new MeshwrightError(error.code, `${at}.${error.at}`, error.message);
  }
}

/** Pitch, angle, shift and tip diameter, checked as those of any pair; and one pitch, not two. */
function checkFigures(pair: ToothPair, at: string): void {
  inside(at, () => checkPair(pair));
  if (pair.module !== undefined && pair.diametralPitch !== undefined)
    throw new MeshwrightError("pitch-twice", at, "A module and a diametral pitch; expected the one that is marked.");
}

/** A gear as a part, its count checked; a bare count is a part without an id. */
export function gearOf(gear: GearOrCount, pitch: Toothed, at: string): Part & { readonly teeth: number } {
  if (typeof gear === "number") return { ...pitch, id: "", is: "gear", teeth: countOf(gear, at) };
  countOf(gear.teeth!, at);
  return gear as Part & { readonly teeth: number };
}

/** The tooth form of a gear, checked: once for all that are alike. */
export function checkForm(part: Part & { readonly teeth: number }, at: string): void {
  const { teeth, module, diametralPitch, pressureAngle, shift, tipDiameter } = part;
  const own = { module, diametralPitch, pressureAngle, driverShift: shift, driverTip: tipDiameter };
  checkFigures({ ...(own as Toothed), driver: teeth, driven: teeth }, `${at}.${part.id}`);
}

/** A set, checked. */
export function setOf(part: Part, at: string): Part & { readonly driver: number; readonly driven: number } {
  const { driver, driven, module, diametralPitch, pressureAngle } = part;
  const [first, second] = [countOf(driver!, at), countOf(driven!, at)];
  const pitch = { module, diametralPitch, pressureAngle } as Toothed;
  checkFigures({ ...pitch, driver: first, driven: second }, `${at}.${part.id}`);
  return part as Part & { readonly driver: number; readonly driven: number };
}

/** The pitch of a question, checked. */
export function pitchOf({ pitch = {} }: GearChoice, at: string): Toothed {
  checkFigures({ ...pitch, driver: 1, driven: 1 }, at);
  return pitch;
}
