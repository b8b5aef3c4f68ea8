// What an element should say, which build it belongs to, which version and which language: calc's article room tells it, to
// the command as to the page.
import {
  askedFindings,
  heldBuild,
  isUnsaid,
  readEmbedded,
  sayCard,
  sayChanges,
  sayDrawing,
  sayDriveLine,
  sayGauge,
  sayMeasurements,
  sayOrder,
  sayParts,
  sayQuantity,
  saySpeeds,
  saySummary,
  sayTeeth,
  sayValue,
  sayWorking,
  said,
  speakerOf,
  stepsToDraw,
  type Block,
  type Reporter,
  type Unsaid,
} from "@meshwright/calc/article";
import {
  attributeFindings,
  buildAt,
  buildFromAttributes,
  elementAttributes,
  nearestTo,
  readBuild,
  speaksOfBuild,
  type ElementTag,
} from "@meshwright/calc/document";
import type { Build } from "@meshwright/calc/drivetrain";
import { evaluate, type Evaluation } from "@meshwright/calc/evaluate";
import { wordsFor } from "@meshwright/calc/languages/all";
import type { Toothed } from "@meshwright/calc/gears";
import { layoutOf } from "@meshwright/calc/layout";
import { figures as allFigures, stageText, units } from "@meshwright/calc/report";
import { errorOf, type Finding } from "@meshwright/calc/stages";
import { textOf, type Article, type Element } from "./article.js";
import { hasDigit } from "./canonical.js";
import { Surroundings } from "./surroundings.js";

/** A figure of a block. */
interface Figure {
  readonly text: string;
  /** The heads that its place bears: of its row, its column, its line. All of them have to be there. */
  readonly names: readonly string[];
  /** Heads that its place may bear besides. */
  readonly also?: readonly string[] | undefined;
}

/** Why something could not be told: findings, which are said in the article's language, or a sentence of the command's own. */
export type Why = string | readonly Finding[];

export type Expected =
  /** What stands in a sentence: any of these texts is right, the first is the one to write. */
  | { readonly kind: "text"; readonly texts: readonly [string, ...string[]]; readonly locale: string }
  /** What stands on its own: its figures, in the order of its places, and sentences whose numbers may stand there as well. */
  | { readonly kind: "figures"; readonly figures: readonly Figure[]; readonly sentences: readonly string[] }
  /** It cannot be told what it should say, and why. */
  | { readonly kind: "untold"; readonly why: Why }
  /** It says figures that are not compared: they depend on what its reader does. */
  | { readonly kind: "unchecked" }
  /** It says none. */
  | { readonly kind: "silent" };

/** Reads a file that `src` names; undefined where it is not to be had. */
export type Load = (src: string) => string | undefined;

/** A build of an article, or what keeps it from being one. */
export interface ArticleBuild {
  readonly element: Element;
  readonly build: Build | undefined;
  /** What was found; of a build, all that is wrong with its other versions, or odd. */
  readonly found: Why;
}

type Reading = Pick<ReturnType<typeof readBuild>, "findings"> & { readonly build?: Build | undefined };

const phrases = new Map<string, readonly string[]>();
const written = [...Object.values(units).flat(), "V", "A", "W", "kV", "N", "Nm", "rpm"];

/** What figures are written with besides numbers, in a language: units and verdicts. */
export function figurePhrases(locale: string): readonly string[] {
  const known = phrases.get(locale);
  if (known) return known;
  const words = Object.values(wordsFor(locale).figures)
    .flatMap((one: string | object) => (typeof one === "string" ? one : Object.values(one)))
    .map((one) =>
      String(one)
        .replace(/\{\d\}/g, "")
        .trim(),
    );
  const all = [...written, ...words];
  phrases.set(locale, all);
  return all;
}

/** What an element's figures are made from. */
interface Context {
  readonly element: Element;
  readonly speaker: Reporter;
  /** Somebody who speaks of another version of the build, by its name. */
  readonly other: (at: string) => Reporter | undefined;
}

type Maker = (context: Context) => Expected;

const untold = (why: Why): Expected => ({ kind: "untold", why });
const isFindings = (one: object | string): one is readonly Finding[] => Array.isArray(one);
const isError = ({ severity }: Finding): boolean => severity === "error";

/** The address of a document that another one refers to. */
const besideSource = (of: string | undefined, src: string): string =>
  of?.includes("/") && !/^([a-z]+:|\/)/i.test(src) ? of.slice(0, of.lastIndexOf("/") + 1) + src : src;

function readingOf(element: Element, script: Element | undefined, load: Load): Reading | string {
  const { attributes, computed } = element;
  const json = attributes.json ?? (script && script.children.map((one) => ("value" in one ? one.value : "")).join(""));
  if (json !== undefined) return readEmbedded(json);
  if (computed.length) return `its ${computed.join(", ")} is worked out by a program`;
  if (attributes.src) {
    const file = load(attributes.src);
    return file === undefined ? `${attributes.src} could not be read` : readBuild(file);
  }
  if (!Object.keys(attributes).some(speaksOfBuild))
    return "no build here: expected attributes, a JSON script inside, or src";
  return buildFromAttributes(attributes);
}

/** What is wrong or odd about the names of an element's attributes; those of an `mw-build` are looked at as it is read. */
const namesOf = ({ tag, attributes }: Element): readonly Finding[] => attributeFindings(tag, Object.keys(attributes));

const text = (context: Context, ...texts: readonly (string | Unsaid)[]): Expected => {
  const [first] = texts;
  if (isUnsaid(first)) return untold(first.findings);
  const { locale } = context.speaker;
  return { kind: "text", texts: texts as readonly string[] as readonly [string, ...string[]], locale };
};

/** The figures of a block by the heads of its tables, and the sentences that it has besides. */
function figuresOf(block: Block | Unsaid | undefined, besides: readonly string[] = []): Expected {
  if (isUnsaid(block)) return untold(block.findings);
  if (!block) return untold("there is nothing for it to say");
  const figures = block.tables.flatMap(({ caption, heads, rows }) =>
    rows.flatMap(({ head, beside, kind, texts }) =>
      texts.flatMap((one, n): Figure[] => {
        if (one === undefined || !hasDigit(one)) return [];
        const column = heads[n + 1];
        const also = [caption, heads[0], beside].filter((name) => name !== undefined);
        // A total is the one figure of its column that needs no name.
        const named = kind === "total" && column ? [column] : [head, column].filter((name) => name !== undefined);
        return [{ text: one, names: named, also: kind === "total" ? [...also, head] : also }];
      }),
    ),
  );
  const heads = block.tables.flatMap(({ caption, rows }) => [
    caption,
    ...rows.flatMap(({ head, beside }) => [head, beside]),
  ]);
  const told = [...heads, ...block.notes, ...besides].filter((one) => one !== undefined);
  return { kind: "figures", figures, sentences: told.filter(hasDigit) };
}

function summary({ element, speaker }: Context): Expected {
  const block = saySummary(speaker, element.attributes);
  if (isUnsaid(block)) return figuresOf(block);
  const { standings, range, fractions } = block;
  const expected = figuresOf(block, [...standings.values(), ...(range ? [range.sentence] : []), ...fractions]);
  if (expected.kind !== "figures") return expected;
  const { total } = speaker.words;
  const figures = expected.figures.map((one) => ({ ...one, also: [...(one.also ?? []), total] }));
  // Behind an open differential the second line of totals has to be asked for by its name.
  const isStep = ({ names }: Figure) => names.length > 1;
  return { ...expected, figures: figures.map((one, n) => (isStep(one) ? expected.figures[n]! : one)) };
}

function gauge({ element, speaker }: Context): Expected {
  const block = sayGauge(speaker, element.attributes);
  if (!block) return untold("there are no two axles to compare");
  if (isUnsaid(block)) return untold(block.findings);
  const { percentages, scope, sentence, notes, gap } = block;
  const figures = Object.entries(percentages).map(([name, one]): Figure => ({ text: one, names: [name] }));
  return {
    kind: "figures",
    figures: [{ text: percentages[scope]!, names: [] }, ...figures],
    sentences: [sentence, gap, ...notes],
  };
}

function teeth(context: Context): Expected {
  const { element, speaker } = context;
  const counts = sayTeeth(speaker, element.attributes);
  if (isUnsaid(counts)) return text(context, counts);
  // A set may stand in a sentence as it stands in a table.
  const { of = "" } = element.attributes;
  return counts.match(/\p{Nd}+/gu)!.length > 1
    ? text(context, counts, speaker.figure({ figure: "counts", of }))
    : text(context, counts);
}

function changes({ element, speaker, other }: Context): Expected {
  const published = other("article");
  if (!published) return untold("its build could not be worked out");
  const { reports, evaluation } = speaker;
  const wanted = said(element.attributes, "show")?.split(/\s+/);
  const alternatives = (evaluation.build.alternatives ?? [])
    .filter(({ id }) => !wanted || wanted.includes(id))
    .flatMap(({ id, label = id }) => {
      const version = other(id);
      return version ? { label, speaker: version } : [];
    });
  const id = said(element.attributes, "against");
  const held = id === undefined || id === "article" ? undefined : other(id);
  if (id !== undefined && id !== "article" && !held) return untold(`there is no version "${id}" to hold it against`);
  const { references = [], alternatives: listed = [] } = evaluation.build;
  const own = [...references, ...listed].find((one) => one.id === id);
  const isElsewhere = !own && held && !buildAt(evaluation.build, id!).ok;
  const label = own?.label ?? (isElsewhere ? held.evaluation.build.title : undefined) ?? id!;
  const against = held && { label, speaker: held };
  const columns = [...(against ? [against] : []), { label: reports.published, speaker: published }, ...alternatives];
  return figuresOf(sayChanges(speaker, published, columns, against));
}

function order({ element, speaker, other }: Context): Expected {
  const from = said(element.attributes, "from") ?? "article";
  const start = from === "nothing" ? undefined : other(from);
  if (from !== "nothing" && !start) return untold(`there is no version "${from}" to count from`);
  return figuresOf(sayOrder(speaker, start));
}

function drawing({ element, speaker }: Context): Expected {
  const { evaluation, writer } = speaker;
  const steps = stepsToDraw(evaluation, said(element.attributes, "of"));
  const layout = layoutOf(steps, evaluation.build.mounts);
  const { title, told, verdicts, rest } = sayDrawing(speaker, layout);
  // Whoever tells a drawing in words tells the pitch of its gears.
  const pitches = steps.flatMap(({ stage }) => {
    const { module, diametralPitch } = stage as Toothed;
    return module === undefined && diametralPitch === undefined ? [] : writer.given((module ?? diametralPitch)!);
  });
  return { kind: "figures", figures: [], sentences: [title, told, ...verdicts, rest, ...pitches] };
}

function line({ speaker }: Context): Expected {
  const { cells, totals } = sayDriveLine(speaker);
  const told = [...cells.values()].flatMap(({ stage, heard, shaft, notes }) => [
    ...(stage ? [stageText(stage, "sentence", speaker.writer), stageText(stage, "arrow", speaker.writer)] : []),
    heard,
    ...(shaft ? [shaft.heard] : []),
    ...notes,
  ]);
  const ends = [...totals.values()];
  return {
    kind: "figures",
    figures: ends.map(({ label, text }) => ({ text, names: [label] })),
    sentences: [...told, ...ends.map(({ heard }) => heard)].filter(hasDigit),
  };
}

/** Every element: how it is checked, that it is not, or that it says no figure. */
const elements: Readonly<Record<ElementTag, Maker | "unchecked" | "silent">> = {
  "mw-build": "silent",
  "mw-edits": "silent",
  "mw-value": (context) => text(context, sayValue(context.speaker, context.element.attributes)),
  "mw-teeth": teeth,
  "mw-ratio-summary": summary,
  "mw-overdrive-gauge": gauge,
  "mw-change-table": changes,
  "mw-train-drawing": drawing,
  "mw-wheel-speed": ({ element, speaker }) => figuresOf(saySpeeds(speaker, element.attributes)),
  "mw-working": ({ element, speaker }) => figuresOf(sayWorking(speaker, element.attributes)),
  "mw-bench-card": ({ speaker }) => figuresOf(sayCard(speaker)),
  "mw-order-list": order,
  "mw-parts-list": ({ speaker }) => figuresOf(sayParts(speaker)),
  "mw-stage-editor": "unchecked",
  "mw-drive-line": line,
  "mw-pair-finder": "unchecked",
  "mw-count-finder": "unchecked",
  "mw-train-finder": "unchecked",
  "mw-quantity": (context) => text(context, sayQuantity(context.speaker, context.element.attributes)),
  "mw-measurements": ({ element, speaker }) => figuresOf(sayMeasurements(speaker, element.attributes)),
  "mw-unmarked-gear": "unchecked",
  "mw-turn-count": "unchecked",
};

/** Whether a tag is one of the elements. */
export const isKnown = (tag: string): tag is ElementTag => Object.hasOwn(elements, tag);

export { nearestTo };

/** Whether an element may say figures. */
export const saysFigures = ({ tag }: Element): boolean => isKnown(tag) && elements[tag] !== "silent";

/** The builds of one article, and what its elements should say. */
export class Builds {
  readonly all: readonly ArticleBuild[];
  readonly #around: Surroundings;
  readonly #load: Load;
  readonly #builds: ReadonlyMap<Element, ArticleBuild>;
  readonly #evaluations = new Map<string, Evaluation>();
  readonly #speakers = new Map<string, Reporter>();
  /** What was found about what elements ask for. */
  readonly #asked = new Map<Element, readonly Finding[]>();

  constructor(article: Article, load: Load) {
    this.#around = new Surroundings(article);
    this.#load = load;
    this.all = this.#around.builds.map((element) => this.#read(element, load));
    this.#builds = new Map(this.all.map((one) => [one.element, one]));
  }

  #read(element: Element, load: Load): ArticleBuild {
    const script = this.#around.scriptOf(element);
    const reading = readingOf(element, script, load);
    if (typeof reading === "string") return { element, build: undefined, found: reading };
    const { mode } = element.attributes;
    const besides = { names: Object.keys(element.attributes), hasScript: script !== undefined, mode };
    const { build, findings } = heldBuild(reading, besides);
    return { element, build, found: findings };
  }

  /** The language that an element stands in. */
  localeOf(element: Element): string {
    return this.#around.localeOf(element);
  }

  /** What is odd about an element, and keeps nothing from being told: once it was said what it should say. */
  oddAbout(element: Element): readonly Finding[] {
    if (!isKnown(element.tag) || element.foreign) return [];
    const holder = this.#builds.get(element);
    const found = holder?.build ? holder.found : [];
    const all = holder ? found : [...namesOf(element), ...(this.#asked.get(element) ?? [])];
    return isFindings(all) ? all.filter((one) => !isError(one)) : [];
  }

  /** A version of a build: as published, one of its alternatives, or an earlier revision. */
  #version({ element, build }: ArticleBuild & { readonly build: Build }, at: string): Evaluation | readonly Finding[] {
    const key = `${element.order} ${at}`;
    const known = this.#evaluations.get(key);
    if (known) return known;
    const version = buildAt(build, at);
    if (!version.ok) return version.findings;
    const { mode } = element.attributes;
    const evaluation = evaluate(version.build, mode || undefined);
    this.#evaluations.set(key, evaluation);
    return evaluation;
  }

  /** The ids of what a build can be held against besides its own versions: other builds of the article, and those it refers to by address. */
  #others({ element, build }: ArticleBuild & { readonly build: Build }): readonly string[] {
    const { id: own } = element.attributes;
    const ids = this.all.flatMap((one) => {
      const { id } = one.element.attributes;
      return id && id !== own ? id : [];
    });
    return [...new Set([...ids, ...(build.references ?? []).flatMap(({ id, src }) => (src === undefined ? [] : id))])];
  }

  /** Such a build as it is published; nothing where it cannot be read. */
  #elsewhere({ element, build }: ArticleBuild & { readonly build: Build }, id: string): Evaluation | undefined {
    const { src } = build.references?.find((one) => one.id === id) ?? {};
    const key = `${element.order} elsewhere ${id}`;
    const known = this.#evaluations.get(key);
    if (known) return known;
    const found = src === undefined ? this.#builds.get(this.#around.buildOf(element, id) ?? element) : undefined;
    if (found && found.element !== element && found.build) {
      const evaluation = this.#version({ ...found, build: found.build }, "article");
      return isFindings(evaluation) ? undefined : evaluation;
    }
    const file = src === undefined ? undefined : this.#load(besideSource(element.attributes.src, src));
    const { build: other } = file === undefined ? {} : readEmbedded(file);
    if (!other) return undefined;
    const evaluation = evaluate(other);
    this.#evaluations.set(key, evaluation);
    return evaluation;
  }

  /** Somebody who speaks of a version of a build, in a language. */
  #speaker(
    holder: ArticleBuild & { readonly build: Build },
    at: string,
    locale: string,
  ): Reporter | readonly Finding[] {
    const key = `${holder.element.order} ${at} ${locale}`;
    const known = this.#speakers.get(key);
    if (known) return known;
    const own = this.#version(holder, at);
    const evaluation = isFindings(own) ? (this.#elsewhere(holder, at) ?? own) : own;
    if (isFindings(evaluation)) return evaluation;
    const { figures: words, reports } = wordsFor(locale);
    const version = (id: string) => {
      const other = this.#version(holder, id || "article");
      return isFindings(other) ? this.#elsewhere(holder, id) : other;
    };
    const others = () => this.#others(holder);
    const speaker = speakerOf({ evaluation, locale, words, reports, figures: allFigures, version, others });
    this.#speakers.set(key, speaker);
    return speaker;
  }

  /** Why an element has no build. */
  #homeless({ attributes: { build: id } }: Element): Why {
    if (!id) return "it belongs to no mw-build";
    const known = [...new Set(this.all.flatMap(({ element }) => element.attributes.id ?? []))];
    const nearest = nearestTo(id, known);
    return [errorOf("meaning", "missing-reference", "/build", { id, known, nearest })];
  }

  /** What an element's content should say. */
  expected(element: Element): Expected {
    const maker = isKnown(element.tag) ? elements[element.tag] : "silent";
    const wrong = namesOf(element).filter(isError);
    if (wrong.length) return untold(wrong);
    if (maker === "silent") return { kind: "silent" };
    // Without content there is nothing to compare but in a sentence.
    const unchecked: Expected = { kind: textOf(element) ? "unchecked" : "silent" };
    if (maker === "unchecked" && (element.foreign || element.computed.length)) return unchecked;
    if (element.foreign) return untold("it stands in a drawing, where the page does not know it");
    if (element.computed.length) return untold(`its ${element.computed.join(", ")} is worked out by a program`);
    const owner = this.#around.buildOf(element);
    const holder = owner && this.#builds.get(owner);
    if (!holder)
      return maker === "unchecked" && !element.attributes.build ? unchecked : untold(this.#homeless(element));
    const { build } = holder;
    if (!build) return maker === "unchecked" ? unchecked : untold("its build could not be read");
    try {
      const whole = { ...holder, build };
      // Of what is not compared, only the words that are there can be wrong.
      const isWrong = (one: Finding) => isError(one) && (maker !== "unchecked" || one.code !== "word-needed");
      const asked = askedFindings(element.tag, build, element.attributes, undefined, () => this.#others(whole));
      this.#asked.set(element, asked);
      const missing = asked.filter(isWrong);
      if (missing.length) return untold(missing);
      if (maker === "unchecked") return unchecked;
      // What takes no version shows the build as it stands.
      const takes: readonly string[] = elementAttributes[element.tag as ElementTag];
      const at = takes.includes("at") ? element.attributes.at : "";
      const locale = this.#around.localeOf(element);
      const speaker = this.#speaker(whole, at || "article", locale);
      if (isFindings(speaker)) return untold(speaker);
      const other = (id: string) => {
        const one = this.#speaker(whole, id || "article", locale);
        return isFindings(one) ? undefined : one;
      };
      const expected = maker({ element, speaker, other });
      // Without content a block says the figures itself.
      return expected.kind === "figures" && !textOf(element) ? { kind: "silent" } : expected;
    } catch (error) {
      return untold((error as Error).message);
    }
  }
}
