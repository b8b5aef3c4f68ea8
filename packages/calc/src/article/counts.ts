import { setOf, valueAt, type Build } from "../drivetrain/index.js";
import type { Evaluation, OutputEvaluation } from "../evaluate/index.js";
import { lengthOf, rational, type Bounded } from "../exact/index.js";
import { fill } from "../languages/index.js";
import { speedsOf, speedSymbols } from "../motion/index.js";
import { stageText } from "../report/index.js";
import { countsFor, figureNow, type NotCounted, type Setting, type WantedFigure } from "../search/index.js";
import { errorOf, type Finding } from "../stages/index.js";
import { countsIn, idFault, outputIds, wordFault } from "./faults.js";
import { partName } from "./part-text.js";
import { placeName } from "./places.js";
import { said, type Attributes } from "./said.js";
import { type Reporter, type Unsaid } from "./speaker.js";

/** What may be wanted of an output. */
export const wantedFigures = ["reduction", "travel", "speed", "lead"] as const;
/** A figure that a count can be asked to bring. */
export type WantedName = (typeof wantedFigures)[number];

/** One count, set or tyre that comes near. */
export interface SaidCount {
  readonly head: string;
  readonly gives: string;
  readonly off: string;
  readonly settings: readonly Setting[];
  /** Whether the build stands so. */
  readonly here: boolean;
}

/** What `mw-count-finder` says. */
export interface SaidCounts {
  /** What may be changed, and which of it is asked about: addresses with their names. */
  readonly places: readonly (readonly [address: string, label: string])[];
  readonly of: string;
  /** What may be wanted in this build. */
  readonly figures: readonly WantedName[];
  readonly figure: WantedName;
  readonly outputs: readonly (readonly [id: string, label: string])[];
  readonly output: string;
  /** What is wanted, as it was asked or as the article has it. */
  readonly wanted: string;
  /** The head of the figures: what is wanted of which output. */
  readonly head: string;
  readonly now: string;
  readonly rows: readonly SaidCount[];
  /** What would give exactly that, and what has to be told. */
  readonly notes: readonly string[];
}

/** What may be changed for a figure: every count, every set, and the tyres. */
function placesToChange(build: Build, outputs: readonly OutputEvaluation[]): string[] {
  const stages = new Set(outputs.flatMap(({ steps }) => steps.map(({ stage }) => stage)));
  const counts = [...stages].flatMap((stage) => (setOf(stage) ? [stage.id] : countsIn(build, stage.id)));
  const wheels = outputs.flatMap(({ id, output }) => (output.wheel ? [`${id}.wheel`] : []));
  return [...counts, ...wheels];
}

/** What may be wanted, as far as the build says enough for it. */
function figuresFor({ build, outputs }: Evaluation, output: OutputEvaluation): WantedName[] {
  const can: Readonly<Record<WantedName, boolean>> = {
    reduction: true,
    travel: !!output.output.wheel,
    speed: !!speedsOf(build, output).full,
    lead: outputs.length > 1,
  };
  return wantedFigures.filter((name) => can[name]);
}

/** The output that one is compared with: the one named, the one that the build names, or another. */
function otherOf({ build, outputs }: Evaluation, of: string, named: string | undefined): string {
  const { compare } = build;
  const usual = compare?.of === of ? compare.with : compare?.with === of ? compare.of : undefined;
  return (named === of ? undefined : named) ?? usual ?? outputs.find(({ id }) => id !== of)?.id ?? of;
}

const unitOfLength = ({ lengths = "mm" }: Build): string => lengths;

/** What is wanted, read: a number with a unit where the figure has one. */
function wantedFrom(
  build: Build,
  figure: WantedName,
  of: string,
  other: string,
  text: string,
): WantedFigure | undefined {
  const plain = text.normalize("NFKC").replace(/[−–]/g, "-").replace(",", ".").trim();
  const [, number, unit = ""] = /^([+-]?\d{1,9}(?:\.\d{1,9})?)\s*([a-z/%]*)$/.exec(plain) ?? [];
  if (number === undefined) return undefined;
  const value = rational(number.replace("+", ""));
  if (figure === "lead") {
    const isAbove = value.compare(-100) > 0;
    return /^%?$/.test(unit) && isAbove ? { figure, of, with: other, value: value.over(100) } : undefined;
  }
  if (value.sign <= 0) return undefined;
  if (figure === "reduction") return unit ? undefined : { figure, of, value };
  if (figure === "speed") {
    const symbol = speedSymbols[unit || "km/h"];
    return symbol && { figure, of, unit: symbol, value };
  }
  const length = unit || unitOfLength(build);
  return /^(mm|cm|m|in|ft)$/.test(length) ? { figure, of, value: lengthOf(`${number} ${length}`) } : undefined;
}

const examples: Readonly<Record<WantedName, string>> = {
  reduction: "44.3",
  travel: "8.5 mm",
  speed: "12 km/h",
  lead: "2%",
};

/** How a figure is written: as elsewhere. */
function textOf({ evaluation, writer, words }: Reporter, figure: WantedName, unit: string, value: Bounded): string {
  if (figure === "reduction") return writer.number(value);
  if (figure === "travel") return writer.length(value, { unit: unitOfLength(evaluation.build) }, 2);
  if (figure === "speed") return writer.number(value, { digits: 1, unit });
  return writer.worded(value, words.ahead, words.behind, words.level, { percent: true });
}

/** What is wanted where nobody has said: the middle of the range, else what the article has, in plain digits. */
function usualWant(evaluation: Evaluation, figure: WantedName, of: string, other: string): string {
  const { target } = evaluation.build;
  const isWanted = figure === "reduction" && target && (target.output ?? of) === of;
  if (isWanted) return digits(rational(target.from).plus(target.to).over(2));
  const probe = { figure, of, with: other, unit: "kilometresPerHour", value: 1 } as WantedFigure;
  const value = figureNow(evaluation, probe)?.low;
  if (!value) return examples[figure];
  if (figure === "lead") return `${digits(value.minus(1).times(100))}%`;
  if (figure === "speed") return `${digits(value)} km/h`;
  if (figure === "reduction") return digits(value);
  const unit = unitOfLength(evaluation.build);
  return `${digits(value.over(lengthOf(`1 ${unit}`)), unit === "in" ? 3 : 2)} ${unit}`;
}

const digits = (value: ReturnType<typeof rational>, most = 2): string =>
  value.toDecimal({ maximumFractionDigits: most });

/** What is asked: from attributes, or as a reader has set it. */
interface AskedCounts {
  readonly of: string | undefined;
  readonly figure: WantedName;
  readonly output: string;
  readonly other: string;
  readonly want: string | undefined;
}

function askedIn(evaluation: Evaluation, attributes: Attributes): AskedCounts {
  const { build, outputs } = evaluation;
  const output = said(attributes, "output") ?? build.headline ?? outputs[0]!.id;
  const other = otherOf(evaluation, output, said(attributes, "with"));
  const figure = (said(attributes, "figure") ?? "reduction") as WantedName;
  return { of: said(attributes, "of"), figure, output, other, want: said(attributes, "want") };
}

/** What is wrong with how a count is asked for. */
export function countsFaults(evaluation: Evaluation, attributes: Attributes): Finding[] {
  const { build, outputs } = evaluation;
  const ids = outputIds(build);
  const { of, figure, output, other, want } = askedIn(evaluation, attributes);
  const places = placesToChange(build, outputs);
  const findings: Finding[] = [];
  if (of !== undefined && !places.includes(of)) findings.push(idFault("of", of, places));
  if (!wantedFigures.includes(figure)) findings.push(wordFault("figure", figure, wantedFigures));
  const named = said(attributes, "output");
  if (named !== undefined && !ids.includes(named)) findings.push(idFault("output", named, ids));
  const against = said(attributes, "with");
  if (against !== undefined && !ids.includes(against)) findings.push(idFault("with", against, ids));
  if (!findings.length && want !== undefined && !wantedFrom(build, figure, output, other, want))
    findings.push(
      errorOf("meaning", "not-understood", "/want", {
        name: "want",
        found: JSON.stringify(want),
        example: examples[figure],
      }),
    );
  return findings;
}

/** What stands at a place now, as it is offered there. */
function nameOfPlace(speaker: Reporter, address: string): string {
  const { evaluation, reports, words, writer } = speaker;
  const [id, field] = address.split(".") as [string, string?];
  const name = placeName(speaker, id);
  if (field === "wheel") return fill(words.told, name, reports.partKinds.wheel);
  const stage = evaluation.outputs.flatMap(({ steps }) => steps).find((step) => step.stage.id === id)!.stage;
  if (!field) return fill(words.told, name, stageText(stage, "arrow", writer));
  return fill(words.told, placeName(speaker, address), writer.given(valueAt(evaluation.build, address) as number));
}

/** What is wanted of which output, and what has to be told of it: how a differential stands, that no tyres are in it. */
function headOf({ evaluation, reports, words }: Reporter, { figure, output, other }: AskedCounts): string {
  const one = evaluation.output(output)!;
  const pair = figure === "lead" ? evaluation.compare(output, other) : undefined;
  const isRolled = pair?.of.output.wheel && pair.with.output.wheel;
  const remarks = pair
    ? [...(isRolled ? [] : [words.gearsAlone]), ...(pair.isOpen ? [words.locked] : [])]
    : one.isOpen
      ? [words.straightOn]
      : [];
  const head = fill(words.told, one.label, reports.counts.figures[figure]);
  return remarks.reduce((text, remark) => fill(words.aside, text, remark), head);
}

/**
 * What `mw-count-finder` says: which count, set or tyre gives what is wanted, both neighbours, and how far off they are.
 *
 * @param article the build as published: what is wanted where nobody has said
 * @param attributes `of`, `figure`, `output`, `with` and `want`
 */
export function sayCounts(speaker: Reporter, article: Evaluation, attributes: Attributes): SaidCounts | Unsaid {
  const { evaluation, reports, writer, words } = speaker;
  const { build, outputs } = evaluation;
  const findings = countsFaults(evaluation, attributes);
  if (findings.length) return { findings };
  const asked = askedIn(evaluation, attributes);
  const { figure, output, other } = asked;
  const places = placesToChange(build, outputs);
  const of = asked.of ?? places[0];
  if (of === undefined) return { findings: [idFault("of", "", places)] };
  const wanted = asked.want ?? usualWant(article, figure, output, other);
  const read = wantedFrom(build, figure, output, other, wanted)!;
  const unit = /km\/h|m\/s|mph|ft\/s/.exec(wanted)?.[0] ?? "km/h";
  const text = (value: Bounded): string => textOf(speaker, figure, unit, value);
  const found = countsFor(evaluation, of, read);
  const now = figureNow(evaluation, read);
  const isTyre = of.endsWith(".wheel");
  const stands = (settings: readonly Setting[]): boolean =>
    settings.every(({ set, to }) => {
      const value = valueAt(build, set);
      return set.endsWith(".fitted") ? value === undefined || same(value, to) : same(value, to);
    });
  const rows =
    typeof found === "string"
      ? []
      : found.neighbours.map(({ choice, settings, gives, off }): SaidCount => ({
          head: typeof choice === "number" ? writer.given(choice) : partName(choice),
          gives: text(gives),
          off: writer.number(off, { percent: true, sign: "exceptZero" }),
          settings,
          here: stands(settings),
        }));
  const exact =
    typeof found === "string" || !found.exact
      ? undefined
      : isTyre
        ? writer.length(found.exact, { unit: unitOfLength(build) }, 2, 1)
        : writer.number(found.exact, { digits: 2, least: 0 });
  return {
    places: places.map((address) => [address, nameOfPlace(speaker, address)]),
    of,
    figures: figuresFor(evaluation, evaluation.output(output)!),
    figure,
    outputs: outputs.map(({ id, label }) => [id, label]),
    output,
    wanted,
    head: headOf(speaker, asked),
    now: now ? text(figure === "lead" ? now.minus(1) : now) : words.unknown,
    rows,
    notes: [
      ...(typeof found === "string" ? [reports.counts.reasons[found satisfies NotCounted]] : []),
      ...(exact === undefined ? [] : [fill(reports.counts.exactly, exact)]),
      ...(figure === "speed" ? [reports.ideal] : []),
    ],
  };
}

const same = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

/** What is wanted cannot be understood: an example of what can. */
export const wantedExample = (figure: WantedName): string => examples[figure];
