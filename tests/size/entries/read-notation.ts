// The same, and builds in attributes.
export { leanFromAttributes, leanRead } from "@meshwright/calc/document/lean";
export { totalsOf } from "@meshwright/calc/evaluate";
