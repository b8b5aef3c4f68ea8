import { evaluate, figureOf, parseBuild } from "@meshwright/calc";

const primary = { id: "primary", kind: "pair", driver: 15, driven: 62 };
const build = parseBuild({ format: "meshwright-build/1", stages: [primary], outputs: [{ id: "rear", stages: [] }] });
postMessage(figureOf(evaluate(build), { figure: "fraction", of: "rear" }));
