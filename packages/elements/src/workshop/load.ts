import { fromFiles } from "../words/index.js";
import type { WorkshopWords } from "./en.js";

/** The self-contained script has `load-classic.ts` instead. */
export const load = fromFiles<WorkshopWords>({
  ar: () => import("./ar.js"),
  de: () => import("./de.js"),
  es: () => import("./es.js"),
  fr: () => import("./fr.js"),
  ja: () => import("./ja.js"),
});
