import type { Part } from "../../drivetrain/index.js";
import { isTogether, pairOf } from "./counts.js";
import { formOf } from "./forms.js";
import { readMeasure, readNumber } from "./number.js";
import { plain } from "./plain.js";

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
const teethMark =
  /(?:^|[^\d.,])((?:\d{1,4} ?t? ?(?:-|\/|:|to) ?)?\d{1,4}) ?-?(?:t|z|teeth|tooth|zahn|zahne|dents|dientes|歯|枚|丁|سن|اسنان)(?![a-z\d])/g;
const pairMark = /(?:^|[^\d.,])(\d{1,3} ?[tz]? ?(?:\/|-|:|to|and|zu|auf|a|sur) ?\d{1,3} ?[tz]?)(?![a-z\d.,])/g;
const moduleBehind = /(?:^|[^\d.,])(\d{0,2}[.,]\d{1,3}) ?(?:M(?![A-Za-z])|[Mm]od(?![a-z]))/g;
const turnedMark = /(?:^|[^\d.,:])1 ?: ?(\d{1,4}(?:[.,]\d{1,4})?)(?![\d.,:])/g;
const ratioMark = /(?:^|[^\d.,])(\d{1,4}(?:[.,]\d{1,4})?) ?: ?1(?![\d.,])/g;
const moduleMark = /(?:^|[^a-z])((?:m|mod|modul|module|modulo) ?=?\.? ?(?:\d{0,2}[.,]\d{1,3}|\d{1,2}))(?![\d.,a-z])/g;
const diametralMark = /(?:^|[^\d.,/])(\d{2,3}) ?-?(?:dp|p|pitch)(?![a-z\d])/g;
/** Behind them another thing is named. */
const joint = /(?:^| )(?:for|with|fits|fur|mit|pour|avec|para|con|مع)(?: |$)|w\//;
/** Threads begin where modules with a bare m end: M2 is a screw, M1 a gear. */
const thread = 1.5;
const bareMark = /(?:^| )(\d{1,4}|\d{1,3}[.,]\d{1,3})(?= |$|,)/g;

const all = (pattern: RegExp, text: string): string[] => [...text.matchAll(pattern)].map((match) => match[1]!);
/** A module by its mark; a bare m before what can be a thread is none, and a small one behind a number is metres as well. */
function moduleIn(name: string, text: string): string | undefined {
  const behind = all(moduleBehind, text);
  if (behind.length) return behind.length > 1 || all(moduleMark, name).length ? undefined : readMeasure(behind[0]!);
  const mark = only(all(moduleMark, name));
  const number = mark?.replace(/^[^\d.,]+\.? ?(?=[\d.,])/, "").replace(",", ".");
  const read = number ? readNumber(number, ".") : undefined;
  const value = read && "value" in read && Number(read.value) > 0 ? read.value : undefined;
  return value && (mark!.startsWith("mo") || Number(value) <= thread) ? value : undefined;
}

const only = <T>(list: readonly T[]): T | undefined => (list.length === 1 ? list[0] : undefined);

/**
 * Counts, ratio and pitch that stand in a name with their marks: "16T pinion 48 pitch", "ring and pinion 13/38", "gearmotor
 * 27:1". What bears no mark is a guess.
 */
export function marksOf(text: string, is: Part["is"]): Marks {
  if (text.length > 300 || is === "other" || !/\p{N}/u.test(text)) return none;
  const name = itself(text);
  const set: Record<string, unknown> = {};
  const [module, diametral] = [moduleIn(name, text), only(all(diametralMark, name))];
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
    const pairs = all(pairMark, name).flatMap((one) => (pairOf(one) ? [one] : []));
    return { set, ...(pairs.length === 1 && { pair: pairs[0]! }) };
  }
  const teeth = only(all(teethMark, name));
  if (toothed(is) && Number(teeth) > 0) return { set: { ...set, teeth: Number(teeth) } };
  const bare = only(all(bareMark, name).filter((one) => Number(one.replace(",", ".")) > 0));
  if (!bare || teeth) return { set };
  if (is === "wheel") return { set, guess: { diameter: `${bare.replace(",", ".")} mm` } };
  return { set, ...(toothed(is) && !/[.,]/.test(bare) && { guess: { teeth: bare } }) };
}

/** A text without the pitches that it names. */
export const withoutPitch = (text: string): string =>
  plain(text.slice(0, 300)).replace(moduleMark, " ").replace(diametralMark, " ");
