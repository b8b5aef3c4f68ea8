import type { OutputEvaluation } from "../evaluate/index.js";
import { fill } from "../languages/index.js";
import { stageText } from "../report/index.js";
import type { Block, BlockRow, BlockTable } from "./block.js";
import { dateText } from "./part-text.js";
import { misfits, placeName } from "./places.js";
import type { Reporter } from "./speaker.js";

/** What `mw-bench-card` says: tables with room to write what was measured. */
export interface SaidCard extends Block {
  readonly title: string;
  /** Which revision, and of what day; empty where the build does not say. */
  readonly published: string;
  readonly gears: BlockTable;
  readonly mesh: BlockTable;
  readonly turns: BlockTable;
  readonly misfits: readonly string[];
  readonly cautions: readonly string[];
}

function gearRows({ writer, words }: Reporter, outputs: readonly OutputEvaluation[]): BlockRow[] {
  const seen = new Set<string>();
  const ways = outputs.map(({ steps }) => new Set(steps.map(({ stage }) => stage)));
  return outputs.flatMap(({ label, steps }) =>
    steps.flatMap(({ stage }): BlockRow[] => {
      if (seen.has(stage.id)) return [];
      seen.add(stage.id);
      const name = stage.label ?? stage.id;
      const isShared = ways.every((way) => way.has(stage));
      return [{ head: isShared ? name : fill(words.told, label, name), texts: [stageText(stage, "arrow", writer)] }];
    }),
  );
}

function meshRows({ evaluation, reports, words, writer, figure }: Reporter): BlockRow[] {
  const mounts = evaluation.build.mounts ?? [];
  return mounts.flatMap(({ stage, opening }): BlockRow[] => {
    // One mount is the only one; of several each says whose it is.
    const head = (text: string): string =>
      mounts.length > 1 ? fill(words.told, placeName(evaluation, stage), text) : text;
    const row = (text: string, name: string): BlockRow => ({
      head: head(text),
      texts: [figure({ figure: name, of: stage })],
    });
    return [
      row(reports.centreDistance, "centre"),
      row(reports.slot, "slot"),
      ...(opening
        ? [{ head: head(reports.opening), texts: [writer.given(opening)] }, row(reports.backlash, "backlash")]
        : []),
    ];
  });
}

/** What `mw-bench-card` says: what to fit, how to set it, and how to check it by hand. */
export function sayCard(speaker: Reporter): SaidCard {
  const { evaluation, reports, locale, figure } = speaker;
  const { build, outputs } = evaluation;
  const { revision } = build;
  const turns = outputs
    .filter(({ reduction }) => reduction)
    .flatMap(({ id, label, output }): BlockRow[] => [
      { head: fill(reports.bothTurn, label), texts: [figure({ figure: "hand-turns", of: id, over: "10" })] },
      ...(output.axle === "differential"
        ? [
            {
              head: fill(reports.oneHeld, label),
              texts: [figure({ figure: "hand-turns", of: id, over: "10", measure: "held" })],
            },
          ]
        : []),
    ]);
  const table = (head: string, rows: readonly BlockRow[]): BlockTable => ({
    caption: head,
    heads: [head, reports.should, reports.measured],
    rows,
  });
  const [gears, mesh, byHand] = [
    table(reports.gearsToFit, gearRows(speaker, outputs)),
    table(reports.mesh, meshRows(speaker)),
    table(reports.byHand, turns),
  ];
  const wrong = misfits(speaker);
  return {
    title: build.title ?? reports.card,
    published: [
      revision?.number && fill(reports.revision, revision.number),
      revision?.date && dateText(revision.date, locale, "long"),
    ]
      .filter(Boolean)
      .join(", "),
    ...{ gears, mesh, turns: byHand, misfits: wrong, cautions: reports.cautions },
    tables: [gears, mesh, byHand].filter(({ rows }) => rows.length),
    notes: [...wrong, reports.howToCount],
  };
}
