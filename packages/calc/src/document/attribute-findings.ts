import { errorOf, findingOf, type Finding } from "../stages/index.js";
import { elementAttributes, ofAll, type ElementTag } from "./attributes.js";
import { isHandler, isPagesOwn } from "./pages-own.js";
import { axleParts, notationNames } from "./notation-names.js";
import { nearestTo, slipsBetween } from "./nearest.js";

/** Every name that an element takes; of a build, with those of its own axles. */
const namesFor = (tag: ElementTag, axles: readonly string[] = []): readonly string[] => [
  ...elementAttributes[tag],
  ...ofAll,
  ...(tag === "mw-build" ? notationNames : []),
  ...axles.flatMap((axle) => [axle, ...axleParts.map((part) => `${axle}-${part}`)]),
];

const isSlip = (name: string, nearest: readonly string[]): boolean =>
  nearest.some((one) => slipsBetween(name.toLowerCase(), one) <= 1);

/** Whether an attribute of an element is the page's own affair, and no slip from one of its names. */
export const passes = (tag: ElementTag, name: string): boolean =>
  isPagesOwn(name) && !(isHandler(name) && isSlip(name, nearestTo(name, namesFor(tag))));

/**
 * What an attribute is that nobody knows: one slip from a name of ours, or one that can only have been meant for an axle, is
 * an error, for what it was meant to say is missing; any other is a warning.
 *
 * @param looksLikeStages of an attribute of an `mw-build`, whether its value reads like a list of stages
 * @param axles the axles of names of their own that stand beside it: `axle-third`
 */
export function unknownAttribute(
  tag: ElementTag,
  name: string,
  looksLikeStages = false,
  axles: readonly string[] = [],
): Finding {
  const nearest = nearestTo(name, namesFor(tag, axles));
  const isAxles = tag === "mw-build" && (/^axle-|-(wheel|motor)$/.test(name) || looksLikeStages);
  const values = { name, element: tag, nearest, ...(isAxles && !nearest.length && { example: `axle-${name}` }) };
  return isSlip(name, nearest) || isAxles
    ? errorOf("shape", "unknown-attribute", `/${name}`, values)
    : findingOf("warning", "shape", "unknown-attribute", `/${name}`, values);
}

/**
 * What is said of an element that nothing has defined: none of ours has that name, with the nearest; or which file brings it.
 * Nothing of a name that does not begin with `mw-`.
 *
 * @example
 * missingElement("mw-vaule")?.message; // => "There is no element <mw-vaule>; nearest: mw-value."
 * missingElement("my-value"); // => undefined
 */
export function missingElement(tag: string): Finding | undefined {
  if (!/^mw-/i.test(tag)) return undefined;
  const values = { element: tag, nearest: nearestTo(tag, Object.keys(elementAttributes)) };
  if (!isElement(tag)) return errorOf("shape", "unknown-element", "", values);
  const module = `@meshwright/elements/${tag.slice(3)}`;
  return errorOf("meaning", "element-not-there", "", { element: tag, file: "meshwright.js", module });
}

const isElement = (tag: string): tag is ElementTag => Object.hasOwn(elementAttributes, tag);

/** What is wrong with the names of an element's attributes; `mw-build` has its notation checked as it is read. */
export function attributeFindings(tag: string, names: Iterable<string>): Finding[] {
  if (!isElement(tag)) return [];
  const own: readonly string[] = elementAttributes[tag];
  return [...names]
    .filter((name) => !own.includes(name) && !ofAll.includes(name) && !passes(tag, name))
    .map((name) => unknownAttribute(tag, name));
}
