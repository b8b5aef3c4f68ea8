import { figureAsked } from "@meshwright/calc/report";
import { MwBuild } from "../elements/build/index.js";
import { announce, figures, nameIn } from "../shared/drawn/index.js";
import { contract, wantMore } from "../shared/element/index.js";
import { isAuthorHere } from "../shared/page/index.js";
import { fetchWords, figureWordsFor } from "../shared/words/index.js";
import { readyEngine } from "./engine.js";
import { mark } from "./mark.js";
import { CountTray, inSentence } from "./tray.js";

/** What the third file registers. */
const tables = "mw-ratio-summary, mw-overdrive-gauge, mw-edits";

/** Brings what comes second. */
export function makeReady(): void {
  MwBuild.extend(
    {
      engine: readyEngine,
      figures(evaluation, query, locale, version) {
        const text = figureAsked(figures, evaluation, query, { locale, words: figureWordsFor(locale), version });
        // A name that none of the build's versions has may be another build's; figures of fit, speed and torque come third.
        if (text === undefined && (query.from || !Object.hasOwn(figures, query.figure ?? "reduction")))
          wantMore("third");
        return text;
      },
      words: fetchWords,
      tray: (state) => new CountTray(state),
      setText: inSentence,
      nameOf: nameIn,
      mark,
      announce,
    },
    contract,
  );
  if (isAuthorHere() || document.querySelector(tables)) wantMore("third");
}
