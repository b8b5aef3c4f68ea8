// Measured figures as a page that stays in the repository.
import { writeFormatted } from "./formatted.js";

/** The middle one of several measurements. */
export const median = (values) => values.toSorted((a, b) => a - b)[values.length >> 1];

/** A figure, short. */
export const number = (value) => Number(value.toPrecision(4)).toLocaleString("en");

/** Writes a table of figures to a file. `wanted` has for some of them a sense ("at most", "at least") and a limit. */
export async function writeFigures(file, { command, note }, figures, wanted) {
  const rows = Object.entries(figures).map(([name, value]) => {
    const [sense, limit] = wanted[name] ?? [];
    const met = sense === undefined ? "" : (sense === "at most" ? value <= limit : value >= limit) ? "yes" : "no";
    return `| ${name} | ${number(value)} | ${sense === undefined ? "" : `${sense} ${number(limit)}`} | ${met} |`;
  });
  const text = [
    "# Figures",
    "",
    `Written by \`${command}\`: one run on one machine, shared and noisy. ${note}`,
    "",
    "| figure | measured | wanted | met |",
    "| --- | ---: | ---: | --- |",
    ...rows,
  ].join("\n");
  await writeFormatted(file, text, "markdown");
}
