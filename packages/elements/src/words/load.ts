import type { Words } from "./en.js";
import type { Table } from "./tables.js";

const files: Readonly<Record<string, () => Promise<{ readonly words: Table<Words> }>>> = {
  ar: () => import("./ar.js"),
  de: () => import("./de.js"),
  es: () => import("./es.js"),
  fr: () => import("./fr.js"),
  ja: () => import("./ja.js"),
};

/** Fetches the strings of a language; nothing where there are none. The self-contained script has `load-classic.ts` instead. */
export const load = (language: string): Promise<Table<Words>> | undefined =>
  files[language]?.().then(({ words }) => words);
