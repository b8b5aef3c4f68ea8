import { readFileSync } from "node:fs";
import { it } from "vitest";
import { partsFromSheet, readSheet, questionText } from "../../src/parts/index.js";
it("x", () => {
  for (const name of (process.env.S ?? "untidy.csv").split(" ")) {
    const { rows, encoding, separator } = readSheet(readFileSync(new URL(`sheets/${name}`, import.meta.url)));
    const read = partsFromSheet(rows);
    console.log(name, encoding, JSON.stringify(separator), read.parts.length, read.columns.map((c) => `${c.head}=${c.field}/${c.why}${c.unit ? "/" + c.unit : ""}`).join(", "));
    console.log(read.passed.map((p) => `${p.line} ${p.code} ${p.text}`).join("\n"));
    read.parts.slice(0, 30).forEach((p, n) => console.log(read.rows[n]!.line, JSON.stringify(p), "\n     ", read.questions.filter((q) => q.row === read.rows[n]!.row).map((q) => `${q.key} ${q.code} ${q.guess ?? ""} ${q.taken}`).join("; ")));
    console.log(read.questions.filter((q) => q.key.startsWith("column")).map((q) => questionText(q)).join("\n"));
  }
});
