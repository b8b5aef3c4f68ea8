import type { Part } from "../drivetrain/index.js";
import { findingOf, type Finding, type FindingCode, type FindingValues } from "../stages/index.js";
import { readParts } from "./part.js";

/** What a column was taken for. */
export interface UnderstoodColumn {
  readonly column: string;
  /** The field of a part, or undefined: the column is not used. */
  readonly field?: string;
  /** The unit that stands in the column's head. */
  readonly unit?: string;
}

/** Ordinary words for columns, spaces left out. A word that follows its field's name is one more name for it. */
const words =
  "id code partnumber item|name part description title|is what kind type category|stage forstage for fittedto|teeth toothcount z links starts|" +
  "driver driverteeth pinionteeth sun sunteeth|driven driventeeth spurteeth ring ringteeth|value ratio printedratio|module mod m|" +
  "diametralPitch dp|pitch|pressureAngle angle|shift profileshift|tipDiameter outsidediameter|bore hole|" +
  "outside sleeveoutside|diameter wheeldiameter tyrediameter|width facewidth|hub boss|facing|" +
  "circles hubholes holecircles holes|maker make manufacturer brand|price amount cost|currency|" +
  "checked pricechecked pricedate date|source shop supplier where|available availability instock stock|" +
  "pack packsize piecesperpack|owned own have|status state";

const kindWords: readonly (readonly [RegExp, string])[] = [
  [/sleeve/, "sleeve"],
  [/plate/, "plate"],
  [/hub/, "hub"],
  [/gear ?box/, "gearbox"],
  [/planet/, "planetary"],
  [/worm.*(set|and)\b/, "set"],
  [/worm.*(wheel|gear)/, "gear"],
  [/worm/, "worm"],
  [/pulley|sprocket/, "pulley"],
  [/belt|chain/, "belt"],
  [/wheel|tyre/, "wheel"],
  [/\bset\b|ring/, "set"],
  [/pinion/, "pinion"],
  [/spur/, "spur"],
  [/motor/, "motor"],
  [/battery|pack/, "battery"],
  [/gear|idler/, "gear"],
];

const plain = (text: string): string => text.toLowerCase().replace(/[^a-z0-9]+/g, "");
const lengths = ["pitch", "tipDiameter", "bore", "outside", "diameter", "width", "hub"];
const answersTo = (pattern: RegExp, text: string): boolean => pattern.test(text);

/** One cell as the fields that it stands for; text that cannot be understood goes on to the reader as it is. */
function cellOf(field: string, text: string, unit: string | undefined): Record<string, unknown> {
  if (field === "is")
    return { is: kindWords.find(([word]) => answersTo(word, text.toLowerCase()))?.[1] ?? text.toLowerCase() };
  if (field === "id") return { id: plainId(text) };
  if (field === "status" || field === "facing") return { [field]: text.toLowerCase() };
  if (field === "available")
    return {
      available:
        answersTo(/^(yes|y|true|in stock|available|1)$/i, text) ||
        (answersTo(/^(no|n|false|out of stock|0|discontinued)$/i, text) ? false : text),
    };
  if (field === "circles")
    return {
      circles: text.split(";").map((circle) => {
        const [, count, diameter] = /^\s*(\d+)\s*[x×]\s*(.+?)\s*$/.exec(circle) ?? [];
        return count ? { count, diameter: withUnit(diameter!, unit) } : circle;
      }),
    };
  if (field === "price") {
    const [, amount, currency] = /^([\d.]+)\s*([A-Z]{3})$/.exec(text) ?? [];
    return amount ? { amount, currency } : { amount: text };
  }
  if (field === "pitch") {
    const [, before, number, after] = /^(module|mod|m|dp)?\s*([\d.]+)\s*(dp)?$/i.exec(text) ?? [];
    if (number && (after || before)) return { [after || /^d/i.test(before!) ? "diametralPitch" : "module"]: number };
  }
  return { [field]: lengths.includes(field) ? withUnit(text, unit) : text };
}

const withUnit = (text: string, unit: string | undefined): string =>
  unit && /^[\d./]+$/.test(text) ? `${text} ${unit}` : text;
const plainId = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "")
    .replace(/^\d/, "part-$&");

/**
 * Parts from the rows of a table, such as a CSV file gives. Columns bear ordinary words in any order and case, with a unit in
 * brackets where cells have none. Every row becomes a part or is named in a finding, and what each column was taken for is
 * told.
 *
 * @param columns the heads
 * @param rows the cells of each row, as text; rows of empty cells are passed over
 * @returns findings point to `/row/column`, both counted from 0
 *
 * @example
 * const columns = ["Part number", "What", "Teeth", "Pitch", "Bore (mm)", "Colour"];
 * const rows = [["TERN-15", "Pinion", "15", "module 0.8", "5", "grey"], ["TERN-16", "Pinion", "sixteen", "32 DP", "5", "grey"]];
 * const { parts, understood, findings } = partsFromRows(columns, rows);
 * parts; // => [{ id: "tern-15", is: "pinion", teeth: 15, module: "0.8", bore: "5 mm" }]
 * understood[4]; // => { column: "Bore (mm)", field: "bore", unit: "mm" }
 * findings.map(({ code, at }) => [code, at]); // => [["column-unknown", "/-/5"], ["not-count", "/1/2"]]
 */
export function partsFromRows(
  columns: readonly string[],
  rows: readonly (readonly string[])[],
): { parts: Part[]; understood: UnderstoodColumn[]; findings: Finding[] } {
  const findings: Finding[] = [];
  const say = (severity: Finding["severity"], code: FindingCode, at: string, values: FindingValues) =>
    findings.push(findingOf(severity, "meaning", code, at, values));
  const names = new Map(
    words.split("|").flatMap((group) => {
      const all = group.split(" ");
      return all.map((word) => [plain(word), all[0]!] as const);
    }),
  );
  const taken = new Set<string>();
  const understood = columns.map((column, n): UnderstoodColumn => {
    const [, head, unit] = /^(.*?)(?:[([,]\s*(mm|cm|m|in|ft)\s*[)\]]?)?\s*$/i.exec(column) ?? [];
    const field = names.get(plain(head ?? column));
    if (!field) say("warning", "column-unknown", `/-/${n}`, { column });
    else if (taken.has(field)) say("warning", "column-twice", `/-/${n}`, { column });
    else {
      taken.add(field);
      return { column, field, ...(unit && { unit: unit.toLowerCase() }) };
    }
    return { column };
  });

  const parts: Part[] = [];
  const ids = new Set<string>();
  rows.forEach((cells, row) => {
    if (!cells.some((cell) => cell.trim())) return;
    if (cells.length !== columns.length) {
      say("error", "row-length", `/${row}`, { row: row + 1, found: cells.length, most: columns.length });
      return;
    }
    const data: Record<string, unknown> = {};
    const from = new Map<string, number>();
    understood.forEach(({ field, unit }, n) => {
      const text = cells[n]!.trim();
      if (!field || !text) return;
      for (const [key, value] of Object.entries(cellOf(field, text, unit))) {
        data[key] = value;
        from.set(key, n);
      }
    });
    const { amount, currency, checked, ...rest } = data;
    const id = rest.id ?? plainId(String(rest.name ?? ""));
    const price = amount === undefined ? undefined : { amount, currency, ...(checked !== undefined && { checked }) };
    const read = readParts([{ ...rest, ...(id !== "" && { id }), ...(price && { price }) }]);
    for (const finding of read.findings) {
      const keys = finding.at.split("/");
      const column =
        from.get(keys[3] ?? "") ?? from.get(keys[2] ?? "") ?? (keys[2] === "price" ? from.get("amount") : undefined);
      findings.push({ ...finding, at: `/${row}${column === undefined ? "" : `/${column}`}` });
    }
    const [part] = read.parts ?? [];
    if (!part) return;
    if (ids.has(part.id)) say("error", "id-repeated", `/${row}`, { id: part.id });
    else parts.push(part);
    ids.add(part.id);
  });
  return { parts, understood, findings };
}
