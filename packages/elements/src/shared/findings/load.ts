import type { FindingWords } from "@meshwright/calc/languages";
import { fromFiles } from "../words/index.js";

/** The self-contained script has `load-classic.ts` instead. */
export const load = fromFiles<FindingWords>({
  ar: () => import("@meshwright/calc/languages/findings/ar"),
  de: () => import("@meshwright/calc/languages/findings/de"),
  es: () => import("@meshwright/calc/languages/findings/es"),
  fr: () => import("@meshwright/calc/languages/findings/fr"),
  ja: () => import("@meshwright/calc/languages/findings/ja"),
});
