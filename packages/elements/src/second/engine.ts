import { unitsOf } from "@meshwright/calc/drivetrain";
import { detailsOf } from "@meshwright/calc/evaluate";
import { wantMore } from "../shared/element/index.js";
import { leanEngine, type Engine } from "../shared/store/index.js";

/** Works out all figures; changes values, and sends for more where anything else is to be changed. */
export const readyEngine: Engine = {
  ...leanEngine,
  unitsOf,
  evaluate: detailsOf,
  edited(article, before, request) {
    const made = leanEngine.edited(article, before, request);
    if (!made.ok) wantMore("third");
    return made;
  },
};
