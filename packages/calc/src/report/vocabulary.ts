/** What `of` names: an output; an output or a stage; a stage; a stage of two gears; any address that holds one value. */
export type Of = "output" | "output-or-stage" | "stage" | "pair" | "address";

/** What a build has to say before a figure is known. */
export type FigureNeed =
  "target" | "two-outputs" | "wheel" | "wheelbase" | "differential" | "pitch" | "mount" | "motor" | "battery";

const quantities = {
  length: ["mm", "cm", "m", "in", "ft"],
  speed: ["km/h", "m/s", "mph", "ft/s"],
  voltage: ["V"],
} as const;

/** What a figure is in units of. */
export type UnitOf = keyof typeof quantities;

/** The units of each quantity, the usual one first. */
export const units: Readonly<Record<UnitOf, readonly string[]>> = quantities;

/** What a comparison counts. */
export const scopes = ["tyres", "gears"] as const;

/** How a drive with an open differential is looked at: everything held together, or every wheel at one road speed. */
export const drives = ["locked", "straight-on"] as const;

/** What there is to say about a figure. `true`: the figure takes it. */
interface FigureEntry {
  /** Whose maker it is: a bundle takes in the groups that it shows. */
  readonly by: "gears" | "fit" | "motion";
  readonly of?: Of;
  /** It is nothing without `of`. */
  readonly ofNeeded?: true;
  readonly with?: true;
  readonly group?: true;
  readonly base?: true;
  readonly scope?: true;
  readonly from?: true;
  readonly measure?: readonly string[];
  readonly over?: "length" | "turns";
  readonly unit?: UnitOf;
  readonly digits?: true;
  readonly sign?: true;
  readonly drive?: readonly (typeof drives)[number][];
  readonly needs?: readonly FigureNeed[];
}

const compared = { of: "output", with: true, scope: true, drive: ["locked"], needs: ["two-outputs"] } as const;

/**
 * The figures: a table of words without functions. What it says a figure takes is all that it takes; the first word of a list is
 * what stands where none is said.
 */
export const vocabulary = {
  /** Motor turns for one wheel turn; or what one group of stages does, or one stage. */
  reduction: { by: "gears", of: "output-or-stage", group: true, digits: true, drive: drives },
  /** The same as an exact fraction, where it is exact. */
  fraction: { by: "gears", of: "output-or-stage", group: true, drive: drives },
  /** Where the total stands in the builder's range. */
  standing: { by: "gears", of: "output", needs: ["target"] },
  /** The builder's range. */
  range: { by: "gears", digits: true, needs: ["target"] },
  /** A value of the build as it was written: a tooth count, a printed ratio, a label. */
  count: { by: "gears", of: "address", ofNeeded: true },
  /** A stage's counts in the order of drive: in a sentence "15 driving 62"; by `arrow` for tables, 15 → 62; to be `heard`, "15 drives 62". */
  counts: { by: "gears", of: "stage", ofNeeded: true, measure: ["sentence", "arrow", "heard"] },
  /** Which way an output turns against its motor. */
  direction: { by: "gears", of: "output" },
  /** One output against another as a bare percentage, without its sign where that is known. */
  gap: { by: "gears", ...compared, base: true, digits: true },
  /** "1.06% ahead". */
  lead: { by: "gears", ...compared, base: true, digits: true },
  /** "1.06% farther". */
  farther: { by: "gears", ...compared, base: true, digits: true },
  /** Only the word: ahead, behind, level, or cannot tell. */
  leader: { by: "gears", ...compared },
  /** The gap over a stretch of ground, as a length. */
  drift: { by: "gears", ...compared, base: true, over: "length", unit: "length", digits: true },
  /** How much of the motor's turns an open differential takes up between two outputs, straight on. */
  "taken-up": {
    by: "gears",
    of: "output",
    with: true,
    digits: true,
    needs: ["two-outputs", "wheel", "differential"],
  },
  /** Mean of two axles: harmonic for a locked drive, arithmetic for an open even split. */
  mean: {
    by: "gears",
    of: "output",
    with: true,
    measure: ["harmonic", "arithmetic"],
    digits: true,
    needs: ["two-outputs"],
  },
  /** Ground rolled for one motor turn. */
  travel: { by: "gears", of: "output", unit: "length", digits: true, drive: drives, needs: ["wheel"] },
  /** What changed against another version, as one of several percentages, each by its own base. Only `travel` counts the tyres. */
  change: {
    by: "gears",
    of: "output",
    from: true,
    measure: ["reduction", "wheel-speed", "wheel-torque", "midpoint", "travel"],
    digits: true,
    sign: true,
  },
  /** The theoretical centre distance of two gears. */
  centre: { by: "fit", of: "pair", unit: "length", digits: true, needs: ["pitch"] },
  /** The centre distances that the mount can set: all its limits, or its row of holes; or one end of them. */
  slot: { by: "fit", of: "pair", measure: ["both", "from", "to"], unit: "length", digits: true, needs: ["mount"] },
  /** Whether the pair meshes and fits: by the parts that are said to be there, as far as they are known. */
  fit: { by: "fit", of: "pair", needs: ["pitch", "mount"] },
  /** What falls short before the pair fits, and by how much. */
  shortfall: { by: "fit", of: "pair", unit: "length", digits: true, needs: ["pitch", "mount"] },
  /**
   * Play between the teeth, measured square to them, at the smallest opening wanted that the mount can set. Where none is wanted that is
   * none, and so is the play: what is set when they are put together is more.
   */
  backlash: { by: "fit", of: "pair", unit: "length", digits: true, needs: ["pitch"] },
  /** How fast the wheel rolls: ideal, at full charge or nominal volts. */
  speed: {
    by: "motion",
    of: "output",
    measure: ["full", "nominal"],
    unit: "speed",
    digits: true,
    drive: drives,
    needs: ["motor", "battery", "wheel"],
  },
  /** Motor turns a minute without load. */
  "motor-rpm": {
    by: "motion",
    of: "output",
    measure: ["full", "nominal"],
    digits: true,
    needs: ["motor", "battery", "wheel"],
  },
  /** Wheel turns a minute without load. */
  "wheel-rpm": {
    by: "motion",
    of: "output",
    measure: ["full", "nominal"],
    digits: true,
    drive: drives,
    needs: ["motor", "battery", "wheel"],
  },
  /**
   * Wheel turns while the first driven gear is turned so many times by hand: of both wheels, or of one while the other one of an
   * open axle differential is held.
   */
  "hand-turns": { by: "motion", of: "output", measure: ["both", "held"], over: "turns", digits: true },
  /** Volts of the pack: full, or as labelled. */
  volts: { by: "motion", measure: ["full", "nominal"], unit: "voltage", digits: true, needs: ["battery"] },
  /** Radius of the turning circle that an overdrive matches, at the middle of the rear axle. */
  circle: { by: "motion", ...compared, unit: "length", digits: true, needs: ["two-outputs", "wheelbase"] },
} as const satisfies Readonly<Record<string, FigureEntry>>;

type Vocabulary = typeof vocabulary;
type Listed<Field extends string> = {
  [Name in FigureName]: Vocabulary[Name] extends Readonly<Record<Field, readonly (infer Word)[]>> ? Word : never;
}[FigureName];

/** The name of a figure. */
export type FigureName = keyof Vocabulary;
/** The names of one group of figures. */
export type FigureNameOf<Group> = {
  [Name in FigureName]: Vocabulary[Name]["by"] extends Group ? Name : never;
}[FigureName];
/** A unit that a figure can be shown in. */
export type FigureUnit = (typeof quantities)[UnitOf][number];
/** What a comparison counts. */
export type FigureScope = (typeof scopes)[number];
/** How an open differential is looked at. */
export type FigureDrive = (typeof drives)[number];
/** Which of several readings of a figure. */
export type FigureMeasure = Listed<"measure">;
/** What a percentage is measured against: one of the two axles by its id, or the mean of both. */
// An axle may bear any id; these are offered by whatever completes words.
export type FigureBase = "front" | "rear" | "mean" | (string & {});

/** What there is to say about a figure, whatever its name. */
export type FigureSpec = FigureEntry;

/** The figures by name, as one looks them up. */
export const figureSpecs: Readonly<Record<string, FigureSpec>> = vocabulary;

/** The fields of a query, as attributes bear them. */
export const queryNames = [
  "figure",
  "of",
  "with",
  "group",
  "base",
  "scope",
  "from",
  "measure",
  "over",
  "unit",
  "digits",
  "sign",
  "drive",
] as const;

/** The name of a field of a query. */
export type QueryName = (typeof queryNames)[number];

/** Which figure is asked for, in the words of the vocabulary. */
export interface FigureQuery {
  /** The figure's name. */
  readonly figure: FigureName;
  /** What it is a figure of: an output, a stage, or an address. */
  readonly of?: string | undefined;
  /** The output that it is compared with. */
  readonly with?: string | undefined;
  /** A group of stages: only what they do. */
  readonly group?: string | undefined;
  readonly base?: FigureBase | undefined;
  /** What a comparison counts: tyres where both wheels are given, else the gears alone, and the text says so. */
  readonly scope?: FigureScope | undefined;
  /** What a change is counted from: "article", the id of an alternative, a reference or another build of the page, "revision-1". */
  readonly from?: string | undefined;
  readonly measure?: FigureMeasure | undefined;
  /** A stretch of ground, for a gap as a length; turns, for a check by hand. */
  readonly over?: string | undefined;
  readonly unit?: FigureUnit | undefined;
  /** Fraction digits, from 0 to 100; the build's rounding, or what suits the figure, where it is not said. */
  readonly digits?: string | number | undefined;
  /** "none" leaves the sign of a change out. */
  readonly sign?: "none" | undefined;
  /** Where a differential is open: locked, or straight on. Where it is not said, the text says which. */
  readonly drive?: FigureDrive | undefined;
}

/** A query as attributes bear it: any words at all. */
export type QueryText = { readonly [Name in QueryName]?: string | number | null | undefined };
