// Reads a folder of vectors and has every case answered.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Difference, differences, type Fields, isObject } from "./fields.js";

/**
 * How the cases of one file are answered. A file in answers/ of the same name as the vectors exports one as `file`.
 * @typeParam C - what a case gives
 */
export interface VectorFile<C extends object = never> {
  /** The fields that a case gives, all but what it expects; those that it may leave out stand in `optional` as well. */
  readonly given: readonly (keyof C & string)[];
  readonly optional?: readonly (keyof C & string)[];
  /** The form of every field that a case expects. */
  readonly form: Fields;
  /**
   * What calc says to one case, in that form. A field whose answer is undefined does not apply to the case, and must not
   * be expected of it. `expected` is there for what has to be asked for, such as how many digits.
   */
  answer(given: C, expected: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>>;
}

/** One case, by its place, and what is wrong with it in a line each: none where it is answered as expected. */
export interface VectorCase {
  readonly title: string;
  trouble(): string[];
}

const answers = new URL("./answers/", import.meta.url);

/** The files that can be answered. */
export const names = readdirSync(answers)
  .map((name) => name.replace(/\.ts$/, ""))
  .sort();

export const fileOf = async (name: string): Promise<VectorFile> =>
  ((await import(fileURLToPath(new URL(`${name}.ts`, answers)))) as { file: VectorFile }).file;

function differencesOf(file: VectorFile, one: unknown): Difference[] {
  if (!isObject(one)) return [{ path: "", expected: "a case", got: JSON.stringify(one) }];
  const expected: Record<string, unknown> = {};
  const trouble: Difference[] = [];
  const given: readonly string[] = file.given;
  const optional: readonly string[] = file.optional ?? [];
  for (const [name, value] of Object.entries(one)) {
    if (Object.hasOwn(file.form, name)) expected[name] = value;
    else if (!given.includes(name)) trouble.push({ path: name, expected: "no such field", got: JSON.stringify(value) });
  }
  for (const name of given.filter((field) => !(field in one) && !optional.includes(field)))
    trouble.push({ path: name, expected: "a field", got: "nothing" });
  if (trouble.length > 0) return trouble;
  try {
    const got = file.answer(one as never, expected);
    return differences(file.form, expected, got, "").map(({ path, ...rest }) => ({ path: path.slice(1), ...rest }));
  } catch (error) {
    return [{ path: "", expected: "an answer", got: error instanceof Error ? error.message : String(error) }];
  }
}

/** What is wrong with one case of a file, in a line each. */
export const troubleOf = (name: string, file: VectorFile, one: unknown, index: number): string[] =>
  differencesOf(file, one).map(
    ({ path, expected, got }) => `${name}.json [${index}] ${path}: expected ${expected}, got ${got}`,
  );

const wrong = (title: string, what: string): VectorCase => ({ title, trouble: () => [`${title}: ${what}`] });

/** The cases of every file in a folder. Whatever is not as vectors have to be is a case that fails. */
export async function casesIn(folder: string): Promise<VectorCase[]> {
  let files: string[];
  try {
    files = readdirSync(folder).filter((name) => name.endsWith(".json"));
  } catch (error) {
    return [wrong(folder, `a folder of vectors is expected (${(error as NodeJS.ErrnoException).code})`)];
  }
  if (files.length === 0) return [wrong(folder, "holds no vectors")];
  const found: VectorCase[] = [];
  for (const title of files.sort()) {
    const name = title.slice(0, -".json".length);
    if (!names.includes(name)) {
      found.push(wrong(title, `not a file of vectors; expected one of ${names.join(", ")}`));
      continue;
    }
    let cases: unknown;
    try {
      cases = JSON.parse(readFileSync(join(folder, title), "utf8"));
    } catch (error) {
      found.push(wrong(title, (error as Error).message));
      continue;
    }
    if (!Array.isArray(cases) || cases.length === 0) {
      found.push(wrong(title, "a list of cases is expected"));
      continue;
    }
    const file = await fileOf(name);
    found.push(
      ...cases.map((one: unknown, index) => ({
        title: `${title} [${index}]`,
        trouble: () => troubleOf(name, file, one, index),
      })),
    );
  }
  return found;
}
