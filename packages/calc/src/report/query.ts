import { nearestTo } from "../document/index.js";
import type { Build } from "../drivetrain/index.js";
import { errorOf, type Finding } from "../stages/index.js";
import { noOthers, queryFaults, type Others, type QueryFault } from "./query-faults.js";
import { versionFault } from "./version.js";
import type { QueryText } from "./vocabulary.js";

/** A fault in words, with the nearest that there are. */
function told(build: Build, { code, field, values, word }: QueryFault, others: Others): Finding {
  const at = `/${field}`;
  if (field === "from" && code === "missing-reference")
    return { ...versionFault(build, String(values.id), others)!, at };
  if (code === "missing-address") return errorOf("meaning", code, at, values);
  const known = (values.known ?? values.takes) as readonly string[];
  return errorOf("meaning", code, at, { ...values, ...(word !== undefined && { nearest: nearestTo(word, known) }) });
}

/**
 * What is wrong with a query: words that the vocabulary does not know, words that the figure does not take, ids and addresses that
 * the build does not have; each with the nearest that there are. Nothing where the figure can be shown.
 *
 * @param others the ids of other builds that a change can be counted `from`
 *
 * @example
 * const ring = { id: "ring", kind: "pair", driver: 12, driven: 35 };
 * const build = parseBuild({ format: "meshwright-build/1", outputs: [{ id: "rear", stages: [ring] }] });
 * checkQuery({ figure: "travel", of: "rear", unit: "mm" }, build); // => []
 * checkQuery({ figure: "travel", unit: "MM" }, build)[0]!.values.nearest; // => ["mm"]
 * checkQuery({ figure: "travle" }, build)[0]!.message.slice(0, 50); // => "There is no figure \"travle\"; nearest: travel. Expe"
 */
export const checkQuery = (query: QueryText, build: Build, others: Others = noOthers): readonly Finding[] =>
  queryFaults(query, build, others).map((fault) => told(build, fault, others));
