import type { OutputEvaluation } from "../evaluate/index.js";
import { fill } from "../languages/index.js";
import { stageText } from "../report/index.js";
import type { Block, BlockRow } from "./block.js";
import { said, type Attributes } from "./said.js";
import { isUnsaid, outputsFor, type Speaker, type Unsaid } from "./speaker.js";
import { standingText } from "./standings.js";
import { summaryRows } from "./summary-rows.js";

/** What `mw-ratio-summary` says. */
export interface SaidSummary extends Block {
  readonly outputs: readonly OutputEvaluation[];
  /** Where each output stands in the range, for those that it is meant for, by their ids. */
  readonly standings: ReadonlyMap<string, string>;
  /** Both ends of the range as they were given, and the sentence that tells it. */
  readonly range: { readonly ends: readonly [from: string, to: string]; readonly sentence: string } | undefined;
  /** Each output's exact fraction, of the drive locked together. */
  readonly fractions: readonly string[];
}

const capital = (text: string, locale: string): string => text.charAt(0).toLocaleUpperCase(locale) + text.slice(1);

/** The totals: one row, or two where a differential is open. */
function totalRows({ words, figure }: Speaker, outputs: readonly OutputEvaluation[]): BlockRow[] {
  const open = outputs.some(({ isOpen }) => isOpen);
  const row = (drive: "locked" | "straight-on", remark: string): BlockRow => ({
    head: open ? fill(words.aside, words.total, remark) : words.total,
    kind: "total",
    texts: outputs.map(({ id }) => figure({ figure: "reduction", of: id, drive })),
  });
  return [row("locked", words.locked), ...(open ? [row("straight-on", words.straightOn)] : [])];
}

/** What `mw-ratio-summary` says: the stages of each output, the groups' subtotals, the totals, and where they stand. */
export function saySummary(speaker: Speaker, attributes: Attributes): SaidSummary | Unsaid {
  const { evaluation, words, locale, figure, writer } = speaker;
  const outputs = outputsFor(evaluation, said(attributes, "of"));
  if (isUnsaid(outputs)) return outputs;
  const labels = outputs.map(({ label }) => label);
  const groups = outputs.map((output) => new Map(output.groups.map(({ group, reduction }) => [group, reduction])));
  const reductions = outputs.map(({ steps }) => new Map(steps.map(({ stage, reduction }) => [stage, reduction])));
  const rows = summaryRows(outputs).map(({ label, group, subtotal, stages }): BlockRow => {
    const texts = outputs.map((_, n) => {
      const stage = stages[n];
      const reduction = subtotal ? groups[n]!.get(group!) : stage && reductions[n]!.get(stage);
      return reduction && writer.number(reduction.bounds);
    });
    if (subtotal) return { head: capital(label, locale), kind: "subtotal", texts };
    const counts = stages.flatMap((stage) => (stage ? stageText(stage, "arrow", writer) : []));
    return { head: label, beside: [...new Set(counts)].join(" · "), texts };
  });
  const standings = outputs
    .filter(({ standing, bounds }) => standing && bounds)
    .map((output): [string, string] => [output.id, standingText(speaker, output)]);
  const { target } = evaluation.build;
  return {
    outputs,
    tables: [{ heads: [words.stage, ...labels], rows: [...rows, ...totalRows(speaker, outputs)] }],
    notes: [],
    standings: new Map(standings),
    range: target && {
      ends: [writer.given(target.from), writer.given(target.to)],
      sentence: fill(words.rangeIs, figure({ figure: "range" })),
    },
    // Behind an open differential it is one of two totals that stand above.
    fractions: outputs.map(({ id, label, isOpen }) =>
      fill(
        words.told,
        isOpen ? fill(words.aside, label, words.locked) : label,
        figure({ figure: "fraction", of: id, drive: "locked" }),
      ),
    ),
  };
}
