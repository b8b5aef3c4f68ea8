import type { SheetContext } from "./columns.js";
import { unitOf } from "./lengths.js";
import { plain, setOf, wordsOf } from "./plain.js";
import { currencyOf } from "./prices.js";
import type { Line } from "./tables.js";

const priceWords = setOf("price|prices|preis|preise|prix|precio|precios|価格|السعر|الأسعار|أسعار");
const sizeWords = setOf(
  "dimension|dimensions|measure|measures|measurements|lengths|sizes|maß|maße|abmessungen|längen|mesures|cotes|longueurs|medidas|dimensiones|longitudes|寸法|単位|الأبعاد|المقاسات",
);
const kana = /[\u3041-\u30fa]/;

/** What the lines above the heads say of all prices and lengths, and whether the sheet is in Japanese. */
export function contextOf(lines: readonly Line[], above: readonly Line[]): SheetContext {
  const currencies = new Set<string>();
  const units = new Set<NonNullable<ReturnType<typeof unitOf>>>();
  for (const { cells, filled } of above)
    for (const n of filled) {
      if (cells[n]!.length > 200) continue;
      const words = wordsOf(plain(cells[n]!));
      const isPrice = words.some((word) => priceWords.has(word));
      const isSize = words.some((word) => sizeWords.has(word));
      for (const word of words) {
        const [currency, unit] = [currencyOf(word), unitOf(word)];
        if (isPrice && typeof currency === "string") currencies.add(currency);
        // A small "in" is a word more often than a unit; nobody lists gears in metres.
        if (isSize && unit && word !== "in" && unit !== "m") units.add(unit);
      }
    }
  const [[currency], [unit]] = [currencies, units];
  return {
    isJapanese: lines.slice(0, 50).some(({ cells }) => cells.some((cell) => kana.test(cell.slice(0, 100)))),
    ...(currency && currencies.size === 1 && { currency }),
    ...(unit && units.size === 1 && { unit }),
  };
}
