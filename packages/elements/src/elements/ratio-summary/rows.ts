import type { OutputEvaluation } from "@meshwright/calc/evaluate";

/** One line of the summary: a stage, or several of the same name on different ways, or a group's subtotal. */
export interface Row {
  readonly label: string;
  readonly group: string | undefined;
  readonly subtotal: boolean;
  /** The stage on each output's way, by the output's place. */
  readonly stages: (string | undefined)[];
}

/** The stages of several outputs side by side: what they share once, what is called the same in one line. */
export function rowsOf(outputs: readonly OutputEvaluation[]): readonly Row[] {
  const rows: Row[] = [];
  outputs.forEach(({ steps }, n) => {
    let at = 0;
    for (const { stage, group } of steps) {
      const label = stage.label ?? stage.id;
      const fits = (row: Row, place: number): boolean =>
        place >= at &&
        !row.stages[n] &&
        (row.stages.includes(stage.id) || (row.label === label && row.group === group && n > 0 && !shared(row)));
      const found = rows.findIndex(fits);
      const row: Row = found < 0 ? { label, group, subtotal: false, stages: [] } : rows[found]!;
      row.stages[n] = stage.id;
      if (found < 0) rows.splice(at, 0, row);
      at = (found < 0 ? at : found) + 1;
    }
  });
  for (const group of new Set(rows.map((row) => row.group))) {
    const own = rows.filter((row) => row.group === group);
    // One stage alone is its own subtotal, and so is everything.
    if (group && own.length > 1 && own.length < rows.length)
      rows.splice(rows.lastIndexOf(own[own.length - 1]!) + 1, 0, { label: group, group, subtotal: true, stages: [] });
  }
  return rows;
}

const shared = (row: Row): boolean => new Set(row.stages).size < row.stages.length;
