import type { FigureWords, FindingWords, ReportWords } from "@meshwright/calc/languages";
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

export const loadFigures = fromFiles<FigureWords>({
  ar: () => import("@meshwright/calc/languages/figures/ar"),
  de: () => import("@meshwright/calc/languages/figures/de"),
  es: () => import("@meshwright/calc/languages/figures/es"),
  fr: () => import("@meshwright/calc/languages/figures/fr"),
  ja: () => import("@meshwright/calc/languages/figures/ja"),
});

export const loadFindings = fromFiles<FindingWords>({
  ar: () => import("@meshwright/calc/languages/findings/ar"),
  de: () => import("@meshwright/calc/languages/findings/de"),
  es: () => import("@meshwright/calc/languages/findings/es"),
  fr: () => import("@meshwright/calc/languages/findings/fr"),
  ja: () => import("@meshwright/calc/languages/findings/ja"),
});

export const loadReports = fromFiles<ReportWords>({
  ar: () => import("@meshwright/calc/languages/reports/ar"),
  de: () => import("@meshwright/calc/languages/reports/de"),
  es: () => import("@meshwright/calc/languages/reports/es"),
  fr: () => import("@meshwright/calc/languages/reports/fr"),
  ja: () => import("@meshwright/calc/languages/reports/ja"),
});
