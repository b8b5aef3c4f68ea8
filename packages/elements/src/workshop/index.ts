/**
 * What the elements beyond an article's own share.
 * @module
 */
export { scrolling, WorkshopElement } from "./element.js";
export { workshopEn, type WorkshopWords } from "./en.js";
export { dateText, moneyText, needText, partName, partsOf, pitchText, sumText } from "./parts.js";
export { tables } from "./styles.js";
export { addWorkshopWords, workshopWordsFor } from "./words.js";
