import type { Article, Element, Text } from "./article.js";
import { canonical, numbersIn, wordsIn } from "./canonical.js";
import type { Figure } from "./expected.js";
import { withNumbersOf, type Edit } from "./mending.js";
import { headOf, placesIn, type Place } from "./places.js";

/** What is wrong at one place of a block. */
export interface BlockFault {
  readonly at: Element | Text;
  readonly found: string;
  readonly expected: string | undefined;
  /** How it is mended, or why it is not. */
  readonly edit: Edit | string;
}

interface Named {
  readonly text: string;
  readonly names: ReadonlySet<string>;
  readonly all: ReadonlySet<string>;
  readonly numbers: number;
}

const textOf = (texts: readonly Text[]): string => texts.map(({ value }) => value).join("");
const isWithin = (some: Iterable<string>, all: ReadonlySet<string>): boolean => [...some].every((one) => all.has(one));

/** The one that all agree on. */
const only = (figures: readonly Named[]): Named | undefined =>
  figures.every(({ text }) => text === figures[0]!.text) ? figures[0] : undefined;

/** The figures that may stand at a place, and the one that has to, where its heads tell. */
function figuresAt(place: Place, figures: readonly Named[]): { may: readonly Named[]; must: Named | undefined } {
  const names = new Set(figures.flatMap(({ all }) => [...all]));
  const known = new Set([...place.heads, place.group ?? ""].filter((head) => names.has(head)));
  const may = figures.filter(({ all }) => isWithin(known, all));
  // A head that is none of ours may speak of anything.
  if (!place.heads.every((head) => names.has(head))) return { may, must: undefined };
  const { length } = numbersIn(textOf(place.texts));
  const asMany = may.filter(({ numbers }) => numbers === length);
  const exact = may.filter((one) => isWithin(one.names, known));
  const [n, of] = place.inRow ?? [0, 0];
  const inOrder = asMany.length === of ? asMany[n] : undefined;
  const must = only(asMany.filter((one) => exact.includes(one))) ?? only(asMany) ?? inOrder;
  return { may, must: must ?? (length && place.heads.length ? only(exact) : undefined) };
}

/** Whether a place says a figure: the same numbers in the same order, and none but its words, unless there are none at all. */
function says(found: string, expected: string): boolean {
  if (canonical(found) === canonical(expected)) return true;
  const [own, wanted] = [numbersIn(found), numbersIn(expected)];
  const words = new Set(wordsIn(found));
  if (own.length && own.length !== wanted.length) return false;
  return own.every(({ text }, n) => text === wanted[n]!.text) && (!words.size || isWithin(wordsIn(expected), words));
}

/** What is to be written at a place; or why nothing is. */
function mend({ texts }: Place, found: string, expected: string, article: Article): Edit | string {
  const [text, ...more] = texts.filter(({ value }) => value.trim());
  const { source } = article;
  if (!text?.range || more.length || /[<>]/.test(source.slice(...text.range))) return "it is written in several pieces";
  const bare = (one: string) => one.replace(/\s*\p{L}[\p{L}\p{M}'’-]*(?:\/\p{L}+)?/gu, "");
  const words = wordsIn(found);
  // Without its unit a number is still the figure; with other words it may be history.
  const same = withNumbersOf(
    words.length ? expected : bare(expected),
    found.trim(),
    source.slice(...text.range),
    article,
  );
  return same === undefined ? "more than the figure stands at its place" : { range: text.range, text: same };
}

/**
 * The faults of a block's content: at the places of its figures what is not theirs, anywhere else numbers that are none of
 * them.
 *
 * @param without elements whose content is not the block's own
 */
export function faultsOf(
  block: Element,
  figures: readonly Figure[],
  article: Article,
  without: (element: Element) => boolean,
): readonly BlockFault[] {
  const named = figures.map(({ text, names, also = [] }): Named => {
    const own = names.map(headOf);
    return { text, names: new Set(own), all: new Set([...own, ...also.map(headOf)]), numbers: numbersIn(text).length };
  });
  const { places, loose } = placesIn(block, without);
  const strangers = (texts: readonly Text[], may: readonly Named[], edit: string): BlockFault[] => {
    const all = new Set(may.flatMap(({ text }) => numbersIn(text).map((number) => number.text)));
    return texts.flatMap((at) =>
      numbersIn(at.value)
        .filter(({ decimal, text }) => decimal && !all.has(text))
        .map(({ written: found }) => ({ at, found, expected: undefined, edit })),
    );
  };
  const faults = places.flatMap((place): BlockFault[] => {
    const { may, must } = figuresAt(place, named);
    if (!must) return strangers(place.texts, may, "its place does not say which figure it is");
    const found = textOf(place.texts).trim();
    if (says(found, must.text)) return [];
    const at = place.texts.find(({ value }) => value.trim()) ?? place.element;
    return [{ at, found, expected: must.text, edit: mend(place, found, must.text, article) }];
  });
  return [...faults, ...strangers(loose, named, "it stands in a sentence")];
}
