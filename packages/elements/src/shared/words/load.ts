import type { Words } from "../../languages/words/en.js";
import { fromFiles } from "./files.js";

/** The self-contained script has `load-classic.ts` instead. */
export const load = fromFiles<Words>({
  ar: () => import("../../languages/words/ar.js"),
  de: () => import("../../languages/words/de.js"),
  es: () => import("../../languages/words/es.js"),
  fr: () => import("../../languages/words/fr.js"),
  ja: () => import("../../languages/words/ja.js"),
});
