// Reads a table of parts and tells what was understood. Tables are split by d3-dsv; what they mean is calc's to say.
import { csvParseRows, tsvParseRows } from "../d3-dsv/index.js";
import { partsFromRows } from "../calc/parts/index.js";

const [file, table, state, findings, columns, parts] = ["file", "table", "state", "findings", "columns", "parts"].map(
  (id) => document.getElementById(id),
);

const item = (tag, ...texts) => {
  const element = document.createElement(tag);
  element.append(...texts);
  return element;
};

/** Tabs where the heads have any, as a spreadsheet gives them; commas else. */
const rowsOf = (text) =>
  (text.split("\n", 1)[0].includes("\t") ? tsvParseRows : csvParseRows)(text.replace(/^\uFEFF/, ""));

function read() {
  const [heads, ...rows] = rowsOf(table.value.trim());
  findings.replaceChildren();
  columns.tBodies[0].replaceChildren();
  parts.value = "";
  state.textContent = "";
  if (!heads) return;
  const read = partsFromRows(heads, rows);
  const lines = new Set(
    read.findings.filter(({ severity }) => severity === "error").map(({ pointer }) => pointer.split("/")[1]),
  );
  state.textContent = `${read.parts.length} parts understood, ${lines.size} lines not.`;
  findings.append(...read.findings.map(({ message }) => item("li", message)));
  for (const { column, field, unit } of read.understood)
    columns.tBodies[0].append(
      item("tr", item("td", column), item("td", field ? `${field}${unit ? `, in ${unit}` : ""}` : "not used")),
    );
  parts.value = JSON.stringify(read.parts, null, 2);
}

table.addEventListener("input", read);
file.addEventListener("change", async () => {
  table.value = (await file.files[0]?.text()) ?? table.value;
  read();
});
