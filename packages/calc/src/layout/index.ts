/**
 * Where gears stand, for pictures.
 * @module
 */
export { layoutOf } from "./layout.js";
export type { Layout, PlacedMount, PlacedWall, PlacedWheel, Span } from "./placed.js";
