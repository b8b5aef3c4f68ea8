/**
 * What the elements beyond an article's own share.
 * @module
 */
export { scrolling, ToolElement } from "./element.js";
export { toolsEn, type ToolWords } from "../../languages/tools/en.js";
export { dateText, moneyText, needText, partName, partsOf, pitchText, sumText } from "./parts.js";
export { tables } from "./styles.js";
export { addToolWords, toolWordsFor } from "./words.js";
