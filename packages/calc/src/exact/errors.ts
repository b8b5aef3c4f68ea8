/**
 * The one error that this package throws. `code` is for programs, `at` says where, the message is one sentence for people:
 * what was found, and what is expected.
 *
 * @example
 * import { MeshwrightError, rational } from "@meshwright/calc/exact";
 * let caught: unknown;
 * try {
 *   rational("1/0");
 * } catch (error) {
 *   caught = error;
 * }
 * caught instanceof MeshwrightError && caught.code; // => "zero-denominator"
 */
export class MeshwrightError extends Error {
  /** What went wrong, in kebab-case: `"zero-denominator"`. */
  declare readonly code: string;
  /** Where: the name of an argument or option, or an address. */
  declare readonly at: string;

  /** What the message speaks of, where a program may want it. */
  declare readonly values?: Readonly<Record<string, number | string>>;

  constructor(code: string, at: string, message: string, values?: Readonly<Record<string, number | string>>) {
    super(message);
    this.name = "MeshwrightError";
    this.code = code;
    this.at = at;
    if (values) this.values = values;
  }
}

/** Throws "Found this; expected that." */
export function fail(code: string, at: string, found: unknown, expected: string): never {
  const shown =
    typeof found === "string"
      ? JSON.stringify(found.slice(0, 40))
      : Object(found) === found
        ? typeof found
        : String(found);
  throw new MeshwrightError(code, at, `Found ${shown}; expected ${expected}.`);
}
