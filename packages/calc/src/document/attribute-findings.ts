import { errorOf, findingOf, type Finding } from "../stages/index.js";
import { elementAttributes, ofAll, type ElementTag } from "./attributes.js";
import { isPagesOwn } from "./pages-own.js";
import { notationNames } from "./notation-names.js";
import { nearestTo, slipsBetween } from "./nearest.js";

/**
 * What an attribute is that nobody knows: one slip from a name of ours, or one that can only have been meant for an axle, is
 * an error, for what it was meant to say is missing; any other is a warning.
 *
 * @param value of an attribute of an `mw-build`, whether it reads like a list of stages
 */
export function unknownAttribute(tag: ElementTag, name: string, looksLikeStages = false): Finding {
  const own = elementAttributes[tag] as readonly string[];
  const known = [...own, ...ofAll, ...(tag === "mw-build" ? notationNames : [])];
  const nearest = nearestTo(name, known);
  const isSlip = nearest.some((one) => slipsBetween(name, one) <= 1);
  const isAxles = tag === "mw-build" && (/-(wheel|motor)$/.test(name) || looksLikeStages);
  const values = { name, element: tag, nearest, ...(isAxles && !nearest.length && { example: `axle-${name}` }) };
  return isSlip || isAxles
    ? errorOf("shape", "unknown-attribute", `/${name}`, values)
    : findingOf("warning", "shape", "unknown-attribute", `/${name}`, values);
}

/** What is wrong with the names of an element's attributes; `mw-build` has its notation checked as it is read. */
export function attributeFindings(tag: string, names: Iterable<string>): Finding[] {
  if (!Object.hasOwn(elementAttributes, tag)) return [];
  const own: readonly string[] = elementAttributes[tag as ElementTag];
  return [...names]
    .filter((name) => !own.includes(name) && !ofAll.includes(name) && !isPagesOwn(name))
    .map((name) => unknownAttribute(tag as ElementTag, name));
}
