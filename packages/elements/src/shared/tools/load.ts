import { fromFiles } from "../words/index.js";
import type { ToolWords } from "../../languages/tools/en.js";

/** The self-contained script has `load-classic.ts` instead. */
export const load = fromFiles<ToolWords>({
  ar: () => import("../../languages/tools/ar.js"),
  de: () => import("../../languages/tools/de.js"),
  es: () => import("../../languages/tools/es.js"),
  fr: () => import("../../languages/tools/fr.js"),
  ja: () => import("../../languages/tools/ja.js"),
});
