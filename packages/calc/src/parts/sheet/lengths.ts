import type { Part } from "../../drivetrain/index.js";
import type { Ask, CellContext, CellReader, LengthUnit } from "./meaning.js";
import { readMeasure, readNumber, type Decimal } from "./number.js";
import { plain } from "./plain.js";

const unitWords: Readonly<Record<LengthUnit, string>> = {
  mm: "mm|millimeter|millimeters|millimetre|millimetres|millimètre|millimètres|milimetro|milimetros|ミリ|ミリメートル|مم|ملم|مليمتر",
  cm: "cm|centimeter|centimetre|centimètre|centimètres|centimetros|センチ|سم",
  m: "m|meter|metre|meters|metres|mètre|mètres|metro|metros|メートル|متر",
  in: 'in|inch|inches|"|zoll|pouce|pouces|pulgada|pulgadas|インチ|吋|بوصة|إنش',
  ft: "ft|foot|feet|'|fuß|pied|pieds|pie|pies|フィート|قدم",
};

let units: ReadonlyMap<string, LengthUnit> | undefined;

/** The unit that a word, tidied and plain, stands for. */
export function unitOf(word: string): LengthUnit | undefined {
  units ??= new Map(
    Object.entries(unitWords).flatMap(([unit, words]) =>
      words.split("|").map((one) => [plain(one), unit as LengthUnit]),
    ),
  );
  return units.get(word);
}

/** A number, a fraction or a whole with a fraction, as a build document writes it; undefined where it is none. */
function sizeOf(text: string): { readonly number: string; readonly isFraction: boolean } | undefined {
  const [, whole = "0", top, bottom] = /^(?:(\d{1,4})(?: +| *- *))?(\d{1,12}) *\/ *(\d{1,12})$/.exec(text) ?? [];
  if (top) {
    const number = whole === "0" ? `${top}/${bottom}` : `${Number(whole) * Number(bottom) + Number(top)}/${bottom}`;
    return /^\d{1,12}\/[1-9]/.test(number) ? { number, isFraction: true } : undefined;
  }
  const number = readMeasure(text);
  return number !== undefined && /^\d{1,12}(\.\d{1,12})?$/.test(number) ? { number, isFraction: false } : undefined;
}

/** Whether a number has, before three digits, the sign that divides thousands in the other cells of its column. */
function isAgainst(text: string, decimal: Decimal): boolean {
  const read = readNumber(text);
  return !!read && "either" in read && read.sign !== decimal;
}

interface LengthRead {
  /** Text with its unit. */
  readonly length?: string;
  readonly ask?: Ask;
}

/** A length with its unit, or with that of its column. Without either it is asked in what; a fraction is perhaps inches. */
export function readLength(text: string, context: CellContext): LengthRead {
  const unclear: LengthRead = { ask: { code: "length-unclear" } };
  const [, digits, rest] = text.length > 60 ? [] : (/^(?:ø|dia\.?|d=)? *([\d.,/' -]*\d) *(.*)$/i.exec(text) ?? []);
  const size = digits === undefined ? undefined : sizeOf(digits);
  if (!size) return unclear;
  const { number, isFraction } = size;
  if (context.decimal && !isFraction && isAgainst(digits!, context.decimal))
    return { ask: { code: "number-ambiguous" } };
  const own = context.unit === "module" || context.unit === "DP" ? undefined : context.unit;
  const written = plain(rest!.replace(/[. )]+$/, ""));
  // Nobody gives a fraction of a millimetre: it is of an inch, or two lengths.
  const isOfInches = isFraction && own !== "in" && own !== "ft";
  if (written === "" && own && !isOfInches) return { length: `${number} ${own}` };
  const choices = (["mm", "in"] as const).map((one) => ({ answer: `${number} ${one}`, column: { unit: one } }));
  if (written === "" && !isFraction) return { ask: { code: "unit-missing", choices } };
  if (written === "") {
    const length = `${number} in`;
    return { length, ask: { code: "unit-missing", guess: length, choices } };
  }
  const unit = unitOf(written);
  if (unit) return { length: `${number} ${unit}` };
  // "6 H7", "5mm D-cut": what stands first is perhaps all of it.
  const first = unitOf(plain(/^(?:\p{L}+|")?/u.exec(rest!)![0])) ?? own;
  const guess = `${number} ${first}`;
  return first ? { length: guess, ask: { code: "length-unclear", guess } } : unclear;
}

const isZero = (length: string): boolean => !/[1-9]/.test(length.split("/")[0]!);

/** A length for one field. */
export const lengthReader =
  (field: "tipDiameter" | "bore" | "outside" | "diameter" | "width" | "hub" | "pitch"): CellReader =>
  (text, context) => {
    const { length, ask } = readLength(text, context);
    // A boss can be none; nothing else is nothing.
    if (length !== undefined && field !== "hub" && isZero(length)) return { ask: { code: "length-unclear" } };
    return { ...(length !== undefined && { set: { [field]: length } }), ...(ask && { ask }) };
  };

const gears: readonly Part["is"][] = ["pinion", "spur", "gear", "pulley"];

/** An outside diameter: the tips of a gear, the outside of a sleeve, a wheel's own. */
export const readRound: CellReader = (text, context, is) =>
  lengthReader(is === "wheel" ? "diameter" : gears.includes(is) ? "tipDiameter" : "outside")(text, context, is);

/** "A diameter", and nobody says which: a wheel's is plain, a gear's can be at its tips or elsewhere. */
export const readDiameter: CellReader = (text, context, is) => {
  if (!gears.includes(is)) return lengthReader(is === "sleeve" ? "outside" : "diameter")(text, context, is);
  if (context.isAnswer) return lengthReader("tipDiameter")(text, context, is);
  const { length, ask } = readLength(text, context);
  const choices = [
    { answer: length ?? "", column: { field: "tipDiameter" } },
    { answer: "", column: { field: "unused" } },
  ] as const;
  return { ask: ask ?? { code: "which-diameter", guess: length, choices } };
};

/** Circles of holes: "4x16", "3 × 20 mm; 4 × 24 mm". */
export const readCircles: CellReader = (text, context) => {
  const unclear = { ask: { code: "circles-unclear" } } as const;
  const circles: { readonly count: number; readonly diameter: string }[] = [];
  for (const one of (text.length > 1500 ? "" : text).split(/[;+&]|, | \/ /)) {
    const [, count, diameter] = /^ *(\d{1,7}) ?[x*] ?(.*)$/i.exec(one) ?? [];
    if (!Number(count) || Number(count) > 1_000_000) return unclear;
    const { length, ask } = readLength(diameter!.trim(), context);
    if (ask?.code === "unit-missing")
      return {
        ask: {
          code: ask.code,
          choices: (["mm", "in"] as const).map((unit) => ({
            answer: text.replace(/ *(?=;|,\s|$)/g, ` ${unit}`),
            column: { unit },
          })),
        },
      };
    if (length === undefined || ask || isZero(length)) return unclear;
    circles.push({ count: Number(count), diameter: length });
  }
  return circles.length > 20 ? unclear : { set: { circles } };
};
