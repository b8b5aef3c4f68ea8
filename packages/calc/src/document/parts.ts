import type { Part } from "../drivetrain/index.js";
import type { Toothed } from "../gears/index.js";
import { checkPitch, type FindingCode, type FindingValues, type PartKind } from "../stages/index.js";

const fieldsByKind: Readonly<Partial<Record<PartKind, readonly (keyof Part)[]>>> = {
  pinion: ["teeth"],
  spur: ["teeth"],
  gear: ["teeth"],
  pulley: ["teeth"],
  worm: ["teeth"],
  set: ["driver", "driven"],
  hub: ["driver", "driven"],
  planetary: ["driver", "driven"],
  wheel: ["diameter"],
  sleeve: ["bore", "outside"],
  plate: ["circles"],
};

/** Fields without which nothing can be done with a part of a kind. */
export const fieldsNeeded = (is: PartKind): readonly (keyof Part)[] => fieldsByKind[is] ?? [];

/** The fields that a part of its kind needs, and does not have. */
export const missingIn = (part: Partial<Part> & Pick<Part, "is">): readonly (keyof Part)[] =>
  fieldsNeeded(part.is).filter((field) => part[field] === undefined);

/** What is wrong with one part of a list, and in which field. */
export interface PartFault {
  readonly n: number;
  readonly code: FindingCode;
  readonly field: keyof Part;
  readonly values: FindingValues;
  /** Whether a figure that meets the part cannot be worked out. */
  readonly spoils: boolean;
}

/**
 * What the shape of parts cannot show: that each has what its kind needs, one pitch, and an angle that is cut. A list for a search is
 * refused where one is wrong; a build's totals do not depend on its parts, so that there most of it is told.
 */
export function partFaults(parts: readonly Part[]): readonly PartFault[] {
  const faults: PartFault[] = [];
  for (const [n, part] of parts.entries()) {
    for (const field of missingIn(part))
      faults.push({ n, code: "part-incomplete", field, values: { is: part.is, field }, spoils: false });
    checkPitch(part as Toothed, (_severity, code, field, values = {}) => {
      faults.push({ n, code, field: field as keyof Part, values, spoils: code === "angle-out-of-range" });
    });
  }
  return faults;
}
