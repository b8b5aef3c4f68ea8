import { driveFindings, readEmbedded } from "@meshwright/calc/article";
import { attributeFindings, buildFromAttributes, notationName, passedOver } from "@meshwright/calc/document";
import type { Build } from "@meshwright/calc/drivetrain";
import { modeFault } from "@meshwright/calc/report";
import { errorOf, type Finding } from "@meshwright/calc/stages";
import type { Found, More, Source } from "../shared/element/index.js";

/** What its element says of a build beside the source that it is read from. */
function besides(element: Element & { readonly json?: unknown }, source: Source): readonly Finding[] {
  if (!source || "notation" in source) return [];
  const names = element.getAttributeNames();
  // A program that gives a build of its own knows what it replaces.
  const isGiven = element.json !== undefined && element.json !== null && !names.includes("json");
  const isOwn = (script: Element) => script.closest(element.localName) === element;
  const scripts = [...element.querySelectorAll('script[type$="json"]')].filter(isOwn);
  return passedOver(isGiven ? [...names, "json"] : names, !isGiven && scripts.length > 0);
}

/** What is wrong with attributes that are none of the data: names that nobody knows, and a mode that the build has not. */
function oddAbout(
  element: Element,
  mode: string | null,
  build: Build | undefined,
  told: readonly Finding[],
): readonly Finding[] {
  const names = element.getAttributeNames().filter((name) => !notationName(name));
  // A notation's reader has looked at the names already.
  const odd = attributeFindings(element.localName, names).filter(
    (one) => !told.some(({ code, at }) => code === one.code && at === one.at),
  );
  const fault = build && mode ? modeFault(build, mode) : undefined;
  return fault ? [...odd, fault] : odd;
}

/** Whether an attribute says something of a build. */
const isSpoken = (name: string): boolean => name !== "seal" && notationName(name);

/** Reads the data of a build as they are, or as typographers and editors leave them. */
function read(source: Source): Found {
  const isNone = source && "notation" in source && !Object.keys(source.notation).some(isSpoken);
  if (!source || isNone) return { findings: [errorOf("meaning", "no-build", "")] };
  if ("json" in source) return readEmbedded(source.json);
  if ("notation" in source) return buildFromAttributes(source.notation);
  return { findings: [errorOf("meaning", "load-failed", "", { ...source })] };
}

/** Reads the data of a build, and says what is wrong with them and with what else its element says. */
export const check: More["check"] = (source, element) => {
  const { build, findings } = read(source);
  const odd = [...oddAbout(element, element.mode, build, findings), ...besides(element, source)];
  const isRefused = odd.some(({ severity }) => severity === "error");
  if (!build || isRefused) return { build: undefined, findings: [...odd, ...findings] };
  return { build, findings: [...odd, ...findings, ...driveFindings(build, element.mode || undefined)] };
};
