import { words as arFigures } from "./figures/ar.js";
import { words as deFigures } from "./figures/de.js";
import { type FigureWords, figureWords } from "./figures/en.js";
import { words as esFigures } from "./figures/es.js";
import { words as frFigures } from "./figures/fr.js";
import { words as jaFigures } from "./figures/ja.js";
import { words as arFindings } from "./findings/ar.js";
import { words as deFindings } from "./findings/de.js";
import { findingWords, type FindingWords } from "./findings/en.js";
import { words as esFindings } from "./findings/es.js";
import { words as frFindings } from "./findings/fr.js";
import { words as jaFindings } from "./findings/ja.js";
import { languageOf } from "./locale.js";
import { words as arReports } from "./reports/ar.js";
import { words as deReports } from "./reports/de.js";
import { type ReportWords, reportWords } from "./reports/en.js";
import { words as esReports } from "./reports/es.js";
import { words as frReports } from "./reports/fr.js";
import { words as jaReports } from "./reports/ja.js";
import { stringsFrom, type Table } from "./tables.js";

/** All that one language says. */
export interface Language {
  readonly figures: FigureWords;
  readonly reports: ReportWords;
  readonly findings: FindingWords;
}

const tables: Readonly<Record<string, { readonly [Kind in keyof Language]: Table<Language[Kind]> }>> = {
  en: { figures: figureWords, reports: reportWords, findings: findingWords },
  ar: { figures: arFigures, reports: arReports, findings: arFindings },
  de: { figures: deFigures, reports: deReports, findings: deFindings },
  es: { figures: esFigures, reports: esReports, findings: esFindings },
  fr: { figures: frFigures, reports: frReports, findings: frFindings },
  ja: { figures: jaFigures, reports: jaReports, findings: jaFindings },
};

/** The letters of every language that has words of its own. */
export const languageCodes: readonly string[] = Object.keys(tables);

/** The words for a locale: its language's, English where it has none. For programs that keep all languages at hand. */
export function wordsFor(locale: string): Language {
  const language = languageOf(locale);
  const { figures, reports, findings } = (Object.hasOwn(tables, language) && tables[language]) || tables.en!;
  return {
    figures: stringsFrom<FigureWords>(figureWords, figures),
    reports: stringsFrom<ReportWords>(reportWords, reports),
    findings: stringsFrom<FindingWords>(findingWords, findings),
  };
}
