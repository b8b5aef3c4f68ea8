import type { Table } from "@meshwright/calc/languages";

/** How each language's file is fetched. */
type Files<Strings> = Readonly<Record<string, () => Promise<{ readonly words: Table<Strings> }>>>;

/** Fetches the strings of a language from its file; nothing where there are none. */
export const fromFiles =
  <Strings>(files: Files<Strings>) =>
  (language: string): Promise<Table<Strings>> | undefined =>
    files[language]?.().then(({ words }) => words);
