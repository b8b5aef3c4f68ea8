import type { Part } from "../drivetrain/index.js";
import type { FindingCode, FindingValues, PartKind } from "../stages/index.js";

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
}

/**
 * What the shape of parts cannot show: that each has one pitch, and what its kind needs. A list for a search is refused where one is
 * wrong; a build's figures do not depend on its parts, so that there it is told.
 */
export const partFaults = (parts: readonly Part[]): readonly PartFault[] =>
  parts.flatMap((part, n) => {
    const faults = missingIn(part).map((field): PartFault => {
      return { n, code: "part-incomplete", field, values: { is: part.is, field } };
    });
    if (part.module !== undefined && part.diametralPitch !== undefined)
      faults.push({ n, code: "pitch-twice", field: "diametralPitch", values: {} });
    return faults;
  });
