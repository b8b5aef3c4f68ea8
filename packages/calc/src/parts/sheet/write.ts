import type { Part } from "../../drivetrain/index.js";
import type { PartKind } from "../../stages/index.js";
import { isTogether } from "./counts.js";
import { markText } from "./fields.js";
import { formMark, marksOf } from "./marks.js";
import { isBelted, usual } from "./pitches.js";
import { plain } from "./plain.js";
import type { SheetRow } from "./rows.js";
import { lineOf, tablesIn } from "./tables.js";

/** Kinds in words that are read back as nothing else. */
const kindTexts: Readonly<Partial<Record<PartKind, string>>> = {
  gear: "gear wheel",
  set: "gear set",
  hub: "hub gear set",
  planetary: "planetary set",
  plate: "adapter plate",
  wheel: "road wheel",
};

/** An amount; three digits behind the point are no thousands, which four before it say. */
const amountText = (amount: string): string => (/\.\d{3}$/.test(amount) ? amount.padStart(8, "0") : amount);

/** A ratio below one, as a fraction of one, with the letter that says that it is meant so. */
const ratioText = (value: string): string => (/^1\/(?!1$)/.test(value) ? `i=${value}` : value);

const text = (value: unknown): string => (value === undefined ? "" : String(value));
const written = (value: string | undefined): string => (value === undefined ? "" : markText(value));

/** A pitch with its mark, where the number alone would be asked about. */
function pitchText(pitch: Part["module"], mark: "module" | "DP", is: Part["is"]): string {
  if (pitch === undefined) return "";
  const [top, bottom = "1"] = String(pitch).split("/");
  const number = Number(top) / Number(bottom);
  const isUsual = mark === "module" ? number <= usual.module : number >= usual.diametral;
  return isUsual && !isBelted(is) ? String(pitch) : `${mark} ${pitch}`;
}

/** Columns in the order in which they are written. The first ones always stand there: what a name says is then not read out of it. */
const columns: readonly { readonly head: string; readonly always?: true; readonly of: (part: Part) => string }[] = [
  { head: "Id", always: true, of: ({ id }) => written(id) },
  { head: "Part number", of: ({ number }) => written(number) },
  { head: "Name", always: true, of: ({ name }) => written(name) },
  { head: "What", always: true, of: ({ is }) => kindTexts[is] ?? is },
  { head: "For stage", of: ({ stage }) => written(stage) },
  { head: "Teeth", always: true, of: ({ teeth, is }) => (teeth && is === "gearbox" ? `${teeth}T` : text(teeth)) },
  { head: "Driver", always: true, of: ({ driver }) => text(driver) },
  { head: "Driven", always: true, of: ({ driven }) => text(driven) },
  { head: "Printed ratio", always: true, of: ({ value }) => ratioText(text(value)) },
  { head: "Module", always: true, of: ({ module, is }) => pitchText(module, "module", is) },
  { head: "Diametral pitch", always: true, of: ({ diametralPitch, is }) => pitchText(diametralPitch, "DP", is) },
  { head: "Belt pitch", of: ({ pitch }) => text(pitch) },
  {
    head: "Pressure angle",
    of: ({ pressureAngle }) => (/\//.test(text(pressureAngle)) ? `α=${text(pressureAngle)}` : text(pressureAngle)),
  },
  { head: "Form", of: ({ form }) => text(form) },
  { head: "Profile shift", of: ({ shift }) => text(shift) },
  { head: "Tip diameter", of: ({ tipDiameter }) => text(tipDiameter) },
  { head: "Bore", of: ({ bore }) => text(bore) },
  { head: "Sleeve outside diameter", of: ({ outside }) => text(outside) },
  { head: "Wheel diameter", of: ({ diameter }) => text(diameter) },
  { head: "Width", of: ({ width }) => text(width) },
  { head: "Boss", of: ({ hub }) => text(hub) },
  { head: "Facing", of: ({ facing }) => text(facing) },
  {
    head: "Hub holes",
    of: ({ circles = [] }) => circles.map(({ count, diameter }) => `${count} x ${diameter}`).join("; "),
  },
  { head: "Maker", of: ({ maker }) => written(maker) },
  { head: "Price", of: ({ price }) => (price ? amountText(text(price.amount)) : "") },
  { head: "Currency", of: ({ price }) => text(price?.currency) },
  { head: "Price checked", of: ({ price }) => text(price?.checked) },
  { head: "Shop", of: ({ source }) => written(source) },
  { head: "Available", of: ({ available }) => (available === undefined ? "" : available ? "yes" : "no") },
  { head: "Pack size", of: ({ pack }) => text(pack) },
  { head: "Pieces for one place", of: ({ pieces }) => text(pieces) },
  { head: "For each vehicle, axle or wheel", of: ({ per }) => text(per) },
  { head: "Owned", of: ({ owned }) => text(owned) },
  { head: "Status", of: ({ status }) => text(status) },
];

/** Cells that would else be read out of the name: they say that it is not known. */
function silenced(part: Part): ReadonlySet<string> {
  const { set, pair, guess } = marksOf(part.name ?? "", part.is);
  const heads = new Set<string>();
  const silence = (field: keyof Part, head: string) => (part[field] === undefined ? heads.add(head) : undefined);
  const found = { ...set, ...guess };
  if ("teeth" in found) silence("teeth", "Teeth");
  if ("bore" in found) silence("bore", "Bore");
  if (formMark(part.name ?? "", part.is)) silence("form", "Form");
  if ("value" in found) silence("value", "Printed ratio");
  if (pair && isTogether(part.is)) silence("driver", "Driver");
  if (
    ("module" in found || "diametralPitch" in found) &&
    part.module === undefined &&
    part.diametralPitch === undefined
  )
    heads.add("Module");
  return heads;
}

/**
 * A list of parts as rows of cells, the heads first: {@link partsFromSheet} reads them back to the same parts without a
 * question. Numbers become text; keys of one's own (`x-…`) are not written.
 *
 * @example
 * const rows = sheetOf([{ id: "p15", is: "pinion", teeth: 15, module: "0.8", bore: "1/8 in" }]);
 * rows[0]?.at(-1); // => "Bore"
 * partsFromSheet(rows).parts; // => [{ id: "p15", is: "pinion", teeth: 15, module: "0.8", bore: "1/8 in" }]
 * csvOf(rows.map((row) => row.slice(0, 4))); // => "Id,Name,What,Teeth\r\np15,,pinion,15\r\n"
 */
export function sheetOf(parts: readonly Part[]): string[][] {
  const cells = parts.map((part) => {
    const silent = silenced(part);
    return columns.map(({ head, of }) => of(part) || (silent.has(head) ? "-" : ""));
  });
  const used = columns.flatMap(({ always }, n) => (always || cells.some((row) => row[n]) ? [n] : []));
  return [used.map((n) => columns[n]!.head), ...cells.map((row) => used.map((n) => row[n]!))];
}

/**
 * Rows of cells as text by RFC 4180: commas, or another separator, line ends of two characters, quotation marks where a cell
 * needs them.
 */
export const csvOf = (rows: readonly (readonly string[])[], separator = ","): string =>
  rows
    .map((row) =>
      row
        .map((cell) =>
          cell.includes(separator) || /["\r\n]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell,
        )
        .join(separator),
    )
    .map((line) => `${line}\r\n`)
    .join("");

/**
 * What a sheet's heads are, as a key under which what its columns mean can be remembered: the same for every sheet with the
 * same heads in the same order, whatever stands below them.
 *
 * @example
 * sheetKey([["Parts"], ["Teeth", "Bore (mm)"], ["15", "5"]]) === sheetKey([["TEETH", "Bore (mm)"]]); // => true
 */
export function sheetKey(rows: readonly (SheetRow | readonly string[])[]): string {
  const lines = rows.map((row, n) => lineOf(n, n, "cells" in row ? row.cells : row, false));
  return tablesIn(lines)
    .tables.map(({ head, group }) =>
      [group, head]
        .map((line) =>
          (line?.cells ?? [])
            .map((cell) => plain(cell).trim())
            .join("|")
            .replace(/\|+$/, ""),
        )
        .join("|"),
    )
    .join("\n");
}
