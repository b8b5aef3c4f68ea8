/** A finding that is the reason of another one. */
export type FindingCause = Pick<Finding, "code" | "values">;
/**
 * What a finding's sentence calls by a word of its own language, `{ term: "nothing" }`, `{ term: "list", amount: 3 }`: apart
 * from texts, so that nothing an author wrote can be taken for it.
 */
export interface FindingTerm {
  readonly term: keyof typeof findingTerms;
  readonly amount?: string | number;
}

/** A value that a finding's sentence needs: text of the document's own, a number, a term, a list, or the finding that is its reason. */
export type FindingValue = string | number | FindingTerm | readonly (string | FindingTerm)[] | FindingCause;
/** The values that a finding's sentence needs, by name. */
export type FindingValues = Readonly<Record<string, FindingValue | undefined>>;

/**
 * What can be found wrong or odd, by code, and how it is said in English. `{name}` stands for a value; what stands in square
 * brackets is left out where a value in it is missing or an empty list.
 */
const findingTexts = {
  // The shape of a document
  "not-json": "Line {line}:{column}: found {found}, expected {expected}.",
  "not-data": "Expected plain data such as JSON.parse gives.",
  "key-repeated": "Line {line}:{column}: found the key {found} again, expected each key once.",
  "newer-format": "Written for {found}; this reads {expected}.",
  "unknown-use": "Needs {found}, which this version does not know[; nearest: {nearest}][; it knows {known}].",
  "unknown-key": "There is no {found} here[; nearest: {nearest}]. Expected one of {known}, or x-….",
  "unknown-key-passed": "There is no {found} here[; nearest: {nearest}]. It is passed over.",
  missing: 'Expected "{field}", found nothing.',
  "unknown-kind": "Expected one of {known}, found {found}[; nearest: {nearest}].",
  "not-a-flag": "Expected true or false, found {found}.",
  "not-a-choice": "Expected one of {known}, found {found}[; nearest: {nearest}].",
  "not-a-list": "Expected a list of {from} to {to}, found {found}.",
  "not-an-object": "Expected an object, found {found}.",
  "not-an-address": "Expected an address such as rear-ring.driven, found {found}.",
  "not-a-value": "Expected a value that JSON can hold, found {found}.",
  "not-id": "Expected an id of small letters, digits and single hyphens, a letter first, found {found}.",
  "not-text": "Expected text of up to {most} characters, found {found}.",
  "not-date": "Expected a day of the calendar such as 2026-10-03, found {found}.",
  "not-format": 'Expected "meshwright-build/1", found {found}.',
  "not-count": "Expected a whole number from 1 to 1000000, found {found}.",
  "not-sets": "Expected a whole number from 1 to 100, found {found}.",
  "not-digits": "Expected a whole number from 0 to 100, found {found}.",
  "not-significant": "Expected a whole number from 1 to 21, found {found}.",
  "not-increment":
    "Expected one of 1, 2, 5, 10, 20, 25, 50, 100, 200, 250, 500, 1000, 2000, 2500, 5000, found {found}.",
  "not-whole": "Expected a whole number from 0, found {found}.",
  "not-amount": 'Expected an amount such as "4.20", found {found}.',
  "not-currency": "Expected a currency's three letters, such as EUR, found {found}.",
  "not-positive": "Expected a number above 0 with up to 12 digits either side of the point, found {found}.",
  "not-number": "Expected a number with up to 12 digits either side of the point, found {found}.",
  "not-length": 'Expected a length such as "118 mm" or "4.65 in", found {found}.',
  "not-size": 'Expected a length above 0 such as "118 mm", found {found}.',
  "not-ratio": 'Expected a ratio as printed, such as "2.74" or "52/19", found {found}.',
  "too-long": "Found {found} characters or values, expected {most} at the most.",
  "too-deep": "Expected nesting of {most} at the most.",
  "number-long": "{found} is not a short decimal: expected its digits as text.",
  "load-failed": "{address} could not be loaded: {found}.",
  "no-build": "No build here: expected attributes, a JSON script inside, or src.",
  "source-passed-over": "The build is read from {used}; {found} beside it is passed over.",
  // The meaning of a document
  "id-repeated": '"{id}" is used twice; expected ids of their own.',
  "id-reserved": '"{id}" is kept for the document itself; expected another id.',
  "missing-reference": 'There is no "{id}"[; nearest: {nearest}][. Expected one of {known}].',
  "missing-address": "Nothing is at {address}[; nearest: {nearest}].",
  "too-many-stages": "{found} stages, expected up to {most}.",
  "reference-loop": '"{id}" comes back to itself.',
  "reference-unclear": "Expected one of build, src.",
  "references-nested": "A build that is referred to has references of its own; expected none.",
  "revision-late": "Revision {found} is not before {number}, which this one is.",
  "too-many-versions": "Versions that change more than values: {found} stages to read again, expected up to {most}.",
  "change-unclear": "Expected one of set, insert, remove, move[, with {needed}].",
  "same-as-differs": '"{id}" is not the same thing: expected a stage of this kind that says the same.',
  "share-incomplete": "Shares are given for {named} and not for {missing}; expected one for each, or none.",
  "share-on-spool": "A spool turns all that it feeds alike: its shares say nothing.",
  "compare-itself": '"{id}" is compared with itself; expected another output.',
  "driven-twice": '"{id}" has a motor of its own and comes from "{from}"; expected one of them.',
  "span-lever": '"{id}" has positions; expected the stages that were engaged.',
  "wheel-unclear": "Expected one of diameter, loadedDiameter, travel.",
  "range-backwards": "{from} to {to}; expected the smaller first.",
  "ring-too-small": "A ring of {ring} cannot hold a gear of {gear}.",
  "members-repeated": "Fixed {fixed}, input {input}, output {output}: expected all three.",
  "planet-does-not-fit": "Ring {ring} is not sun {sun} + 2 × planet {planet}.",
  "planets-uneven": "{planets} planets cannot be spaced evenly: {sum} does not divide.",
  "planets-touch": "{planets} planets of {planet} teeth touch each other.",
  "pins-too-few": "A ring of {pins} pins cannot hold a disc of {lobes} lobes.",
  "worm-backwards": "A worm of {starts} starts on a wheel of {teeth} teeth; are they the right way round?",
  "angle-out-of-range": "Expected an angle from {from} to {to} degrees, found {found}.",
  "teeth-refused": "These figures cannot be those of a gear.",
  "belt-refused": "These figures cannot be those of a belt.",
  "ratio-nominal": "{value} is a nominal figure; count the teeth.",
  "position-missing": 'No position "{id}"; expected one of {known}[; nearest: {nearest}].',
  "position-unclear": 'Position "{id}" needs either stages or released.',
  "mount-repeated": "{label} has a mount already, and this one is passed over; expected one.",
  "centre-below-zero": "With this {field} the axes would lie {found} apart; expected more than 0 mm.",
  "slot-moves":
    "The slot of {label} is counted in teeth, and here they get another pitch: it moves along. Expected from and to as lengths, if it stays where it is.",
  // Changes and links
  "not-optional": "{address} cannot be left out; expected a value.",
  "not-a-stage": "{address} is not a stage.",
  "not-a-place": "Place {found}; expected 0 to {most}.",
  "into-itself": "{address} cannot go into itself.",
  "set-in-part": "{label} is sold as a set; change all its counts together.",
  "went-along": "With {label} went {what}.",
  "change-dropped": "Your change of {label} could not be kept: {why}",
  "no-longer-there": "It is not there any more.",
  "link-broken": "The link is damaged or cut short.",
  "link-words": "A link carries numbers and no words: {address} is left out.",
  "link-other": "The link holds {found}, expected {expected}.",
  "newer-link": "The link was made by another version.",
  "change-stale": "[{address}: ]the author has changed this since the link was made.",
  "change-refused": "The link's change of {address} cannot be made: {why}",
  "rounding-backwards": "{least} is more than {most}; expected a minimum up to the maximum.",
  "increment-alone": "An increment needs equal minimum and maximum fraction digits, and no significant digits.",
  // The notation of attributes
  "not-understood": '{name}: found {found}, expected such as "{example}".',
  "stages-missing":
    'There is no attribute "stages": without the list of stages that all axles share there is no build. Expected stages="", if they share none.',
  "axle-without-stages":
    '"{name}" speaks of an axle that has no stages[; nearest: {nearest}]: expected an attribute {axle}, if only {axle}="".',
  "stage-swallowed": "{name}: {found} holds two stages: expected a semicolon between them.",
  "word-repeated": "{name}: {found} in {piece} says what was said before; expected it once.",
  "label-shared": "{name}: {found} is what several stages are called; expected the id of one: {known}.",
  "unknown-field": "{name}: {found} in {piece} is not understood[; nearest: {nearest}].",
  "unknown-attribute": "<{element}> has no attribute {name}[; nearest: {nearest}][; another axle is {example}].",
  "seal-broken":
    "Something of these attributes was lost or changed since they were written: their seal {found} does not fit.",
  // The drive as a whole
  "outputs-oppose": "{of} and {with} turn against each other.",
  "differential-released":
    "Another output is let go of, and a differential is open: nothing settles how fast {of} turns.",
  "wheel-needed": "A differential is open, and {missing} has no wheel: how fast {of} turns straight on is not known.",
  "chemistry-not-known": "Volts of {cells} {chemistry} cells are not known.",
  "full-over-controller": "{cells} full cells reach {full} V, not {nominal}. Controller limit: {limit} V.",
  "full-over-motor": "{cells} full cells reach {full} V, not {nominal}. Motor limit: {limit} V.",
  "over-max-rpm": "{kv} kV at {full} V is above {limit} turns a minute.",
  // Parts
  "part-incomplete": "A {is} without {field}; expected one.",
  "fitted-differs": "{part}, fitted to {label}: {field} {found}, where {label} says {expected}.",
  "pitch-twice": "A module and a diametral pitch; expected the one that is marked.",
  // Words that choose a figure
  "unknown-figure": "There is no figure {found}[; nearest: {nearest}]. Expected one of {known}.",
  "unknown-word": "There is no {field} {found} here[; nearest: {nearest}][. Expected one of {known}].",
  "word-not-taken": "{figure} takes no {field}[; nearest: {nearest}][. It takes {takes}].",
  "word-needed": "{figure} needs {field}[: one of {known}].",
  // The elements of a page, and what they ask for
  "unknown-element": "There is no element <{element}>[; nearest: {nearest}].",
  "element-not-there": "No script on this page brings <{element}>: {file} has it, and so has the module {module}.",
  "figure-missing": "[{element}: ]{why}",
} as const satisfies Readonly<Record<string, string>>;

/** What can be found wrong or odd: a closed list. */
export type FindingCode = keyof typeof findingTexts;

/** What stands in a sentence instead of a value that is a word. */
const findingTerms = {
  nothing: "nothing",
  list: "a list of {0}",
  object: "an object",
  end: "the end",
  rest: "the rest of a text and a closing quote",
  value: "a value",
  key: "a key in double quotes",
  commaOr: '"," or {0}',
  changes: "changes",
  build: "a whole build",
  mount: "its mount",
  parts: "{0} of its parts",
  measurements: "{0} of its measurements",
} as const;

/** The words that findings are told in; a language gives its own. */
export interface FindingWords {
  readonly texts: Readonly<Record<FindingCode, string>>;
  readonly terms: Readonly<Record<keyof typeof findingTerms, string>>;
  /** Stands between the words of a list. */
  readonly comma: string;
  /** How a word of the document stands in a sentence, `{0}`: kept apart from it where the sentence runs the other way. */
  readonly quoted: string;
}

/** The words of findings in English: the list of what every language has to say. */
export const findingWords: FindingWords = { texts: findingTexts, terms: findingTerms, comma: ", ", quoted: "{0}" };

/** Something that is wrong (error) or odd (warning), and where. */
export interface Finding {
  readonly severity: "error" | "warning";
  /** The Schema can see what is wrong with the shape; the rest is meaning. */
  readonly about: "shape" | "meaning";
  readonly code: FindingCode;
  /** JSON Pointer (RFC 6901) into what was read; of a notation, its attribute: `/front-wheel`. */
  readonly at: string;
  /** What its sentence is made with. */
  readonly values: FindingValues;
  /** The sentence in English; `messageOf` in `languages` says it in others. */
  readonly message: string;
}

/** A list longer than this is cut: whoever looks for a word looks among the first. */
const listed = 12;

/** A finding's sentence in the words given. */
export function sentenceOf({ code, values }: FindingCause, words: FindingWords): string {
  const { texts, terms, comma, quoted } = words;
  const shown = (value: FindingValue): string => {
    if (typeof value !== "object") return quoted.replace("{0}", () => String(value));
    if ("code" in value) return sentenceOf(value, words);
    if ("term" in value) return terms[value.term].replace("{0}", () => String(value.amount));
    return value.slice(0, listed).map(shown).join(comma) + (value.length > listed ? `${comma}…` : "");
  };
  const isThere = (name: string): boolean => {
    const value = values[name];
    return value !== undefined && value !== "" && !(Array.isArray(value) && !value.length);
  };
  return (texts[code] ?? findingTexts[code])
    .replace(/\[([^[\]]*)\]/g, (_, part: string) =>
      [...part.matchAll(/{(\w+)}/g)].every(([, name]) => isThere(name!)) ? part : "",
    )
    .replace(/{(\w+)}/g, (_, name: string) => (isThere(name) ? shown(values[name]!) : "…"));
}

/** A finding, with its sentence in English. */
export const findingOf = (
  severity: Finding["severity"],
  about: Finding["about"],
  code: FindingCode,
  at: string,
  values: FindingValues = {},
): Finding => ({ severity, about, code, at, values, message: sentenceOf({ code, values }, findingWords) });

/** A finding that keeps a build from being read or changed. */
export const errorOf = (about: Finding["about"], code: FindingCode, at: string, values?: FindingValues): Finding =>
  findingOf("error", about, code, at, values);
