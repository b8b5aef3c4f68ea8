import { nearestTo, type ElementTag } from "../document/index.js";
import { stagesOf, type Build } from "../drivetrain/index.js";
import { checkQuery, isToothPair, singleFault, versionFault } from "../report/index.js";
import { errorOf, type Finding } from "../stages/index.js";
import { said, type Attributes } from "./speaker.js";
import { speedFaults } from "./speeds.js";
import { queryOf } from "./value.js";

/** What an attribute of an element has to name. */
type Names = (build: Build) => readonly string[];

const outputs: Names = (build) => build.outputs.map(({ id }) => id);
const stages: Names = (build) => stagesOf(build).map(({ stage }) => stage.id);
const pairs: Names = (build) => stagesOf(build).flatMap(({ stage }) => (isToothPair(stage) ? stage.id : []));
const alternatives: Names = (build) => build.alternatives?.map(({ id }) => id) ?? [];

/** Attributes that name parts of the build; several names have blanks or commas between them. */
const named: { readonly [Tag in ElementTag]?: Readonly<Record<string, Names>> } = {
  "mw-ratio-summary": { of: outputs },
  "mw-working": { of: outputs },
  "mw-wheel-speed": { of: outputs },
  "mw-train-drawing": { of: stages },
  "mw-pair-finder": { of: pairs },
  "mw-change-table": { show: alternatives },
};

/**
 * What is wrong with the words of an element's attributes: figures, units, ids, addresses and versions that there are not, each
 * with the nearest. Its attributes' names are for `attributeFindings`.
 *
 * @param build as published
 * @param shown the version that the element shows, where that is another one
 */
export function wordFindings(tag: string, attributes: Attributes, build: Build, shown = build): readonly Finding[] {
  const of = said(attributes, "of");
  const findings: Finding[] = [];
  for (const name of tag === "mw-value" ? ["at"] : ["at", "from"]) {
    const version = said(attributes, name);
    const fault = version === undefined ? undefined : versionFault(build, version);
    if (fault) findings.push({ ...fault, at: `/${name}` });
  }
  for (const [name, names] of Object.entries(named[tag as ElementTag] ?? {})) {
    const known = names(shown);
    for (const id of said(attributes, name)?.split(/[\s,]+/) ?? [])
      if (id && !known.includes(id))
        findings.push(
          errorOf("meaning", "missing-reference", `/${name}`, { id, known, nearest: nearestTo(id, known) }),
        );
  }
  if (tag === "mw-value") findings.push(...checkQuery(queryOf(attributes), shown));
  if (tag === "mw-overdrive-gauge") findings.push(...checkQuery({ ...queryOf(attributes), figure: "farther" }, shown));
  if (tag === "mw-wheel-speed") findings.push(...speedFaults(said(attributes, "unit"), said(attributes, "loaded")));
  const fault =
    tag === "mw-teeth" && of !== undefined && !stages(shown).includes(of) ? singleFault(shown, of) : undefined;
  if (fault) findings.push(errorOf("meaning", "missing-address", "/of", { ...fault }));
  return findings;
}
