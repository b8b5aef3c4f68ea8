/**
 * What the elements beyond an article's own share.
 * @module
 */
export { WorkshopElement } from "./element.js";
export { workshopEn, type WorkshopWords } from "./en.js";
export { dateText, moneyText, partName, partsOf } from "./parts.js";
export { tables } from "./styles.js";
export { addWorkshopWords, workshopWordsFor } from "./words.js";
