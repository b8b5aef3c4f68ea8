/**
 * What the elements beyond an article's own share.
 * @module
 */
export { reporting, scrolling, ToolElement } from "./element.js";
export { choice, field, fields, type Field } from "./fields.js";
export { toolsEn, type ToolWords } from "../../languages/tools/en.js";
export { tables } from "./styles.js";
export { sayLengths, unitControl } from "./units.js";
export { whoseValues } from "./whose.js";
export { addToolWords, toolWordsFor } from "./words.js";
