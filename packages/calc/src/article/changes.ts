import { needsOf, orderOf } from "../parts/index.js";
import { fill } from "../languages/index.js";
import type { QueryText } from "../report/index.js";
import type { Block, BlockRow, BlockTable } from "./block.js";
import { partsOf, sumText } from "./part-text.js";
import { placeName } from "./places.js";
import type { Reporter } from "./speaker.js";

/** One version of a build: a column. */
export interface Column {
  readonly label: string;
  readonly speaker: Reporter;
}

/** One row of it, with a word of verdict under each figure where there is one. */
export interface ChangeRow extends BlockRow {
  readonly words?: readonly (string | undefined)[] | undefined;
  /** What is to be bought: it may take several lines. */
  readonly cost?: boolean;
}

/** Rows that belong together, under a head where they have one. */
export interface ChangeGroup {
  readonly head?: string;
  readonly rows: readonly ChangeRow[];
}

/** What `mw-change-table` says. */
export interface SaidChanges extends Block {
  readonly heads: readonly string[];
  readonly groups: readonly ChangeGroup[];
}

const measures = [
  ["reduction", "reduction"],
  ["wheel-speed", "wheelSpeed"],
  ["wheel-torque", "wheelTorque"],
  ["midpoint", "midpoint"],
] as const;

/** What the parts that a version needs, and the published one has not, cost: to buy, owned already, or none at all. */
function costText(published: Reporter, speaker: Reporter): string {
  const parts = partsOf(published.evaluation.build);
  const needs = ({ evaluation }: Reporter) => needsOf(evaluation.build, parts);
  const { buy, owned, missing, ...order } = orderOf(needs(published), needs(speaker));
  if (buy.length || missing.length) return sumText(order, speaker, missing.length);
  return owned.length ? speaker.reports.ownedAlready : "–";
}

/**
 * What `mw-change-table` says: versions of a build side by side, and what each changes against the published one: several
 * figures for one change, each with its own name.
 *
 * @param now the version that decides which rows there are
 * @param published what the others are held against
 * @param columns the versions shown, in their order
 */
export function sayChanges(now: Reporter, published: Reporter, columns: readonly Column[]): SaidChanges {
  const { reports, words, evaluation } = now;
  const { build, outputs } = evaluation;
  const row = (head: string, query: QueryText, word?: QueryText): ChangeRow => ({
    head,
    texts: columns.map(({ speaker }) => speaker.figure(query)),
    ...(word && { words: columns.map(({ speaker }) => speaker.figure(word)) }),
  });
  const pair = outputs.length > 1 ? evaluation.compare() : undefined;
  // Behind an open differential a total is what goes along the road, and front against rear is of a locked drive: both are said.
  const open = outputs.some(({ isOpen }) => isOpen);
  const total = open ? fill(words.aside, words.total, words.straightOn) : words.total;
  const scope = pair?.of.output.wheel && pair.with.output.wheel ? "tyres" : "gears";
  const counted = scope === "tyres" ? words.tyres : words.gearsAlone;
  const speeds = build.battery && (build.motor ?? outputs.some(({ output }) => output.motor));
  const first: ChangeRow[] = [
    ...outputs.map(({ id, label }) =>
      row(
        label,
        { figure: "reduction", of: id, ...(open && { drive: "straight-on" }) },
        build.target && (build.target.output ?? id) === id ? { figure: "standing", of: id } : undefined,
      ),
    ),
    ...(pair ? [row(fill(reports.against, pair.of.label, pair.with.label, counted), { figure: "lead", scope })] : []),
    ...(speeds ? outputs.map(({ id, label }) => row(fill(reports.speed, label), { figure: "speed", of: id })) : []),
    ...(build.mounts ?? []).map(({ stage }) =>
      row(
        fill(reports.fit, placeName(evaluation, stage)),
        { figure: "centre", of: stage },
        { figure: "fit", of: stage },
      ),
    ),
    ...(build.parts?.length
      ? [{ head: reports.cost, cost: true, texts: columns.map(({ speaker }) => costText(published, speaker)) }]
      : []),
  ];
  const groups: ChangeGroup[] = [
    { rows: first },
    ...outputs.map(({ id, label, output }) => ({
      head: fill(reports.changedBy, label),
      rows: [
        ...measures.map(([measure, name]) => row(reports[name], { figure: "change", of: id, measure })),
        ...(output.wheel ? [row(reports.travelChange, { figure: "change", of: id, measure: "travel" })] : []),
      ],
    })),
  ];
  const heads = [total, ...columns.map(({ label }) => label)];
  const notes = [reports.fourNames, ...(speeds ? [reports.ideal, reports.cautions[0]!] : [])];
  const tables = groups.map(({ head, rows }): BlockTable => ({ caption: head, heads, rows }));
  return { heads, groups, tables, notes };
}
