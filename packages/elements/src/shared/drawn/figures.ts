import { gearFigures, type Figure, type FigureName } from "@meshwright/calc/report";

type Table = { [Name in FigureName]?: Figure };

/** The figures that this copy of the library can show: those of the gears, and what has been added. */
export const figures: Table = { ...gearFigures };

/** Adds figures, before anything that shows them is registered. */
export const addFigures = (more: Readonly<Table>): void => void Object.assign(figures, more);
