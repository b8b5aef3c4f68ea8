import type { Bounded } from "../exact/index.js";
import type { Working } from "./working.js";
import { Writer, type Writing } from "./writer.js";

const heads = ["Stage", "Counts", "Exact", "Decimal", "Up to here", "Rounded at every step"] as const;

/** The table of one output's working: a row a stage, and the total. */
function rowsOf(one: Working, writer: Writer): string[][] {
  const exact = (value: Bounded): string =>
    value.isExact
      ? value.low.toFraction().replace(/\/1$/, "")
      : `${value.low.toFraction()} to ${value.high.toFraction()}`;
  const rows = one.steps.map(({ label, counts, reduction, running, stepwise }) => [
    label,
    counts,
    exact(reduction),
    writer.number(reduction),
    writer.number(running),
    stepwise ? writer.number(stepwise) : "",
  ]);
  if (one.total)
    rows.push([
      "Motor turns for one wheel turn",
      "",
      exact(one.total),
      writer.number(one.total),
      "",
      one.stepwise ? writer.number(one.stepwise) : "",
    ]);
  return rows;
}

const driftOf = (one: Working, writer: Writer): string =>
  one.drift?.sign
    ? `Rounding at every step would be ${writer.number(one.drift, { percent: true, sign: "always", digits: 3 })} off.`
    : "";

/** The working as plain text, columns aligned. */
export function toText(workings: readonly Working[], writing?: Writing): string {
  const writer = new Writer(writing);
  return workings
    .map((one) => {
      const rows = [[...heads], ...rowsOf(one, writer)];
      const widths = heads.map((_, n) => Math.max(...rows.map((row) => row[n]!.length)));
      const lines = rows.map((row) =>
        row
          .map((cell, n) => (n < 2 ? cell.padEnd(widths[n]!) : cell.padStart(widths[n]!)))
          .join("  ")
          .trimEnd(),
      );
      return [one.label, ...lines, driftOf(one, writer)].filter(Boolean).join("\n");
    })
    .join("\n\n");
}

/** The working as Markdown tables. */
export function toMarkdown(workings: readonly Working[], writing?: Writing): string {
  const writer = new Writer(writing);
  const safe = (text: string): string => text.replace(/[\\`*_{}[\]<>()#+!|~-]/g, "\\$&");
  const line = (cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
  return workings
    .map((one) =>
      [
        `**${safe(one.label)}**`,
        "",
        line(heads),
        line(["---", "---", "---:", "---:", "---:", "---:"]),
        ...rowsOf(one, writer).map((row) => line(row.map(safe))),
        ...(driftOf(one, writer) ? ["", safe(driftOf(one, writer))] : []),
      ].join("\n"),
    )
    .join("\n\n");
}

/** The working as HTML tables, without styles or scripts. */
export function toHtml(workings: readonly Working[], writing?: Writing): string {
  const writer = new Writer(writing);
  const safe = (text: string): string => text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
  const row = (cells: readonly string[], tag: string): string =>
    `<tr>${cells.map((cell) => `<${tag}>${safe(cell)}</${tag}>`).join("")}</tr>`;
  return workings
    .map(
      (one) =>
        `<table><caption>${safe(one.label)}</caption><thead>${row(heads, "th")}</thead><tbody>${rowsOf(one, writer)
          .map((cells) => row(cells, "td"))
          .join("")}</tbody></table>${driftOf(one, writer) && `<p>${safe(driftOf(one, writer))}</p>`}`,
    )
    .join("\n");
}
