import type { OutputEvaluation } from "../evaluate/index.js";
import type { Stage } from "../stages/index.js";

/** One line of the summary: a stage, or several of the same name on different ways, or a group's subtotal. */
export interface SummaryRow {
  readonly label: string;
  readonly group: string | undefined;
  readonly subtotal: boolean;
  /** The stage on each output's way, by the output's place. */
  readonly stages: (Stage | undefined)[];
}

const isShared = ({ stages }: SummaryRow): boolean => new Set(stages).size < stages.length;
const nameOf = (label: string, group: string | undefined): string => JSON.stringify([label, group]);

/** Rows by some name, in their order; what stands before a place is forgotten as the place moves on. */
class Waiting {
  readonly #lists = new Map<string, number[]>();

  add(name: string, place: number): void {
    const list = this.#lists.get(name);
    if (list) list.push(place);
    else this.#lists.set(name, [place]);
  }

  /** The first from a place on. */
  from(name: string, place: number): number {
    const list = this.#lists.get(name);
    if (!list) return Infinity;
    let passed = 0;
    while (passed < list.length && list[passed]! < place) passed++;
    list.splice(0, passed);
    return list[0] ?? Infinity;
  }
}

/** One output's stages beside those that have their rows: found again by themselves, or by what they are called. */
function beside(rows: readonly SummaryRow[], { steps }: OutputEvaluation, n: number): SummaryRow[] {
  const [stages, names] = [new Waiting(), new Waiting()];
  rows.forEach((row, place) => {
    for (const stage of new Set(row.stages)) if (stage) stages.add(stage.id, place);
    if (!isShared(row)) names.add(nameOf(row.label, row.group), place);
  });
  const result: SummaryRow[] = [];
  let at = 0;
  for (const { stage, group } of steps) {
    const label = stage.label ?? stage.id;
    const found = Math.min(stages.from(stage.id, at), names.from(nameOf(label, group), at));
    if (found < Infinity) {
      result.push(...rows.slice(at, found + 1));
      at = found + 1;
    } else result.push({ label, group, subtotal: false, stages: [] });
    result.at(-1)!.stages[n] = stage;
  }
  result.push(...rows.slice(at));
  return result;
}

/** The stages of several outputs side by side: what they share once, what is called the same in one line. */
export function summaryRows(outputs: readonly OutputEvaluation[]): readonly SummaryRow[] {
  let rows: SummaryRow[] = [];
  outputs.forEach((output, n) => (rows = beside(rows, output, n)));
  // One stage alone is its own subtotal, and so is everything.
  const groups = new Map<string, { count: number; last: number }>();
  rows.forEach(({ group }, last) => {
    if (group) groups.set(group, { count: (groups.get(group)?.count ?? 0) + 1, last });
  });
  return rows.flatMap((row, n) => {
    const { count, last } = (row.group && groups.get(row.group)) || { count: 0, last: -1 };
    if (last !== n || count < 2 || count === rows.length) return row;
    return [row, { label: row.group!, group: row.group, subtotal: true, stages: [] }];
  });
}
