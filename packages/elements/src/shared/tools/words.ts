import { addTable, tableFor, type Table } from "../words/index.js";
import { toolsEn, type ToolWords } from "../../languages/tools/en.js";
import { load } from "./load.js";

/** Adds the strings of the elements beyond an article of a language; whatever stands in that language is drawn again. */
export const addToolWords = (language: string, words: Table<ToolWords>): void => addTable(`tools-${language}`, words);

/** The strings of the elements beyond an article for a locale: its language's, English until they are there or where there are none. */
export const toolWordsFor = (locale: string): ToolWords => tableFor<ToolWords>("tools", toolsEn, locale, load);
