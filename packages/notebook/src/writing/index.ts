/**
 * The post: what it is made of, which of its numbers are the drivetrain's, and what it is handed out as. Without a page.
 * @module
 */
export { candidatesOf, figureSay, figureText, type Candidate } from "./figures.js";
export { handedOut } from "./handed-out.js";
export { deadIn, postToHtml } from "./html.js";
export { withLastWords } from "./last-words.js";
export { idsOf } from "./notation.js";
export { type Picture, pictureOf, pictureSizes } from "./pictures.js";
export { postFromMarkdown, postToMarkdown } from "./markdown.js";
export { matchesIn, wouldRead, type Match } from "./matches.js";
export { blocks, isHarmless, postOf, readPost, schema, type BlockAttrs, type FigureAttrs } from "./schema.js";
export { postFromPage, renameIn } from "./taken-in.js";
