// Slips of one letter, and which words are near: told apart here by what one slip makes, without measuring distances.

const small = [..."abcdefghijklmnopqrstuvwxyz"];

/** All that one slip makes of a word: a letter left out, put in or replaced, two neighbours swapped. */
export function* edits(word: string, alphabet: readonly string[]): Generator<string> {
  const letters = [...word];
  for (let at = 0; at <= letters.length; at++) {
    const [before, after] = [letters.slice(0, at).join(""), letters.slice(at).join("")];
    for (const letter of alphabet) yield before + letter + after;
    if (at === letters.length) continue;
    const [, next = "", rest = ""] = [letters[at], letters[at + 1], letters.slice(at + 2).join("")];
    yield before + letters.slice(at + 1).join("");
    for (const letter of alphabet) yield before + letter + letters.slice(at + 1).join("");
    if (next) yield before + next + letters[at]! + rest;
  }
}

const otherCase = (letter: string): string =>
  letter === letter.toLowerCase() ? letter.toUpperCase() : letter.toLowerCase();

/** The letters of a table's words, and the small ones. */
export const lettersOf = (words: readonly string[]): readonly string[] => [
  ...new Set([...small, ...words.join("").replace(/[0-9]/g, "")]),
];

/** A word with every slip of one letter, wrong case among them, once each; the word itself is none. */
export function slipsOf(word: string, alphabet: readonly string[]): readonly string[] {
  const slips = new Set(edits(word, alphabet));
  const letters = [...word];
  letters.forEach((letter, at) => slips.add(letters.with(at, otherCase(letter)).join("")));
  slips.add(word.toUpperCase());
  slips.add(word[0]!.toUpperCase() + word.slice(1));
  slips.delete(word);
  slips.delete("");
  return [...slips];
}

/** Whether one slip, or none, makes one word of the other; whether letters are large counts as nothing. */
function isOneSlip(one: string, other: string): boolean {
  if (Math.abs(one.length - other.length) > 1) return false;
  const [a, b] = one.length <= other.length ? [one, other] : [other, one];
  let from = 0;
  while (from < a.length && a[from] === b[from]) from++;
  const [restA, restB] = [a.slice(from), b.slice(from)];
  if (restA === restB) return true;
  if (restA === restB.slice(1)) return true;
  if (a.length < b.length) return false;
  if (restA.slice(1) === restB.slice(1)) return true;
  return restA[0] === restB[1] && restA[1] === restB[0] && restA.slice(2) === restB.slice(2);
}

/** The words that are as near as any to a slip of one of them: three at the most, in their own order. */
export function nearWords(slip: string, words: readonly string[]): readonly string[] {
  const small = slip.toLowerCase();
  const same = words.filter((word) => word.toLowerCase() === small);
  return (same.length ? same : words.filter((word) => isOneSlip(small, word.toLowerCase()))).slice(0, 3);
}
