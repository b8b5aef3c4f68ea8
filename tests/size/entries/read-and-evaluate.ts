// What a page needs to read a build without sentences and work its totals out.
export { leanRead } from "@meshwright/calc/document/lean";
export { totalsOf } from "@meshwright/calc/evaluate";
