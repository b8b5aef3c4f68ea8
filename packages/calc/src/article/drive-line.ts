import { applyChanges } from "../document/index.js";
import type { ChangeSet } from "../drivetrain/index.js";
import { evaluate, type OutputEvaluation, type Standing } from "../evaluate/index.js";
import { fill, pitchText } from "../languages/index.js";
import { driveLineOf, layoutOf, strandsOf, type LinePlace, type LineStage, type Strand } from "../layout/index.js";
import { arrowFor, figureFrom, gearFigures, stageText, writeCount } from "../report/index.js";
import { displays, stageShapes, type Stage, type Turn } from "../stages/index.js";
import { listed } from "./block.js";
import { drawnLength, verdictOf } from "./drawing.js";
import { dateText } from "./part-text.js";
import { placeName } from "./places.js";
import type { Reporter } from "./speaker.js";

/** A piece of what stands at a stage: a value, with its address where it is a count that can be changed, or a word. */
export interface LinePiece {
  readonly text: string;
  readonly address?: string;
  readonly isArrow?: boolean;
}

/** A way that a lever can stand, and what the wheels behind it come to then. */
export interface SaidLane {
  readonly id: string;
  readonly label: string;
  readonly total: string;
  readonly stands: boolean;
  /** What to ask for to have it stand so; none where a mode decides that. */
  readonly changes: ChangeSet | undefined;
}

/** What is lettered on the shaft behind something. */
export interface SaidShaft {
  /** Motor turns for one turn here; empty where the total stands beside it. */
  readonly text: string;
  /** Which way it turns against the motor; 0: not known. */
  readonly turn: Turn;
  readonly isEstablished: boolean;
  /** Both, for those who listen. */
  readonly heard: string;
}

/** What is said at a thing on the line. */
export interface SaidCell {
  /** A stage's id, or `motor:`, `split:`, `wheel:` and the id of its shaft. */
  readonly key: string;
  readonly stage?: Stage;
  readonly name: string;
  readonly pieces: readonly LinePiece[];
  readonly notes: readonly string[];
  /** What keeps it from running. */
  readonly faults: readonly string[];
  readonly lanes: readonly SaidLane[];
  /** What the lanes are together. */
  readonly lanesName: string;
  readonly shaft: SaidShaft | undefined;
  /** Where something that is let in before it goes, and what that is called; none before a motor. */
  readonly before: { readonly place: LinePlace; readonly name: string } | undefined;
  /** All of it but the shaft in one sentence. */
  readonly heard: string;
}

/** What is said at the end of a shaft. */
export interface SaidLineTotal {
  readonly output: string;
  readonly label: string;
  readonly text: string;
  readonly standing: Standing | undefined;
  /** Where it stands in the range: "inside 38 to 46". */
  readonly verdict: string;
  readonly heard: string;
  /** Whether it waits for a stage that cannot be read: then that is its text. */
  readonly isWaiting?: boolean;
}

/** A shaft of the line as a list: what stands on it, then those it feeds, or its total. */
export interface SaidStrand {
  readonly id: string;
  readonly label: string;
  readonly cells: readonly SaidCell[];
  readonly feeds: readonly SaidStrand[];
  readonly total: SaidLineTotal | undefined;
}

/** What `mw-drive-line` says. */
export interface SaidLine {
  readonly name: string;
  readonly strands: readonly SaidStrand[];
  /** Everything on the line by its key. */
  readonly cells: ReadonlyMap<string, SaidCell>;
  readonly totals: ReadonlyMap<string, SaidLineTotal>;
  /** What is wrong with the drive as a whole. */
  readonly faults: readonly string[];
  /** What it is of, which revision and of what day: for paper. */
  readonly origin: string;
}

/** Whether a field holds a count, by the shapes of its kind. */
function isCount(stage: Stage, field: string): boolean {
  const [name, place] = field.split(".");
  const shape = stageShapes[stage.kind][name!] ?? "";
  return place === undefined ? /^count\b/.test(shape) : /^\[count\]/.test(shape);
}

function piecesOf(stage: Stage, { words, locale, writer }: Reporter): LinePiece[] {
  return displays[stage.kind](stage).map((piece): LinePiece => {
    if ("value" in piece) {
      const text = writer.given(piece.value);
      return isCount(stage, piece.field) ? { text, address: `${stage.id}.${piece.field}` } : { text };
    }
    return piece.word === "drives" ? { text: arrowFor(locale), isArrow: true } : { text: words.joints[piece.word] };
  });
}

/** Pitch, centre distance and where that is in its slot, a line each; and why the pair does not fit. */
function fitNotes(
  stage: Stage,
  speaker: Reporter,
): { readonly notes: string[]; readonly faults: string[]; readonly told: readonly string[] } {
  const { reports, words, evaluation } = speaker;
  const notes: string[] = [];
  const faults: string[] = [];
  const told: string[] = [];
  const pitch = pitchText(stage as Parameters<typeof pitchText>[0], reports.reasons);
  if (pitch) notes.push(pitch);
  const mine = evaluation.build.mounts?.filter((mount) => mount.stage === stage.id);
  let layout: ReturnType<typeof layoutOf>;
  try {
    layout = layoutOf([{ stage }], mine);
  } catch {
    return { notes, faults, told };
  }
  const centres = layout.spans.map(({ centre }) => drawnLength(speaker, centre));
  if (centres.length) notes.push(listed([...new Set(centres)], words));
  for (const mount of layout.mounts) {
    const { from, to } = mount;
    const range = from && to && fill(words.range, drawnLength(speaker, from, "from"), drawnLength(speaker, to, "to"));
    if (range) notes.push(fill(reports.line.slot, range));
    const { short } = mount;
    if (!short) continue;
    faults.push(
      fill(
        { to: reports.short, from: reports.tooClose, hole: reports.holeAway }[short.end],
        drawnLength(speaker, short.by),
      ),
    );
    told.push(verdictOf(speaker, mount));
  }
  return { notes, faults, told };
}

/** What stands at a stage whatever else is in the drive. */
interface Own extends ReturnType<typeof fitNotes> {
  readonly pieces: readonly LinePiece[];
  /** Its counts, for those who listen. */
  readonly counts: string;
}

/** By the stage, which stays the same object while another one is changed; `by` is all else that decides it. */
const owns = new WeakMap<Stage, { readonly by: readonly unknown[]; readonly own: Own }>();

function ownOf({ stage, lever }: LineStage, speaker: Reporter): Own {
  const { locale, words, reports, writer, evaluation } = speaker;
  const { rounding, lengths, mounts } = evaluation.build;
  const by = [locale, words, reports, rounding, lengths, mounts, lever?.stands.id];
  const known = owns.get(stage);
  if (known?.by.every((one, n) => one === by[n])) return known.own;
  const notes = fitNotes(stage, speaker);
  const { ringSide } = stage as { readonly ringSide?: "left" | "right" };
  if (ringSide) notes.notes.push(ringSide === "left" ? reports.line.ringLeft : reports.line.ringRight);
  const own = {
    ...notes,
    pieces: piecesOf(stage, speaker),
    counts: stageText(stage, "heard", writer, lever?.stands.id),
  };
  // What somebody can still change has to be looked at again.
  if (Object.isFrozen(stage) && (!mounts || Object.isFrozen(mounts))) owns.set(stage, { by, own });
  return own;
}

/** The total of what stands behind a lever, were it to stand so. */
function laneTotal(stage: Stage, position: string, behind: OutputEvaluation, speaker: Reporter): string {
  const { evaluation, locale, words } = speaker;
  const { build } = applyChanges(evaluation.build, { [`${stage.id}.selected`]: position });
  return build
    ? figureFrom(gearFigures, evaluate(build), { figure: "reduction", of: behind.id }, { locale, words })
    : "";
}

function lanesOf({ stage, lever }: LineStage, behind: OutputEvaluation | undefined, speaker: Reporter): SaidLane[] {
  const { build, mode } = speaker.evaluation;
  const isSet = build.modes?.find(({ id }) => id === mode)?.positions[stage.id] !== undefined;
  return (lever?.positions ?? []).map((position) => {
    const { id, label = id, released } = position;
    const stands = position === lever!.stands;
    return {
      id,
      label,
      stands,
      total: released ? speaker.words.none : behind ? laneTotal(stage, id, behind, speaker) : "",
      changes: isSet ? undefined : { [`${stage.id}.selected`]: id },
    };
  });
}

const said = (cell: Pick<SaidCell, "key" | "name" | "heard"> & Partial<SaidCell>): SaidCell => ({
  pieces: [],
  notes: [],
  faults: [],
  lanes: [],
  lanesName: "",
  shaft: undefined,
  before: undefined,
  ...cell,
});

const nameOf = ({ label, id }: Stage): string => label ?? id;

function shaftOf(
  { step, turn, isEstablished, isDriven, lever }: LineStage,
  isLast: boolean,
  speaker: Reporter,
): SaidShaft | undefined {
  const { words, reports, writer } = speaker;
  if (!step || lever) return undefined;
  const text = isLast || !isDriven ? "" : writer.number(step.runningBounds);
  // Of a sense that nobody has established nothing is said: it would be heard of the turns.
  const way = isEstablished && turn ? (turn > 0 ? words.same : words.opposite) : "";
  const soFar = text && fill(reports.line.soFar, text);
  const heard = soFar && way ? fill(words.aside, soFar, way) : soFar || way;
  return { text, turn: isDriven ? turn : 0, isEstablished, heard };
}

function stageCell(one: LineStage, isLast: boolean, behind: OutputEvaluation | undefined, speaker: Reporter): SaidCell {
  const { words, reports, writer } = speaker;
  const { stage, step } = one;
  const name = nameOf(stage);
  // Who sees it sees the axle as well.
  const called = placeName(speaker, stage.id);
  const { notes, faults, told, pieces, counts } = ownOf(one, speaker);
  // What is not known exactly says what it can be.
  const bounds = step?.reduction.bounds;
  const isKnown = !bounds || bounds.isExact;
  const lanes = lanesOf(one, behind, speaker);
  const known = isKnown ? [] : [writer.number(bounds)];
  const heard = listed([counts, ...known, ...notes.slice(0, 1)].filter(Boolean), words);
  return said({
    key: stage.id,
    stage,
    name,
    pieces,
    notes: known.length ? [...known, ...notes] : notes,
    faults,
    lanes,
    lanesName: fill(reports.line.positions, called),
    shaft: shaftOf(one, isLast, speaker),
    heard: [heard ? fill(words.told, called, heard) : called, ...told].join(". "),
  });
}

function motorCell({ id, motor }: Strand, { writer, reports, words }: Reporter): SaidCell {
  const { label = reports.line.motor, kv } = motor!;
  const notes = kv === undefined ? [] : [`${writer.given(kv)}\u00a0kV`];
  return said({ key: `motor:${id}`, name: label, notes, heard: listed([label, ...notes], words) });
}

function splitCell({ id, split }: Strand, { reports: { line } }: Reporter): SaidCell {
  const text = split!.split?.kind === "differential" ? line.open : line.together;
  return said({ key: `split:${id}`, name: text, heard: text });
}

/** Wheels are told apart by their axles; who sees them sees the axle beside them. */
const wheelName = (axle: string, { evaluation, reports: { line }, words }: Reporter): string =>
  evaluation.outputs.length > 1 ? fill(words.told, line.wheel, axle) : line.wheel;

function wheelCell({ output, label }: OutputEvaluation, speaker: Reporter): SaidCell {
  const { writer, words } = speaker;
  const { line } = speaker.reports;
  const { id, wheel, axle } = output;
  const size = wheel?.loadedDiameter ?? wheel?.diameter;
  const name = size ? writer.given(size) : line.wheel;
  const notes = axle ? [axle === "spool" ? line.axleSpool : line.axleDifferential] : [];
  return said({
    key: `wheel:${id}`,
    name,
    notes,
    heard: listed([wheelName(label, speaker), ...(size ? [name] : []), ...notes], words),
  });
}

function totalOf(output: OutputEvaluation, { figure, words, reports: { line } }: Reporter): SaidLineTotal {
  const { id, label, standing, state } = output;
  const text = figure({ figure: "reduction", of: id });
  const verdict =
    standing === undefined
      ? ""
      : standing === "inside"
        ? fill(line.insideRange, figure({ figure: "range" }))
        : words[standing];
  const told = state === "driven" ? fill(line.total, text) : text;
  const heard = fill(words.told, label, verdict ? fill(words.aside, told, verdict) : told);
  return { output: id, label, text, standing, verdict, heard };
}

/** The stages that could not be read, with the reasons. */
type Broken = ReadonlyMap<string, string>;

/** A stage that cannot be read: nothing is known behind it. */
const brokenCell = ({ stage }: LineStage, why: string, speaker: Reporter): SaidCell => {
  const heard = fill(speaker.words.told, placeName(speaker, stage.id), why);
  return said({ key: stage.id, stage, name: nameOf(stage), faults: [why], heard });
};

/** The total of an output that waits for a stage. */
function waitingTotal({ id, label }: OutputEvaluation, stage: Stage, speaker: Reporter): SaidLineTotal {
  const { words, reports } = speaker;
  const text = fill(reports.line.waiting, placeName(speaker, stage.id));
  return {
    output: id,
    label,
    text,
    standing: undefined,
    verdict: "",
    heard: fill(words.told, label, text),
    isWaiting: true,
  };
}

/**
 * What `mw-drive-line` says: the drivetrain in the order of drive, shaft by shaft, with what stands on each.
 *
 * @param broken stages that could not be read, by id, and why: the line is broken there, and totals wait for them
 */
export function sayDriveLine(speaker: Reporter, broken: Broken = new Map()): SaidLine {
  const { evaluation, reports } = speaker;
  const cells = new Map<string, SaidCell>();
  const totals = new Map<string, SaidLineTotal>();
  const strandOf = (strand: Strand, before?: Stage): SaidStrand => {
    const { id, label = strand.output?.label, motor, stages, split, output } = strand;
    const behind = strandsOf([strand]).find((one) => one.output)?.output;
    let waiting = before;
    const cellOf = (one: LineStage, n: number): SaidCell => {
      const why = broken.get(one.stage.id);
      if (why !== undefined) {
        waiting ??= one.stage;
        return brokenCell(one, why, speaker);
      }
      const cell = stageCell(one, n === stages.length - 1 && !!output, behind, speaker);
      return waiting ? { ...cell, shaft: undefined } : cell;
    };
    const letIn = (cell: SaidCell, place: LinePlace, name = cell.name): SaidCell => ({
      ...cell,
      before: { place, name: fill(reports.line.before, name) },
    });
    const list = [
      ...(motor ? [motorCell(strand, speaker)] : []),
      ...stages.map((one, n) => letIn(cellOf(one, n), one.place, placeName(speaker, one.stage.id))),
      ...(split && strand.feeds.length ? [letIn(splitCell(strand, speaker), strand.end)] : []),
      ...(output ? [letIn(wheelCell(output, speaker), strand.end, wheelName(output.label, speaker))] : []),
    ];
    for (const cell of list) cells.set(cell.key, cell);
    const total = output && (waiting ? waitingTotal(output, waiting, speaker) : totalOf(output, speaker));
    if (total) totals.set(total.output, total);
    return { id, label: label ?? id, cells: list, feeds: strand.feeds.map((one) => strandOf(one, waiting)), total };
  };
  const strands = driveLineOf(evaluation).map((one) => strandOf(one));
  const { title, revision } = evaluation.build;
  const origin = [
    title ?? "",
    revision?.number === undefined ? "" : fill(reports.revision, writeCount(revision.number, speaker.locale)),
    revision?.date === undefined ? "" : dateText(revision.date, speaker.locale, "long"),
  ];
  const name = title ? fill(reports.line.nameOf, title) : reports.line.name;
  const isOpposed = evaluation.findings.some(({ code }) => code === "outputs-oppose");
  return {
    name,
    strands,
    cells,
    totals,
    faults: isOpposed ? [speaker.words.oppose] : [],
    origin: origin.filter(Boolean).join(" · "),
  };
}
