import type { PartKind } from "../../stages/index.js";
import { readLength } from "./lengths.js";
import type { CellContext, CellRead, CellReader, Choice } from "./meaning.js";
import { readMeasure } from "./number.js";
import { plain, setOf } from "./plain.js";

const moduleWords = setOf("m|mod|module|modul|módulo|モジュール|موديول|الموديول|مديول");
const diametralWords = setOf("dp|d.p.|d.p|diametral pitch|p|pitch|pit|diametral");
const toothed: readonly PartKind[] = ["pinion", "spur", "gear", "set", "hub", "planetary", "worm"];

/** Belts and what they run on: their pitch is a length. */
export const isBelted = (is: PartKind): boolean => is === "belt" || is === "pulley";

/** Modules of what stands on a table lie below it, diametral pitches above it; between them both are made. */
const border = { module: 6, diametral: 12 };

/** In a column of modules a number above this one is asked about, in one of diametral pitches a number below. */
export const usual = { module: 10, diametral: 5 };

const moduleRead = (value: string): CellRead => ({ set: { module: value } });
const diametralRead = (value: string): CellRead => ({ set: { diametralPitch: value } });

/** A number above zero as a pitch is written; fractions are exact. */
function pitchNumber(text: string): string | undefined {
  if (/^\d{1,12}\/[1-9]\d{0,11}$/.test(text)) return /^0+\//.test(text) ? undefined : text;
  const value = readMeasure(text) ?? "0";
  return Number(value) > 0 && /^\d{1,12}(\.\d{1,12})?$/.test(value) ? value : undefined;
}

const sizeOf = (value: string): number => {
  const [top, bottom = 1] = value.split("/").map(Number);
  return top! / bottom;
};

/** A number without a mark: what the column says, what both of its heads leave, or a question. */
function bare(value: string, { field, unit, isEither }: CellContext, is: PartKind): CellRead {
  const number = sizeOf(value);
  const isBelt = isBelted(is);
  const isOdd = field === "module" ? number > usual.module : field === "diametralPitch" && number < usual.diametral;
  if (!isOdd && !isBelt && (field === "module" || unit === "module")) return moduleRead(value);
  if (!isOdd && !isBelt && (field === "diametralPitch" || unit === "DP")) return diametralRead(value);
  const isModule = number <= border.module;
  const guessed = isModule ? moduleRead(value) : diametralRead(value);
  if (isBelt) {
    // Belts stand among gears, in a column that is theirs: what it says of gears it does not say of them.
    const length = `${value} mm`;
    const isOwn = field !== "module" && field !== "diametralPitch";
    const choices: readonly Choice[] = [
      { answer: length, ...(isOwn && { column: { unit: "mm" } }) },
      { answer: `${value} in`, ...(isOwn && { column: { unit: "in" } }) },
    ];
    return { set: { pitch: length }, ask: { code: "pitch-unsaid", guess: length, choices } };
  }
  if (isEither && (isModule || number >= border.diametral)) return guessed;
  const choices: readonly Choice[] = [
    { answer: `module ${value}`, column: { unit: "module" } },
    { answer: `${value} DP`, column: { unit: "DP" } },
    { answer: `${value} mm`, column: { unit: "mm" } },
  ];
  return { ...guessed, ask: { code: "pitch-unsaid", guess: choices[isModule ? 0 : 1]!.answer, choices } };
}

/**
 * A pitch as it is marked: "M0.8", "mod 0.8", "48DP", "32p"; a length is the pitch of a belt or chain. "0.8 m" is asked
 * about: a small m behind a number is metres as well.
 */
export const readPitch: CellReader = (text, context, is) => {
  const unclear: CellRead = { ask: { code: "pitch-unclear" } };
  const parts = text.length > 60 ? null : /^([^\d.,]*)([\d.,/]*\d)(.*)$/.exec(text);
  if (!parts) return unclear;
  const before = plain(parts[1]!.replace(/[=:. ]+$/, "").trim());
  const after = plain(parts[3]!.replace(/^[- ]+|[. ]+$/g, ""));
  const value = pitchNumber(parts[2]!);
  const isModule = moduleWords.has(before);
  if (value === undefined || (before !== "" && before !== "ø" && !isModule && !diametralWords.has(before)))
    return unclear;
  if (isModule) return after === "" || after === "mm" ? moduleRead(value) : unclear;
  if (before !== "") return after === "" && before !== "p" ? diametralRead(value) : unclear;
  if (after === "") return pitchOfBelt(value, context, is) ?? bare(value, context, is);
  if (after === "m" && !/M\W*$/.test(text)) {
    if (context.isAnswer) return { set: { pitch: `${value} m` } };
    const [guess, other] = [`module ${value}`, `${value} m`];
    return {
      ...moduleRead(value),
      ask: { code: "module-or-metres", guess, choices: [{ answer: guess }, { answer: other }] },
    };
  }
  if (moduleWords.has(after)) return moduleRead(value);
  if (diametralWords.has(after)) {
    // 0.8P is nobody's diametral pitch.
    return sizeOf(value) >= border.module || context.isAnswer ? diametralRead(value) : unclear;
  }
  const { length, ask } = readLength(`${value} ${parts[3]}`, context);
  if (length === undefined || ask) return unclear;
  return lengthRead(length, context, is);
};

/** A bare number under a head with a unit of length, in a row that is no gear: a belt's pitch. */
function pitchOfBelt(value: string, context: CellContext, is: PartKind): CellRead | undefined {
  const { unit } = context;
  if (context.field !== "toothPitch" || !unit || unit === "module" || unit === "DP") return undefined;
  return lengthRead(`${value} ${unit}`, context, is);
}

/** A length is the pitch of a belt; of a gear, in a column of modules, the module, and elsewhere perhaps. */
function lengthRead(length: string, { field, isAnswer }: CellContext, is: PartKind): CellRead {
  const [number, unit] = length.split(" ") as [string, string];
  if (isAnswer || (field !== "module" && !toothed.includes(is))) return { set: { pitch: length } };
  if (unit === "mm" && field === "module" && toothed.includes(is)) return moduleRead(number);
  if (field === "module" && isBelted(is)) return { set: { pitch: length } };
  if (unit === "mm")
    return {
      ...moduleRead(number),
      ask: {
        code: "pitch-as-length",
        guess: `module ${number}`,
        choices: [{ answer: `module ${number}`, column: { field: "module" } }, { answer: length }],
      },
    };
  return { ask: { code: "pitch-unclear" } };
}
