import type { Evaluation, Step } from "../evaluate/index.js";
import type { Bounded } from "../exact/index.js";
import { fill } from "../languages/index.js";
import type { Layout, PlacedMount, PlacedWall } from "../layout/index.js";
import { driveText, writeCount } from "../report/index.js";
import { listed } from "./block.js";
import type { Reporter } from "./speaker.js";

/** A length of the drawing: what sets a mesh is shown to the hundredth of a millimetre. A limit is rounded inward. */
export function drawnLength(
  { evaluation: { build }, writer }: Reporter,
  length: Bounded,
  limit?: "from" | "to",
): string {
  const { lengths: unit = "mm" } = build as { readonly lengths?: string };
  return limit ? writer.lengthLimit(length, limit, { unit }, 2, 1) : writer.length(length, { unit }, 2, 1);
}

/** Why a pair does not fit its mount, in a sentence; nothing where it does. */
export function verdictOf(speaker: Reporter, { short, from, to, span, pivot }: PlacedMount): string {
  const { reports } = speaker;
  if (!short) return "";
  const [need, by] = [drawnLength(speaker, span.centre), drawnLength(speaker, short.by)];
  if (short.end === "hole") return fill(reports.noHole, need, by);
  const [ends, begins] = pivot ? [reports.mountEnds, reports.mountBegins] : [reports.slotEnds, reports.slotBegins];
  return short.end === "to"
    ? fill(ends, need, drawnLength(speaker, to!, "to"), by)
    : fill(begins, need, drawnLength(speaker, from!, "from"), by);
}

/** What there is between the tips and a wall. */
export function wallText(speaker: Reporter, { label, gap, needed }: PlacedWall): string {
  const { reports, words } = speaker;
  const clear = drawnLength(speaker, gap);
  const text = needed.low.sign ? fill(reports.gapNeeds, clear, drawnLength(speaker, needed)) : fill(reports.gap, clear);
  return label === undefined ? text : fill(words.told, label, text);
}

/**
 * The stages to draw, in the order of drive.
 *
 * @param of ids of an output or of stages, with blanks or commas between; the headline's where not said
 */
export function stepsToDraw({ outputs, build }: Evaluation, of: string | null | undefined): readonly Step[] {
  const asked = of?.split(/[\s,]+/).filter(Boolean) ?? [];
  const whole =
    outputs.find((output) => output.id === (asked[0] ?? build.headline)) ?? (asked.length ? undefined : outputs[0]);
  if (whole) return whole.steps;
  const steps = new Map(outputs.flatMap((output) => output.steps.map((step) => [step.stage.id, step])));
  return [...steps.values()].filter((step) => asked.includes(step.stage.id));
}

/** What drawn stages hang on: as it is lettered at either end, and as it is told. */
export interface DrawnEnds {
  readonly from: string;
  readonly to: string;
  readonly told: string;
}

/**
 * What the first and the last of some stages that are drawn hang on: the motor or the stage before; the stages behind, or the
 * axle.
 *
 * @param of as `mw-train-drawing` has it
 */
export function drawnEnds(
  { evaluation, reports, words, locale }: Reporter,
  first: string,
  last: string,
  of?: string | null,
): DrawnEnds {
  const passing = evaluation.outputs.filter(({ steps }) => steps.some(({ stage }) => stage.id === last));
  const asked = passing.filter(({ id }) => id === of);
  const outputs = asked.length ? asked : passing;
  const beside = (id: string, by: 1 | -1): string[] => [
    ...new Set(
      outputs.map(({ steps, label }) => {
        const at = steps.findIndex(({ stage }) => stage.id === id);
        const stage = steps[at + by]?.stage;
        return stage ? (stage.label ?? stage.id) : by < 0 ? reports.line.motor : label;
      }),
    ),
  ];
  const [before, behind] = [beside(first, -1), beside(last, 1)].map((names) => listed(names, words)) as [
    string,
    string,
  ];
  const [from, to] = [fill(reports.comesFrom, before), fill(reports.goesTo, behind)];
  return {
    from: before === reports.line.motor ? before : from,
    to,
    told: `${from.charAt(0).toLocaleUpperCase(locale)}${from.slice(1)}, ${to}.`,
  };
}

/** What `mw-train-drawing` says in words. */
export interface SaidDrawing {
  /** Its name: which gears drive which. */
  readonly title: string;
  /** All that it shows, for those who listen. */
  readonly told: string;
  /** Why pairs do not fit. */
  readonly verdicts: readonly string[];
  /** What has no place in it; empty where everything has. */
  readonly rest: string;
}

/** What `mw-train-drawing` says in words. */
export function sayDrawing(speaker: Reporter, { spans, mounts, notDrawn }: Layout): SaidDrawing {
  const { reports, words, locale, writer } = speaker;
  const count = (teeth: number): string => writeCount(teeth, locale);
  const told = spans.map(({ driver, driven, centre, by }) =>
    fill(
      by === "mesh" && driver.turns && driven.turns && driver.turns * driven.turns < 0 ? reports.meshes : reports.runs,
      count(driver.teeth),
      count(driven.teeth),
      drawnLength(speaker, centre),
    ),
  );
  for (const mount of mounts) {
    const { from, to, short, walls } = mount;
    if (from && to)
      told.push(fill(reports.centresFrom, drawnLength(speaker, from, "from"), drawnLength(speaker, to, "to")));
    if (short) told.push(verdictOf(speaker, mount));
    for (const wall of walls) told.push(`${wallText(speaker, wall)}.`);
  }
  const rest = [...new Set(notDrawn.map(({ label, id }) => label ?? id))];
  const counts = spans.map(({ driver, driven }) =>
    driveText(
      [driver, driven].map(({ teeth }) => count(teeth)),
      "heard",
      writer,
    ),
  );
  return {
    title: fill(reports.drawing, listed(counts, words)),
    told: told.join(" "),
    verdicts: mounts.map((mount) => verdictOf(speaker, mount)).filter(Boolean),
    rest: rest.length ? fill(reports.notDrawn, listed(rest, words)) : "",
  };
}
