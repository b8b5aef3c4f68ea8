import { heldBuild, readEmbedded } from "@meshwright/calc/article";
import { buildFromAttributes, speaksOfBuild } from "@meshwright/calc/document";
import { errorOf } from "@meshwright/calc/stages";
import { scriptOf } from "../elements/build/index.js";
import type { Found, More, Source } from "../shared/element/index.js";

/** An `mw-build`, which a program may have given its data. */
type Held = Parameters<NonNullable<More["check"]>>[1] & { readonly json?: unknown };

/** Reads the data of a build as they are, or as typographers and editors leave them. */
function read(source: Source): Found {
  const isNone = source && "notation" in source && !Object.keys(source.notation).some(speaksOfBuild);
  if (!source || isNone) return { findings: [errorOf("meaning", "no-build", "")] };
  if ("json" in source) return readEmbedded(source.json);
  if ("notation" in source) return buildFromAttributes(source.notation);
  return { findings: [errorOf("meaning", "load-failed", "", { ...source })] };
}

/** Reads the data of a build, and says what is wrong with them and with what else its element says. */
export const check: More["check"] = (source, element: Held) => {
  const names = element.getAttributeNames();
  // A program that gives a build of its own knows what it replaces.
  const isGiven = element.json !== undefined && element.json !== null && !names.includes("json");
  return heldBuild(read(source), {
    names: isGiven ? [...names, "json"] : names,
    hasScript: !isGiven && scriptOf(element) !== undefined,
    mode: element.mode,
  });
};
