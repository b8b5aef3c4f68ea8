import { errorOf, findingOf, type Finding } from "../stages/index.js";
import { nearestTo, slipsBetween } from "./nearest.js";

/** What every element takes beside its own: which build it belongs to. */
const ofAll = ["build"];

/** The attributes of each element: one table for page, command, guide and editors. */
export const elementAttributes = {
  "mw-build": ["src", "json", "mode", "permalink", "seal"],
  "mw-value": [
    ...["figure", "of", "with", "group", "base", "scope", "from", "measure"],
    ...["over", "unit", "digits", "sign", "drive", "at"],
  ],
  "mw-teeth": ["of", "label", "min", "max", "free"],
  "mw-ratio-summary": ["of", "at"],
  "mw-overdrive-gauge": ["of", "with", "base", "scope", "at"],
  "mw-edits": [],
  "mw-stage-editor": [],
  "mw-train-drawing": ["of", "at"],
  "mw-drive-line": ["still", "chosen", "open", "at"],
  "mw-pair-finder": ["of"],
  "mw-train-finder": ["of", "wheels", "lead"],
  "mw-count-finder": ["of", "figure", "output", "with", "want"],
  "mw-change-table": ["show", "against"],
  "mw-wheel-speed": ["of", "unit", "loaded"],
  "mw-working": ["of", "at"],
  "mw-order-list": ["from", "at"],
  "mw-parts-list": ["at"],
  "mw-bench-card": ["at"],
  "mw-quantity": ["of", "label"],
  "mw-measurements": ["of", "at"],
  "mw-unmarked-gear": [],
  "mw-turn-count": ["of"],
} as const satisfies Readonly<Record<string, readonly string[]>>;

export type ElementTag = keyof typeof elementAttributes;

/** Axles that stand as attributes of their own; any other is `axle-NAME`. */
export const axleNames = ["front", "middle", "rear", "left", "right", "drive"] as const;

/** What may stand behind an axle's name. */
export const axleParts = ["wheel", "motor"] as const;

/** The words of a notation that speak of no axle. */
export const buildWords = [
  ...["stages", "target", "compare", "centre", "motor", "battery", "controller"],
  ...["mount", "title", "wheelbase", "headline", "lengths"],
] as const;

export type BuildWord = (typeof buildWords)[number];

/** Attributes that HTML gives to every element. */
const global = new Set(
  (
    "accesskey autocapitalize autocorrect autofocus class contenteditable dir draggable enterkeyhint exportparts hidden id " +
    "inert inputmode is itemid itemprop itemref itemscope itemtype lang nonce part popover role slot spellcheck style " +
    "tabindex title translate virtualkeyboardpolicy writingsuggestions xmlns key ref jsaction jscontroller jsname"
  ).split(" "),
);

/** What ARIA, scripts and frameworks put on elements that they know nothing of. */
const prefixed =
  /^(?:(?:data|aria|v|x|ng|hx|up|fs|astro|sveltekit|q|_ng[a-z]*|xml|xmlns|jsx|ssr)[-:]|wp-|[@:#*_[(]|.*[.[\]()@:])/;

/** Handlers of events bear no sign of their own: what begins so may be a slip. */
const isHandler = (name: string): boolean => name.startsWith("on");

/** Whether an attribute is the page's own affair: global in HTML or ARIA, a handler of events, or a framework's. */
export const isPagesOwn = (name: string): boolean => global.has(name) || isHandler(name) || prefixed.test(name);

/** Whose attribute of an `mw-build` a name is, in a notation: an axle's stages, its wheel or motor. */
export interface AxleAttribute {
  readonly axle: string;
  readonly part?: (typeof axleParts)[number];
}

const axlePattern = new RegExp(
  `^(?:(${axleNames.join("|")})|axle-([a-z][a-z0-9]*(?:-[a-z0-9]+)*?))(?:-(${axleParts.join("|")}))?$`,
);

/** An attribute that speaks of an axle: `front`, `rear-wheel`, `axle-third-motor`. */
export function axleAttributeOf(name: string): AxleAttribute | undefined {
  const [, known, other, part] = axlePattern.exec(name) ?? [];
  const axle = known ?? other;
  return axle === undefined ? undefined : { axle, ...(part && { part: part as "wheel" | "motor" }) };
}

/** Every name that a notation takes, but for axles of other names. */
const notationNames: readonly string[] = [
  ...buildWords,
  ...axleNames.flatMap((axle) => [axle, ...axleParts.map((part) => `${axle}-${part}`)]),
];

/** Whether an attribute of an `mw-build` belongs to the notation of its build. */
export const notationName = (name: string): boolean =>
  (buildWords as readonly string[]).includes(name) || axleAttributeOf(name) !== undefined || name === "seal";

/** Every name that an element takes. */
const namesFor = (tag: ElementTag): readonly string[] => [
  ...elementAttributes[tag],
  ...ofAll,
  ...(tag === "mw-build" ? notationNames : []),
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
 * @param value of an attribute of an `mw-build`, whether it reads like a list of stages
 */
export function unknownAttribute(tag: ElementTag, name: string, looksLikeStages = false): Finding {
  const nearest = nearestTo(name, namesFor(tag));
  const isAxles = tag === "mw-build" && (/-(wheel|motor)$/.test(name) || looksLikeStages);
  const values = { name, element: tag, nearest, ...(isAxles && !nearest.length && { example: `axle-${name}` }) };
  return isSlip(name, nearest) || isAxles
    ? errorOf("shape", "unknown-attribute", `/${name}`, values)
    : findingOf("warning", "shape", "unknown-attribute", `/${name}`, values);
}

/** What is wrong with the names of an element's attributes; `mw-build` has its notation checked as it is read. */
export function attributeFindings(tag: string, names: Iterable<string>): Finding[] {
  if (!Object.hasOwn(elementAttributes, tag)) return [];
  const own: readonly string[] = elementAttributes[tag as ElementTag];
  return [...names]
    .filter((name) => !own.includes(name) && !ofAll.includes(name) && !passes(tag as ElementTag, name))
    .map((name) => unknownAttribute(tag as ElementTag, name));
}
