import { formOf, formWords } from "./forms.js";
import { readDriven, readDriver, readOwned, readPack, readPiecesHere, readTeeth } from "./counts.js";
import { readDate } from "./dates.js";
import { idFrom, isId } from "./ids.js";
import { lengthReader, readCircles, readDiameter, readRound } from "./lengths.js";
import type { CellReader, SheetField } from "./meaning.js";
import { readMeasure } from "./number.js";
import { readPitch } from "./pitches.js";
import { isEmpty, isFailure, plain, setOf, tidy } from "./plain.js";
import { readCurrency, readPrice } from "./prices.js";
import { longestText } from "./question.js";
import { readRatio } from "./ratio.js";
import { readAvailable } from "./yes.js";

/** A spreadsheet's mark for "this is text": before what it would reckon with, or what would else say nothing. */
const needsMark = (text: string): boolean => /^[=+\-@']/.test(text) || isEmpty(tidy(text)) || isFailure(tidy(text));
export const markText = (text: string): string => (needsMark(text) ? `'${text}` : text);
/** A cell's text without its mark. */
const unmarked = (text: string): string => (text.startsWith("'") && needsMark(text.slice(1)) ? text.slice(1) : text);

const textReader =
  (field: "id" | "name" | "number" | "maker" | "source"): CellReader =>
  (text) => {
    if (text.startsWith("#") && isFailure(tidy(text))) return { ask: { code: "failure" } };
    const plainText = unmarked(text);
    return plainText.length <= longestText
      ? { set: { [field]: plainText } }
      : { set: { [field]: plainText.slice(0, longestText) }, ask: { code: "text-long" } };
  };

const readStage: CellReader = (written) => {
  const text = tidy(unmarked(written));
  if (isId(text)) return { set: { stage: text } };
  const id = idFrom(text);
  // "Primary", "Front ring": the same words as an id has. What else it says may be a vehicle.
  return /^[a-z]+(?: [a-z]+)?$/i.test(text)
    ? { set: { stage: id } }
    : { ask: { code: "stage-unclear", ...(id && { guess: id }) } };
};

/** The words for a state, by state, in the six languages. */
const states = {
  fitted:
    "fitted|in use|installed|mounted|verbaut|eingebaut|montiert|monté|montée|installé|posé|montado|montada|instalado|装着|取付済|使用中|مركب|مركبة|قيد الاستعمال",
  owned:
    "owned|own|here|vorhanden|im besitz|da|possédé|possédée|en main|tengo|propio|propia|en casa|所有|手持ち|مملوك|لدي",
  ordered:
    "ordered|on order|on its way|bestellt|unterwegs|commandé|commandée|en commande|pedido|pedida|encargado|en camino|注文済|注文中|発注済|مطلوب|تم الطلب",
  spare:
    "spare|spares|reserve|ersatz|ersatzteil|reserve|réserve|rechange|de rechange|pièce de rechange|repuesto|de repuesto|recambio|予備|スペア|احتياطي|احتياطية|قطعة احتياط",
} as const;
const facings = {
  "hub in":
    "hub in|in|inward|inwards|inside|nabe innen|innen|moyeu intérieur|intérieur|cubo dentro|dentro|内|内側|للداخل",
  "hub out":
    "hub out|out|outward|outwards|outside|nabe außen|außen|moyeu extérieur|extérieur|cubo fuera|fuera|外|外側|للخارج",
} as const;

const shares = {
  vehicle: "vehicle|fahrzeug|véhicule|vehículo|車両|المركبة",
  axle: "axle|achse|essieu|eje|車軸|المحور",
  wheel: "wheel|rad|roue|rueda|車輪|العجلة",
} as const;

const choiceReader = (
  field: "status" | "facing" | "per",
  choices: Readonly<Record<string, string>>,
  code: "status-unclear" | "facing-unclear" | "per-unclear",
): CellReader => {
  let words: readonly (readonly [string, ReadonlySet<string>])[] | undefined;
  return (text) => {
    words ??= Object.entries(choices).map(([choice, all]) => [choice, setOf(all)]);
    const found = words.find(([, all]) => all.has(plain(text)))?.[0];
    return found
      ? { set: { [field]: found } }
      : { ask: { code, choices: Object.keys(choices).map((answer) => ({ answer })) } };
  };
};

/** A plain number for a field, with the signs and marks that go with it. */
const numberReader =
  (field: "pressureAngle" | "shift", pattern: RegExp): CellReader =>
  (text) => {
    const [, sign = "", digits] = text.length > 40 ? [] : (pattern.exec(text) ?? []);
    const unclear = { ask: { code: "number-unclear" } } as const;
    if (digits === undefined) return unclear;
    // "20/25" are two angles sooner than less than one degree.
    const [top = 0, bottom = 0] = digits.split("/").map(Number);
    if (field === "pressureAngle" && top < bottom && !text.startsWith("α")) return unclear;
    if (/^\d{1,12}\/[1-9]\d{0,11}$/.test(digits)) return { set: { [field]: `${sign.replace("+", "")}${digits}` } };
    const value = readMeasure(digits) ?? "";
    if (!/^\d{1,12}(\.\d{1,12})?$/.test(value) || (field === "pressureAngle" && !Number(value))) return unclear;
    return { set: { [field]: `${sign.replace("+", "")}${value}` } };
  };

/** How cells of a field are read; the kind is read with its whole row. */
export const readers: Readonly<Record<Exclude<SheetField, "is">, CellReader>> = {
  id: textReader("id"),
  number: textReader("number"),
  name: textReader("name"),
  maker: textReader("maker"),
  source: textReader("source"),
  stage: readStage,
  teeth: readTeeth,
  driver: readDriver,
  driven: readDriven,
  value: readRatio,
  module: readPitch,
  diametralPitch: readPitch,
  toothPitch: readPitch,
  pitch: lengthReader("pitch"),
  pressureAngle: numberReader("pressureAngle", /^(?:α ?=? ?)?()([\d.,/]*\d) ?(?:°|º|o|deg|degrees|grad|度)?$/i),
  form: (text) => {
    const form = formOf(text);
    return form
      ? { set: { form } }
      : { ask: { code: "form-unclear", choices: Object.keys(formWords).map((answer) => ({ answer })) } };
  },
  shift: numberReader("shift", /^(?:x ?=? ?)?([+-]?) ?([\d.,/]*\d)$/i),
  tipDiameter: lengthReader("tipDiameter"),
  bore: lengthReader("bore"),
  outside: lengthReader("outside"),
  diameter: lengthReader("diameter"),
  across: readDiameter,
  round: readRound,
  width: lengthReader("width"),
  hub: lengthReader("hub"),
  facing: choiceReader("facing", facings, "facing-unclear"),
  circles: readCircles,
  price: readPrice,
  currency: readCurrency,
  checked: readDate,
  available: readAvailable,
  pack: readPack,
  pieces: readPiecesHere,
  per: choiceReader("per", shares, "per-unclear"),
  owned: readOwned,
  status: choiceReader("status", states, "status-unclear"),
};

/** Fields that are text as it stands. */
export const isText = (field: SheetField): boolean =>
  ["id", "number", "name", "maker", "source", "stage"].includes(field);
