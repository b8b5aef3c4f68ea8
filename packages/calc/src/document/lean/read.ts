import { stagesOf, type Build } from "../../drivetrain/index.js";
import { NotationReader } from "../notation-reader.js";
import { isHandler, isPagesOwn } from "../pages-own.js";
import { bareOf } from "../steps-back.js";
import { leanApply, leanCheck } from "./check.js";
import { must, no } from "./shape.js";
import { leanVersion } from "./versions.js";

/** So long a text, so many keys and so many stages of versions: more is read in full. */
const longest = 250_000;
const mostAgain = 20_000;

const keysIn = (value: unknown): number =>
  typeof value === "object" && value
    ? Object.values(value).reduce(
        (sum: number, one: unknown) => sum + keysIn(one),
        Array.isArray(value) ? 0 : Object.keys(value).length,
      )
    : 0;

/** JSON text as data, each key once: `JSON.parse` would take the last of two. */
function parsed(json: string): unknown {
  must(json.length < longest);
  const data: unknown = JSON.parse(json);
  let keys = 0;
  json.replace(/"(?:[^"\\]|\\.)*"\s*(:?)/g, (_, colon: string) => ((keys += colon.length), ""));
  must(keysIn(data) === keys);
  return data;
}

/** Every version that a build tells can be made. */
function tryVersions(build: Build): Build {
  const { alternatives = [], revisions = [], measurements = [] } = build;
  const counted = measurements.filter((one) => one.with);
  must((alternatives.length + revisions.length + counted.length) * (stagesOf(build).length + 1) <= mostAgain);
  for (const { id } of alternatives) must(leanVersion(build, id));
  for (const { with: values } of counted) must(leanApply(bareOf(build), values!));
  const [first] = revisions.map(({ number }) => number).sort((one, other) => one - other);
  if (first !== undefined) must(leanVersion(build, `revision-${first}`));
  return build;
}

/**
 * Reads a build document, JSON text or data, without telling what is wrong with it: the build that `readBuild` gives, or
 * nothing. Nothing, too, where only geometry can tell, or where the document is larger than articles are.
 *
 * @example
 * import { leanRead } from "@meshwright/calc/document/lean";
 * leanRead('{ "format": "meshwright-build/1", "outputs": [{ "id": "rear", "stages": [] }] }')?.outputs.length; // => 1
 * leanRead('{ "format": "meshwright-build/1", "outputs": [{ "id": "rear" }] }'); // => undefined
 */
export function leanRead(json: unknown): Build | undefined {
  try {
    return tryVersions(leanCheck(typeof json === "string" ? parsed(json) : json));
  } catch {
    return undefined;
  }
}

/** Whether an attribute is the page's own, and cannot be a slip. */
const isSurely = (name: string): boolean => isPagesOwn(name) && !isHandler(name);

/**
 * Reads a build from attributes without telling what is wrong with them: the build that `buildFromAttributes` gives, or nothing.
 *
 * @example
 * import { leanFromAttributes } from "@meshwright/calc/document/lean";
 * leanFromAttributes({ stages: "Spur: 15 to 62", rear: "Ring: 12 to 35" })?.stages; // => [{ id: "spur", label: "Spur", kind: "pair", driver: 15, driven: 62 }]
 * leanFromAttributes({ stages: "Spur: 15 to 62", raer: "Ring: 12 to 35" }); // => undefined
 */
export function leanFromAttributes(attributes: Readonly<Record<string, string>>): Build | undefined {
  try {
    return leanCheck(new NotationReader(no).read(attributes, no, isSurely));
  } catch {
    return undefined;
  }
}
