import { working, workingTable, type WorkingTable } from "../report/index.js";
import type { Block } from "./block.js";
import { said, type Attributes } from "./said.js";
import { isUnsaid, outputsFor, type Reporter, type Unsaid } from "./speaker.js";

/** What `mw-working` says. */
export interface SaidWorking extends Block {
  readonly workings: readonly WorkingTable[];
}

/** What `mw-working` says: the arithmetic of each output, line by line, and what rounding at every step would cost. */
export function sayWorking(speaker: Reporter, attributes: Attributes): SaidWorking | Unsaid {
  const { evaluation, locale, words, reports } = speaker;
  const outputs = outputsFor(evaluation, said(attributes, "of"));
  if (isUnsaid(outputs)) return outputs;
  const wanted = new Set(outputs.map(({ id }) => id));
  const workings = working(evaluation)
    .filter(({ id }) => wanted.has(id))
    .map((one) => workingTable(one, { locale, words, reports }));
  return {
    workings,
    tables: workings.map(({ label, heads, rows, totals }) => ({
      caption: label,
      heads,
      rows: rows.map(([head, ...texts], n) => ({
        head: head!,
        texts,
        ...(n >= rows.length - totals && { kind: "total" as const }),
      })),
    })),
    notes: workings.flatMap(({ note }) => note || []),
  };
}
