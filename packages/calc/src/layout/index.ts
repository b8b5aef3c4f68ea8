/**
 * Where gears stand, for pictures.
 * @module
 */
export { type Layout, type PlacedMount, type PlacedWall, type PlacedWheel, type Span, layoutOf } from "./layout.js";
