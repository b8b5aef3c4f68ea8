/** Axles that stand as attributes of their own; any other is `axle-NAME`. */
export const axleNames = ["front", "middle", "rear", "left", "right", "drive"] as const;

/** What may stand behind an axle's name. */
export const axleParts = ["wheel", "motor"] as const;

/** The words of a notation that speak of no axle. */
export const buildWords = [
  ...["stages", "target", "compare", "centre", "motor", "battery", "controller"],
  ...["mount", "title", "wheelbase", "headline", "lengths"],
] as const;

export type BuildWord = (typeof buildWords)[number];

/** Whose attribute of an `mw-build` a name is, in a notation: an axle's stages, its wheel or motor. */
export interface AxleAttribute {
  readonly axle: string;
  readonly part?: (typeof axleParts)[number];
}

const axlePattern = new RegExp(
  `^(?:(${axleNames.join("|")})|axle-([a-z][a-z0-9]*(?:-[a-z0-9]+)*?))(?:-(${axleParts.join("|")}))?$`,
);

/** An attribute that speaks of an axle: `front`, `rear-wheel`, `axle-third-motor`. */
export function axleAttributeOf(name: string): AxleAttribute | undefined {
  const [, known, other, part] = axlePattern.exec(name) ?? [];
  const axle = known ?? other;
  return axle === undefined ? undefined : { axle, ...(part && { part: part as "wheel" | "motor" }) };
}

/** Every name that a notation takes, but for axles of other names. */
export const notationNames: readonly string[] = [
  ...buildWords,
  ...axleNames.flatMap((axle) => [axle, ...axleParts.map((part) => `${axle}-${part}`)]),
];

/** Whether an attribute of an `mw-build` says something of the build. */
export const speaksOfBuild = (name: string): boolean => name !== "seal" && notationName(name);

/** Whether an attribute of an `mw-build` belongs to the notation of its build. */
export const notationName = (name: string): boolean =>
  (buildWords as readonly string[]).includes(name) || axleAttributeOf(name) !== undefined || name === "seal";
