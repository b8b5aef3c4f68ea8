// Compares what came out with what was expected, field by field, and leaves nothing out on either side.

/** What stands at one place: a plain object lists the fields of an object. */
export type Form =
  | { readonly kind: "fraction" | "same" }
  | { readonly kind: "near"; readonly tolerance: number }
  | { readonly kind: "list"; readonly form: Form }
  | { readonly kind: "map"; readonly form: Form; readonly ordered: boolean }
  | Fields;
export interface Fields {
  readonly kind?: undefined;
  readonly [name: string]: Form | undefined;
}

/** One thing that differs, as people read it. */
export interface Difference {
  readonly path: string;
  readonly expected: string;
  readonly got: string;
}

/** A field that is a fraction in lowest terms. */
export const fraction = { kind: "fraction" } as const;
/** A field that is equal as it stands: text, a count, a boolean, null. */
export const same = { kind: "same" } as const;
/** A field that is a floating-point result, within a part of its size. */
export const near = (tolerance = 1e-12) => ({ kind: "near", tolerance }) as const;
/** An array of fields of one form. */
export const listOf = (form: Form) => ({ kind: "list", form }) as const;
/** An object whose keys are not known beforehand, each of one form; `ordered` where their order counts. */
export const mapOf = (form: Form, { ordered = false } = {}) => ({ kind: "map", form, ordered }) as const;

export const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const text = (value: unknown) => (value === undefined ? "nothing" : JSON.stringify(value));

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  while (b !== 0n) [a, b] = [b, a % b];
  return a;
}

/** True for "n/d" in lowest terms. */
function isLowestTerms(value: string): boolean {
  const match = /^-?(0|[1-9]\d*)\/([1-9]\d*)$/.exec(value);
  if (match?.[1] === undefined || match[2] === undefined) return false;
  return greatestCommonDivisor(BigInt(match[1]), BigInt(match[2])) === 1n && !value.startsWith("-0");
}

/** Every difference. What `form` does not name must not be there; a key on one side only is a difference. */
export function differences(form: Form, expected: unknown, got: unknown, path: string): Difference[] {
  const difference = [{ path, expected: text(expected), got: text(got) }];
  const trouble = (what: string) => [{ path, expected: what, got: text(expected) }];
  if (expected === undefined || got === undefined) return expected === got ? [] : difference;
  switch (form.kind) {
    case "same":
      if (typeof expected === "object" && expected !== null) return trouble("a plain value in the vectors");
      return expected === got ? [] : difference;
    case "fraction":
      if (typeof expected !== "string" || !isLowestTerms(expected)) return trouble("a fraction in lowest terms");
      return expected === got ? [] : difference;
    case "near":
      if (typeof expected !== "number" || !Number.isFinite(expected)) return trouble("a number in the vectors");
      if (typeof got !== "number") return difference;
      return Math.abs(got - expected) <= form.tolerance * Math.abs(expected) ? [] : difference;
    case "list":
      if (!Array.isArray(expected)) return trouble("a list in the vectors");
      if (!Array.isArray(got)) return difference;
      return Array.from({ length: Math.max(expected.length, got.length) }, (_, index) =>
        differences(form.form, expected[index], got[index], `${path}.${index}`),
      ).flat();
    default:
  }
  if (!isObject(expected)) return trouble("an object in the vectors");
  if (!isObject(got)) return difference;
  const names = Object.keys(expected);
  const formOf = (name: string) =>
    form.kind === "map" ? form.form : Object.hasOwn(form, name) ? form[name] : undefined;
  const found: Difference[] = [];
  if (form.kind === "map" && names.length === 0) found.push(...trouble("at least one entry in the vectors"));
  for (const name of new Set([...names, ...Object.keys(got)])) {
    const at = `${path}.${name}`;
    const field = formOf(name);
    if (field === undefined) found.push({ path: at, expected: "no such field", got: text(expected[name]) });
    else found.push(...differences(field, expected[name], got[name], at));
  }
  if (form.kind === "map" && form.ordered && found.length === 0 && names.join("\n") !== Object.keys(got).join("\n")) {
    found.push({ path: `${path} (order)`, expected: text(names), got: text(Object.keys(got)) });
  }
  return found;
}
