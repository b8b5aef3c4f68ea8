import { gearFigures, type Figure } from "@meshwright/calc/report";

/** The figures that this copy of the library can show: those of the gears, and what has been added. */
export const figures: Record<string, Figure> = { ...gearFigures };

/** Adds figures, before anything that shows them is registered. */
export const addFigures = (more: Readonly<Record<string, Figure>>): void => void Object.assign(figures, more);
