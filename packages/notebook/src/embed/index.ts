/**
 * A page that shows chosen elements of the drivetrain in its address, and nothing else.
 * @module
 */
export { MwFrame } from "./mw-frame.js";
export { frameAddress, type Framed, framed } from "./shown.js";
