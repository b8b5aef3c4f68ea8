import type { OutputEvaluation } from "../evaluate/index.js";
import { fill } from "../languages/index.js";
import { stageText } from "../report/index.js";
import type { Block, BlockRow, BlockTable } from "./block.js";
import { dateText } from "./part-text.js";
import { meshRows } from "./card-mesh.js";
import { turnRows } from "./card-turns.js";
import { warningsOf } from "./card-warnings.js";
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
  /** How a mesh is set; nothing where none is. */
  readonly setting: string;
  /** How the turns are counted. */
  readonly counting: readonly string[];
  readonly misfits: readonly string[];
  /** Nominal boxes, and what a full pack is too much for. */
  readonly warnings: readonly string[];
  readonly cautions: readonly string[];
}

function gearRows(speaker: Reporter, outputs: readonly OutputEvaluation[]): BlockRow[] {
  const { writer, words } = speaker;
  const seen = new Set<string>();
  const ways = outputs.map(({ steps }) => new Set(steps.map(({ stage }) => stage)));
  return outputs.flatMap(({ label, steps }) =>
    steps.flatMap(({ stage }): BlockRow[] => {
      if (seen.has(stage.id)) return [];
      seen.add(stage.id);
      const name = placeName(speaker, stage.id);
      // Who fits it wants the axle said, though only one bears such a label.
      const isTold = name !== (stage.label ?? stage.id) || ways.every((way) => way.has(stage));
      return [{ head: isTold ? name : fill(words.told, label, name), texts: [stageText(stage, "arrow", writer)] }];
    }),
  );
}

/** What `mw-bench-card` says: what to fit, how to set it, and how to check it by hand. */
export function sayCard(speaker: Reporter): SaidCard {
  const { evaluation, reports, locale, writer } = speaker;
  const { build, outputs } = evaluation;
  const { revision } = build;
  const turns = outputs.flatMap((output) => turnRows(speaker, output));
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
  const setting = build.mounts?.length ? reports.tightest : "";
  const counting = byHand.rows.length ? [reports.howToCount, reports.oneOff] : [];
  const [wrong, warnings] = [misfits(speaker), warningsOf(speaker)];
  return {
    title: build.title ?? reports.card,
    published: [
      revision?.number && fill(reports.revision, writer.given(revision.number)),
      revision?.date && dateText(revision.date, locale, "long"),
    ]
      .filter(Boolean)
      .join(", "),
    ...{ gears, mesh, turns: byHand, setting, counting, misfits: wrong, warnings, cautions: reports.cautions },
    tables: [gears, mesh, byHand].filter(({ rows }) => rows.length),
    notes: [...(setting ? [setting] : []), ...wrong, ...warnings, ...counting],
  };
}
