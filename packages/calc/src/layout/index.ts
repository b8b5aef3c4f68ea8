/**
 * Where gears stand, for pictures: to true scale on their centre distances, and as the whole line of drive.
 * @module
 */
export type { Box, Lettered, Lettering, PlacedCell, PlacedLine, PlacedShaft } from "./drive-cells.js";
export { type LinePlace, type LineStage, type Strand, driveLineOf, strandsOf } from "./drive-line.js";
export { type OpenedLine, openedBeneath } from "./drive-opened.js";
export type { Mark, LinePoint } from "./drive-marks.js";
export { type LinePlacing, placeDriveLine } from "./drive-places.js";
export { type Ink, type Stroke, strokesOf } from "./drive-strokes.js";
export { layoutOf } from "./layout.js";
export type { Layout, PlacedMount, PlacedWall, PlacedWheel, Span } from "./placed.js";
