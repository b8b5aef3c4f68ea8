import { measuredReduction, toothPairsFor, type CountRanges } from "../counted/index.js";
import { freeId, spotOf, stagesOf, type Build, type Change, type ChangeSet } from "../drivetrain/index.js";
import type { Evaluation, Step } from "../evaluate/index.js";
import type { Bounded } from "../exact/index.js";
import { fill, fillCount } from "../languages/index.js";
import { driveText } from "../report/index.js";
import { unknowns, type Stage, type StageOf } from "../stages/index.js";
import { idFault } from "./faults.js";
import { said, type Attributes } from "./said.js";
import { type Reporter, type Unsaid } from "./speaker.js";
import { faultText, plainNumber, typedCounts, typedNumber } from "./typed.js";

/** What somebody typed of a box that was turned. Empty fields say nothing. */
export interface AskedTurns {
  readonly turnsIn?: string;
  readonly from?: string;
  /** Where it is empty, two marks came together again: so many exactly. */
  readonly to?: string;
  readonly held?: boolean;
  /** Ids of the stages that turned along with it. */
  readonly along?: readonly string[];
  readonly driver?: string;
  readonly driven?: string;
}

/** What is typed about a box that was turned. */
export type TurnField = "turnsIn" | "from" | "to" | "driver" | "driven";

/** What `mw-turn-count` says. */
export interface SaidTurns {
  /** What is wrong with what was typed, by field. */
  readonly faults: Readonly<Partial<Record<TurnField, string>>>;
  /** What the box comes to, where enough was typed. */
  readonly result: readonly string[];
  /** The counts that can be behind it, the first of them. */
  readonly counts: readonly string[];
  readonly note: string;
  /** The stages that may have turned along with it. */
  readonly around: readonly { readonly id: string; readonly label: string }[];
  /** What puts it into the build; nothing before enough was typed. */
  readonly request: Change | ChangeSet | undefined;
  /** Whether the build says the same already. */
  readonly there: boolean;
}

const shownCounts = 12;
const usualRanges: CountRanges = { driver: [8, 40], driven: [8, 80] };

/** The stages that may have turned along: those of one way to a wheel whose reduction is known exactly. */
function aroundOf({ outputs, build }: Evaluation, of: string | undefined): readonly Step[] {
  const way = outputs.filter(({ id, steps }) => id === of || steps.some(({ stage }) => stage.id === of));
  const steps = new Map((way.length ? way : outputs).flatMap((one) => one.steps.map((step) => [step.stage.id, step])));
  const isShared = (id: string): boolean => build.stages.some((stage) => stage.id === id);
  return [...steps.values()].filter(
    ({ stage }) => stage.id !== of && !unknowns[stage.kind] && (way.length > 0 || isShared(stage.id)),
  );
}

/** The pairs behind a ratio; undefined where there are more than anybody looks through. */
function pairsBehind(box: Bounded, ranges: CountRanges): ReturnType<typeof toothPairsFor> | undefined {
  try {
    return toothPairsFor(box, ranges);
  } catch {
    return undefined;
  }
}

/** The stage as it was turned, in the place of the one that stands there. */
function measuredStage(
  asked: AskedTurns,
  spans: readonly Stage[],
  id: string,
  before: Stage | undefined,
): StageOf<"measured"> {
  const { label, group, reverses, per } = before ?? ({} as Partial<Stage>);
  const [turnsIn, from, to] = [asked.turnsIn, asked.from, asked.to].map((text) =>
    text?.trim() ? plainNumber(text) : undefined,
  );
  return {
    id,
    kind: "measured",
    ...(label !== undefined && { label }),
    ...(group !== undefined && { group }),
    ...(reverses !== undefined && { reverses }),
    ...(per !== undefined && { per }),
    turnsIn: turnsIn!,
    turnsOut: to === undefined ? from! : { from: from!, to },
    ...(asked.held && { held: true }),
    ...(spans.length && { spans }),
  } as StageOf<"measured">;
}

/** Where a new stage goes: last on the axle that is named, else last before the split. */
function insertion(build: Build, of: string | undefined, stage: Stage): Change {
  const output = build.outputs.find(({ id }) => id === of);
  return output
    ? { insert: stage, into: output.id, at: output.stages.length }
    : { insert: stage, at: build.stages.length };
}

/** What is wrong with the box that is asked for: a stage, or an axle that gets a new one; none gets it before the split. */
export function boxFault(build: Build, of: string | undefined): Unsaid["findings"] {
  const known = [...stagesOf(build).map(({ stage }) => stage.id), ...build.outputs.map(({ id }) => id)];
  return of === undefined || known.includes(of) ? [] : [idFault("of", of, known)];
}

/**
 * What `mw-turn-count` says of a box that was turned and counted: what it comes to, what is known around it divided out, and
 * which counts can be behind it; and the change that puts it into the build.
 */
export function sayTurnCount(speaker: Reporter, attributes: Attributes, asked: AskedTurns): SaidTurns | Unsaid {
  const { evaluation, reports, writer, locale } = speaker;
  const { build } = evaluation;
  const of = said(attributes, "of");
  const findings = boxFault(build, of);
  if (findings.length) return { findings };
  const steps = aroundOf(evaluation, of);
  const around = steps.map(({ stage: { id, label = id } }) => ({ id, label }));
  const faults: Partial<Record<TurnField, string>> = {};
  const amount = (field: "turnsIn" | "from" | "to") => {
    const text = asked[field]?.trim();
    const value = text ? typedNumber(text) : undefined;
    if (text && !(value && value.sign > 0)) faults[field] = faultText(speaker, text, "number");
    return value && value.sign > 0 ? value : undefined;
  };
  const counts = (field: "driver" | "driven"): CountRanges["driver"] => {
    const text = asked[field]?.trim();
    const range = text ? typedCounts(text) : undefined;
    if (text && !range) faults[field] = faultText(speaker, text, "counts");
    return range ?? usualRanges[field];
  };
  const [turnsIn, from, to] = [amount("turnsIn"), amount("from"), amount("to")];
  if (from && to && from.compare(to) > 0) faults.to = fill(reports.typed.reversed, asked.from!.trim());
  const ranges = { driver: counts("driver"), driven: counts("driven") };
  const nothing = { faults, result: [], counts: [], note: "", around, request: undefined, there: false };
  if (!turnsIn || !from || faults.to || faults.turnsIn || faults.from) return nothing;
  const along = steps.filter(({ stage }) => asked.along?.includes(stage.id));
  const wheelTurns = { from: from.toFraction(), to: (to ?? from).toFraction() };
  const count = { motorTurns: turnsIn.toFraction(), wheelTurns, ...(asked.held && { oneWheelHeld: true }) };
  const total = measuredReduction(count);
  const box = along.reduce((rest, { reduction }) => rest.over(reduction.bounds), total);
  const pairs = faults.driver || faults.driven ? undefined : pairsBehind(box, ranges);
  const text = (value: Bounded): string => writer.number(value, { digits: 4, least: 2 });
  const spot = of === undefined ? undefined : spotOf(build, of)?.stage;
  const before = spot?.id === of ? spot : undefined;
  const stage = measuredStage(
    asked,
    along.map(({ stage: one }) => one),
    before?.id ?? freeId("box", [build]),
    before,
  );
  const shown = pairs?.slice(0, shownCounts) ?? [];
  const notes = [
    pairs && (pairs.length ? fillCount(reports.turned.counts, pairs.length, locale) : reports.turned.noCounts),
    pairs && pairs.length > 1 && reports.turned.narrow,
  ];
  return {
    faults,
    result: [...(along.length ? [fill(reports.turned.total, text(total))] : []), fill(reports.turned.box, text(box))],
    counts: shown.map(([driver, driven]) => driveText([writer.given(driver), writer.given(driven)], "arrow", writer)),
    note: notes.filter(Boolean).join(" "),
    around,
    request: before ? { [before.id]: stage } : insertion(build, of, stage),
    there: before !== undefined && JSON.stringify(before) === JSON.stringify(stage),
  };
}
