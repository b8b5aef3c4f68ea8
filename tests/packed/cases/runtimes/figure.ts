import { evaluate, figureOf, parseBuild } from "@meshwright/calc";
import { checkFigures } from "@meshwright/figures";
import "@meshwright/elements/all";

const primary = { id: "primary", kind: "pair", driver: 15, driven: 62 };
const build = parseBuild({ format: "meshwright-build/1", stages: [primary], outputs: [{ id: "rear", stages: [] }] });
const post = '<mw-build stages="Spur: 15 to 62" rear=""></mw-build><p><mw-value of="rear">4.13</mw-value></p>';
const fraction = figureOf(evaluate(build), { figure: "fraction", of: "rear" });
// eslint-disable-next-line no-console -- what it says is what it is asked for
console.log(fraction, checkFigures(post).differences.length);
