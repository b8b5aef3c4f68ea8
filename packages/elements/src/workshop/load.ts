import type { Table } from "../words/index.js";
import type { WorkshopWords } from "./en.js";

const files: Readonly<Record<string, () => Promise<{ readonly words: Table<WorkshopWords> }>>> = {
  ar: () => import("./ar.js"),
  de: () => import("./de.js"),
  es: () => import("./es.js"),
  fr: () => import("./fr.js"),
  ja: () => import("./ja.js"),
};

/** Fetches the workshop strings of a language; nothing where there are none. */
export const load = (language: string): Promise<Table<WorkshopWords>> | undefined =>
  files[language]?.().then(({ words }) => words);
