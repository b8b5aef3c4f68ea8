import { edited, layOver } from "@meshwright/calc/document";
import { unitsOf } from "@meshwright/calc/drivetrain";
import { evaluate } from "@meshwright/calc/evaluate";
import { versionOf } from "@meshwright/calc/report";
import { errorOf, findingOf } from "@meshwright/calc/stages";
import type { Engine } from "../shared/store/index.js";
import { elsewhere } from "./elsewhere.js";

/** Works out everything, and says why something cannot be. */
export const wholeEngine: Engine = {
  edited: (article, before, request) =>
    article && before
      ? edited(article, before, request)
      : { ok: false, findings: [errorOf("meaning", "no-build", "")] },
  layOver(article, layer, known) {
    const { dropped, ...state } = layOver(article, layer, known);
    const told = dropped.map(({ address, label, why }) =>
      findingOf("warning", "meaning", "change-dropped", address, { label, why }),
    );
    return { ...state, dropped: told };
  },
  unitsOf,
  version: versionOf,
  evaluate,
  elsewhere,
};
