import type { Battery, ChemistryName } from "../drivetrain/index.js";
import { rational, type Rational } from "../exact/index.js";

/** Volts of one cell, and where the figures come from. */
export interface Chemistry {
  readonly nominal: string;
  /** The most that a cell holds when it comes off a charger. */
  readonly full: string;
  readonly source: string;
}

/** Cells by the names that a build's battery uses. */
export const chemistries: Readonly<Record<ChemistryName, Chemistry>> = {
  lipo: { nominal: "3.7", full: "4.20", source: "usual label and charge end of lithium polymer cells" },
  "lipo-high-voltage": {
    nominal: "3.8",
    full: "4.35",
    source: "only where labelled for 4.35 V, with the matching charge profile",
  },
  "li-ion": { nominal: "3.6", full: "4.20", source: "usual data sheets of round lithium-ion cells" },
  lifepo4: { nominal: "3.2", full: "3.65", source: "usual label and charge end of lithium iron phosphate cells" },
  nimh: { nominal: "1.2", full: "1.45", source: "IEC 61951-2 names 1.2 V; about 1.45 V just off the charger" },
  lead: { nominal: "2", full: "2.4", source: "label of six cells, 12 V; end of a cyclic charge, 14.4 V" },
};

/** Volts of a pack, as labelled and when full. */
export interface PackVolts {
  readonly nominal: Rational;
  readonly full: Rational;
}

/**
 * Volts of a pack: cells in series add up; cells in parallel, and capacity, add nothing. Undefined where cells or chemistry
 * are not given or not known.
 *
 * @example
 * const volts = packVolts({ cells: 3, parallel: 2, chemistry: "lipo" })!;
 * [volts.nominal, volts.full].map((one) => one.toDecimal()); // => ["11.1", "12.6"]
 */
export function packVolts({ cells, chemistry }: Battery): PackVolts | undefined {
  const cell = Object.entries(chemistries).find(([name]) => name === chemistry)?.[1];
  if (!cells || !cell) return undefined;
  return { nominal: rational(cell.nominal).times(cells), full: rational(cell.full).times(cells) };
}
