import type { PartKind } from "../../stages/index.js";
import { joints, kindWords, manners, measures, type KindWords } from "./kind-words.js";
import { plain, setOf, wordsOf } from "./plain.js";
import { remembering } from "./remember.js";

/** What a text says that a part is. */
export interface KindRead {
  readonly is: PartKind;
  /** Whether it says so plainly; else it is perhaps that. */
  readonly sure: boolean;
  /** Whether the text says nothing beside it but its manner and numbers. */
  readonly only: boolean;
}

interface Entry {
  readonly is: PartKind;
  readonly sure: boolean;
  /** Of a language that names the thing first. */
  readonly first: boolean;
}

interface Lists {
  readonly phrases: ReadonlyMap<string, Entry>;
  /** Words that phrases of several begin with, and how many such a phrase has at most. */
  readonly starts: ReadonlyMap<string, number>;
  /** Ends of compound words, the longest first. */
  readonly ends: readonly (readonly [string, Entry])[];
  readonly manners: ReadonlySet<string>;
  readonly joints: ReadonlySet<string>;
  readonly measures: ReadonlySet<string>;
}
let lists: Lists | undefined;

const spoken = (text: string): string[] =>
  wordsOf(plain(text).replace(/\/(?!\d)/g, " + ")).map((word) => (word === "&" || word === "+" ? "and" : word));

function listsOf(): Lists {
  if (lists) return lists;
  const phrases = new Map<string, Entry>();
  const starts = new Map<string, number>();
  const ends: [string, Entry][] = [];
  const put = (language: KindWords, first: boolean) => {
    for (const [kind, all] of Object.entries(language))
      for (const one of all.split("|")) {
        const words = spoken(one);
        const entry = { is: kind.replace("?", "") as PartKind, sure: !kind.endsWith("?"), first };
        const key = words.join(" ");
        if (!phrases.has(key)) phrases.set(key, entry);
        if (words.length > 1) starts.set(words[0]!, Math.max(words.length, starts.get(words[0]!) ?? 0));
        else if (kindWords.compound.includes(language) && key.length > (key > "\u3000" ? 1 : 3))
          ends.push([key, entry]);
      }
  };
  for (const language of kindWords.last) put(language, false);
  for (const language of kindWords.first) put(language, true);
  ends.sort((a, b) => b[0].length - a[0].length);
  return (lists = { phrases, starts, ends, manners: setOf(manners), joints: setOf(joints), measures: setOf(measures) });
}

/** Endings of plurals, in the order in which they are tried. */
const plurals: readonly (readonly [string, string])[] = [
  ["ies", "y"],
  ["rader", "rad"],
  ["s", ""],
  ["es", ""],
  ["x", ""],
  ["en", ""],
  ["n", ""],
  ["e", ""],
];

/** What is known of one word or several: as they stand, in the singular, without the Arabic article. */
function known(key: string): Entry | undefined {
  const { phrases } = listsOf();
  const found = phrases.get(key);
  if (found) return found;
  for (const [ending, by] of plurals) {
    const entry = key.endsWith(ending) ? phrases.get(key.slice(0, -ending.length) + by) : undefined;
    if (entry) return entry;
  }
  return key.startsWith("ال") ? phrases.get(key.replace(/(^| )ال/g, "$1")) : undefined;
}

/** A word by itself, or by what a compound ends with: Motorritzel, ホイールベアリング. */
const wordKind = /* @__PURE__ */ remembering((word: string): Entry | undefined => {
  const entry = known(word);
  if (entry || word.length < 3 || word.length > 60) return entry;
  return listsOf().ends.find(([end]) => word.endsWith(end))?.[1];
});

const isNumber = (word = ""): boolean => /^\d+$/.test(word);

/** One piece of a text, up to the words for what the thing is for. */
function pieceKind(words: readonly string[]): KindRead | undefined {
  const { joints: cuts, manners: how, measures: sizes, starts } = listsOf();
  const found: Entry[] = [];
  let [before, after] = [0, 0];
  let [isJoined, isMixed, isCut] = [false, false, false];
  for (let n = 0, size = 1; n < words.length; n += size) {
    const word = words[n]!;
    let entry: Entry | undefined;
    for (size = Math.min(starts.get(word) ?? 1, words.length - n); size > 1; size -= 1)
      if ((entry = known(words.slice(n, n + size).join(" ")))) break;
    if (size < 2) entry = isNumber(word) ? undefined : wordKind(word);
    const isBehindNumber = isNumber(words[n - 1]) || isNumber(words[n - 2]);
    // A pulley for a 6 mm belt is a pulley; a pulley and a belt are two things.
    const isMeasure = isBehindNumber && (sizes.has(word) || (entry?.is === "belt" && found.length > 0 && !isJoined));
    if (size < 2 && (isMeasure || (found.length && how.has(word)))) continue;
    if (entry) {
      isMixed ||= isJoined && found.some(({ is }) => is !== entry.is);
      isJoined = false;
      found.push(entry);
      before += after;
      after = 0;
    } else if (found.length && cuts.has(word)) {
      isCut = true;
      break;
    } else if (word === "and") isJoined = found.length > 0;
    else if (word.length > 1 && !isNumber(word) && !how.has(word)) after += 1;
  }
  if (!found.length) return undefined;
  const isFirst = found.some(({ first }) => first);
  const head = isFirst ? found[0]! : found.at(-1)!;
  const isOfSome = found.some(({ is, sure }) => is === "set" && !sure) && head.is !== "set";
  return {
    is: head.is,
    sure: head.sure && !isMixed && !isOfSome && (isFirst || !after),
    only: found.every(({ is }) => is === head.is) && !before && !after && !isCut,
  };
}

/**
 * What a part is, by the words of its name or kind: the thing itself, which English, German and Japanese name last and
 * French, Spanish and Arabic first, not what it is for. Undefined where no word is of the lists.
 *
 * @example
 * kindOf("wheel bearing")?.is; // => "other"
 * kindOf("spur wheel")?.is; // => "gear"
 * kindOf("Ring & pinion")?.is; // => "set"
 */
export const kindOf = (text: string): KindRead | undefined =>
  text.length > 300 ? undefined : kindOfForm(text.replace(/\d+/g, "0"));

/** Which numbers stand in a text makes no difference to what it names. */
const kindOfForm = /* @__PURE__ */ remembering((text: string): KindRead | undefined => {
  const pieces = text
    .normalize("NFKC")
    .split(/[(),;[\]{}|]| [-–—] /)
    .map((piece) => spoken(piece.split("用").at(-1)!))
    .filter((words) => words.length);
  for (const [n, words] of pieces.entries()) {
    const read = pieceKind(words);
    if (read) return { ...read, only: read.only && n === 0 && pieces.length === 1 };
  }
  return undefined;
});
