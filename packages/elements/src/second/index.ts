/**
 * What comes after an article's first file: keys beside counts, sets, all figures, other languages. And what asks for the third.
 * @module
 */
export { mark } from "./mark.js";
export { makeReady } from "./ready.js";
export { CountTray, inSentence } from "./tray.js";
