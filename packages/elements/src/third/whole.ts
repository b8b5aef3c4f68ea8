import { figureFrom, fitFigures, motionFigures } from "@meshwright/calc/report";
import { MwBuild } from "../elements/build/index.js";
import { addFigures, announce, figures, nameIn } from "../shared/drawn/index.js";
import { contract, type Overseen } from "../shared/element/index.js";
import { watchFindings } from "../shared/findings/index.js";
import { CountTray, inSentence, mark } from "../second/index.js";
import { fetchWords, figureWordsFor, findingText } from "../shared/words/index.js";
import { check } from "./check.js";
import { isComing } from "./elsewhere.js";
import { wholeEngine } from "./engine.js";
import { BuildLinks } from "./link.js";

let isWhole = false;

/** Brings what comes after an article's first file. */
export function makeWhole(): void {
  if (isWhole) return;
  isWhole = true;
  addFigures({ ...fitFigures, ...motionFigures });
  watchFindings();
  MwBuild.extend(
    {
      engine: wholeEngine,
      check,
      figures: (evaluation, query, locale, version) =>
        // What is held against may still be on its way, which is no fault.
        isComing(evaluation, query.from, version)
          ? undefined
          : figureFrom(figures, evaluation, query, { locale, words: figureWordsFor(locale), version }),
      words: fetchWords,
      link: (build) => new BuildLinks(build as Overseen),
      tray: (state) => new CountTray(state),
      findingText,
      setText: inSentence,
      nameOf: nameIn,
      mark,
      announce,
    },
    contract,
  );
}
