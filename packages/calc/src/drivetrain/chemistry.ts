/** The names of cells that a battery can be made of; what they hold stands with motion. */
export const chemistryNames = ["lipo", "lipo-high-voltage", "li-ion", "lifepo4", "nimh", "lead"] as const;

/** What cells are made of, by name. */
export type ChemistryName = (typeof chemistryNames)[number];
