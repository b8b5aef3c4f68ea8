// The same as for totals, and the text of the figures that sentences use most.
export { leanRead } from "@meshwright/calc/document/lean";
export { totalsOf } from "@meshwright/calc/evaluate";
export { verdictWords } from "@meshwright/calc/languages";
export { commonFigures, figureIn } from "@meshwright/calc/report";
