import type { Part } from "../drivetrain/index.js";
import { type Bounded, lengthOf, MeshwrightError, rational, type RationalInput } from "../exact/index.js";
import type { FitMount } from "../fit/index.js";
import type { Toothed } from "../gears/index.js";
import type { Stock } from "../parts/index.js";
import type { Order } from "./batch.js";
import type { Wanted } from "./wanted.js";

/** A part, or a bare count of the question's pitch. */
export type GearOrCount = Part | number;

/** What a place in a train may hold: any of these gears with any of those that mesh and fit, or one of these sets. */
export interface GearChoice {
  readonly drivers?: readonly GearOrCount[];
  readonly drivens?: readonly GearOrCount[];
  /** Gears that are sold together: parts with `driver` and `driven`. */
  readonly sets?: readonly Part[];
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
  readonly outputs: readonly Wanted[];
}

/** One stage of a train, and what it may be. */
export interface StageChoice extends GearChoice {
  readonly id: string;
  /** The outputs that it drives; all where none is named. */
  readonly on?: readonly string[];
}

export interface WantedOutput extends Wanted {
  /** Wheels that the output could have: parts with a diameter. */
  readonly wheels?: readonly Part[];
  /** How many of them it takes; 1 where not given. */
  readonly pieces?: number;
}

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

const mostTeeth = 1_000_000;

/** A count of teeth, or an error. */
export function countOf(teeth: number | undefined, at: string): number {
  if (teeth !== undefined && Number.isSafeInteger(teeth) && teeth > 0 && teeth <= mostTeeth) return teeth;
  throw new MeshwrightError("not-a-count", at, `Found ${teeth} teeth; expected a whole number from 1 to ${mostTeeth}.`);
}

function positive(input: RationalInput | undefined, at: string): void {
  if (input !== undefined && rational(input, { at }).sign <= 0)
    throw new MeshwrightError("not-above-zero", at, `Found ${String(input)}; expected more than 0.`);
}

/** Pitch and pressure angle, or an error: one pitch, above zero, and an angle from above 0 to below 90 degrees. */
function checkPitch(pitch: Toothed, at: string): void {
  const { module, diametralPitch } = pitch;
  positive(module, `${at}.module`);
  positive(diametralPitch, `${at}.diametralPitch`);
  if (module !== undefined && diametralPitch !== undefined)
    throw new MeshwrightError("pitch-twice", at, "A module and a diametral pitch; expected the one that is marked.");
  const angle = rational(pitch.pressureAngle ?? 20, { at: `${at}.pressureAngle` });
  if (angle.sign <= 0 || angle.compare(90) >= 0)
    throw new MeshwrightError(
      "out-of-range",
      `${at}.pressureAngle`,
      `The angle is ${angle}; expected 0 to 90 degrees.`,
    );
}

/** A gear as a part, its count checked; a bare count is a part without an id. */
export function gearOf(gear: GearOrCount, pitch: Toothed, at: string): Part & { readonly teeth: number } {
  if (typeof gear === "number") return { ...pitch, id: "", is: "gear", teeth: countOf(gear, at) };
  countOf(gear.teeth, at);
  return gear as Part & { readonly teeth: number };
}

/** The tooth form of a gear, checked: once for all that are alike. */
export function checkForm(part: Part, at: string): void {
  const { shift, tipDiameter } = part;
  checkPitch(part, at);
  if (shift !== undefined) rational(shift, { at: `${at}.shift` });
  if (tipDiameter !== undefined) lengthOf(tipDiameter, `${at}.tipDiameter`);
}

/** A set, checked. */
export function setOf(part: Part, at: string): Part & { readonly driver: number; readonly driven: number } {
  countOf(part.driver, at);
  countOf(part.driven, at);
  checkPitch(part, `${at}.${part.id}`);
  return part as Part & { readonly driver: number; readonly driven: number };
}

/** The pitch of a question, checked. */
export function pitchOf({ pitch = {} }: GearChoice, at: string): Toothed {
  checkPitch(pitch, at);
  return pitch;
}
