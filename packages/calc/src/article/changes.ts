import { spotOf } from "../drivetrain/index.js";
import { changeOf, type OutputChange } from "../evaluate/index.js";
import type { Bounded } from "../exact/index.js";
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

/** Another version that all are held against. */
export type Against = Column;

/** What a figure is in another build, or that it has no such thing; a dash where it says too little for it. */
function figureIn({ label, speaker: { evaluation, figure, reports } }: Column, query: QueryText): string {
  const { of } = query;
  if (typeof of === "string" && !evaluation.output(of) && spotOf(evaluation.build, of) === undefined)
    return fill(reports.lacking, label);
  try {
    return figure(query);
  } catch {
    return "–";
  }
}

const changeShare = ({ writer }: Reporter, share: Bounded): string =>
  writer.number(share, { percent: true, sign: "exceptZero" });

/** Group against group, of one output: by how much its reduction is another than that of the other build, and by the middle of both. */
function groupRows(
  id: string,
  columns: readonly Column[],
  against: Against,
  { reports, words }: Reporter,
): ChangeRow[] {
  const groupsIn = ({ evaluation }: Reporter) =>
    new Map(
      (evaluation.output(id)?.groups ?? []).flatMap(({ group, reduction }) => (group ? [[group, reduction]] : [])),
    );
  const before = groupsIn(against.speaker);
  const after = columns.map(({ speaker }) => groupsIn(speaker));
  const names = [...new Set([before, ...after].flatMap((groups) => [...groups.keys()]))];
  return names.flatMap((name) =>
    (["reduction", "midpoint"] as const).map((measure): ChangeRow => ({
      head: fill(words.told, name, reports[measure]),
      texts: columns.map(({ label, speaker }, n) => {
        const [was, now] = [before.get(name), after[n]!.get(name)];
        if (!was || !now) return fill(reports.lacking, was ? label : against.label);
        return changeShare(speaker, changeOf(now.over(was).bounds)[measure]);
      }),
    })),
  );
}

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
 * @param against another version that the changes are counted from, group by group too; the published one where none is given
 */
export function sayChanges(
  now: Reporter,
  published: Reporter,
  columns: readonly Column[],
  against?: Against,
): SaidChanges {
  const { reports, words, evaluation } = now;
  const { build, outputs } = evaluation;
  // The other build may have no such output or stage; of the versions of this one that would be a fault.
  const text = (column: Column, query: QueryText): string =>
    column === against ? figureIn(column, query) : column.speaker.figure(query);
  const row = (head: string, query: QueryText, word?: QueryText): ChangeRow => ({
    head,
    texts: columns.map((column) => text(column, query)),
    ...(word && { words: columns.map((column) => text(column, word)) }),
  });
  /** What changed of one output; a version that the builds do not list themselves is held against them here. */
  const changed = (id: string, head: string, measure: string, name: keyof Omit<OutputChange, "id">): ChangeRow => {
    if (!against) return row(head, { figure: "change", of: id, measure });
    const of = ({ evaluation: one }: Reporter) => one.output(id)?.[measure === "travel" ? "travel" : "reduction"];
    const before = of(against.speaker);
    return {
      head,
      texts: columns.map(({ label, speaker }) => {
        const after = of(speaker);
        if (!before || !after) return fill(reports.lacking, before ? label : against.label);
        return changeShare(speaker, changeOf(after.over(before).bounds)[name]);
      }),
    };
  };
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
        fill(reports.fit, placeName(now, stage)),
        // All in one unit, whichever version says another.
        { figure: "centre", of: stage, unit: build.lengths ?? "mm" },
        { figure: "fit", of: stage },
      ),
    ),
    ...(build.parts?.length
      ? [
          {
            head: reports.cost,
            cost: true,
            texts: columns.map(({ speaker }) => (speaker === against?.speaker ? "–" : costText(published, speaker))),
          },
        ]
      : []),
  ];
  const groups: ChangeGroup[] = [
    { rows: first },
    ...outputs.map(({ id, label, output }) => ({
      head: against ? fill(reports.against, label, against.label, words.total) : fill(reports.changedBy, label),
      rows: [
        ...measures.map(([measure, name]) => changed(id, reports[name], measure, name)),
        ...(output.wheel ? [changed(id, reports.travelChange, "travel", "reduction")] : []),
        ...(against ? groupRows(id, columns, against, now) : []),
      ],
    })),
  ];
  const heads = [total, ...columns.map(({ label }) => label)];
  const notes = [reports.fourNames, ...(speeds ? [reports.ideal, reports.cautions[0]!] : [])];
  const tables = groups.map(({ head, rows }): BlockTable => ({ caption: head, heads, rows }));
  return { heads, groups, tables, notes };
}
