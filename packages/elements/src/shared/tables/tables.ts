import { languageOf, stringsFrom, type Table } from "@meshwright/calc/languages";

type Tables = Record<string, object | undefined>;

// A file of words without imports puts its table here and raises the event; the number is the contract's.
const key = Symbol.for("meshwright tables 1");
const arrival = "meshwright-words";

const tables = (): Tables => ((globalThis as unknown as Record<symbol, Tables | undefined>)[key] ??= {});
const asked = new Set<string>();

/** Adds a table by its name (`words-de`); whatever stands in that language is drawn again. */
export function addTable(name: string, table: object): void {
  tables()[name] = table;
  globalThis.dispatchEvent?.(new Event(arrival));
}

/** Calls back whenever a language has arrived. */
export const whenWordsArrive = (again: () => void): void => globalThis.addEventListener?.(arrival, again);

/**
 * The strings for a locale: its language's, English until they are there or where there are none. A language is asked for
 * once, when something stands in it, and not before.
 *
 * @param kind which strings: the first half of the table's name
 */
export function tableFor<Strings extends object>(
  kind: string,
  english: Strings,
  locale: string,
  load: (language: string) => Promise<object | undefined> | undefined,
): Strings {
  const language = languageOf(locale);
  const name = `${kind}-${language}`;
  const table = tables()[name];
  if (table) return stringsFrom(english, table as Table<Strings>);
  if (!asked.has(name)) {
    asked.add(name);
    load(language)?.then(
      (found) => found && addTable(name, found),
      () => undefined,
    );
  }
  return english;
}

type Fetch = (kind: string, language: string) => Promise<object | undefined> | undefined;
let fetchTable: Fetch | undefined;

/** Has tables fetched that something on the page stands in. */
export const fetchBy = (fetch: Fetch): void => void (fetchTable = fetch);

/** The strings for a locale as they are there: English until somebody can fetch others, and they have come. */
export const wordsThere = <Strings extends object>(kind: string, english: Strings, locale: string): Strings => {
  const fetch = fetchTable;
  if (fetch) return tableFor(kind, english, locale, (language) => fetch(kind, language));
  const table = tables()[`${kind}-${languageOf(locale)}`];
  return table ? stringsFrom(english, table as Table<Strings>) : english;
};
