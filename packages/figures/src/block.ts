import type { Article, Element, Text } from "./article.js";
import { canonical, numbersIn, signsIn, wordsIn } from "./canonical.js";
import type { Expected } from "./expected.js";
import { withNumbersOf, type Edit } from "./mending.js";
import { headOf, placesIn, type Known, type Place } from "./places.js";

/** What is wrong at one place of a block. */
interface BlockFault {
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

/** What may stand at places with the same heads. */
interface Choice {
  readonly heads: ReadonlySet<string>;
  readonly may: readonly Named[];
  /** All their numbers, as they are compared. */
  readonly numbers: ReadonlySet<string>;
}

type Figures = Extract<Expected, { kind: "figures" }>;

/** The figures of a block, to be found by their heads. */
class Index implements Known {
  readonly #words: ReadonlySet<string>;
  readonly #all: readonly Named[];
  readonly #named = new Map<string, Named[]>();
  readonly #choices = new Map<string, Choice>();
  /** The numbers of its sentences: they may stand anywhere. */
  readonly told: ReadonlySet<string>;
  readonly #sentences: readonly string[];

  constructor({ figures, sentences }: Figures) {
    this.#sentences = sentences.map(canonical);
    this.told = new Set(sentences.flatMap((one) => numbersIn(one).map(({ text }) => text)));
    this.#all = figures.map(({ text, names, also = [] }) => {
      const own = names.map(headOf);
      const all = new Set([...own, ...also.map(headOf)]);
      return { text, names: new Set(own), all, numbers: numbersIn(text).length };
    });
    this.#words = new Set(this.#all.flatMap(({ text }) => wordsIn(text)));
    for (const one of this.#all)
      for (const name of one.all) {
        const known = this.#named.get(name);
        if (known) known.push(one);
        else this.#named.set(name, [one]);
      }
  }

  /** Whether a text that bears no head is told in sentences: one of the block's own, or several of any kind. */
  isTold(text: string): boolean {
    const found = canonical(text);
    return this.#sentences.includes(found) || /[.!?\u3002\u061f]\s+\S/u.test(found);
  }

  readonly isHead = (head: string): boolean => this.#named.has(head);

  readonly isName = (head: string): boolean => this.#named.get(head)?.some(({ names }) => names.has(head)) ?? false;

  readonly isFigure = (text: string): boolean => {
    const numbers = numbersIn(text);
    const [{ length }, signs] = [numbers, signsIn(text)];
    return (
      (length === 1 || length === 2) &&
      numbers.every(({ decimal }) => decimal) &&
      signs.every((sign) => /[.,%°\p{Dash}]/u.test(sign)) &&
      isWithin(wordsIn(text), this.#words)
    );
  };

  /** What may stand where these heads do; heads that are none of ours choose nothing. */
  choice(heads: readonly string[]): Choice {
    const known = [...new Set(heads)].filter((head) => this.#named.has(head));
    const key = JSON.stringify(known);
    let choice = this.#choices.get(key);
    if (!choice) {
      const [first = this.#all, ...more] = known
        .map((head) => this.#named.get(head)!)
        .sort((a, b) => a.length - b.length);
      const may = more.length ? first.filter(({ all }) => isWithin(known, all)) : first;
      const numbers = new Set(may.flatMap(({ text }) => numbersIn(text).map((number) => number.text)));
      this.#choices.set(key, (choice = { heads: new Set(known), may, numbers }));
    }
    return choice;
  }
}

/** The figure that has to stand at a place, where its heads tell. */
function figureAt(place: Place, { heads, may }: Choice): Named | undefined {
  // A head that is none of ours may speak of anything.
  if (!place.heads.every((head) => heads.has(head))) return undefined;
  const { length } = numbersIn(textOf(place.texts));
  // What bears none of a figure's own names, only its table's, may be any of them.
  const isNamed = ({ names }: Named) => !heads.size || !names.size || [...names].some((name) => heads.has(name));
  const asMany = may.filter((figure) => figure.numbers === length && isNamed(figure));
  const exact = may.filter(({ names }) => isWithin(names, heads));
  const [n, of] = place.inRow ?? [0, 0];
  const inOrder = asMany.length === of ? asMany[n] : undefined;
  const one = only(asMany.filter((figure) => isWithin(figure.names, heads))) ?? only(asMany) ?? inOrder;
  return one ?? (length && place.heads.length ? only(exact) : undefined);
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

/** What was found in a block. */
export interface BlockFound {
  readonly faults: readonly BlockFault[];
  /** How many whole numbers stand where nothing says what they are, and are none of its figures: they may speak of anything. */
  readonly unplaced: number;
  /** How many numbers that could be figures stand in heads, which name figures and are none. */
  readonly headed: number;
}

/**
 * The faults of a block's content: at the places of its figures what is not theirs, anywhere else numbers that are none of
 * them.
 *
 * @param without elements whose content is not the block's own
 */
export function faultsOf(
  block: Element,
  figures: Figures,
  article: Article,
  without: (element: Element) => boolean,
): BlockFound {
  const index = new Index(figures);
  let unplaced = 0;
  const { places, loose, inHeads } = placesIn(block, without, index);
  const strangers = (texts: readonly Text[], { numbers, heads }: Choice, edit: string): BlockFault[] =>
    texts.flatMap((at) => {
      const none = numbersIn(at.value).filter(
        ({ text }) => !numbers.has(text) && (heads.size > 0 || !index.told.has(text)),
      );
      const decimals = none.filter(({ decimal }) => decimal);
      unplaced += none.length - decimals.length;
      return decimals.map(({ written: found }) => ({ at, found, expected: undefined, edit }));
    });
  const faults = places.flatMap((place): BlockFault[] => {
    const choice = index.choice([...place.heads, place.group ?? ""]);
    const found = textOf(place.texts).trim();
    const isTold = !place.heads.length && index.isTold(found);
    const figure = isTold ? undefined : figureAt(place, choice);
    if (!figure) return strangers(place.texts, choice, "its place does not say which figure it is");
    if (says(found, figure.text)) return [];
    const at = place.texts.find(({ value }) => value.trim()) ?? place.element;
    return [{ at, found, expected: figure.text, edit: mend(place, found, figure.text, article) }];
  });
  const others = strangers(loose, index.choice([]), "it stands in a sentence");
  const headed = inHeads.flatMap(({ value }) => numbersIn(value).filter(({ decimal }) => decimal)).length;
  return { faults: [...faults, ...others], unplaced, headed };
}
