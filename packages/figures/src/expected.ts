// What an element should say, which build it belongs to, which version and which language: everything that the command
// shares with the page comes through here.
import { buildAt, buildFromAttributes, nearestTo, notationName, readBuild } from "@meshwright/calc/document";
import { spotOf, valueAt, type Build } from "@meshwright/calc/drivetrain";
import { evaluate, type Evaluation } from "@meshwright/calc/evaluate";
import { figureWords, type FigureWords } from "@meshwright/calc/languages";
import { figureOf, queryNames, Writer, type QueryText } from "@meshwright/calc/report";
import type { PairStage } from "@meshwright/calc/stages";
import type { Rounding } from "@meshwright/calc/exact";
import { textOf, type Article, type Element } from "./article.js";
import { Surroundings } from "./surroundings.js";

/** A figure of a block. */
export interface Figure {
  readonly text: string;
  /** The heads that its place bears: of its row, its column, its line. All of them have to be there. */
  readonly names: readonly string[];
  /** Heads that its place may bear besides. */
  readonly also?: readonly string[] | undefined;
}

export type Expected =
  /** What stands in a sentence: any of these texts is right, the first is the one to write. */
  | { readonly kind: "text"; readonly texts: readonly [string, ...string[]] }
  /** What stands on its own: its figures, in the order of its places. */
  | { readonly kind: "figures"; readonly figures: readonly Figure[] }
  /** It cannot be told what it should say, and why. */
  | { readonly kind: "untold"; readonly why: string }
  /** It says figures that are not compared yet. */
  | { readonly kind: "unchecked" }
  /** It says none. */
  | { readonly kind: "silent" };

/** Reads a file that `src` names; undefined where it is not to be had. */
export type Load = (src: string) => string | undefined;

/** A build of an article, or what keeps it from being one. */
export interface ArticleBuild {
  readonly element: Element;
  readonly build: Build | undefined;
  readonly why: string;
}

type Reading = Pick<ReturnType<typeof readBuild>, "findings"> & { readonly build?: Build | undefined };
const units = [
  "mm",
  "cm",
  "m",
  "km",
  "in",
  "ft",
  "yd",
  "mi",
  "s",
  "min",
  "h",
  "V",
  "A",
  "W",
  "kV",
  "N",
  "Nm",
  "g",
  "kg",
];
const rates = ["km/h", "m/s", "mph", "ft/s", "rpm"];

/** What figures are written with besides numbers: units and verdicts. */
export const figurePhrases: readonly string[] = [
  ...units,
  ...rates,
  ...Object.values(figureWords)
    .flatMap((words) => (typeof words === "string" ? words : Object.values(words)))
    .map((words) => words.replace(/\{\d\}/g, "").trim()),
];

/** What an element's figures are made from. */
interface Context {
  readonly element: Element;
  readonly evaluation: Evaluation;
  readonly locale: string;
  /** Another version of the build, by its name. */
  readonly version: (at: string) => Evaluation | undefined;
}

type Maker = (context: Context) => Expected;

const text = (one: string): Expected => ({ kind: "text", texts: [one] });
const untold = (why: string): Expected => ({ kind: "untold", why });

/** JSON as the page takes it: typographers and Markdown may have taken it for prose. */
function fromJson(json: string): Reading {
  const found: Reading = readBuild(json);
  if (found.build) return found;
  const straight = json.replace(/[“”]|&(?:quot|[lr]dquo|#34);/g, '"');
  const mended: Reading = straight === json ? found : readBuild(straight);
  return mended.build ? mended : found;
}

function readingOf(element: Element, script: Element | undefined, load: Load): Reading | string {
  const { attributes, computed } = element;
  const json = attributes.json ?? (script && script.children.map((one) => ("value" in one ? one.value : "")).join(""));
  if (json !== undefined) return fromJson(json);
  if (computed.length) return `its ${computed.join(", ")} is worked out by a program`;
  if (attributes.src) {
    const file = load(attributes.src);
    return file === undefined ? `${attributes.src} could not be read` : readBuild(file);
  }
  const notation = Object.entries(attributes).filter(([name]) => notationName(name));
  if (!notation.length) return "no build here: expected attributes, a JSON script inside, or src";
  return buildFromAttributes(Object.fromEntries(notation));
}

function queryOf({ attributes }: Element): QueryText {
  const given = queryNames.flatMap((name) => (attributes[name] ? [[name, attributes[name]] as const] : []));
  return { figure: "reduction", ...Object.fromEntries(given) };
}

const blanked = (words: object): object =>
  Object.fromEntries(
    Object.entries(words).map(([name, one]) => [name, typeof one === "string" ? "\ue000" : blanked(one as object)]),
  );
const unwritten = blanked(figureWords) as FigureWords;

const isEnglish = (locale: string): boolean => /^en\b/.test(locale);

/** A figure's text; nothing where it has words of a language that is not here. */
function figure({ evaluation, locale, version }: Context, query: QueryText): string | undefined {
  const said = figureOf(evaluation, query, { locale, version });
  const wordless = () => said === figureOf(evaluation, query, { locale, version, words: unwritten });
  return isEnglish(locale) || wordless() ? said : undefined;
}

const shown = (said: string | undefined): Expected => (said === undefined ? { kind: "unchecked" } : text(said));

function summary({ evaluation, locale }: Context): Expected {
  const writer = new Writer({
    locale,
    rounding: evaluation.build.rounding as Rounding | undefined,
    words: figureWords,
  });
  const figures = evaluation.outputs.flatMap(({ label, bounds, steps, groups }): Figure[] => [
    ...(bounds ? [{ text: writer.number(bounds), names: [label], also: ["Motor turns for one wheel turn"] }] : []),
    ...steps.map(({ stage, reduction }) => ({
      text: writer.number(reduction.bounds),
      names: [stage.label ?? stage.id, label],
    })),
    ...groups.map(({ group, reduction }) => ({ text: writer.number(reduction.bounds), names: [group, label] })),
  ]);
  // A range is written with a word.
  const worded = figures.some((one) => one.text.includes(" to ")) && !isEnglish(locale);
  return worded ? { kind: "unchecked" } : { kind: "figures", figures };
}

function gauge(context: Context): Expected {
  const query = { ...queryOf(context.element), figure: "gap" };
  const gap = (scope?: string) => figure(context, scope ? { ...query, scope } : query);
  const texts = [gap(), gap("tyres"), gap("gears")];
  if (texts.includes(undefined)) return { kind: "unchecked" };
  const [own, tyres, gears] = texts as [string, string, string];
  return {
    kind: "figures",
    figures: [
      { text: own, names: [] },
      { text: tyres, names: ["tyres"] },
      { text: gears, names: ["gears"] },
    ],
  };
}

function teeth(context: Context): Expected {
  const { of = "" } = context.element.attributes;
  const { build } = context.evaluation;
  const stage = spotOf(build, of)?.stage as PairStage | undefined;
  if (stage?.set && of === stage.id) return shown(figure(context, { figure: "counts", of }));
  if (valueAt(build, of) === undefined)
    return untold(`nothing is at "${of}"; expected an address such as primary.driver`);
  return shown(figure(context, { figure: "count", of }));
}

/** Every element: how it is checked, that it is not checked yet, or that it says no figure. */
const elements: Readonly<Record<string, Maker | "unchecked" | "silent">> = {
  "mw-build": "silent",
  "mw-edits": "silent",
  "mw-value": (context) => shown(figure(context, queryOf(context.element))),
  "mw-teeth": teeth,
  "mw-ratio-summary": summary,
  "mw-overdrive-gauge": gauge,
  "mw-stage-editor": "unchecked",
  "mw-change-table": "unchecked",
  "mw-train-drawing": "unchecked",
  "mw-drive-line": "unchecked",
  "mw-wheel-speed": "unchecked",
  "mw-working": "unchecked",
  "mw-bench-card": "unchecked",
  "mw-order-list": "unchecked",
  "mw-pair-finder": "unchecked",
  "mw-parts-list": "unchecked",
};

/** Whether a tag is one of the elements. */
export const isKnown = (tag: string): boolean => Object.hasOwn(elements, tag);

/** The elements with the names nearest to another. */
export const nearestTags = (tag: string): readonly string[] => nearestTo(tag, Object.keys(elements));

export { nearestTo };

/** Whether an element may say figures. */
export const saysFigures = ({ tag }: Element): boolean => Object.hasOwn(elements, tag) && elements[tag] !== "silent";

/** The builds of one article, and what its elements should say. */
export class Builds {
  readonly all: readonly ArticleBuild[];
  readonly #around: Surroundings;
  readonly #builds: ReadonlyMap<Element, ArticleBuild>;
  readonly #evaluations = new Map<string, Evaluation>();

  constructor(article: Article, load: Load) {
    this.#around = new Surroundings(article);
    this.all = this.#around.builds.map((element): ArticleBuild => {
      const reading = readingOf(element, this.#around.scriptOf(element), load);
      if (typeof reading === "string") return { element, build: undefined, why: reading };
      const why = reading.findings.map(({ at, message }) => (at ? `${at}: ${message}` : message));
      return { element, build: reading.build, why: why.join(" ") };
    });
    this.#builds = new Map(this.all.map((one) => [one.element, one]));
  }

  /** A version of a build: as published, one of its alternatives, or an earlier revision. */
  #version({ element, build }: ArticleBuild & { readonly build: Build }, at: string): Evaluation | string {
    const key = `${element.order} ${at}`;
    const known = this.#evaluations.get(key);
    if (known) return known;
    const version = buildAt(build, at);
    if (!version.ok) return version.findings.map(({ message }) => message).join(" ");
    const { mode } = element.attributes;
    const evaluation = evaluate(version.build, build.modes?.some((one) => one.id === mode) ? mode : undefined);
    this.#evaluations.set(key, evaluation);
    return evaluation;
  }

  /** What an element's content should say. */
  expected(element: Element): Expected {
    const maker = Object.hasOwn(elements, element.tag) ? elements[element.tag]! : "silent";
    if (maker === "silent") return { kind: "silent" };
    // Without content there is nothing to compare but in a sentence.
    if (maker === "unchecked") return { kind: textOf(element) ? "unchecked" : "silent" };
    if (element.foreign) return untold("it stands in a drawing, where the page does not know it");
    if (element.computed.length) return untold(`its ${element.computed.join(", ")} is worked out by a program`);
    const owner = this.#around.buildOf(element);
    const holder = owner && this.#builds.get(owner);
    if (!holder) return untold("it belongs to no mw-build");
    const { build } = holder;
    if (!build) return untold("its build could not be read");
    try {
      const whole = { ...holder, build };
      // A count that a reader changes is the article's own.
      const at = element.tag === "mw-teeth" ? "" : element.attributes.at;
      const evaluation = this.#version(whole, at || "article");
      if (typeof evaluation === "string") return untold(evaluation);
      const version = (id: string) => {
        const other = this.#version(whole, id || "article");
        return typeof other === "string" ? undefined : other;
      };
      return maker({ element, evaluation, locale: this.#around.localeOf(element), version });
    } catch (error) {
      return untold((error as Error).message);
    }
  }
}
