/** What every element takes beside its own: which build it belongs to. */
export const ofAll = ["build"];

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
  "mw-pair-finder": ["of"],
  "mw-change-table": ["show"],
  "mw-wheel-speed": ["of", "unit", "loaded"],
  "mw-working": ["of", "at"],
  "mw-order-list": ["from", "at"],
  "mw-parts-list": ["at"],
  "mw-bench-card": ["at"],
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
  /^(?:(?:data|aria|v|x|ng|hx|up|fs|astro|sveltekit|q|_ng[a-z]*|xml|xmlns|jsx|ssr)[-:]|on|wp-|[@:#*_[(]|.*[.[\]()@:])/;

/** Whether an attribute is the page's own affair: global in HTML or ARIA, or a framework's. */
export const isPagesOwn = (name: string): boolean => global.has(name) || prefixed.test(name);

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
export const notationNames: readonly string[] = [
  ...buildWords,
  ...axleNames.flatMap((axle) => [axle, ...axleParts.map((part) => `${axle}-${part}`)]),
];

/** Whether an attribute of an `mw-build` belongs to the notation of its build. */
export const notationName = (name: string): boolean =>
  (buildWords as readonly string[]).includes(name) || axleAttributeOf(name) !== undefined || name === "seal";
