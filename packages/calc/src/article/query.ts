import { queryNames, type QueryText } from "../report/index.js";
import { said, type Attributes } from "./said.js";

/** The query that attributes stand for: a reduction where they name no figure. */
export function queryOf(attributes: Attributes): QueryText {
  const query: Record<string, string> = { figure: "reduction" };
  for (const name of queryNames) {
    const value = said(attributes, name);
    if (value !== undefined) query[name] = value;
  }
  return query;
}
