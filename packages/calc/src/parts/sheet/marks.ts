import type { Part } from "../../drivetrain/index.js";
import { isTogether, pairOf, planetaryOf } from "./counts.js";
import { formOf } from "./forms.js";
import { lengthReader } from "./lengths.js";
import { readMeasure, readNumber } from "./number.js";
import { plain } from "./plain.js";
import { isWheelWord } from "./row-kind.js";

/** What a name says beside the kind. `guess` is a bare number that is perhaps the count. */
export interface Marks {
  readonly set: Partial<Record<keyof Part, unknown>>;
  readonly guess?: Partial<Record<"teeth" | "value" | "diameter", string>>;
  readonly pair?: string;
}

/** A name without what it goes with. */
const itself = (text: string): string => plain(text.split("用").at(-1)!).split(joint)[0]!;

/** What a name says of the teeth of a gear that is had by itself; straight teeth are not worth saying. */
export function formMark(text: string, is: Part["is"]): Part["form"] {
  const isLoose = is === "pinion" || is === "spur" || is === "gear";
  const form = isLoose && text.length <= 300 ? formOf(itself(text)) : undefined;
  return form === "spur" ? undefined : form;
}

const none: Marks = { set: {} };
const toothed = (is: Part["is"]): boolean => ["pinion", "spur", "gear", "pulley", "belt", "worm"].includes(is);
const bored = (is: Part["is"]): boolean => ["pinion", "spur", "gear", "pulley", "worm"].includes(is);
const tooth = "(?:t|z|teeth|tooth|zahn|zahne|dents|dientes|歯|枚|丁|سن|اسنان)(?![a-z\\d])";
/** A count with its mark behind it, and those that stand before it as a list or a span: none of several is the count. */
const teethMark = new RegExp(
  `(?:^|[^\\d.,])((?:\\d{1,4} ?[tz]? ?(?:-|/|:|,|&|\\+|to|and|or|und|oder|et|ou|y|o) ?){0,20}\\d{1,4}) ?-?${tooth}`,
  "g",
);
const oneTeethMark = new RegExp(`(^|[^\\d.,])\\d{1,4} ?-?${tooth}`, "g");
/** z = 45, as drawings have it. */
const drawnTeethMark = /(?:^|[^a-z\d])z ?=? ?(\d{1,4})(?![.,]?[\da-z])/g;
/** Two counts, or a run of more: those are no pair. */
const pairMark =
  /(?:^|[^\d.,])(\d{1,3} ?[tz]?(?: ?(?:\/|-|:|to|and|zu|auf|a|sur) ?\d{1,3} ?[tz]?){1,20})(?![.,]?[\da-z])/g;
const moduleBehind = /(^|[^\d.,])(\d{0,2}[.,]\d{1,3}) ?(?:M|[Mm][Oo][Dd](?:[Uu][Ll][EeOo]?)?)(?![A-Za-z])/g;
const turnedMark = /(?:^|[^\d.,:])1 ?: ?(\d{1,4}(?:[.,]\d{1,4})?)(?![\d.,:])/g;
const ratioMark = /(?:^|[^\d.,])(\d{1,4}(?:[.,]\d{1,4})?) ?: ?1(?![\d.,])/g;
const moduleMark =
  /(?:^|[^a-z])((?:m|mod|modul|module|modulo) ?=?\.? ?(?:\d{0,2}[.,]\d{1,3}|\d{1,2}))(?![.,]?[\da-z])/g;
const diametralMark = /(?:^|[^\d.,/])(\d{2,3}) ?-?(?:dp|p|pitch)(?![a-z\d])/g;
const size = String.raw`(\d[\d.,/]{0,8}) ?(mm|in|inch|"|zoll|pouces?|pulgadas?)`;
const bore = "(?:bore|bohrung|alesage|agujero|穴|ثقب)";
/** A bore with its unit: 5 mm bore, Bohrung 3,17 mm, 1/8" bore. */
const boreMark = new RegExp(`(?:^|[^\\d.,/-])(?:${size}[ -]?${bore}|${bore} ?(?:ø|=|:)? ?${size})(?![a-z\\d])`, "g");
/** Behind them another thing is named. */
const joint = /(?:^| )(?:for|with|fits|fur|mit|pour|avec|para|con|مع)(?: |$)|w\//;
/** Threads begin where modules with a bare m end: M2 is a screw, M1 a gear. */
const thread = 1.5;
const bareMark = /(?:^| )(\d{1,4}|\d{1,3}[.,]\d{1,3})(?= |$|,(?!\d))/g;
/** Fewer teeth than a gear has; only a worm's starts are as few. */
const fewest = 5;

const all = (pattern: RegExp, text: string): string[] => [...text.matchAll(pattern)].map((match) => match[1]!);
const only = <T>(list: readonly T[]): T | undefined => (list.length === 1 ? list[0] : undefined);

/** A module by its mark; a bare m before what can be a thread is none, and a small one behind a number is metres as well. */
function moduleIn(text: string): string | undefined {
  const behind = [...text.matchAll(moduleBehind)].map((match) => match[2]!);
  const rest = itself(text.replace(moduleBehind, "$1 ")).replace(oneTeethMark, "$1 ");
  const marks = all(moduleMark, rest);
  if (behind.length) return behind.length > 1 || marks.length ? undefined : readMeasure(behind[0]!);
  const mark = only(marks);
  const number = mark?.replace(/^[^\d.,]+\.? ?(?=[\d.,])/, "").replace(",", ".");
  const read = number ? readNumber(number, ".") : undefined;
  const value = read && "value" in read && Number(read.value) > 0 ? read.value : undefined;
  return value && (mark!.startsWith("mo") || Number(value) <= thread) ? value : undefined;
}

/** The bore that a name says with its unit. */
function boreIn(name: string): string | undefined {
  const [, first, firstUnit, second, secondUnit] = only([...name.matchAll(boreMark)]) ?? [];
  const text = `${first ?? second} ${firstUnit ?? secondUnit}`;
  const { set, ask } = lengthReader("bore")(text, { field: "bore" }, "pinion");
  return ask ? undefined : (set?.bore as string | undefined);
}

/** The pair of a name: none where several stand there, or where it is a ratio such as 1:4. */
function pairIn(name: string, is: Part["is"]): string | undefined {
  const runs = all(pairMark, name).filter((one) => pairOf(one) || (is === "planetary" && planetaryOf(one)));
  const run = only(runs);
  const isWorm = is === "set" && formOf(name) === "worm";
  return run && (isWorm || Math.min(...(pairOf(run) ?? [fewest])) >= fewest) ? run : undefined;
}

/**
 * Counts, ratio, pitch and bore that stand in a name with their marks: "16T pinion 48 pitch", "ring and pinion 13/38",
 * "gearmotor 27:1". What bears no mark is a guess.
 */
export function marksOf(text: string, is: Part["is"]): Marks {
  if (text.length > 300 || is === "other" || !/\p{N}/u.test(text)) return none;
  const name = itself(text);
  const set: Record<string, unknown> = {};
  const [module, diametral] = [moduleIn(text), only(all(diametralMark, name))];
  if (is !== "belt" && is !== "pulley" && is !== "gearbox" && !module !== !diametral) {
    if (module) set.module = module;
    else set.diametralPitch = String(Number(diametral));
  }
  if (is === "gearbox") {
    const ratio = only(all(ratioMark, name))?.replace(",", ".");
    if (ratio && Number(ratio) > 0) return { set: { ...set, value: `${ratio}:1` } };
    const turned = only(all(turnedMark, name));
    if (turned) return { set, guess: { value: `${turned.replace(",", ".")}:1` } };
    const bare = only(all(bareMark, name).filter((one) => /[.,]/.test(one)));
    return { set, ...(bare && { guess: { value: bare.replace(",", ".") } }) };
  }
  if (isTogether(is)) {
    const pair = pairIn(name, is);
    return { set, ...(pair && { pair }) };
  }
  const length = bored(is) ? boreIn(name) : undefined;
  if (length) set.bore = length;
  const counted = itself(text.replace(moduleBehind, "$1 ")).replace(moduleMark, " ").replace(boreMark, " ");
  const teeth = only([...all(teethMark, counted), ...all(drawnTeethMark, counted)]);
  const hasTeeth = toothed(is) || (is === "wheel" && isWheelWord(text));
  if (hasTeeth && Number(teeth) > 0) return { set: { ...set, teeth: Number(teeth) } };
  // "No. 1203, 14T" is perhaps one count; of "12, 13, 14T" it is none.
  const last = teeth && /^\d+, (\d+)$/.exec(teeth)?.[1];
  if (hasTeeth && last) return { set, guess: { teeth: last } };
  const bare = only(all(bareMark, name).filter((one) => Number(one.replace(",", ".")) > 0));
  if (!bare || teeth) return { set };
  if (is === "wheel") return { set, guess: { diameter: `${bare.replace(",", ".")} mm` } };
  return { set, ...(toothed(is) && !/[.,]/.test(bare) && { guess: { teeth: bare } }) };
}

/** A text without the pitches that it names. */
export const withoutPitch = (text: string): string =>
  plain(text.slice(0, 300)).replace(moduleMark, " ").replace(diametralMark, " ");
