/**
 * What every part of the notebook's page is made from.
 * @module
 */
export { actsOnce } from "./acts-once.js";
export { Ask } from "./ask.js";
export type { ComesBack } from "./comes-back.js";
export { download } from "./download.js";
export { drives } from "./drives.js";
export { untilLetGo, watchHands } from "./hand.js";
export { NotebookPage, NotebookPanel } from "./page.js";
export { evaluationOf, NotebookPart } from "./part.js";
export { sheet } from "./styles.js";
export { frames, onceSeen } from "./turns.js";
