import { remembering } from "./remember.js";

const digitsOf: readonly (readonly [number, number])[] = [
  [0x0660, 0x0669],
  [0x06f0, 0x06f9],
];

const asDigit = (letter: string): string => {
  const code = letter.charCodeAt(0);
  const [from] = digitsOf.find(([low, high]) => code >= low && code <= high)!;
  return String(code - from);
};

const isAscii = (text: string): boolean => {
  for (let n = 0; n < text.length; n++) if (text.charCodeAt(n) > 0x7e) return false;
  return true;
};

/** A cell as a number, date or length is read from it: wide and Arabic digits, fractions of one sign, kinds of blanks and dashes made alike. */
export const tidy = (text: string): string => (isAscii(text) ? text.trim() : tidied(text));

/** No cell that is understood is as long; some letters grow to eighteen when they are made alike. */
const longest = 2000;

const tidied = /* @__PURE__ */ remembering((text: string): string =>
  (text.length > longest ? `${text.slice(0, longest)}…` : text)
    .replace(/(\d)([¼½¾⅐-⅞])/g, "$1 $2")
    .normalize("NFKC")
    .replace(/[٠-٩۰-۹]/g, asDigit)
    .replace(/[\u200e\u200f\u061c]/g, "")
    .replace(/⁄|∕/g, "/")
    .replace(/٫/g, ".")
    .replace(/[٬’]/g, "'")
    .replace(/[‐-―−]/g, "-")
    .replace(/[×✕]/g, "x")
    .replace(/[″”“]|''|′′/g, '"')
    .replace(/[øØ⌀φΦ]/g, "ø")
    .replace(/\s+/g, " ")
    .trim(),
);

/**
 * Text as words are compared: small letters without accents, one spelling for ä and ae. What distinguishes words in no
 * language of the lists is gone.
 */
export const plain = (text: string): string =>
  (isAscii(text)
    ? text.toLowerCase()
    : tidy(text)
        .toLowerCase()
        .normalize("NFD")
        .replace(/\p{M}|ـ/gu, "")
        .replace(/ß/g, "ss")
        .replace(/œ/g, "oe")
  ).replace(/([aou])e/g, "$1");

/** The words of plain text: runs of Latin letters, of digits, and of the letters of other writing; `&` and `+` join like a word. */
export const wordsOf = (plainText: string): string[] => plainText.match(wordPattern) ?? [];

const wordPattern = /[a-zø]+|\d+|[&+#€£$¥"]|[^\x00-\x7f\p{P}\p{S}\p{Z}ø]+/gu;

/** Cells that say that nothing is known. */
const nothing = new Set(
  "|-|--|---|?|??|???|n/a|n.a.|n. a.|na|none|nil|null|tbd|tbc|unknown|k.a.|k. a.|n.v.|keine|unbekannt|s/o|s.o.|inconnu|n/d|nd|s/d|ninguno|ninguna|desconocido|なし|不明|未定|ー|لا يوجد|غير معروف".split(
    "|",
  ),
);

/** Whether a cell, tidied, says nothing. In a column of yes and no, a word for none is an answer. */
export const isEmpty = (text: string): boolean => text === "" || (text.length < 16 && nothing.has(text.toLowerCase()));

/** What a spreadsheet leaves where a formula failed or a column was too narrow. */
export const isFailure = (text: string): boolean =>
  text.length < 12 &&
  /^#(?:ref|name|value|num|null|n\/a|div\/0|wert|bezug|zahl|nom|valeur|nombre|valor|#+)[!?]?$/i.test(text);

/** A list of words divided by bars, each as it is compared. */
export const setOf = (words: string): ReadonlySet<string> => new Set(words.split("|").map(plain));
