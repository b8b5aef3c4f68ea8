import type { Bounded } from "../exact/index.js";
import { fill, reportWords, type ReportWords } from "../languages/index.js";
import { stageText } from "./stage-text.js";
import type { Working } from "./working.js";
import { type Writing } from "./bare-writer.js";
import { Writer } from "./writer.js";

/** How a working is to be written: its own rounding, and English, where nothing else is said. */
export interface WorkingWriting extends Writing {
  readonly reports?: ReportWords | undefined;
}

/** One output's working as a table: its heads, a row a stage, the totals, and a sentence on what rounding would cost. */
export interface WorkingTable {
  readonly label: string;
  readonly heads: readonly string[];
  /** Stage, counts, exact, decimal, running product, the same rounded at every step. */
  readonly rows: readonly (readonly string[])[];
  /** The last of the rows, so many: what it all comes to. */
  readonly totals: number;
  readonly note: string;
}

function driftText(one: Working, writer: Writer, locale: string | undefined): string {
  const drift = one.drift!;
  const form = { percent: true } as const;
  // A rounding that hides it would say that there is none.
  const isHidden = writer.number(drift.abs(), form) === writer.number(drift.times(0), form);
  const own = isHidden ? new Writer({ locale, rounding: { maximumSignificantDigits: 1 } }) : writer;
  return own.number(drift, { ...form, sign: "always" });
}

function noteOf(one: Working, writer: Writer, reports: ReportWords): string {
  if (!one.total) return "";
  if (!one.stepwise || !one.total.isExact) return fill(reports.interval, one.label);
  return one.drift!.sign
    ? fill(reports.drift, one.label, driftText(one, writer, writer.locale))
    : fill(reports.noDrift, one.label);
}

/** A working as texts in a language. */
export function workingTable(one: Working, writing: WorkingWriting = {}): WorkingTable {
  const { reports = reportWords } = writing;
  const writer = new Writer({ ...writing, rounding: writing.rounding ?? one.rounding });
  const { words } = writer;
  const fraction = ({ low, high }: Bounded): string => {
    const [from, to] = [low, high].map((end) => end.toFraction().replace(/\/1$/, ""));
    return writer.range(from!, to!);
  };
  const rows = one.steps.map((step) => [
    step.label,
    stageText(step.stage, "arrow", writer),
    fraction(step.reduction),
    writer.number(step.reduction),
    step.runningText(writer),
    step.stepwise ? writer.number(step.stepwise) : "–",
  ]);
  const { total, stepwise, open, straightOn } = one;
  const head = (remark: string): string => (open ? fill(words.aside, words.total, remark) : words.total);
  const last = [total, straightOn].flatMap((value, n): string[][] =>
    value
      ? [
          [
            head(n ? words.straightOn : words.locked),
            "",
            fraction(value),
            writer.number(value),
            "",
            n ? "" : stepwise ? writer.number(stepwise) : "–",
          ],
        ]
      : [],
  );
  return {
    label: one.label,
    heads: [words.stage, words.gears, reports.exactly, reports.decimal, reports.upToHere, reports.everyStep],
    rows: [...rows, ...last],
    totals: last.length,
    note: noteOf(one, writer, reports),
  };
}

/** A cell longer than this stands out of its column: padding all others to it would fill pages with blanks. */
const widest = 60;

/** The working as plain text, columns aligned. */
export const toText = (workings: readonly Working[], writing?: WorkingWriting): string =>
  workings
    .map((one) => {
      const { label, heads, rows, note } = workingTable(one, writing);
      const all = [heads, ...rows];
      const widths = heads.map((_, n) =>
        all.reduce((most, row) => (row[n]!.length > widest ? most : Math.max(most, row[n]!.length)), 0),
      );
      const lines = all.map((row) =>
        row
          .map((cell, n) => (n < 2 ? cell.padEnd(widths[n]!) : cell.padStart(widths[n]!)))
          .join("  ")
          .trimEnd(),
      );
      return [label, ...lines, note].filter(Boolean).join("\n");
    })
    .join("\n\n");

/** The working as Markdown tables. */
export function toMarkdown(workings: readonly Working[], writing?: WorkingWriting): string {
  const safe = (text: string): string => text.replace(/[\\`*_{}[\]<>()#+!|~-]/g, "\\$&");
  const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  return workings
    .map((one) => {
      const { label, heads, rows, note } = workingTable(one, writing);
      return [
        `**${safe(label)}**`,
        "",
        line(heads.map(safe)),
        line(["---", "---", "---:", "---:", "---:", "---:"]),
        ...rows.map((row) => line(row.map(safe))),
        ...(note ? ["", safe(note)] : []),
      ].join("\n");
    })
    .join("\n\n");
}

/** The working as HTML tables, without styles or scripts. */
export function toHtml(workings: readonly Working[], writing?: WorkingWriting): string {
  const safe = (text: string): string => text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
  const row = (cells: readonly string[], tag: string): string =>
    `<tr>${cells.map((cell) => `<${tag}>${safe(cell)}</${tag}>`).join("")}</tr>`;
  return workings
    .map((one) => {
      const { label, heads, rows, note } = workingTable(one, writing);
      const body = rows.map((cells) => row(cells, "td")).join("");
      const caption = `<caption>${safe(label)}</caption>`;
      return `<table>${caption}<thead>${row(heads, "th")}</thead><tbody>${body}</tbody></table>${note && `<p>${safe(note)}</p>`}`;
    })
    .join("\n");
}
