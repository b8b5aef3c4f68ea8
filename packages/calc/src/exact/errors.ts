/**
 * The one error that Meshwright throws. `code` is for programs, in kebab-case; `at` says where (an argument, an option
 * or an address); the message is one sentence for people.
 */
export class MeshwrightError extends Error {
  /** What went wrong, in kebab-case: `"zero-denominator"`. */
  readonly code: string;
  /** Where: the name of an argument or option, or an address. */
  readonly at: string;

  constructor(code: string, at: string, message: string) {
    super(message);
    this.code = code;
    this.at = at;
    this.name = "MeshwrightError";
  }
}
